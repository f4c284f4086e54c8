/** What the client has chosen on this device, and where they were in a session. */
import type { Call } from "../../pain/call.ts";

export interface Settings {
  readonly sound: boolean;
  readonly voice: boolean;
  readonly vibration: boolean;
  /** Names of sessions whose next morning the client does not remember. */
  readonly passed: readonly string[];
  /** Signs that the client has seen: the exercises that wait for them have begun. */
  readonly ready: readonly string[];
  /** Other references of whose diary it was asked whether it is this client's. */
  readonly asked: readonly string[];
  /** That the client has called the clinic, and what for. */
  readonly calls: readonly Call[];
  /** Those that are: their diary is a part of this one. */
  readonly same: readonly string[];
  /** How many of the texts put aside the client has in a file of their own. */
  readonly asideTaken: number;
  /** When sessions were begun: the name of the session, its day and the minutes from its midnight. */
  readonly begun: readonly string[];
}

export const USUAL_SETTINGS: Settings = {
  sound: true,
  voice: false,
  vibration: true,
  passed: [],
  ready: [],
  asked: [],
  calls: [],
  same: [],
  asideTaken: 0,
  begun: [],
};

/** Settings from stored text; what is missing or odd is as usual. */
export function readSettings(text: string | null): Settings {
  const found = jsonObject(text);
  const flag = (name: "sound" | "voice" | "vibration") =>
    typeof found[name] === "boolean" ? found[name] : USUAL_SETTINGS[name];
  const texts = (name: "passed" | "ready" | "asked" | "same" | "begun") => {
    const list = found[name];
    return Array.isArray(list)
      ? list.filter((one): one is string => typeof one === "string").slice(-MOST_TEXTS)
      : [];
  };
  return {
    sound: flag("sound"),
    voice: flag("voice"),
    vibration: flag("vibration"),
    passed: texts("passed"),
    ready: texts("ready"),
    asked: texts("asked"),
    calls: readCalls(found.calls),
    same: texts("same"),
    asideTaken: typeof found.asideTaken === "number" ? found.asideTaken : 0,
    begun: texts("begun"),
  };
}

/** Calls as stored; one that is odd is none, so that it is due again. */
function readCalls(stored: unknown): readonly Call[] {
  return listOf(stored)
    .flatMap((one): Call[] => {
      const { at, booklet, for: reasons } = fieldsOf(one);
      const told = listOf(reasons).flatMap((reason) => {
        const { id, pain } = fieldsOf(reason);
        return typeof id === "string" && typeof pain === "number" ? [{ id, pain }] : [];
      });
      return typeof at === "string" && typeof booklet === "string"
        ? [{ at, booklet, for: told }]
        : [];
    })
    .slice(-MOST_TEXTS);
}

const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);

const fieldsOf = (value: unknown): Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null ? { ...value } : {};

/** More names than a program has sessions in a month, or signs, are of no use. */
const MOST_TEXTS = 60;

/** How much was paced: whole sets, and the fewest repetitions of one where they fell short. */
export interface Paced {
  readonly sets: number;
  readonly reps: number | undefined;
  /** Whether it was all that was planned. */
  readonly whole: boolean;
}

/** Where the client is in a session, as it is stored at every step. */
export interface SessionPlace {
  /** The session's name. */
  readonly key: string;
  /** The client's day on which it was begun, YYYY-MM-DD. */
  readonly day: string;
  readonly short: boolean;
  /** The exercise, from 0, and what is asked or done there. */
  readonly at: number;
  readonly stage: "ready" | "pace" | "after" | "end";
  /** The pace's own state while its screen is open. */
  readonly pace: string | undefined;
  /** Whether it is being asked how much it hurts, in the middle of the pace. */
  readonly hurts?: boolean | undefined;
  /** What was done of the exercise that is over, if what of it went by unseen was: to be asked back. */
  readonly unsure?: Paced | undefined;
}

const STAGES: readonly SessionPlace["stage"][] = ["ready", "pace", "after", "end"];

/** A place from stored text; undefined where there is none that can be taken up. */
export function readPlace(text: string | null): SessionPlace | undefined {
  const { key, day, short, at, stage, pace, hurts, unsure } = jsonObject(text);
  const known = STAGES.find((one) => one === stage);
  if (typeof key !== "string" || typeof at !== "number" || known === undefined) return undefined;
  if (!Number.isInteger(at) || at < 0) return undefined;
  const open = known === "after" ? readPaced(unsure) : undefined;
  return {
    key,
    // places of older booklets name the planned day alone
    day: typeof day === "string" ? day : key.slice(0, 10),
    short: short === true,
    at,
    stage: known,
    pace: typeof pace === "string" ? pace : undefined,
    ...(hurts === true && known === "pace" && { hurts }),
    ...(open && { unsure: open }),
  };
}

function readPaced(stored: unknown): Paced | undefined {
  const { sets, reps, whole } = fieldsOf(stored);
  if (typeof sets !== "number" || typeof whole !== "boolean") return undefined;
  return { sets, reps: typeof reps === "number" ? reps : undefined, whole };
}

function jsonObject(text: string | null): Readonly<Record<string, unknown>> {
  try {
    const found: unknown = JSON.parse(text ?? "{}");
    return fieldsOf(found);
  } catch {
    return {};
  }
}
