/** An explanation in words: what does not fit, and what would help, for a fault's message and hint. */
import type { LayoutFailure } from "../program/program-types.ts";
import { asksForTime } from "./costs.ts";
import type { Explanation, Remedy } from "./explain-types.ts";

/** Which week has no place for its sessions, as far as that is known. */
export function failureSentence(failure: LayoutFailure): string {
  const when = `week ${failure.week + 1} (from ${failure.firstDate})`;
  if (failure.status === "impossible") {
    return `The sessions of ${when} do not fit the client's week:`;
  }
  return failure.because === "node-limit"
    ? `No layout was found for ${when} within the search limit; there may be one.`
    : `No layout was found in which the sessions of ${when} go with those of the week before:`;
}

/** What would help, the least first, in groups: what they are, and the remedies. */
export function helpGroups({ least, larger, complete }: Explanation): readonly HelpGroup[] {
  const groups =
    least.length > 0
      ? [
          { lead: complete ? "The least that would help" : "This would help", remedies: least },
          { lead: besides(larger), remedies: larger },
        ]
      : [{ lead: `${noneOf(complete)} This would, all of it together`, remedies: larger }];
  return groups.filter(({ remedies }) => remedies.length > 0);
}

export interface HelpGroup {
  readonly lead: string;
  readonly remedies: readonly Remedy[];
}

/** What would help, the least first, as one text. */
export function helpSentence(explained: Explanation): string {
  const groups = helpGroups(explained).map(
    ({ lead, remedies }) => `${lead}: ${remedies.map(({ sentence }) => sentence).join(" Or: ")}`,
  );
  return groups.length > 0
    ? groups.join(" ")
    : `${noneOf(explained.complete)} Look again at what collides: recovery, time kept clear, and what has to share a session.`;
}

function besides(larger: readonly Remedy[]): string {
  const time = larger.some(({ changes }) => changes.some(asksForTime));
  return time ? "With the work as it is" : "With the free time as it is";
}

const noneOf = (complete: boolean): string =>
  complete
    ? "No single change of free time, sets or frequency helps, and no two together."
    : "No single change of free time, sets or frequency was found to help, and no two together; not all were tried.";
