/** Whether a client is to call the clinic, why, and until when: until they have called, or the next booklet. */
import { addDays } from "../units/dates.ts";
import { adviceMorning } from "./advice.ts";
import { type FeltDay, type FeltSession, feltDays, type Limited } from "./felt.ts";

/** What asks for a call. */
export interface CallReason {
  /** The day and what was felt on it: "2026-12-02 morning", "2026-12-02 during heel-raise". */
  readonly id: string;
  /** Pain from the level to call from on or sudden, or mornings running that were worse. */
  readonly sign: "severe" | "settle";
  /** 0 to 10; of mornings and sudden pain 0, since they are not told by a number. */
  readonly pain: number;
}

/** That the client has called, and what for. */
export interface Call {
  /** When they said so: ISO 8601 in UTC. */
  readonly at: string;
  /** The version of the booklet in which they said so. */
  readonly booklet: string;
  readonly for: readonly Pick<CallReason, "id" | "pain">[];
}

/** A session with the day on which the booklet was made in which it was written down, YYYY-MM-DD. */
export interface WrittenSession<One> extends FeltSession<One> {
  readonly bookletOf: string | undefined;
}

/**
 * What a call is due for, first to last. It stays due, however many days go by and whatever goes well
 * since, until the client has said that they called for it, or a booklet has come that the clinic made
 * after it was felt; a number that is corrected is no reason any more, and a higher one is a new one.
 *
 * @param made the day on which the present booklet was made, YYYY-MM-DD
 */
export function dueCalls<One extends Limited>(
  diary: readonly WrittenSession<One>[],
  calls: readonly Call[],
  made: string,
  callLevel: number,
): CallReason[] {
  const told = calls.flatMap((call) => call.for);
  const isTold = ({ id, pain }: CallReason) =>
    told.some((one) => one.id === id && one.pain >= pain);
  return feltDays(diary).flatMap((day) => {
    const before = (felt: string) =>
      felt < made || (felt === made && day.sessions.every((one) => isOlder(one, made)));
    const evening = before(day.day) ? [] : eveningReasons(day, callLevel);
    const morning = before(addDays(day.day, 1)) ? [] : morningReasons(day, diary, callLevel);
    return [...evening, ...morning].filter((reason) => !isTold(reason));
  });
}

const isOlder = <One>(
  session: FeltSession<One> & { bookletOf?: string | undefined },
  made: string,
) => session.bookletOf !== undefined && session.bookletOf < made;

/** Of the exercises of a day, and the hours after them. */
function eveningReasons({ day, sessions }: FeltDay<unknown>, callLevel: number): CallReason[] {
  const exercises = sessions.flatMap(({ felt }) => felt.exercises);
  const sudden = new Set(exercises.flatMap((one) => (one.sudden ? [one.card] : [])));
  const during = new Map<string, number[]>();
  for (const { card, pain } of exercises) {
    if (pain !== undefined) during.set(card, [...(during.get(card) ?? []), pain]);
  }
  const after = sessions.flatMap(({ felt }) => felt.painAfter ?? []);
  return [
    ...[...sudden].map(
      (card): CallReason => ({ id: `${day} sudden ${card}`, sign: "severe", pain: 0 }),
    ),
    ...[...during].flatMap(([card, pains]) => severe(`${day} during ${card}`, pains, callLevel)),
    ...severe(`${day} after`, after, callLevel),
  ];
}

/** Of the morning after a day. */
function morningReasons<One extends Limited>(
  { day, sessions }: FeltDay<One>,
  diary: readonly FeltSession<One>[],
  callLevel: number,
): CallReason[] {
  const pains = sessions.flatMap(({ felt }) => felt.painMorning ?? []);
  const worst = severe(`${day} morning`, pains, callLevel);
  if (worst.length > 0) return worst;
  return adviceMorning(day, diary, callLevel)?.level === "call"
    ? [{ id: `${day} mornings`, sign: "settle", pain: 0 }]
    : [];
}

function severe(id: string, pains: readonly number[], callLevel: number): CallReason[] {
  const pain = Math.max(-1, ...pains);
  return pain >= callLevel ? [{ id, sign: "severe", pain }] : [];
}
