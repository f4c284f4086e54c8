/** Reads a clinic's settings from clinic.yaml. */
import type { Fault } from "../faults/fault.ts";
import type { Tree } from "../files/tree.ts";
import { parseYaml } from "../read/front-matter.ts";
import type { Read } from "../read/source.ts";
import { validate } from "../read/validate.ts";
import { type Clinic, clinicSchema } from "./schema.ts";

/** Name of the file that makes a folder a clinic's folder. */
export const CLINIC_FILE = "clinic.yaml";

/** The settings in a clinic's folder. Faults: file-unreadable and everything a schema can find. */
export function readClinic(
  tree: Tree,
  folder: string,
): { readonly clinic: Read<Clinic> | undefined; readonly faults: readonly Fault[] } {
  const file = folder === "." ? CLINIC_FILE : `${folder}/${CLINIC_FILE}`;
  const reading = tree.read(file);
  if (reading.fault) return { clinic: undefined, faults: [reading.fault] };
  const parsed = parseYaml(file, reading.text, reading.text);
  if (parsed.faults.length > 0) return { clinic: undefined, faults: parsed.faults };
  const checked = validate(clinicSchema, parsed.data, parsed.source);
  if (!checked.value) return { clinic: undefined, faults: checked.faults };
  return { clinic: { value: checked.value, source: parsed.source }, faults: [] };
}
