/** An explanation in words: what does not fit, and what would help, for a fault's message and hint. */
import type { LayoutFailure } from "../program/program-types.ts";
import { asksForTime } from "./costs.ts";
import type { Explanation } from "./explain-types.ts";

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

/** What would help, the least first. */
export function helpSentence({ least, larger, complete }: Explanation): string {
  const said = (remedies: Explanation["least"]) =>
    remedies.map(({ sentence }) => sentence).join(" Or: ");
  if (least.length > 0) {
    const lead = complete ? "The least that would help" : "This would help";
    const time = larger.some(({ changes }) => changes.some(asksForTime));
    const besides = time ? "With the work as it is" : "With the free time as it is";
    const more = larger.length > 0 ? ` ${besides}: ${said(larger)}` : "";
    return `${lead}: ${said(least)}${more}`;
  }
  const none = complete
    ? "No single change of free time, sets or frequency helps, and no two together."
    : "No single change of free time, sets or frequency was found to help, and no two together; not all were tried.";
  return larger.length > 0
    ? `${none} This would, all of it together: ${said(larger)}`
    : `${none} Look again at what collides: recovery, time kept clear, and what has to share a session.`;
}
