/** How often each exercise is done in each week of the calendar: what every page, the terminal and the JSON say of it. */
import type { Bout, DosedProgram, Frequency, Range } from "../dose/types.ts";
import type { Schedule } from "./schedule.ts";

export interface HowOften {
  /** As it is stated. */
  readonly frequency: Frequency;
  /** Sessions of the week as laid out. */
  readonly sessions: number;
  /**
   * Sessions a week to say, where the calendar does not hold the frequency: days taken let it wait or
   * lost it a session, or the week stays as it was issued. Undefined where it holds.
   */
  readonly instead: Range | undefined;
}

/** Looks a bout of the program up. */
export type OftenOf = (bout: Bout) => HowOften;

/** One exercise in weeks one after the other, from one phase to the next, with the same frequency. */
interface Run {
  readonly frequency: Frequency;
  readonly bouts: readonly Bout[];
}

/**
 * What there is to say of every bout of a program on its calendar. Of what is done every so many days
 * a run of weeks in which it waits again and again is said as one, "3 or 4 times a week", where no
 * week has more or less.
 */
export function howOften(dosed: DosedProgram, schedule: Schedule): OftenOf {
  const days = daysByKey(schedule);
  const said = new Map<Bout, HowOften>();
  for (const run of runsOf(dosed)) {
    const own = run.bouts.flatMap(({ key, week }) =>
      (days.get(key) ?? []).filter((day) => weekOf(day) === week),
    );
    for (const [bout, often] of inRun(run, own)) said.set(bout, often);
  }
  return (bout) => {
    const often = said.get(bout);
    if (often === undefined) throw new Error(`${bout.key} is not in week ${bout.week}.`);
    return often;
  };
}

/** By exercise, the days of the program on which it is laid out, from 0; one entry a session. */
function daysByKey({ weeks }: Schedule): Map<string, number[]> {
  const days = new Map<string, number[]>();
  const all = weeks.flatMap((week) => week.days);
  for (const [day, { sessions }] of all.entries()) {
    for (const { key } of sessions.flatMap(({ bouts }) => bouts)) {
      days.set(key, [...(days.get(key) ?? []), day]);
    }
  }
  return days;
}

function runsOf({ weeks }: DosedProgram): Run[] {
  const runs: { frequency: Frequency; bouts: Bout[] }[] = [];
  for (const { bouts } of weeks) {
    const moved: Bout[] = [];
    for (const bout of bouts) {
      const stays = runs.find((run) => goesOn(run, bout) && run.bouts.at(-1)?.key === bout.key);
      if (stays) stays.bouts.push(bout);
      else moved.push(bout);
    }
    for (const bout of moved) {
      const before = runs.find((run) => goesOn(run, bout));
      if (before) before.bouts.push(bout);
      else runs.push({ frequency: bout.frequency, bouts: [bout] });
    }
  }
  return runs;
}

/** Whether a bout is the next week of a run: of the same card on the same side, as often. */
function goesOn({ frequency, bouts }: Run, bout: Bout): boolean {
  const last = bouts.at(-1);
  return (
    last?.week === bout.week - 1 &&
    last.card === bout.card &&
    last.side === bout.side &&
    JSON.stringify(frequency) === JSON.stringify(bout.frequency)
  );
}

function inRun({ frequency, bouts }: Run, days: readonly number[]): [Bout, HowOften][] {
  const counted = bouts.map((bout) => {
    const sessions = days.filter((day) => weekOf(day) === bout.week).length;
    return { bout, sessions };
  });
  const broken = brokenWeeks(frequency, counted, days);
  const counts = counted.map(({ sessions }) => sessions);
  const span = { low: Math.min(...counts), high: Math.max(...counts) };
  const asOne =
    "everyDays" in frequency && broken.size > 1 && span.low > 0 && span.high - span.low <= 1;
  return counted.map(({ bout, sessions }): [Bout, HowOften] => {
    const own = broken.has(bout.week) ? { low: sessions, high: sessions } : undefined;
    return [bout, { frequency, sessions, instead: asOne ? span : own }];
  });
}

const weekOf = (day: number): number => Math.floor(day / 7) + 1;

/** The weeks of a run in which the calendar does not hold the frequency. */
function brokenWeeks(
  frequency: Frequency,
  counted: readonly { readonly bout: Bout; readonly sessions: number }[],
  days: readonly number[],
): Set<number> {
  if ("everyDays" in frequency) {
    const weeks = counted.map(({ bout }) => bout.week);
    const first = 7 * ((weeks[0] ?? 1) - 1);
    const end = first + 7 * weeks.length;
    const own = days.filter((day) => day >= first && day < end);
    return new Set(unheldDays(own, frequency.everyDays, first, end).map(weekOf));
  }
  const wanted = "perWeek" in frequency ? frequency.perWeek : 7 * frequency.perDay;
  return new Set(
    counted.filter(({ sessions }) => sessions !== wanted).map(({ bout }) => bout.week),
  );
}

/**
 * Days on which what is done every n days would be due or over-due and is not done, and days on which
 * it comes too early. It may begin on any of the first n days of the run.
 */
function unheldDays(days: readonly number[], n: number, first: number, end: number): number[] {
  const dues = [first + n - 1, ...days.map((day) => day + n)];
  return dues.flatMap((due, at) => {
    const next = days[at] ?? end;
    if (at > 0 && next < due && next < end) return [next];
    return Array.from({ length: Math.max(0, next - due) }, (_, late) => due + late);
  });
}
