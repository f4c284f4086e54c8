/** What a command may ask of the world around it: where it stands, the day, and where its words go. */

import type { Remedy } from "../edits/edit.ts";
import { Fault, sortFaults } from "../faults/fault.ts";
import { countText, faultText } from "../faults/print.ts";
import { isDate } from "../units/dates.ts";

export interface Terminal {
  readonly cwd: string;
  readonly env: NodeJS.ProcessEnv;
  readonly platform: NodeJS.Platform;
  /** Today in the local calendar, YYYY-MM-DD. */
  readonly today: string;
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** Whether `out` and `err` go to a person at a terminal. */
  readonly colour: { readonly out: boolean; readonly err: boolean };
}

/**
 * Prints faults to standard error with a count at the end; nothing where there are none.
 *
 * @param numbered remedies by the numbers they are to be taken by
 */
export function printFaults(
  terminal: Terminal,
  faults: readonly Fault[],
  numbered: readonly Remedy[] = [],
): void {
  if (faults.length === 0) return;
  for (const fault of sortFaults(faults)) {
    terminal.err(`${faultText(fault, terminal.colour.err, numbered)}\n`);
  }
  terminal.err(countText(faults));
}

/** The day to work with: the option's, else SOURCE_DATE_EPOCH, else today. Throws a usage fault. */
export function dayOf(option: string | undefined, terminal: Terminal): string {
  const given = option ?? epochDay(terminal.env.SOURCE_DATE_EPOCH);
  if (given === undefined) return terminal.today;
  if (!isDate(given)) {
    throw new Fault("usage", `"${given}" is not a date; write it as YYYY-MM-DD.`);
  }
  return given;
}

function epochDay(epoch: string | undefined): string | undefined {
  if (epoch === undefined || !/^\d+$/.test(epoch)) return undefined;
  return new Date(Number(epoch) * 1000).toISOString().slice(0, 10);
}
