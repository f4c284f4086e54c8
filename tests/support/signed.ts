/** Signatures for plans that a test has changed. */
import type { MadeProgram } from "../../src/booklet.ts";

/** The program as if whoever the plan names had signed it as it now is; a draft where it names nobody. */
export function asSigned(made: MadeProgram): MadeProgram {
  return { ...made, signedOff: made.plan.value.signed };
}
