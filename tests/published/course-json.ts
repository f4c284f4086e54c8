/** A course as it is given out: `plan --json` read back from its text, and the text of its printed pages. */
import { join } from "node:path";
import { type MadeProgram, makeBooklet } from "../../src/booklet.ts";
import { loadAssets } from "../../src/html/assets.ts";
import { renderHtml } from "../../src/html/html.ts";
import { type PlanJson, planJson } from "../../src/plan-text/json.ts";
import { dayNumber } from "../../src/units/dates.ts";
import { asSigned } from "../support/signed.ts";
import { DAY, demoClinic, english, ROOT } from "../support/world.ts";

export type JsonSession = PlanJson["weeks"][number]["sessions"][number];
export type JsonBout = JsonSession["bouts"][number];

const read = new WeakMap<MadeProgram, PlanJson>();

/** The course's JSON, as another program would read it. */
export function jsonOf(made: MadeProgram): PlanJson {
  const known = read.get(made);
  if (known) return known;
  const json: PlanJson = JSON.parse(JSON.stringify(planJson(made, [])));
  read.set(made, json);
  return json;
}

/** All sessions on the calendar, in order. */
export const sessionsOf = (made: MadeProgram): JsonSession[] =>
  jsonOf(made).weeks.flatMap(({ sessions }) => sessions);

const holds = ({ bouts }: JsonSession, card: string) => bouts.some((bout) => bout.card === card);

/** Sessions on the calendar that hold a card, week by week. */
export const countsOf = (made: MadeProgram, card: string): number[] =>
  jsonOf(made).weeks.map(({ sessions }) => sessions.filter((one) => holds(one, card)).length);

/** Days of the course, from 0, on which the calendar has a card; twice where it is done twice. */
export function daysOf(made: MadeProgram, card: string): number[] {
  const first = dayNumber(jsonOf(made).starts);
  return sessionsOf(made)
    .filter((session) => holds(session, card))
    .map(({ date }) => dayNumber(date) - first);
}

/** The bout of a card in a week of the course; throws where its sessions do not agree on it. */
export function boutOf(made: MadeProgram, week: number, card: string): JsonBout {
  const bouts = (jsonOf(made).weeks[week - 1]?.sessions ?? [])
    .flatMap((session) => session.bouts)
    .filter((bout) => bout.card === card);
  const [bout] = bouts;
  if (!bout || new Set(bouts.map((one) => JSON.stringify(one))).size !== 1) {
    throw new Error(`${card}: not one dose in week ${week}`);
  }
  return bout;
}

/** What the load of a card is aimed at in a week, as its provenance says: "15 RM", "2 in reserve". */
export function aimOf(made: MadeProgram, week: number, card: string): string | undefined {
  const { key } = boutOf(made, week, card);
  const steps = jsonOf(made).weeks[week - 1]?.trails[key]?.load_kg ?? [];
  const target = steps.find(({ step }) => step === "target")?.says;
  if (target !== undefined) return /^(.+?) is /.exec(target)?.[1];
  const [, more] = /could do (\d+) more repetitions/.exec(steps.at(-1)?.says ?? "") ?? [];
  return more === undefined ? undefined : `${more} in reserve`;
}

/** The most pain that any exercise of the course allows while it is done. */
export const mostPain = (made: MadeProgram): number =>
  Math.max(...sessionsOf(made).flatMap(({ bouts }) => bouts.map(({ pain }) => pain?.during ?? 10)));

/** Seconds from the beginning of a session's first exercise to the end of its last, `between` seconds apart. */
export const clockOf = ({ bouts }: JsonSession, between: number): number =>
  bouts.reduce((sum, { clock_s }) => sum + clock_s, 0) + between * (bouts.length - 1);

/** Cards of a week, as its sessions name them first. */
export const cardsOf = (made: MadeProgram, week: number): string[] => [
  ...new Set(
    (jsonOf(made).weeks[week - 1]?.sessions ?? []).flatMap(({ bouts }) =>
      bouts.map(({ card }) => card),
    ),
  ),
];

type Reps = number | readonly number[];

/** Repetitions set by set; a number, or low and high. */
const setsOf = ({ sets, reps, reps_by_set: list }: JsonBout): readonly Reps[] =>
  list ?? (reps === null ? [] : Array(sets).fill(reps));

const low = (reps: Reps): number => (typeof reps === "number" ? reps : (reps[0] ?? 0));
const high = (reps: Reps): number => (typeof reps === "number" ? reps : (reps[1] ?? 0));

/** Repetitions set by set, as a table prints them: "3 × 6-8"; "12, 10, 8" where sets differ. */
export function sayWork(bout: JsonBout): string {
  const each = setsOf(bout).map((reps) =>
    low(reps) === high(reps) ? `${low(reps)}` : `${low(reps)}-${high(reps)}`,
  );
  if (each.length !== bout.sets) throw new Error(`${each.length} entries for ${bout.sets} sets`);
  return new Set(each).size === 1 ? `${bout.sets} × ${each[0]}` : each.join(", ");
}

/** Repetitions of one side, with the low and with the high ends of ranges. */
export function repsOf(bout: JsonBout): { readonly low: number; readonly high: number } {
  const sum = (end: (reps: Reps) => number) =>
    setsOf(bout).reduce((all: number, reps) => all + end(reps), 0);
  return { low: sum(low), high: sum(high) };
}

/** Repetitions of one side in these sessions. */
export function repsIn(sessions: readonly JsonSession[], leaveOut: readonly string[] = []) {
  const sums = sessions
    .flatMap(({ bouts }) => bouts)
    .filter(({ card }) => !leaveOut.includes(card))
    .map(repsOf);
  const total = (end: "low" | "high") => sums.reduce((all, one) => all + one[end], 0);
  return { low: total("low"), high: total("high") };
}

const assets = await loadAssets(join(ROOT, "templates"), english());

/** The text of the booklet's pages, without its marks; runs of white space are one space. */
export function printedText(made: MadeProgram): string {
  const html = renderHtml(makeBooklet(asSigned(made), demoClinic(), english(), DAY), assets);
  const [, body = ""] = /<body[^>]*>([\s\S]*)<\/body>/.exec(html) ?? [];
  return body
    .replace(/<(svg|style|script)\b[\s\S]*?<\/\1>/g, " ")
    .replace(/<[^>]*>/g, " ")
    .replaceAll("&nbsp;", " ")
    .replace(/\s+/g, " ");
}
