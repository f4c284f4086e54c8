/** What the plan's own pain rule says to what was felt: ease, stop or call. It never asks for more. */
import { type Felt, type FeltSession, feltDays, type Limited } from "./felt.ts";
import { strictestAfter } from "./general-rule.ts";
import { isDayAnswered, wasBad } from "./morning.ts";

/** How serious it is: do less, stop this exercise, or call the clinic. */
export type AdviceLevel = "ease" | "stop" | "call";

export interface Advice<One> {
  readonly level: AdviceLevel;
  /** What was over its limit; `mornings`: the next morning, two times running. */
  readonly over: "during" | "after" | "morning" | "mornings";
  /** The exercise whose limits say so. */
  readonly by: One;
}

/** Pain while an exercise is done: over its limit, stop it. */
export function adviceDuring<One extends Pick<Limited, "pain">>(
  pain: number,
  bout: One,
): Advice<One> | undefined {
  return pain > bout.pain.during ? { level: "stop", over: "during", by: bout } : undefined;
}

/** Pain in the hours after a session, against the strictest of its exercises. */
export function adviceAfter<One extends Limited>(
  pain: number,
  bouts: readonly One[],
): Advice<One> | undefined {
  const by = strictestAfter(bouts);
  return by && pain > by.pain.after ? { level: "ease", over: "after", by } : undefined;
}

/**
 * The morning after a day with sessions: worse than usual, or over the limit, asks for less (Silbernagel
 * et al. 2007, Am J Sports Med 35:897: pain has settled by then); two such mornings running, for a call
 * (common practice). The rule goes by days: the sessions of a day share their next morning, against the
 * strictest of all their exercises. Days on which nothing was done, and mornings that were not written
 * down, do not come between two bad ones.
 */
export function adviceMorning<One extends Limited>(
  day: string,
  diary: readonly FeltSession<One>[],
): Advice<One> | undefined {
  const days = feltDays(diary);
  const now = days.find((one) => one.day === day);
  const by = strictestAfter(now?.bouts ?? []);
  if (now === undefined || by === undefined || !wasBad(now, by.pain)) return undefined;
  const before = days.filter((one) => one.day < day && isDayAnswered(one)).at(-1);
  const limits = strictestAfter(before?.bouts ?? [])?.pain ?? by.pain;
  return before && wasBad(before, limits)
    ? { level: "call", over: "mornings", by }
    : { level: "ease", over: "morning", by };
}

/** What still holds from the last day on which a session was tried, when the next one begins. */
export function adviceFromLast<One extends Limited>(
  diary: readonly FeltSession<One>[],
): Advice<One> | undefined {
  const last = feltDays(diary).at(-1);
  if (last === undefined) return undefined;
  const morning = adviceMorning(last.day, diary);
  if (morning) return morning;
  for (const { felt, bouts } of last.sessions) {
    const after = felt.painAfter === undefined ? undefined : adviceAfter(felt.painAfter, bouts);
    if (after) return after;
  }
  const by = last.sessions.flatMap(({ felt, bouts }) => overDuring(felt, bouts)).at(0);
  return by && { level: "ease", over: "during", by };
}

const overDuring = <One extends Limited>({ exercises }: Felt, bouts: readonly One[]): One[] =>
  bouts.filter((bout) =>
    exercises.some(
      ({ card, pain }) =>
        card === bout.card && pain !== undefined && adviceDuring(pain, bout) !== undefined,
    ),
  );
