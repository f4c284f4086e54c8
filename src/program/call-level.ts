/** Whether a plan's own numbers of pain agree with the level from which a client is to call. */
import type { Clinic } from "../clinic/schema.ts";
import { Fault } from "../faults/fault.ts";
import { callLevel } from "../pain/limits.ts";
import type { Plan } from "../plan/schema.ts";
import type { Read } from "../read/source.ts";

/** Faults: wrong-value, where the plan's level is above the clinic's, or a limit of its own reaches the level. */
export function callLevelFaults({ value: plan, source }: Read<Plan>, clinic: Clinic): Fault[] {
  const wrong = (path: readonly string[], message: string, hint: string): Fault => {
    const place = source.at(path);
    return new Fault("wrong-value", message, { place, frame: source.frame(place), hint });
  };
  const { call } = clinic.pain;
  const { pain, pain_call: own } = plan;
  if (own !== undefined && own > call) {
    const message = `The clinic wants a call from a pain of ${call} on; the plan says ${own}.`;
    return [wrong(["pain_call"], message, `Write ${call} or less, or leave it out.`)];
  }
  if (typeof pain !== "object") return [];
  const level = callLevel(call, own);
  return (["during", "after"] as const).flatMap((name) =>
    pain[name] < level
      ? []
      : [
          wrong(
            ["pain", name],
            `The plan allows a pain of ${pain[name]}, and from ${level} on the client is to call.`,
            `Write less than ${level}.`,
          ),
        ],
  );
}
