/** Whether every number on a phase's page is what the calendar adds up to. */
import { addDays } from "../surfaces/calendar-days.ts";
import { collector, compare, disagreementText, type Fact } from "../surfaces/facts.ts";
import { type Context, contextOf } from "../surfaces/read/context.ts";
import { DOSE_KINDS } from "../surfaces/read/dose-facts.ts";
import { type PhaseTables, readPhasePage } from "../surfaces/read/phase-page.ts";
import { readPlanJson } from "../surfaces/read/plan-json.ts";
import type { Section } from "../surfaces/read/sections.ts";
import { wholeCard } from "./library.ts";
import type { Known } from "./names.ts";
import type { PrintedBout, PrintedPlan } from "./printed.ts";
import { signsOf, WORD } from "./signs.ts";

/** Kinds of which a phase's page states every fact there is. */
const WHOLE: readonly string[] = [...DOSE_KINDS, "often", "starts when", "phase weeks"];

/** Kinds that only the phase's page states, or that the calendar says nothing of. */
const OTHERS = new Set(["move on", "go back", "phase first day", "phase last day"]);

export function wrongNumbers(
  known: Known,
  sections: readonly Section[],
  text: string,
  json: PrintedPlan,
): string[] {
  const { plan, course } = known;
  const context = contextOf({ clinic: { language: "en" }, plan, protocol: course });
  const { facts, say } = collector();
  const tables: PhaseTables = new Map();
  for (const section of sections) {
    const phase = course.phases.find(({ title }) => isPageOf(section.title, title, context));
    if (phase) readPhasePage(section, phase.title, tables, facts, say, context);
  }
  const kinds = new Set(facts.map(({ kind }) => kind).filter((kind) => !OTHERS.has(kind)));
  const pages = {
    name: "phase pages",
    facts: facts.filter(({ kind }) => kinds.has(kind)),
    complete: new Set(WHOLE.filter((kind) => kinds.has(kind))),
  };
  const calendar = readPlanJson(text, context);
  const { disagreements } = compare([
    pages,
    {
      ...calendar,
      facts: calendar.facts.filter(({ kind }) => kinds.has(kind)),
      complete: pages.complete,
    },
  ]);
  return [
    ...disagreements.map(disagreementText),
    ...wrongDays(facts, spansOf(course, json)),
    ...wrongRanges(facts, json),
    ...wrongSigns(known, facts, json),
  ];
}

/** Signs that a phase's page or the JSON gives, and that are not this client's, or the other way. */
function wrongSigns(known: Known, facts: readonly Fact[], { weeks }: PrintedPlan): string[] {
  const bouts = weeks.flatMap(({ sessions }) => sessions.flatMap((session) => session.bouts));
  return [...signsOf(known)].flatMap(([id, { moveOn, begin }]) => {
    const title = known.course.phases.find((phase) => phase.id === id)?.title;
    const said = facts
      .filter(({ kind, key }) => kind === "move on" && key.startsWith(`${title} · `))
      .map(({ key }) => key.slice(`${title} · `.length));
    const wrong = bouts.filter(
      (bout) => bout.phase === id && signOfBout(bout) !== begin.get(bout.card),
    );
    return [
      ...(said.join(" | ") === moveOn.join(" | ")
        ? []
        : [`${id}: move on when ${said.join(" | ")}, not ${moveOn.join(" | ")}`]),
      ...new Set(
        wrong.map(
          (bout) => `${bout.key} begins when ${signOfBout(bout)}, not ${begin.get(bout.card)}`,
        ),
      ),
    ];
  });
}

function signOfBout({ start_when, ask_first, after_review }: PrintedBout): string | undefined {
  const all = [
    ...(start_when === null ? [] : [start_when]),
    ...(ask_first || after_review ? [WORD] : []),
  ];
  return all.length === 0 ? undefined : all.join(" ");
}

/** "3 or 4 times a week": so it is in every week of which it is said. */
function wrongRanges(facts: readonly Fact[], { weeks }: PrintedPlan): string[] {
  return facts.flatMap(({ kind, key, value }) => {
    const [, low, high] = /, (\d+) to (\d+) when free$/.exec(value) ?? [];
    const [, number, title] = /^week (\d+) · (.*)$/.exec(key) ?? [];
    if (kind !== "often" || low === undefined || high === undefined) return [];
    const bouts = (weeks[Number(number) - 1]?.sessions ?? []).flatMap((session) => session.bouts);
    const times = bouts.filter(({ card }) => wholeCard(card).title === title).length;
    return times >= Number(low) && times <= Number(high)
      ? []
      : [`${key}: ${value}, and ${times} on the calendar`];
  });
}

const isPageOf = (page: string, title: string, { filled }: Context): boolean => {
  if (page === title) return true;
  const head = page.slice(0, Math.max(0, page.length - title.length - 2));
  return page.endsWith(`: ${title}`) && filled("phase.label", head) !== undefined;
};

/** First and last day of each phase's weeks. */
const spansOf = ({ phases }: Known["course"], { weeks }: PrintedPlan) =>
  new Map(
    phases.flatMap(({ id, title }) => {
      const here = weeks.filter((week) => week.phases.includes(id));
      const [first, last] = [here[0], here.at(-1)];
      return first && last
        ? [[title, { from: first.from, to: addDays(last.from, 6) }] as const]
        : [];
    }),
  );

function wrongDays(facts: readonly Fact[], spans: ReturnType<typeof spansOf>): string[] {
  return facts.flatMap(({ kind, key, value }) => {
    const side = kind === "phase first day" ? "from" : kind === "phase last day" ? "to" : undefined;
    const day = side && spans.get(key)?.[side];
    return day === undefined || day === value ? [] : [`${kind} of ${key}: ${value}, not ${day}`];
  });
}
