/** Whether a plan's signature covers it as it is now; what has changed since, where it does not. */
import type { Library } from "../cards/library.ts";
import { Fault, type WithFaults } from "../faults/fault.ts";
import type { ComputedPlan } from "../plan-text/json.ts";
import { changesInWords } from "./changes.ts";
import { contentOf, digestOf } from "./content.ts";
import { readKept } from "./kept.ts";

/** Who has signed a plan as it is, and when. */
export interface SignedOff {
  readonly by: string;
  readonly on: string;
}

/**
 * Who has signed the plan as it is; undefined for a draft: one that nobody signed, whose signature names
 * no digest, or that has changed since, with the fault signature-stale (a warning).
 *
 * @param kept the text of the file beside the plan that says what was signed
 */
export function signatureOf(
  made: ComputedPlan,
  note: string,
  library: Library,
  kept: string | undefined,
): WithFaults<SignedOff | undefined> {
  const { signed } = made.plan.value;
  if (signed?.digest === undefined) return { value: undefined, faults: [] };
  const { by, on, digest } = signed;
  const now = contentOf(made, note);
  if (digestOf(now) === digest) return { value: { by, on }, faults: [] };
  const { source } = made.plan;
  const place = source.at(["signed", "digest"]);
  const before = kept === undefined ? undefined : readKept(kept, digest);
  const changes = before && changesInWords(before, now, (key) => nameOf(key, library));
  const fault = new Fault(
    "signature-stale",
    `The plan is not what ${by} signed on ${on}: its booklet prints as a draft. ${changeWords(changes)}`,
    {
      level: "warning",
      place,
      frame: source.frame(place),
      hint: `Undo what was changed, or look at it and sign again: paulatim sign ${source.file} --by NAME`,
    },
  );
  return { value: undefined, faults: [fault] };
}

function changeWords(changes: ReturnType<typeof changesInWords> | undefined): string {
  if (changes === undefined) {
    return "What was signed is not kept beside it, so what changed cannot be said.";
  }
  const more = changes.more > 0 ? `; and ${changes.more} more` : "";
  return `Changed: ${changes.named.join("; ")}${more}.`;
}

function nameOf(key: string, library: Library): string {
  const card = key.slice(key.indexOf("/") + 1);
  return library.cards.get(card)?.card.clinical ?? card;
}
