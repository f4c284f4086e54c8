/** Writing down: entries of the diary from what was planned and what the client says. */
import type { SessionBout } from "../../compose/session-model.ts";
import {
  type Amount,
  byPlan,
  type Diary,
  type DiaryEntry,
  type DiaryExercise,
  type Done,
  sessionKey,
} from "../../diary/entry.ts";
import { countOf } from "../../prescription/shape.ts";
import type { SessionPlace } from "../store/settings.ts";
import type { PlannedSession } from "./data.ts";

const NO_AMOUNT: Amount = { sets: undefined, reps: undefined, kg: undefined };

/**
 * What the plan asks of a bout, as amounts; of a range, its top. Without repetitions where the sets
 * have different ones: no one number is what was planned. `sets`: fewer on a bad day.
 */
export function plannedAmount(bout: SessionBout, sets = bout.sets): Amount {
  const count = bout.reps && countOf(bout.reps.slice(0, sets));
  const reps =
    count?.kind === "number" ? count.n : count?.kind === "range" ? count.high : undefined;
  return { sets, reps, kg: bout.kg };
}

/** The amounts that a client changes from: those planned, and where sets differ the most repetitions of one. */
export function amountToChange(bout: SessionBout | undefined, { planned }: DiaryExercise): Amount {
  const reps = bout?.reps;
  const most = reps && Math.max(...reps.map(({ high }) => high));
  return { ...planned, reps: planned.reps ?? most };
}

/** The bouts of a session with their sets: all of it, or the short version of a bad day. */
export function boutsOf(
  session: PlannedSession,
  short: boolean,
): readonly { readonly bout: SessionBout; readonly sets: number }[] {
  const { bouts } = session;
  if (!short || session.short === undefined)
    return bouts.map((bout) => ({ bout, sets: bout.sets }));
  const kept = session.short.bouts;
  return bouts.flatMap((bout) => {
    const sets = kept.find(({ key }) => key === bout.key)?.sets;
    return sets === undefined ? [] : [{ bout, sets }];
  });
}

/** An entry with nothing in it yet: no exercise has been done. */
export function emptyEntry(
  session: PlannedSession,
  booklet: string,
  short: boolean,
  written: string,
): DiaryEntry {
  return {
    date: session.date,
    part: session.part,
    week: session.week,
    booklet,
    done: "no",
    doneOn: undefined,
    short,
    effort: undefined,
    painAfter: undefined,
    painMorning: undefined,
    worseMorning: undefined,
    note: "",
    exercises: boutsOf(session, short).map(({ bout, sets }) => ({
      card: bout.card,
      title: bout.title,
      side: bout.side,
      done: "no",
      planned: plannedAmount(bout, sets),
      real: NO_AMOUNT,
      pain: undefined,
    })),
    written,
  };
}

/**
 * The entry to go on with: what is written down already, made to fit where the client has changed
 * between the whole session and its short version, has seen the sign that an exercise waited for, or has
 * a re-issued booklet; else an empty one. What is told of an exercise stays, also where it is not in it.
 */
export function entryFor(
  session: PlannedSession,
  kept: DiaryEntry | undefined,
  booklet: string,
  short: boolean,
): DiaryEntry {
  const empty = emptyEntry(session, booklet, short, kept?.written ?? "");
  const has = (card: string) => kept?.exercises.some((one) => one.card === card);
  if (kept?.short === short && empty.exercises.every(({ card }) => has(card))) return kept;
  if (kept === undefined) return empty;
  const others = kept.exercises.filter(
    (one) => isTold(one) && empty.exercises.every(({ card }) => card !== one.card),
  );
  const here = empty.exercises.map((one) => {
    const { done, real, pain, sudden } =
      kept.exercises.find(({ card }) => card === one.card) ?? one;
    return { ...one, done, real, pain, sudden };
  });
  const exercises = [...here, ...others];
  return { ...kept, short, exercises, done: doneOf(exercises.map(({ done }) => done)) };
}

/** The entry with one exercise changed; what was done of the session follows from its exercises. */
export function withExercise(
  entry: DiaryEntry,
  card: string,
  change: Partial<Pick<DiaryExercise, "done" | "real" | "pain" | "sudden">>,
  today: string,
): DiaryEntry {
  const exercises = entry.exercises.map((one) =>
    one.card === card ? { ...one, ...change, real: realAmount(one, change.real) } : one,
  );
  const done = doneOf(exercises.map((one) => one.done));
  return {
    ...entry,
    exercises,
    done,
    doneOn: done === "no" ? undefined : (entry.doneOn ?? today),
  };
}

/** What a client says in the middle of an exercise that hurts. */
export interface FeltNow {
  readonly pain: number | undefined;
  /** What was felt in it earlier: the most of both is kept. */
  readonly before: number | undefined;
  readonly sudden?: boolean | undefined;
}

/** The entry with what was felt in the middle of an exercise, which was tried then. */
export function withFelt(
  entry: DiaryEntry,
  card: string,
  { pain, before, sudden }: FeltNow,
  today: string,
): DiaryEntry {
  const known = entry.exercises.find((one) => one.card === card);
  const felt = [pain, before].filter((one) => one !== undefined);
  const change = {
    done: known?.done === "yes" ? known.done : ("part" as const),
    pain: felt.length > 0 ? Math.max(...felt) : known?.pain,
    sudden,
  };
  return withExercise(entry, card, change, today);
}

/**
 * The entry with every exercise done as planned, or none. What is told of an exercise already is never
 * replaced by "as planned"; nor is one that was left out, named by its card.
 */
export function withAll(
  entry: DiaryEntry,
  done: "yes" | "no",
  today: string,
  leftOut: readonly string[] = [],
): DiaryEntry {
  const exercises = entry.exercises.map((one) =>
    done === "yes" && (isTold(one) || leftOut.includes(one.card))
      ? one
      : { ...one, done, real: NO_AMOUNT },
  );
  const all = doneOf(exercises.map((one) => one.done));
  return {
    ...entry,
    exercises,
    done: all,
    doneOn: all === "no" ? undefined : (entry.doneOn ?? today),
  };
}

/** Cards of the exercises that the client has gone past in a session, and left out where nothing is told of them. */
export function leftOut(session: PlannedSession, place: SessionPlace | undefined): string[] {
  if (place?.key !== sessionKey(session)) return [];
  const past = place.stage === "after" || place.stage === "end" ? place.at + 1 : place.at;
  return boutsOf(session, place.short)
    .slice(0, past)
    .map(({ bout }) => bout.card);
}

/**
 * The place of a client in a session whose exercises have changed, such as for its short version: at the
 * same exercise, else at the next one that is left; at the end where there is none.
 */
export function placeIn(
  place: SessionPlace,
  before: readonly SessionBout[],
  after: readonly SessionBout[],
): SessionPlace {
  if (place.stage === "end") return place;
  const rest = before.slice(place.at).flatMap(({ key }) => {
    const at = after.findIndex((bout) => bout.key === key);
    return at < 0 ? [] : [{ key, at }];
  });
  const [next] = rest;
  const still = { ...place, pace: undefined, hurts: undefined, unsure: undefined };
  if (next === undefined) return { ...still, stage: "end" };
  const stays = before[place.at]?.key === next.key && place.stage === "after";
  return { ...still, at: next.at, stage: stays ? "after" : "ready" };
}

/** Whether anything is written down of an exercise. */
const isTold = ({ done, pain, sudden, real }: DiaryExercise): boolean =>
  done !== "no" || pain !== undefined || sudden !== undefined || isOther(real);

/** Whether an exercise was not done as planned. */
export const isUnplanned = ({ done, real }: DiaryExercise): boolean =>
  done !== "yes" || isOther(real);

const isOther = ({ sets, reps, kg }: Amount): boolean =>
  [sets, reps, kg].some((amount) => amount !== undefined);

/** Only what differs from the plan is kept. */
function realAmount(exercise: DiaryExercise, real: Amount | undefined): Amount {
  const now = real ?? exercise.real;
  const { planned } = exercise;
  const other = (value: number | undefined, plan: number | undefined) =>
    value === plan ? undefined : value;
  return {
    sets: other(now.sets, planned.sets),
    reps: other(now.reps, planned.reps),
    kg: other(now.kg, planned.kg),
  };
}

/** Yes where all were done, no where none was, else in part. */
export function doneOf(parts: readonly Done[]): Done {
  if (parts.length > 0 && parts.every((one) => one === "yes")) return "yes";
  return parts.every((one) => one === "no") ? "no" : "part";
}

/** The diary with this entry in place of the one for the same session, in the order of the sessions. */
export function withEntry(diary: Diary, entry: DiaryEntry): Diary {
  const others = diary.entries.filter((one) => sessionKey(one) !== sessionKey(entry));
  return { ...diary, entries: [...others, entry].sort(byPlan) };
}

/** An instant as entries keep it: UTC, to the second. */
export const writtenAt = (instant: Date): string => `${instant.toISOString().slice(0, 19)}Z`;

/**
 * The mark of a change after another: never the same nor earlier, also where two changes fall into one
 * second or the device's clock was set back, so that the last word wins when diaries are merged.
 */
export function writtenAfter(instant: Date, before: string | undefined): string {
  const now = writtenAt(instant);
  return before === undefined || now > before
    ? now
    : writtenAt(new Date(Date.parse(before) + 1000));
}
