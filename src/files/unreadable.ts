/** The fault of a file that is not there, or that cannot be read. */
import { Fault } from "../faults/fault.ts";

/**
 * file-unreadable, at the file's path as the user would write it.
 *
 * @param what what was looked for: a file, a plan
 * @param cause what the system said; where nothing did, the file is not there
 */
export function unreadable(file: string, what: string, cause?: unknown): Fault {
  const missing = cause === undefined || (cause as NodeJS.ErrnoException).code === "ENOENT";
  return new Fault(
    "file-unreadable",
    missing ? `There is no such ${what}.` : "This file cannot be read.",
    {
      place: { file, line: 1, column: 1 },
      hint: missing
        ? "Look at its path: paths begin in the folder you are in."
        : "See whether it is a file, and whether you may read it.",
      cause,
    },
  );
}
