/** What a plan answers of the findings that otherwise stop it: each with the clinician's reason. */
import { Fault, type Level } from "../faults/fault.ts";
import type { Plan } from "../plan/schema.ts";
import type { Program } from "../program/program.ts";
import type { DoseContext } from "./context.ts";

type Accept = Plan["accept"][number];

/** An error until the plan accepts it; then a warning, in whose words the reason stands. */
export function unlessAccepted(
  context: DoseContext,
  code: Accept["code"],
  card: string,
): { readonly level: Level; readonly because: string } {
  const accept = context.program.plan.value.accept.find(
    (one) => one.code === code && one.card === card,
  );
  return accept
    ? { level: "warning", because: ` Accepted: ${accept.why}` }
    : { level: "error", because: "" };
}

/** What other stages ask, and look after themselves. */
const elsewhere: ReadonlySet<Accept["code"]> = new Set(["age-outside", "distance-steep"]);

/** change-unused, a warning, for every answer to a question that nobody asks. */
export function unusedAccepts({ program, findings }: DoseContext): Fault[] {
  return program.plan.value.accept.flatMap((accept, at) =>
    elsewhere.has(accept.code) || findings.has(accept.code, accept.card)
      ? []
      : [unused(program, accept, at)],
  );
}

function unused({ plan: { source } }: Program, { code, card }: Accept, at: number): Fault {
  const place = source.at(["accept", at]);
  return new Fault("change-unused", `There is no ${code} for ${card} to accept.`, {
    level: "warning",
    place,
    frame: source.frame(place),
    hint: "Take the entry out, or correct its card.",
  });
}
