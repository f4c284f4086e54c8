/** Reads what `plan --json` prints. */

import { addDays, daysBetween } from "../calendar-days.ts";
import { collector, type Fact, type Say, type Surface } from "../facts.ts";
import { cardIn } from "../shipped.ts";
import type { Context } from "./context.ts";
import { DOSE_KINDS, doseFacts, NONE, saidByNumbers, weekKey } from "./dose-facts.ts";
import { gateFact } from "./gates.ts";
import { plainNumber, spanText } from "./numbers.ts";
import { type SpeedJson, speedOf } from "./speed-json.ts";

type Amount = number | readonly [number, number];

interface BoutJson extends SpeedJson {
  /** Phase and card. */
  readonly key: string;
  readonly card: string;
  readonly phase: string;
  readonly side: string;
  readonly start_when: string | null;
  readonly ask_first: boolean;
  readonly after_review: boolean;
  readonly sets: number;
  readonly reps: Amount | null;
  readonly reps_by_set: readonly Amount[] | null;
  readonly hold_s: number | null;
  readonly time_s: number | null;
  readonly distance_m: number | null;
  readonly tempo: string | null;
  readonly rest_s: number | null;
  readonly rest_reps_s: number | null;
  readonly turns: {
    readonly work_s: number;
    readonly easy_s: number;
    readonly times: number;
  } | null;
  readonly pain: { readonly during: number; readonly after: number };
  readonly load: number | null;
  readonly load_unit: string | null;
  readonly load_kg: number | null;
  readonly load_kind: string;
  readonly band_level: number | null;
  readonly effort: number | null;
}

interface SessionJson {
  readonly date: string;
  readonly starts: string;
  readonly part: string;
  readonly minutes: number;
  readonly bouts: readonly BoutJson[];
}

interface FrequencyJson {
  readonly per_week: number | null;
  readonly per_day: number | null;
  readonly every_days: number | null;
  readonly sessions: number;
  readonly instead: readonly [number, number] | null;
}

interface PlanJson {
  readonly plan: string;
  readonly protocol: string;
  readonly client: string;
  readonly signed: boolean;
  readonly starts: string;
  readonly pain_call: number;
  readonly statement: {
    readonly client: { readonly name: string };
  };
  readonly weeks: readonly {
    readonly week: number;
    readonly from: string;
    readonly phases: readonly string[];
    readonly sessions: readonly SessionJson[];
    readonly frequency: Readonly<Record<string, FrequencyJson>>;
    readonly totals: { readonly sessions: number; readonly minutes: number };
  }[];
}

export function readPlanJson(text: string, context: Context): Surface {
  const json = JSON.parse(text) as PlanJson;
  const { facts, say } = collector();
  say("pain to call from", "", plainNumber(json.pain_call), "pain_call");
  say("plan", "id", json.plan, "plan");
  say("client", "reference", json.client, "client");
  say("client", "name", json.statement.client.name, "statement.client.name");
  say("signed", "", json.signed ? "signed" : "draft", "signed");
  const { weeks } = json;
  const last = weeks.at(-1);
  say("course", "first day", json.starts, "starts");
  if (last) say("course", "last day", addDays(last.from, 6), `weeks[${weeks.length - 1}].from`);
  say("course", "weeks", String(weeks.length), "weeks");
  const times = new Map<string, string[]>();
  const lastWeeks = new Map<string, number>();
  weeks.forEach((week, at) => {
    const here = `weeks[${at}]`;
    const key = `week ${week.week}`;
    say("week dates", key, `${week.from} to ${addDays(week.from, 6)}`, `${here}.from`);
    say(
      "week phases",
      key,
      week.phases.map((id) => phaseTitle(id, context)).join(", ") || NONE,
      `${here}.phases`,
    );
    say("week sessions", key, String(week.totals.sessions), `${here}.totals.sessions`);
    if (week.sessions.length > 0)
      say(
        "lengths in the week",
        key,
        spanText(week.sessions.map(({ minutes }) => minutes)),
        `${here}.sessions`,
      );
    // a card can stand in two phases of one week, each with how often of its own
    const counts = new Map(Object.keys(week.frequency).map((entry) => [entry, 0]));
    week.sessions.forEach((session, n) => {
      const place = `${here}.sessions[${n}]`;
      const when = `${session.date} ${session.part}`;
      say("session", when, "yes", place);
      say("minutes", when, String(session.minutes), `${place}.minutes`);
      say("start", when, session.starts, `${place}.starts`);
      const titles = session.bouts.map(({ card }) => context.titleOf(card));
      say("exercises", when, [...titles].sort().join(", "), `${place}.bouts`);
      for (const title of new Set(titles))
        times.set(title, [...(times.get(title) ?? []), session.date]);
      for (const entry of new Set(session.bouts.map((bout) => bout.key)))
        counts.set(entry, (counts.get(entry) ?? 0) + 1);
      for (const [b, bout] of session.bouts.entries()) {
        facts.push(...boutFacts(bout, week.week, `${place}.bouts[${b}]`, context));
      }
    });
    for (const [entry, count] of counts) {
      const title = context.titleOf(cardOf(entry));
      if (count > 0) lastWeeks.set(title, week.week);
      say("times in the week", weekKey(week.week, title), String(count), `${here}.sessions`);
    }
  });
  weeks.forEach((week, at) => {
    for (const [key, frequency] of Object.entries(week.frequency)) {
      const card = cardOf(key);
      const title = context.titleOf(card);
      const place = `weeks[${at}].frequency`;
      if (frequency.sessions > 0)
        say("often", weekKey(week.week, title), oftenText(frequency), place);
      const n = frequency.every_days;
      if (n === null || frequency.instead !== null) continue;
      const goesOn = Object.entries(weeks[at - 1]?.frequency ?? {}).some(
        ([other, { every_days }]) => cardOf(other) === card && every_days === n,
      );
      const holds = isEvery(n, times.get(title) ?? [], week.from, goesOn);
      say(
        "days from one to the next",
        weekKey(week.week, title),
        holds ? String(n) : `not every ${n}`,
        "weeks[].sessions[].date",
      );
    }
  });
  for (const [title, week] of lastWeeks)
    say("last week of an exercise", title, String(week), "weeks[].sessions[].bouts[].card");
  loadFacts(json, context, say);
  phaseFacts(json, context, say);
  return {
    name: "JSON",
    facts,
    complete: new Set([
      ...DOSE_KINDS,
      "starts when",
      "session",
      "minutes",
      "exercises",
      "week dates",
      "week sessions",
      "often",
      "times in the week",
      "first and last load",
    ]),
  };
}

const cardOf = (key: string): string => key.slice(key.lastIndexOf("/") + 1);

/** As words say it: "3 a week", "every 2", "every 2, 3 to 4 when free". */
function oftenText({ per_week, per_day, every_days, instead }: FrequencyJson): string {
  if (per_week !== null) return `${instead?.[1] ?? per_week} a week`;
  const often = per_day === null ? `every ${every_days}` : `${per_day} a day`;
  return instead === null ? often : `${often}, ${spanText(instead)} when free`;
}

/** Whether all that falls due in the week of `from` is done on its day, n days after the last. */
function isEvery(n: number, dates: readonly string[], from: string, goesOn: boolean): boolean {
  const isIn = (date: string) => date >= from && date <= addDays(from, 6);
  const days = [...new Set(dates)];
  const last = days.filter((date) => date < from).at(-1);
  const known = [...(goesOn && last !== undefined ? [last] : []), ...days.filter(isIn)];
  const isDue = known
    .map((date) => addDays(date, n))
    .filter(isIn)
    .every((date) => days.includes(date));
  const isOnTime = known.slice(1).every((date, at) => {
    const gap = daysBetween(known[at] ?? date, date);
    return gap === n || (gap > n && addDays(known[at] ?? date, n) < from);
  });
  return isDue && isOnTime;
}

/** How long the sessions take that hold an exercise of a phase, and its weeks. */
function phaseFacts(json: PlanJson, context: Context, say: Say): void {
  const sessions = json.weeks.flatMap((week) => week.sessions);
  for (const { id, title } of context.protocol.phases) {
    const here = sessions.filter(({ bouts }) => bouts.some(({ phase }) => phase === id));
    if (here.length > 0)
      say(
        "phase lengths",
        title,
        spanText(here.map(({ minutes }) => minutes)),
        "weeks[].sessions[].minutes",
      );
    const weeks = json.weeks.filter(({ phases }) => phases.includes(id)).map(({ week }) => week);
    if (weeks.length > 0)
      say("phase weeks", title, `${Math.min(...weeks)} to ${Math.max(...weeks)}`, "weeks[].phases");
  }
}

/** The first and the last load of each exercise whose load changes. */
function loadFacts({ weeks }: PlanJson, { titleOf }: Context, say: Say): void {
  const loads = new Map<string, number[]>();
  for (const { sessions } of weeks) {
    const here = new Map(
      sessions
        .flatMap(({ bouts }) => bouts)
        .flatMap(({ card, load }) => (load === null ? [] : [[card, load] as const])),
    );
    for (const [card, kg] of here) loads.set(card, [...(loads.get(card) ?? []), kg]);
  }
  for (const [card, all] of loads) {
    if (new Set(all).size < 2) continue;
    say(
      "first and last load",
      titleOf(card),
      `${plainNumber(all[0] ?? 0)} to ${plainNumber(all.at(-1) ?? 0)}`,
      "weeks[].sessions[].bouts[].load",
    );
  }
}

function phaseTitle(id: string, { protocol }: Context): string {
  const phase = protocol.phases.find((one) => one.id === id);
  if (!phase) throw new Error(`the protocol has no phase ${id}`);
  return phase.title;
}

function boutFacts(bout: BoutJson, week: number, place: string, context: Context): Fact[] {
  const key = weekKey(week, context.titleOf(bout.card));
  const pair = (amount: Amount) =>
    typeof amount === "number" ? ([amount, amount] as const) : amount;
  const reps = bout.reps_by_set ?? (bout.reps === null ? undefined : [bout.reps]);
  const numbers = {
    sets: bout.sets,
    reps: reps?.map(pair),
    holdS: bout.hold_s ?? undefined,
    timeS: bout.time_s ?? undefined,
    distanceM: bout.distance_m ?? undefined,
    turns: bout.turns
      ? { work: bout.turns.work_s, easy: bout.turns.easy_s, times: bout.turns.times }
      : undefined,
    tempo: bout.tempo ?? undefined,
    restS: bout.rest_s ?? undefined,
    restRepsS: bout.rest_reps_s ?? undefined,
    effort: bout.effort ?? undefined,
  };
  const said = saidByNumbers(numbers, cardIn(bout.card, context.language));
  const stated = doseFacts(key, { ...said, load: loadOf(bout) }, place);
  const title = context.titleOf(bout.card);
  const pain = (most: number) => (most === 0 ? "free" : plainNumber(most));
  return [
    ...stated,
    { kind: "side", key, value: bout.side, place },
    gateFact(key, signOf(bout, context), `${place}.start_when`),
    { kind: "pain during", key: title, value: pain(bout.pain.during), place },
    { kind: "pain after", key: title, value: pain(bout.pain.after), place },
  ];
}

/** The sign that a bout waits for, and the clinician's word after it where it waits for that. */
function signOf(
  { start_when, ask_first, after_review }: BoutJson,
  { label }: Context,
): string | null {
  if (!ask_first && !after_review) return start_when;
  return [...(start_when === null ? [] : [start_when]), label("start_review")].join(" ");
}

function loadOf(bout: BoutJson): string {
  const { load_kind, load, load_unit, band_level } = bout;
  switch (load_kind) {
    case "none":
    case "body":
      return NONE;
    case "weight":
      return load === null ? "by feel" : load === 0 ? NONE : `${load_unit} ${plainNumber(load)}`;
    case "band":
      return band_level === null ? "by feel" : `band ${band_level}`;
    case "speed":
      return speedOf(bout);
    default:
      throw new Error(`no rule reads the load kind ${load_kind}`);
  }
}
