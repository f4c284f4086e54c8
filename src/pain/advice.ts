/** What the plan's own pain rule says to what was felt: ease, stop or call. It never asks for more. */
import { type FeltDay, type FeltSession, feltDays, type Limited } from "./felt.ts";
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

/**
 * Pain while an exercise is done: over its limit, stop it. From `callLevel` on, or where it came suddenly,
 * call as well (common practice).
 */
export function adviceDuring<One extends Pick<Limited, "pain">>(
  pain: number | undefined,
  bout: One,
  callLevel: number,
  sudden = false,
): Advice<One> | undefined {
  if (sudden || (pain ?? 0) >= callLevel) return { level: "call", over: "during", by: bout };
  return pain !== undefined && isOver(pain, bout)
    ? { level: "stop", over: "during", by: bout }
    : undefined;
}

/** Whether pain while an exercise is done is over its limit: at the limit it is all right. */
export const isOver = (pain: number, bout: Pick<Limited, "pain">): boolean =>
  pain > bout.pain.during;

/** Pain in the hours after a session, against the strictest of its exercises; from `callLevel` on, call. */
export function adviceAfter<One extends Limited>(
  pain: number,
  bouts: readonly One[],
  callLevel: number,
): Advice<One> | undefined {
  const by = strictestAfter(bouts);
  if (by === undefined) return undefined;
  if (pain >= callLevel) return { level: "call", over: "after", by };
  return pain > by.pain.after ? { level: "ease", over: "after", by } : undefined;
}

/**
 * The morning after a day with sessions: worse than usual, or over the limit, asks for less (Silbernagel
 * et al. 2007, Am J Sports Med 35:897: pain has settled by then); two such mornings running, or pain from
 * `callLevel` on, for a call (common practice). The rule goes by days: the sessions of a day share their
 * next morning, against the strictest of all their exercises. Days on which nothing was done, and mornings
 * that were not written down, do not come between two bad ones.
 */
export function adviceMorning<One extends Limited>(
  day: string,
  diary: readonly FeltSession<One>[],
  callLevel: number,
): Advice<One> | undefined {
  const days = feltDays(diary);
  const now = days.find((one) => one.day === day);
  const by = strictestAfter(now?.bouts ?? []);
  if (now === undefined || by === undefined) return undefined;
  if (now.sessions.some(({ felt }) => (felt.painMorning ?? 0) >= callLevel))
    return { level: "call", over: "morning", by };
  if (!wasBad(now, by.pain)) return undefined;
  const before = days.filter((one) => one.day < day && isDayAnswered(one)).at(-1);
  const limits = strictestAfter(before?.bouts ?? [])?.pain ?? by.pain;
  return before && wasBad(before, limits)
    ? { level: "call", over: "mornings", by }
    : { level: "ease", over: "morning", by };
}

/**
 * What still holds from the last day on which a session was tried, when the next one begins: a call before
 * all else, then the next morning, the hours after, the exercise.
 */
export function adviceFromLast<One extends Limited>(
  diary: readonly FeltSession<One>[],
  callLevel: number,
): Advice<One> | undefined {
  const last = feltDays(diary).at(-1);
  return last && adviceOfDay(last, diary, callLevel);
}

/** What holds from one day; `diary` holds the days before it too. */
export function adviceOfDay<One extends Limited>(
  { day, sessions }: FeltDay<One>,
  diary: readonly FeltSession<One>[],
  callLevel: number,
): Advice<One> | undefined {
  const all = [
    adviceMorning(day, diary, callLevel),
    ...sessions.map(({ felt: { painAfter }, bouts }) =>
      painAfter === undefined ? undefined : adviceAfter(painAfter, bouts, callLevel),
    ),
    ...sessions.flatMap(({ felt, bouts }) =>
      felt.exercises.map(({ card, pain, sudden }) => {
        // one whose limits are not known any more is held against the strictest there is
        const bout = bouts.find((one) => one.card === card) ?? strictestAfter(bouts);
        return bout && adviceDuring(pain, bout, callLevel, sudden);
      }),
    ),
  ].filter((advice) => advice !== undefined);
  const [first] = all;
  const advice = all.find(({ level }) => level === "call") ?? first;
  // an exercise that was stopped is over: what is left of it is to do less next time
  return advice?.level === "stop" ? { ...advice, level: "ease" } : advice;
}
