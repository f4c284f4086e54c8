/** A load left to feel, in the client's words. */

import { show } from "../units/rounding.ts";
import type { Work } from "./context.ts";

/** A load without a number, in the client's words. */
export function feltLoad(what: string, work: Work): string {
  const { effort, target } = work.stated.dose;
  if (target?.kind === "rm") {
    return `${what} with which ${target.reps} repetitions are the most you can do well`;
  }
  if (target?.kind === "reserve") {
    return `${what} with which you could do ${target.reps} more repetitions`;
  }
  if (effort !== undefined) return `${what} that feels ${show(effort)} out of 10`;
  return `${what} with which you do every repetition well`;
}
