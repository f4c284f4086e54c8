/** Whether a dose is one of the shapes that a set can have, and what stands in the way where it is not. */
import type { Place } from "../faults/fault.ts";
import type { DosePart } from "./fields.ts";
import { serialiseDose } from "./serialise.ts";
import { lastStated, type StatedDose } from "./stated.ts";

type Field = keyof DosePart;
type Kind = "turns" | "time" | "distance" | "holds" | "repetitions";

export interface ShapeProblem {
  /** The fields that do not go together, the one to place the problem at first. */
  readonly fields: readonly [Field, ...Field[]];
  /** A sentence about the dose, without its subject and full stop. */
  readonly says: string;
  readonly hint: string;
}

/** The field that makes a dose of a kind; the first that is stated decides. */
const MAKES: readonly (readonly [Field, Kind])[] = [
  ["turns", "turns"],
  ["time", "time"],
  ["distance", "distance"],
  ["hold", "holds"],
  ["reps", "repetitions"],
];

/** What else may say what a set of this kind is. */
const BESIDE: Readonly<Record<Kind, readonly Field[]>> = {
  turns: [],
  time: [],
  distance: ["reps", "rest_reps"],
  holds: ["reps", "rest_reps", "tempo"],
  repetitions: ["rest_reps", "tempo"],
};

const WORK: readonly Field[] = ["turns", "time", "distance", "hold", "reps", "tempo", "rest_reps"];

const SHAPES =
  "A set is repetitions (reps, with tempo), holds (hold, with reps and tempo), a time (time), a distance (distance, with reps) or turns (turns).";

/**
 * What keeps a merged dose from being one shape: fields that cannot stand side by side, a tempo or a
 * rest between repetitions where there are none, a pause stated twice, and another number of sets
 * than of repetitions for them. Undefined where nothing does; also where nothing says what a set is
 * (see `saysWork`).
 */
export function shapeProblem(dose: DosePart): ShapeProblem | undefined {
  const [maker, kind] = MAKES.find(([field]) => dose[field] !== undefined) ?? [];
  const stated = WORK.filter((field) => dose[field] !== undefined && field !== maker);
  const foreign = kind && stated.find((field) => !BESIDE[kind].includes(field));
  if (maker && foreign) {
    return {
      fields: [foreign, maker],
      says: `has ${sayField(dose, maker)} and ${sayField(dose, foreign)}, which cannot both say what a set is`,
      hint: `Keep one of the two. ${SHAPES}`,
    };
  }
  return aimProblem(dose, kind) ?? countProblem(dose) ?? pauseProblem(dose) ?? setsProblem(dose);
}

/** A problem of a merged dose, where it stands. */
export interface Misshapen extends Omit<ShapeProblem, "fields"> {
  readonly place: Place;
}

/** The problems of the doses of some weeks, each once: at the field that was stated last. */
export function misshapen(doses: readonly (StatedDose | undefined)[]): readonly Misshapen[] {
  const found = new Map<string, Misshapen>();
  for (const stated of doses) {
    const problem = stated && (shapeProblem(stated.dose) ?? unclearHold(stated));
    const place = problem && stated.stated[lastStated(stated, problem.fields)]?.place;
    if (!problem || !place) continue;
    const { says, hint } = problem;
    found.set(`${place.file}:${place.line}:${place.column} ${says}`, { says, hint, place });
  }
  return [...found.values()];
}

/** Ten repetitions here and a hold there: once a set, or ten times? */
function unclearHold({ dose, unclearHold: unclear }: StatedDose): ShapeProblem | undefined {
  if (!unclear) return undefined;
  const field = dose.hold === undefined ? "target" : "hold";
  return {
    fields: [field],
    says: `has ${sayField(dose, field)} over ${sayField(dose, "reps")} of another statement`,
    hint: "Say beside it how many holds a set has: reps: 1 for one.",
  };
}

/** Whether a dose says what a set is: by a field of its own, or by a target that gives one. */
export function saysWork(dose: DosePart): boolean {
  const aim = dose.target?.kind;
  const aimed = aim === "rm" || aim === "percent-reps" || aim === "percent-hold";
  return aimed || MAKES.some(([field]) => dose[field] !== undefined);
}

/** A share of the most repetitions, or of the best hold, for a set that is not counted or held. */
function aimProblem(dose: DosePart, kind: Kind | undefined): ShapeProblem | undefined {
  const aim = dose.target?.kind;
  const counted = kind === "repetitions" || kind === "holds";
  if (counted && (aim === "speed" || aim === "percent-speed")) {
    return {
      fields: ["target"],
      says: `aims at ${sayField(dose, "target")}, which says nothing of ${kind}`,
      hint: "Give a distance, with reps for how often it is run, or a time or turns.",
    };
  }
  const fits =
    (aim !== "percent-reps" && aim !== "percent-hold") ||
    kind === undefined ||
    kind === "repetitions" ||
    kind === "holds";
  if (fits) return undefined;
  return {
    fields: ["target"],
    says: `aims at ${sayField(dose, "target")}, which says nothing of a set that is ${kind === "turns" ? "turns" : `a ${kind}`}`,
    hint: SHAPES,
  };
}

/** A tempo or a rest between repetitions without repetitions. */
function countProblem(dose: DosePart): ShapeProblem | undefined {
  const aim = dose.target?.kind;
  const held = dose.hold !== undefined || aim === "percent-hold";
  const counted =
    dose.reps !== undefined ||
    aim === "percent-reps" ||
    (aim === "rm" && !held && dose.distance === undefined);
  if (counted) return undefined;
  const field = (["tempo", "rest_reps"] as const).find((name) => dose[name] !== undefined);
  if (!field || (!held && dose.distance === undefined)) return undefined;
  return {
    fields: [field],
    says: `has ${sayField(dose, field)} but no repetitions`,
    hint: "Give reps, or leave it out; rest is the time between two sets.",
  };
}

/** A hold, and a pause in the tempo beside it: nobody can say which of the two is meant. */
function pauseProblem(dose: DosePart): ShapeProblem | undefined {
  const { hold, tempo } = dose;
  if (hold === undefined || !tempo || (tempo.top === 0 && tempo.bottom === 0)) return undefined;
  return {
    fields: ["hold", "tempo"],
    says: `has ${sayField(dose, "hold")} and a pause in ${sayField(dose, "tempo")}`,
    hint: "Write how long it is held in one of them: a tempo beside a hold has pauses of 0.",
  };
}

function setsProblem(dose: DosePart): ShapeProblem | undefined {
  const { sets, reps } = dose;
  if (sets === undefined || !reps || reps.length < 2 || reps.length === sets) return undefined;
  return {
    fields: ["sets", "reps"],
    says: `has ${sayField(dose, "sets")} but ${reps.length} numbers of repetitions`,
    hint: "Give one number of repetitions for all sets, or one for each.",
  };
}

/** A field as it is written: "reps: [12, 10, 8]". */
function sayField(dose: DosePart, field: Field): string {
  const value = serialiseDose({ [field]: dose[field] })[field];
  return `${field}: ${typeof value === "object" ? JSON.stringify(value).replaceAll('"', "").replaceAll(",", ", ").replaceAll(":", ": ") : value}`;
}
