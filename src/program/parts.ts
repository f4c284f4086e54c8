/** What a program is brought together from. */
import type { Library } from "../cards/library.ts";
import type { Clinic } from "../clinic/schema.ts";
import type { Plan } from "../plan/schema.ts";
import type { Protocol } from "../protocols/schema.ts";
import type { Read } from "../read/source.ts";

export interface ProgramParts {
  readonly plan: Read<Plan>;
  readonly protocol: Read<Protocol>;
  readonly library: Library;
  readonly clinic: Clinic;
}
