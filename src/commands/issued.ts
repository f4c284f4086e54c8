/** Where the record of what was issued lies, and how it is read and written beside the booklet. */
import { relative, resolve, sep } from "node:path";
import type { IssuedBefore } from "../booklet.ts";
import { Fault, isError, type WithFaults } from "../faults/fault.ts";
import { diskTree } from "../files/tree.ts";
import type { Output } from "../files/write.ts";
import { type IssuedRecord, readRecord, recordText } from "../issued/record.ts";
import type { Terminal } from "../terminal/terminal.ts";

export interface IssuedOptions {
  /** A record's file, or "none" to lay out as if nothing had been issued. */
  readonly issued?: string | undefined;
  /** The folder of the booklets, where records lie unless one is named. */
  readonly out: string;
  /** The day to work with, YYYY-MM-DD. */
  readonly today: string;
  readonly plans: number;
}

/** The records of the plans of one call. */
export class IssuedRecords implements IssuedBefore {
  readonly today: string;
  /** Whether the call names the record's file. */
  readonly named: boolean;
  readonly #anew: boolean;
  readonly #options: IssuedOptions;
  readonly #terminal: Terminal;

  /** Throws a usage fault where one file is named for several plans. */
  constructor(options: IssuedOptions, terminal: Terminal) {
    this.today = options.today;
    this.#anew = options.issued?.toLowerCase() === "none";
    this.named = options.issued !== undefined && !this.#anew;
    this.#options = options;
    this.#terminal = terminal;
    if (this.named && options.plans > 1) {
      throw new Fault("usage", `--issued names one file, but there are ${options.plans} plans.`, {
        hint: "Make their booklets one by one, or leave --issued out.",
      });
    }
  }

  /** What the layout is to stay near to. */
  recordOf(plan: string): WithFaults<IssuedRecord | undefined> {
    return this.#anew ? { value: undefined, faults: [] } : this.#read(plan);
  }

  /**
   * What the calendar counts its revisions from: also where all is laid out anew, for the client's
   * calendar still holds what was issued. What cannot be read then is no more than a warning.
   */
  revisionsOf(plan: string): WithFaults<IssuedRecord | undefined> {
    const { value, faults } = this.#read(plan);
    if (!this.#anew) return { value, faults: [] };
    const warnings = faults.filter(isError).map(
      ({ code, message, place, frame }) =>
        new Fault(code, message, {
          level: "warning",
          place,
          frame,
          hint: "It is replaced. What only it names stays in the client's calendar: tell the client.",
        }),
    );
    return { value, faults: warnings };
  }

  /** The record's file to write beside a booklet. */
  output(record: IssuedRecord): Output {
    return { path: this.#path(record.plan), content: recordText(record) };
  }

  #path(plan: string): string {
    const { issued, out } = this.#options;
    return this.named && issued !== undefined
      ? resolve(this.#terminal.cwd, issued)
      : resolve(out, `${plan}.issued.json`);
  }

  #read(plan: string): WithFaults<IssuedRecord | undefined> {
    const path = this.#path(plan);
    const shown = relative(this.#terminal.cwd, path).split(sep).join("/");
    const tree = diskTree(this.#terminal.cwd);
    if (!tree.exists(shown)) {
      if (!this.named) return { value: undefined, faults: [] };
      const place = { file: shown, line: 1, column: 1 };
      const fault = new Fault("issued-unread", "There is no such record: it is begun here.", {
        level: "warning",
        place,
        hint: "If the client already has a booklet of this plan, name the record that lies beside it.",
      });
      return { value: undefined, faults: [fault] };
    }
    const reading = tree.read(shown);
    if (reading.fault) return { value: undefined, faults: [reading.fault] };
    return readRecord(shown, reading.text, plan);
  }
}
