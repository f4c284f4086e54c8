/** What the plan's own pain rule says to what was felt: ease, stop or call. It never asks for more. */
import { strictestAfter } from "./general-rule.ts";
import type { PainLimits } from "./limits.ts";

/** How serious it is: do less, stop this exercise, or call the clinic. */
export type AdviceLevel = "ease" | "stop" | "call";

export interface Advice<One> {
  readonly level: AdviceLevel;
  /** What was over its limit; `mornings`: the next morning, two times running. */
  readonly over: "during" | "after" | "morning" | "mornings";
  /** The exercise whose limits say so. */
  readonly by: One;
}

/** An exercise of a session, with its limits. */
interface Limited {
  readonly card: string;
  readonly pain: PainLimits;
}

/** What a client felt in one session and after it. Pain on the 0 to 10 scale, decimals too. */
export interface Felt {
  readonly done: "yes" | "part" | "no";
  readonly exercises: readonly { readonly card: string; readonly pain: number | undefined }[];
  readonly painAfter: number | undefined;
  readonly painMorning: number | undefined;
  /** Whether the next morning was worse than usual; undefined where that was not answered. */
  readonly worseMorning: boolean | undefined;
}

/** What was felt on a day, and the exercises of that session as planned. */
export interface FeltSession<One> {
  /** The day on which it was done, YYYY-MM-DD. */
  readonly day: string;
  readonly felt: Felt;
  /** None where the session is no longer planned. */
  readonly bouts: readonly One[];
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
 * The next morning: worse than usual, or over the limit, asks for less (Silbernagel et al. 2007, Am J
 * Sports Med 35:897: pain has settled by then); two mornings running, for a call (common practice).
 * `diary` are the plan's sessions in the order of the plan. Days without a session that was tried, and
 * mornings that were not written down, do not come between two bad mornings.
 */
export function adviceMorning<One extends Limited>(
  session: FeltSession<One>,
  diary: readonly FeltSession<One>[],
): Advice<One> | undefined {
  const by = strictestAfter(session.bouts);
  if (by === undefined || !badMorning(session.felt, by.pain)) return undefined;
  const before = tried(diary)
    .filter(({ day, felt }) => day < session.day && hasMorning(felt))
    .at(-1);
  const limits = strictestAfter(before?.bouts ?? [])?.pain ?? by.pain;
  return before && badMorning(before.felt, limits)
    ? { level: "call", over: "mornings", by }
    : { level: "ease", over: "morning", by };
}

/** What still holds from the last session that was tried, when the next one begins. */
export function adviceFromLast<One extends Limited>(
  diary: readonly FeltSession<One>[],
): Advice<One> | undefined {
  const last = tried(diary).at(-1);
  if (last === undefined) return undefined;
  const { felt, bouts } = last;
  const morning = adviceMorning(last, diary);
  if (morning) return morning;
  const after = felt.painAfter === undefined ? undefined : adviceAfter(felt.painAfter, bouts);
  if (after) return after;
  const by = bouts.find((bout) =>
    felt.exercises.some(
      ({ card, pain }) => card === bout.card && pain !== undefined && pain > bout.pain.during,
    ),
  );
  return by && { level: "ease", over: "during", by };
}

/** The sessions of which any was done, or given up for its pain, by the day; of a day, as given. */
function tried<One>(diary: readonly FeltSession<One>[]): FeltSession<One>[] {
  return diary
    .filter(
      ({ felt: { done, exercises } }) =>
        done !== "no" || exercises.some(({ pain }) => pain !== undefined),
    )
    .sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0));
}

const hasMorning = ({ painMorning, worseMorning }: Felt): boolean =>
  painMorning !== undefined || worseMorning !== undefined;

/**
 * Worse than usual, or a number over the limit. Where no pain is allowed, the rule is "no more than
 * before": then a number that is the client's usual is not over it.
 */
function badMorning({ painMorning, worseMorning }: Felt, { after }: PainLimits): boolean {
  if (worseMorning === true) return true;
  if (painMorning === undefined || (after === 0 && worseMorning === false)) return false;
  return painMorning > after;
}
