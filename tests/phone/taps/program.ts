/** A booklet's data as its file holds it: sessions with their exercises, limits of pain, and what is kept apart. */

export const PARTS = ["morning", "midday", "evening"] as const;
export type Part = (typeof PARTS)[number];

export interface Bout {
  readonly key: string;
  readonly card: string;
  readonly title: string;
  readonly when?: string;
  readonly tissues: readonly string[];
  readonly recoveryS: number;
  readonly keptClearOf: { readonly before: readonly string[]; readonly after: readonly string[] };
  readonly pain: { readonly kind: string; readonly during: number; readonly after: number };
  readonly painWords: Readonly<Record<"over" | "after" | "worse", string>>;
}

export interface Session {
  /** Its day and part of the day, as an address names it: 2026-12-02-evening. */
  readonly name: string;
  readonly date: string;
  readonly part: Part;
  readonly bouts: readonly Bout[];
}

export interface KeptEvent {
  readonly id: string;
  readonly part: Part;
  readonly dates: readonly string[];
  readonly clearBeforeHours: number;
  readonly clearAfterHours: number;
}

export interface Program {
  readonly plan: string;
  readonly client: string;
  readonly made: string;
  readonly callLevel: number;
  readonly severe: string;
  readonly settle: string;
  /** When the parts of the day begin, in minutes from midnight of its date. */
  readonly clock: Readonly<Record<Part, number>>;
  readonly groupHours: Readonly<Record<string, number>>;
  readonly events: readonly KeptEvent[];
  readonly sessions: readonly Session[];
  readonly bouts: readonly Bout[];
  readonly words: Readonly<Record<string, string>>;
}

interface Stored extends Pick<Program, "plan" | "client" | "made" | "clock" | "words"> {
  readonly pain: Pick<Program, "callLevel" | "severe" | "settle">;
  readonly spacing: Pick<Program, "groupHours" | "events">;
  readonly painWords: readonly Bout["painWords"][];
  readonly bouts: readonly (Omit<Bout, "painWords"> & { readonly painWords: number })[];
  readonly kinds: readonly { readonly part: Part; readonly bouts: readonly number[] }[];
  readonly sessions: readonly (readonly [string, number, number])[];
}

export function programOf(json: string): Program {
  const data: Stored = JSON.parse(json);
  const { plan, client, made, clock, words } = data;
  const bouts = data.bouts.flatMap((bout): Bout[] => {
    const painWords = data.painWords[bout.painWords];
    return painWords ? [{ ...bout, painWords }] : [];
  });
  const sessions = data.sessions.flatMap(([date, , place]): Session[] => {
    const kind = data.kinds[place];
    if (kind === undefined) return [];
    const { part } = kind;
    const own = kind.bouts.flatMap((at) => bouts[at] ?? []);
    return [{ name: `${date}-${part}`, date, part, bouts: own }];
  });
  return { plan, client, made, clock, words, bouts, sessions, ...data.pain, ...data.spacing };
}

/** The program with what the client may do of it: exercises that wait for a sign only once that was seen. */
export function withSigns(program: Program, seen: readonly string[]): Program {
  if (program.bouts.every(({ when }) => when === undefined)) return program;
  const isOpen = ({ when }: Bout) => when === undefined || seen.includes(when);
  const sessions = program.sessions.flatMap((session): Session[] => {
    const bouts = session.bouts.filter(isOpen);
    return bouts.length === 0 ? [] : [{ ...session, bouts }];
  });
  return { ...program, sessions };
}

const DAY_MS = 86_400_000;
const DAY_MINUTES = 1440;

export const dayNumber = (date: string): number => Date.parse(`${date}T00:00:00Z`) / DAY_MS;

/** A moment of the client's calendar: their day, and minutes from its midnight. */
export interface Moment {
  readonly day: string;
  readonly minutes: number;
}

/** Minutes on one line of time. */
export const minutesOf = ({ day, minutes }: Moment): number =>
  dayNumber(day) * DAY_MINUTES + minutes;

/**
 * The client's day at an instant. Where parts of their day lie after midnight, it ends halfway from its
 * last part to the next day's first.
 */
export function momentAt(instantMs: number, { clock }: Pick<Program, "clock">): Moment {
  const at = new Date(instantMs);
  const two = (n: number) => String(n).padStart(2, "0");
  const day = `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
  const minutes = at.getHours() * 60 + at.getMinutes();
  const { morning, evening } = clock;
  if (evening < DAY_MINUTES) return { day, minutes };
  const ends = evening + Math.floor((morning + DAY_MINUTES - evening) / 2);
  if (minutes >= ends - DAY_MINUTES) return { day, minutes };
  const before = new Date((dayNumber(day) - 1) * DAY_MS).toISOString().slice(0, 10);
  return { day: before, minutes: minutes + DAY_MINUTES };
}

/** The part of the day whose beginning is nearest; of two as near the later. */
export function partAt(minutes: number, { clock }: Pick<Program, "clock">): Part {
  const away = (part: Part) => Math.abs(clock[part] - minutes);
  let best: Part = "morning";
  for (const part of PARTS) if (away(part) <= away(best)) best = part;
  return best;
}

export const nextDay = (day: string, by = 1): string =>
  new Date((dayNumber(day) + by) * DAY_MS).toISOString().slice(0, 10);
