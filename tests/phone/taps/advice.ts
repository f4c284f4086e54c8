/**
 * What a client has to be told of their pain, written from the printed page: over the limit while exercising,
 * stop; from the level to call from, or where it came suddenly, call; over the limit afterwards or worse the next
 * morning, do less; two such mornings running, call. A call stays due until it was made, or a newer booklet has come.
 */
import { type Bout, nextDay, type Program, type Session } from "./program.ts";
import type { Sheet, SheetRow } from "./sheet.ts";

export type Level = "call" | "stop" | "ease";

/** What has to be said: a level, and sentences any of which may stand for it. */
export interface Expected {
  readonly level: Level;
  readonly says: readonly (readonly string[])[];
}

/** While an exercise is done. A number at its limit is all right. */
export function during(
  pain: number | undefined,
  sudden: boolean,
  bout: Bout,
  { callLevel, severe }: Program,
): Expected | undefined {
  if (sudden || (pain !== undefined && pain >= callLevel))
    return { level: "call", says: [[severe]] };
  if (pain === undefined || pain <= bout.pain.during) return undefined;
  return { level: "stop", says: [[bout.painWords.over]] };
}

/** In the hours after a session: the strictest of its exercises counts. */
export function after(
  pain: number,
  bouts: readonly Bout[],
  { callLevel, severe }: Program,
): Expected | undefined {
  if (pain >= callLevel) return { level: "call", says: [[severe]] };
  const least = strictest(bouts);
  if (least === undefined || pain <= least) return undefined;
  return {
    level: "ease",
    says: strict(bouts).map(({ painWords: { after: how, worse } }) => [how, worse]),
  };
}

/** The morning after a day. */
export function morning(day: string, sheet: Sheet, program: Program): Expected | undefined {
  const rows = sessionRows(sheet).filter((row) => row.day === day);
  const { callLevel, severe, settle } = program;
  if (rows.some(({ numbers }) => (numbers.pain_morning ?? 0) >= callLevel))
    return { level: "call", says: [[severe]] };
  if (!wasBad(day, sheet, program)) return undefined;
  const before = [...answeredDays(sheet)].filter((one) => one < day).at(-1);
  if (before !== undefined && wasBad(before, sheet, program))
    return { level: "call", says: [[settle]] };
  const bouts = rows.flatMap((row) => boutsOf(row, sheet, program));
  return { level: "ease", says: strict(bouts).map(({ painWords }) => [painWords.worse]) };
}

/** What asks for a call: a name for it, and the number of pain. */
export interface Reason {
  readonly id: string;
  readonly pain: number;
  /** Whether this booklet may or may not have been made with it in mind: felt on the day it was made. */
  readonly unsure: boolean;
}

/** Every reason to call that the diary holds, and no newer booklet has answered. */
export function reasonsToCall(sheet: Sheet, program: Program): Reason[] {
  const { callLevel, made } = program;
  const found: Reason[] = [];
  const add = (felt: string, id: string, pain: number) => {
    if (felt >= made) found.push({ id, pain, unsure: felt === made });
  };
  for (const row of sheet.values()) {
    const day = dayOf(row, sheet);
    const { pain_during: pain = 0, sudden, pain_after: later = 0 } = row.numbers;
    const { pain_morning: dawn = 0 } = row.numbers;
    if (row.card !== "" && pain >= callLevel) add(day, `${day} during ${row.card}`, pain);
    if (row.card !== "" && sudden === 1) add(day, `${day} sudden ${row.card}`, 0);
    if (row.card === "" && later >= callLevel) add(day, `${day} after`, later);
    if (row.card === "" && dawn >= callLevel) add(nextDay(day), `${day} morning`, dawn);
  }
  const days = answeredDays(sheet);
  days.forEach((day, at) => {
    const before = days[at - 1];
    const bad = before !== undefined && wasBad(before, sheet, program);
    const isSevere = found.some(({ id }) => id === `${day} morning`);
    if (bad && wasBad(day, sheet, program) && !isSevere) add(nextDay(day), `${day} mornings`, 0);
  });
  return found;
}

/** An exercise that was stopped for its pain on a day, for which this one is to be left out. */
export function stoppedFor(
  bout: Bout,
  ofDay: (row: SheetRow) => boolean,
  sheet: Sheet,
  program: Program,
): string | undefined {
  for (const row of sheet.values()) {
    if (row.card === "" || !ofDay(row)) continue;
    const one = boutsOf(row, sheet, program).find(({ card }) => card === row.card);
    if (one === undefined) continue;
    const { pain_during: pain = 0, sudden } = row.numbers;
    // where no pain is allowed the movement is made smaller first: one that was then done was not stopped
    const smaller = one.pain.kind === "pain-free" && row.done === "yes";
    const stopped = sudden === 1 || (pain > one.pain.during && !smaller);
    const near = one.card === bout.card || one.tissues.some((t) => bout.tissues.includes(t));
    if (stopped && near) return one.title;
  }
  return undefined;
}

export const sessionRows = (sheet: Sheet): SheetRow[] =>
  [...sheet.values()].filter(({ card }) => card === "");

/** The day on which it was done stands in the session's own row. */
export const dayOf = (row: SheetRow, sheet: Sheet): string =>
  sheet.get(`${row.date} ${row.part} `)?.day ?? row.day;

/** Days whose next morning was answered, first to last. */
function answeredDays(sheet: Sheet): string[] {
  const days = sessionRows(sheet).flatMap(({ day, numbers }) =>
    numbers.pain_morning !== undefined || numbers.worse_morning !== undefined ? [day] : [],
  );
  return [...new Set(days)].sort();
}

/** Worse than usual, or a number over the strictest limit of that day's exercises. */
function wasBad(day: string, sheet: Sheet, program: Program): boolean {
  const rows = sessionRows(sheet).filter((row) => row.day === day);
  const limit = strictest(rows.flatMap((row) => boutsOf(row, sheet, program))) ?? 0;
  return rows.some(({ numbers: { pain_morning: pain, worse_morning: worse } }) => {
    if (worse === 1) return true;
    // where no pain is allowed the rule is no more than usual
    if (pain === undefined || (limit === 0 && worse === 0)) return false;
    return pain > limit;
  });
}

/** The exercises against which an entry's pain is held: its session's; else those it names; else all. */
export function boutsOf(row: SheetRow, sheet: Sheet, program: Program): readonly Bout[] {
  const cards = cardsOf(row, sheet);
  const ofDay = program.sessions.filter(({ date }) => date === row.date);
  const shares = ({ bouts }: Session) => bouts.some(({ card }) => cards.includes(card));
  const session =
    ofDay.find((one) => one.part === row.part && shares(one)) ??
    ofDay.find(shares) ??
    ofDay.find(({ part }) => part === row.part);
  if (session) return session.bouts;
  const named = program.bouts.filter(({ card }) => cards.includes(card));
  return named.length > 0 ? named : program.bouts;
}

const cardsOf = ({ date, part }: SheetRow, sheet: Sheet): string[] =>
  [...sheet.values()]
    .filter((one) => one.date === date && one.part === part && one.card !== "")
    .map(({ card }) => card);

const strictest = (bouts: readonly Bout[]): number | undefined =>
  bouts.length === 0 ? undefined : Math.min(...bouts.map(({ pain }) => pain.after));

const strict = (bouts: readonly Bout[]): readonly Bout[] =>
  bouts.filter(({ pain }) => pain.after === strictest(bouts));
