/** Whether anything names an exercise that a flag, a thing that is not there, or the plan itself rules out. */

import type { Block } from "../surfaces/read/outline.ts";
import { type Section, textsIn } from "../surfaces/read/sections.ts";
import { label } from "../surfaces/shipped.ts";
import { type AskedWeek, askedWeeks, type Course } from "./asked.ts";
import {
  type Held,
  heldFlags,
  isLeftOut,
  lacking,
  openIn,
  outsideAge,
  ruledOut,
  rulingIn,
} from "./fits.ts";
import { ALL_CARDS, secondsOf, type WholeCard, wholeCard } from "./library.ts";
import type { PlanText } from "./plan-text.ts";
import type { PrintedBooklet, PrintedPlan } from "./printed.ts";

/** What the proof knows of a plan before it looks at what is printed. */
export interface Known {
  readonly plan: PlanText;
  readonly course: Course;
  readonly asked: readonly AskedWeek[];
  readonly flags: readonly Held[];
}

export const knownOf = (plan: PlanText, course: Course): Known => ({
  plan,
  course,
  asked: askedWeeks(plan, course),
  flags: heldFlags(plan, course),
});

const TITLES = [...ALL_CARDS.values()]
  .map(({ id, title }) => ({ id, title: title.toLowerCase() }))
  .sort((a, b) => b.title.length - a.title.length);

/** Cards whose titles stand in a text; of two that overlap the longer. */
export function namedIn(text: string): Set<string> {
  const found = new Set<string>();
  let left = text.toLowerCase();
  for (const { id, title } of TITLES) {
    if (!left.includes(title)) continue;
    found.add(id);
    left = left.replaceAll(title, "#");
  }
  return found;
}

const weeksOf = ({ asked }: Known, card: string): number[] =>
  asked
    .filter(({ entries }) => entries.some((one) => one.card === card))
    .map(({ number }) => number);

const phasesOf = ({ asked }: Known, card: string): string[] =>
  asked.flatMap(({ entries }) =>
    entries.filter((one) => one.card === card).map(({ phase }) => phase),
  );

/** What stands against the exercises of the program itself, in the weeks in which they are done. */
export function wrongExercises(known: Known, { weeks }: PrintedPlan): string[] {
  const { asked, flags } = known;
  const ruled = asked.flatMap(({ number, entries }) =>
    entries.flatMap(({ card }) => {
      const flag = ruledOut(wholeCard(card), rulingIn(flags, number));
      return flag === undefined ? [] : [`week ${number}: ${card} against ${flag}`];
    }),
  );
  return [...ruled, ...wrongThings(known), ...wrongAges(known), ...wrongWaits(known, weeks)];
}

const cardsIn = ({ asked }: Known): string[] => [
  ...new Set(asked.flatMap(({ entries }) => entries.map(({ card }) => card))),
];

function wrongThings(known: Known): string[] {
  return cardsIn(known).flatMap((id) => {
    const lacks = lacking(wholeCard(id), known.plan, openIn(known.flags, weeksOf(known, id)));
    return lacks.length === 0 ? [] : [`${id} without ${lacks.join(", ")}`];
  });
}

function wrongAges(known: Known): string[] {
  const { plan, course } = known;
  const bounded = [course, ...cardsIn(known).map(wholeCard)];
  return bounded.flatMap(({ id, age }) => {
    const accepted = plan.accept.some(({ code, card }) => code === "age-outside" && card === id);
    return outsideAge(plan, age) && !accepted ? [`${id} is not for this age`] : [];
  });
}

/** Names in the JSON that nobody asks for, and bouts that wait for a review where none is, or the other way. */
function wrongWaits({ asked, flags }: Known, weeks: PrintedPlan["weeks"]): string[] {
  const ended = flags.filter(({ byReview }) => byReview).map(({ flag }) => flag);
  return weeks.flatMap(({ week, sessions, frequency, trails }, at) => {
    const here = new Set((asked[at]?.entries ?? []).map(({ key }) => key));
    const named = [...Object.keys(frequency), ...Object.keys(trails)].filter(
      (key) => !here.has(key),
    );
    const bouts = sessions.flatMap((session) => session.bouts);
    const wrong = bouts.filter(
      ({ card, after_review }) =>
        after_review !== (wholeCard(card).not_for ?? []).some(({ flag }) => ended.includes(flag)),
    );
    return [
      ...named.map((key) => `week ${week}: ${key} is named, and nobody asks for it`),
      ...wrong.map(
        ({ key, after_review }) => `week ${week}: ${key} waits for a review: ${after_review}`,
      ),
    ];
  });
}

/** What stands against doing one card on a day when another is too much. */
function against(card: WholeCard, parent: string, known: Known): string[] {
  const { plan, flags } = known;
  const open = openIn(flags, weeksOf(known, parent));
  const flag = ruledOut(card, open);
  const lacks = lacking(card, plan, open);
  const other = wholeCard(parent);
  return [
    ...(flag === undefined ? [] : [flag]),
    ...(lacks.length === 0 ? [] : [`no ${lacks.join(", ")}`]),
    ...(isLeftOut(plan, card.id, phasesOf(known, parent)) ? ["the plan leaves it out"] : []),
    ...(outsideAge(plan, card.age) ? ["its age"] : []),
    ...(card.demand < other.demand ? [] : ["it is no easier"]),
    ...(secondsOf(card.recovery) <= secondsOf(other.recovery) ? [] : ["it needs a longer rest"]),
  ];
}

/** What an exercise's page names for a day when it is too much; undefined for less of the same. */
function insteadOf(page: Section): string | undefined {
  const part = page.parts.find(({ title }) => title === label("en", "frame.exercise.easier"));
  return part && [...namedIn(textsIn(part.blocks).join(" "))][0];
}

/** Every name in the pages that is neither an exercise of the program nor an easier one that this client may do. */
export function wrongPages(
  known: Known,
  sections: readonly Section[],
  blocks: readonly Block[],
): string[] {
  const wrong: string[] = [];
  const allowed = new Set(cardsIn(known));
  for (const page of sections) {
    const cut = /^Exercise \d+: (.*)$/.exec(page.title)?.[1];
    const [parent] = cut === undefined ? [] : namedIn(cut);
    const instead = parent && insteadOf(page);
    if (parent === undefined || instead === undefined) continue;
    for (const reason of against(wholeCard(instead), parent, known))
      wrong.push(`in place of ${parent}: ${instead}, against ${reason}`);
    allowed.add(instead);
  }
  for (const id of namedIn(blocks.map(textOf).join("\n")))
    if (!allowed.has(id)) wrong.push(`the pages name ${id}`);
  return wrong;
}

const textOf = (block: Block): string =>
  block.kind === "row" ? block.cells.map(({ text }) => text).join(" ") : block.text;

/** Names in calendar, phone data and terminal that are no exercise of the program. */
export function wrongNames(known: Known, { ics, phone, table }: PrintedBooklet): string[] {
  const own = new Set(cardsIn(known));
  const texts = { calendar: ics.replace(/\r\n[ \t]/g, ""), phone, terminal: table };
  return Object.entries(texts).flatMap(([place, text]) =>
    [...namedIn(text)].filter((id) => !own.has(id)).map((id) => `the ${place} names ${id}`),
  );
}

/** Cards that a warning offers in the place of others, and that this client may not do in their weeks. */
export function wrongRemedies(known: Known, { warnings }: PrintedPlan): string[] {
  const values = warnings.flatMap(({ remedies }) =>
    remedies.flatMap(({ edits }) => edits.map(({ value }) => value)),
  );
  return values.flatMap((value) => {
    if (typeof value !== "object" || value === null || !("to" in value && "card" in value))
      return [];
    const card = wholeCard(String(value.to));
    const open = openIn(known.flags, weeksOf(known, String(value.card)));
    const reason = ruledOut(card, open) ?? lacking(card, known.plan, open)[0];
    return reason === undefined ? [] : [`a remedy offers ${card.id}, against ${reason}`];
  });
}

/** Cards below those of the program that something stands against: what must be named nowhere. */
export function ruledBelow(known: Known): { readonly card: string; readonly reasons: string[] }[] {
  return cardsIn(known).flatMap((parent) =>
    (wholeCard(parent).easier ?? []).flatMap(({ to }) => {
      const reasons = against(wholeCard(to), parent, known);
      return reasons.length === 0 ? [] : [{ card: to, reasons }];
    }),
  );
}

interface PhoneText {
  readonly bouts: readonly { readonly key: string; readonly card: string; readonly sets: number }[];
  readonly kinds: readonly {
    readonly bouts: readonly number[];
    readonly short?: { readonly bouts: readonly { readonly key: string; readonly sets: number }[] };
  }[];
}

/** From the reference of booklets: what is quick or among the hardest of its region is nothing for a bad day. */
const HARDEST = 8;

/** Short versions that name what their session does not have, more of it, or what is nothing for a bad day. */
export function wrongShort(phone: string): string[] {
  const { bouts, kinds } = JSON.parse(phone) as PhoneText;
  return kinds.flatMap(({ bouts: places, short }) =>
    (short?.bouts ?? []).flatMap(({ key, sets }) => {
      const bout = places.map((at) => bouts[at]).find((one) => one?.key === key);
      if (!bout) return [`a bad day has ${key}, its session has not`];
      const { trains, load, demand } = wholeCard(bout.card);
      const hard = trains === "power" || load.kind === "speed" || demand >= HARDEST;
      return [
        ...(sets > bout.sets
          ? [`a bad day has ${sets} sets of ${key}, its session ${bout.sets}`]
          : []),
        ...(hard ? [`a bad day has ${key}`] : []),
      ];
    }),
  );
}
