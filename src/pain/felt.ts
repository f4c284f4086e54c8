/** What a client felt: one session and its next morning, as the pain rule asks for it. */
import type { PainLimits } from "./limits.ts";

/** An exercise of a session, with its limits. */
export interface Limited {
  readonly card: string;
  readonly pain: PainLimits;
}

/** What a client felt in one session and after it. Pain on the 0 to 10 scale, decimals too. */
export interface Felt {
  readonly done: "yes" | "part" | "no";
  readonly exercises: readonly {
    readonly card: string;
    readonly pain: number | undefined;
    readonly done?: "yes" | "part" | "no";
    /** Whether its pain came suddenly. */
    readonly sudden?: boolean | undefined;
  }[];
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
  /** None where no limits of it are known. */
  readonly bouts: readonly One[];
}

/** All sessions of a day of which any was done: they share the next morning. */
export interface FeltDay<One> {
  readonly day: string;
  readonly sessions: readonly FeltSession<One>[];
  /** The exercises of all of them. */
  readonly bouts: readonly One[];
}

/** The days on which any session was done, or given up for its pain, first to last. */
export function feltDays<One>(diary: readonly FeltSession<One>[]): FeltDay<One>[] {
  const days = new Map<string, FeltSession<One>[]>();
  for (const session of diary) {
    if (!wasTried(session.felt)) continue;
    days.set(session.day, [...(days.get(session.day) ?? []), session]);
  }
  return [...days]
    .map(([day, sessions]) => ({ day, sessions, bouts: sessions.flatMap(({ bouts }) => bouts) }))
    .sort((a, b) => (a.day < b.day ? -1 : 1));
}

/** Whether any of it was done, or any pain was written down. */
function wasTried({ done, exercises, painAfter, painMorning, worseMorning }: Felt): boolean {
  const pains = [...exercises.map(({ pain }) => pain), painAfter, painMorning];
  const sudden = exercises.some((one) => one.sudden);
  return (
    done !== "no" || sudden || worseMorning === true || pains.some((pain) => pain !== undefined)
  );
}
