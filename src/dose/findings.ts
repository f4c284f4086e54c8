/** Collects what there is to say about a program, one fault for each cause, with the weeks it holds in. */

import type { Remedy } from "../edits/edit.ts";
import type { FaultCode } from "../faults/catalogue.ts";
import { Fault, type Level, type Place } from "../faults/fault.ts";
import { spansOf } from "../units/week-span.ts";

export interface Finding {
  readonly code: FaultCode;
  /** Findings of the same code and cause become one fault. */
  readonly cause: string;
  readonly level: Level;
  readonly place: () => Place | undefined;
  /** The message; `weeks` reads "week 3" or "weeks 6 to 12", or is empty where no week was given. */
  readonly say: (weeks: string) => string;
  readonly hint?: string | undefined;
  /** Edits of the plan that would do away with it, in all the weeks in which it was found. */
  readonly remedies?: (weeks: readonly number[]) => readonly Remedy[];
  /** Of several findings with the same cause the one with the highest number is told. */
  readonly weight?: number;
}

export class Findings {
  readonly #causes = new Map<string, { finding: Finding; weeks: number[] }>();

  /** `week` of the course; leave it out for what does not depend on the week. */
  add(finding: Finding, week?: number): void {
    const cause = `${finding.code} ${finding.cause}`;
    const known = this.#causes.get(cause);
    if (!known) {
      this.#causes.set(cause, { finding, weeks: week === undefined ? [] : [week] });
      return;
    }
    if (week !== undefined) known.weeks.push(week);
    if ((finding.weight ?? 0) > (known.finding.weight ?? 0)) known.finding = finding;
  }

  has(code: FaultCode, cause: string): boolean {
    return this.#causes.has(`${code} ${cause}`);
  }

  /**
   * One fault a cause, in the order in which the causes were first found. `frameOf` gives the lines
   * of the file around a place.
   */
  faults(frameOf: (place: Place) => string | undefined): Fault[] {
    return [...this.#causes.values()].map(({ finding, weeks }) => {
      const { code, level, hint } = finding;
      const remedies = finding.remedies?.(weeks);
      const place = finding.place();
      const frame = place && frameOf(place);
      return new Fault(code, finding.say(sayWeeks(weeks)), { level, hint, place, frame, remedies });
    });
  }
}

/** Weeks in words: "week 3", "weeks 6 to 12", "weeks 1, 4 and 6 to 8"; empty for none. */
export function sayWeeks(weeks: readonly number[]): string {
  const spans = spansOf(weeks).flatMap(({ first, last }) => {
    if (first === last) return [`${first}`];
    return last === first + 1 ? [`${first}`, `${last}`] : [`${first} to ${last}`];
  });
  if (spans.length === 0) return "";
  const only = new Set(weeks).size === 1;
  return `week${only ? "" : "s"} ${sayList(spans)}`;
}

/** "a", "a and b", "a, b and c". */
export function sayList(parts: readonly string[]): string {
  const last = parts.at(-1) ?? "";
  return parts.length < 2 ? last : `${parts.slice(0, -1).join(", ")} and ${last}`;
}
