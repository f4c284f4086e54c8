/** From a plan to its booklet: the stages of the program, in order. */
import { composeBooklet } from "./compose/compose.ts";
import type { Booklet, Edition } from "./compose/model.ts";
import { usedFaults } from "./compose/used-translations.ts";
import { doseProgram } from "./dose/program.ts";
import type { DosedProgram } from "./dose/types.ts";
import { Fault, isError, type WithFaults } from "./faults/fault.ts";
import type { Tree } from "./files/tree.ts";
import type { IssuedRecord } from "./issued/record.ts";
import { type ReadPlan, readPlan } from "./plan/read-plan.ts";
import type { ProgramParts } from "./program/parts.ts";
import type { Program } from "./program/program.ts";
import { resolveProgram } from "./program/resolve.ts";
import type { Protocol } from "./protocols/schema.ts";
import type { Read } from "./read/source.ts";
import { nearest } from "./read/validate.ts";
import { distanceFaults } from "./schedule/distance.ts";
import { laidSumFaults } from "./schedule/laid-sums.ts";
import { layOut } from "./schedule/lay-out.ts";
import { rampFaults } from "./schedule/ramp.ts";
import type { Schedule } from "./schedule/schedule.ts";
import { sessionFaults } from "./schedule/session-limits.ts";
import { keptPath } from "./signature/kept.ts";
import { type SignedOff, signatureOf } from "./signature/signature.ts";
import type { Words } from "./words/words.ts";
import type { Workspace } from "./workspace.ts";

/** What clients already have, by the ids of their plans, and the day on which that is looked at. */
export interface IssuedBefore {
  /** YYYY-MM-DD. */
  readonly today: string;
  recordOf(plan: string): WithFaults<IssuedRecord | undefined>;
}

/** A plan with everything computed from it. */
export interface MadeProgram {
  readonly plan: ReadPlan;
  readonly program: Program;
  readonly dosed: DosedProgram;
  readonly schedule: Schedule;
  /** Who has signed all this as it is; undefined for a draft. */
  readonly signedOff: SignedOff | undefined;
}

/**
 * Reads a plan, resolves it, computes its doses and lays out its weeks, near to what the client already
 * has; undefined after an error.
 */
export function makeProgram(
  workspace: Workspace,
  file: string,
  before?: IssuedBefore,
): WithFaults<MadeProgram | undefined> {
  const faults: Fault[] = [];
  const stop = () => ({ value: undefined, faults });
  const take = <T>(result: WithFaults<T>): T => {
    faults.push(...result.faults);
    return result.value;
  };

  const parts = take(readParts(workspace, file));
  if (!parts) return stop();
  const { plan, library } = parts;
  const program = take(resolveProgram(parts));
  if (!program) return stop();

  const dosed = take(doseProgram(program, library));
  if (faults.some(isError)) return stop();

  const record = before && take(before.recordOf(plan.value.id));
  if (faults.some(isError)) return stop();
  const issued = record && { record, today: before.today };

  const schedule = take(layOut(program, dosed, issued));
  if (!schedule || faults.some(isError)) return stop();

  faults.push(...laidSumFaults(program, schedule));
  faults.push(...sessionFaults(program, dosed, schedule));
  faults.push(...rampFaults(program, schedule));
  faults.push(...distanceFaults(program, schedule));
  if (faults.some(isError)) return stop();
  faults.push(...usedFaults(program, dosed, library, workspace.translations));

  const computed = { plan, program, dosed, schedule };
  const kept = keptBeside(workspace.tree, file);
  const signedOff = take(signatureOf(computed, plan.note, library, kept));
  return { value: { ...computed, signedOff }, faults };
}

/** What a program is brought together from, read from a plan; undefined where plan or protocol cannot be. */
export function readParts(
  workspace: Workspace,
  file: string,
): WithFaults<(ProgramParts & { readonly plan: ReadPlan }) | undefined> {
  const { plan, faults } = readPlan(workspace.tree, file, workspace.cards.library.words);
  if (!plan || !workspace.clinic) return { value: undefined, faults };
  const found = findProtocol(plan, workspace);
  const { library } = workspace.texts;
  const clinic = workspace.clinic.value;
  return {
    value: found.value && { plan, protocol: found.value, library, clinic },
    faults: [...faults, ...found.faults],
  };
}

/** What was signed, as kept beside the plan. */
function keptBeside(tree: Tree, file: string): string | undefined {
  const path = keptPath(file);
  return tree.exists(path) ? tree.read(path).text : undefined;
}

/** The booklet of a made program. `day`: the day of printing, YYYY-MM-DD. */
export function makeBooklet(
  made: MadeProgram,
  workspace: Workspace,
  words: Words,
  day: string,
  edition: Edition = "standard",
): Booklet {
  const { plan, program, dosed, schedule, signedOff } = made;
  const { library } = workspace.texts;
  return composeBooklet({
    program,
    signedOff,
    dosed,
    schedule,
    library,
    words,
    note: plan.note,
    day,
    edition,
    look: workspace.look,
  });
}

function findProtocol(
  plan: ReadPlan,
  workspace: Workspace,
): WithFaults<Read<Protocol> | undefined> {
  const { protocols } = workspace.texts;
  const found = protocols.get(plan.value.protocol);
  if (found) return { value: found, faults: [] };
  const place = plan.source.at(["protocol"]);
  const near = nearest(plan.value.protocol, [...protocols.keys()]);
  const fault = new Fault("unknown-protocol", `There is no protocol ${plan.value.protocol}.`, {
    place,
    frame: plan.source.frame(place),
    hint: near
      ? `Did you mean ${near}?`
      : `There are: ${[...protocols.keys()].join(", ") || "no protocols"}. A protocol with errors is not read.`,
  });
  return { value: undefined, faults: [fault] };
}
