/** What was issued to a client as the layout takes it: bouts under the keys that the program now has. */
import type { DosedProgram } from "../dose/types.ts";
import type { IssuedRecord } from "../issued/record.ts";
import type { Program } from "../program/program.ts";
import { dayNumber } from "../units/dates.ts";
import type { ProgramWeeks } from "../week/program/program-types.ts";

/** What a client already has, and the day on which that is looked at. */
export interface Issued {
  readonly record: IssuedRecord;
  /** YYYY-MM-DD. */
  readonly today: string;
}

/**
 * The issued sessions for the layout. An exercise that was swapped, or that another phase has in that
 * week, is the one that takes its place: it keeps the time of day that the client is used to.
 *
 * @param isHard whether a bout that takes so many hours to recover from counts as hard
 */
export function issuedBouts(
  { record, today }: Issued,
  program: Program,
  dosed: DosedProgram,
  isHard: (recoveryHours: number) => boolean,
): NonNullable<ProgramWeeks["issued"]> {
  const plan = program.plan.value;
  const first = dayNumber(plan.starts);
  const swapped = new Map(
    plan.swap.map(({ card }) => [
      card,
      plan.swap.filter((one) => one.card === card).map(({ to }) => to),
    ]),
  );
  const weekOf = (date: string) => Math.floor((dayNumber(date) - first) / 7);
  const names = new Map<number, ReadonlyMap<string, string>>();
  for (const week of new Set(record.sessions.map(({ date }) => weekOf(date)))) {
    const had = record.sessions.filter(({ date }) => weekOf(date) === week);
    const keys = new Set(had.flatMap(({ bouts }) => bouts.map(({ exercise }) => exercise)));
    const has = (dosed.weeks[week]?.bouts ?? []).map(({ key }) => key);
    names.set(week, namesNow([...keys], has, swapped));
  }
  return {
    today,
    sessions: record.sessions.map(({ date, part, bouts }) => ({
      date,
      part,
      bouts: bouts.map(({ exercise: had, recovery_h, tissues }) => {
        const exercise = names.get(weekOf(date))?.get(had) ?? had;
        const movement = split(exercise).card;
        return {
          exercise,
          movement,
          hard: isHard(recovery_h),
          groups: tissues,
          recoveryHours: recovery_h,
        };
      }),
    })),
  };
}

/** The phase and the card of an exercise's key. */
function split(key: string): { readonly phase: string; readonly card: string } {
  const at = key.lastIndexOf("/");
  return { phase: key.slice(0, at), card: key.slice(at + 1) };
}

/** By key in the record, the key that the week has in its place; keys without one are not there. */
function namesNow(
  issued: readonly string[],
  now: readonly string[],
  swapped: ReadonlyMap<string, readonly string[]>,
): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  const open = new Set(now);
  const take = (key: string, name: string | undefined) => {
    if (name === undefined || names.has(key) || !open.delete(name)) return;
    names.set(key, name);
  };
  const first = (wanted: (key: ReturnType<typeof split>) => boolean) =>
    [...open].find((key) => wanted(split(key)));
  for (const key of issued) take(key, key);
  for (const key of issued) {
    const { phase, card } = split(key);
    const to = swapped.get(card) ?? [];
    take(
      key,
      first((one) => one.phase === phase && to.includes(one.card)),
    );
  }
  for (const key of issued) {
    const { card } = split(key);
    take(
      key,
      first((one) => one.card === card || swapped.get(card)?.includes(one.card) === true),
    );
  }
  return names;
}
