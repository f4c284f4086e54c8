/** Reads one client's plan: its front matter, and the clinician's note below it. */
import type { Vocabulary } from "../cards/vocabulary.ts";
import type { Fault } from "../faults/fault.ts";
import type { Tree } from "../files/tree.ts";
import { splitMarkdown } from "../read/front-matter.ts";
import type { Read } from "../read/source.ts";
import { validate } from "../read/validate.ts";
import { planFaults } from "./check-plan.ts";
import { type Plan, planSchema } from "./schema.ts";

/** A plan with the clinician's note to the client, in Markdown. */
export interface ReadPlan extends Read<Plan> {
  readonly note: string;
}

/** The plan in a file, or every fault of it. `words`: the vocabulary of the library it uses. */
export function readPlan(
  tree: Tree,
  file: string,
  words: Vocabulary,
): { readonly plan: ReadPlan | undefined; readonly faults: readonly Fault[] } {
  const reading = tree.read(file);
  if (reading.fault) return { plan: undefined, faults: [reading.fault] };
  const { split, faults } = splitMarkdown(file, reading.text);
  if (!split) return { plan: undefined, faults };
  const checked = validate(planSchema(words), split.data, split.source);
  if (!checked.value) return { plan: undefined, faults: checked.faults };
  const plan = { value: checked.value, source: split.source, note: split.body.trim() };
  const found = planFaults(plan);
  return found.some((fault) => fault.level === "error")
    ? { plan: undefined, faults: found }
    : { plan, faults: found };
}
