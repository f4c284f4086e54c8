/** The one error of the program: what is wrong, where, and what to do about it. */
import type { Remedy } from "../edits/edit.ts";
import { CATALOGUE, type FaultCode } from "./catalogue.ts";

/** `error` stops the output it belongs to; `warning` does not. */
export type Level = "error" | "warning";

/** A place in a file: the path as the user would write it; line and column count from 1. */
export interface Place {
  readonly file: string;
  readonly line: number;
  readonly column: number;
}

export interface FaultDetails {
  readonly level?: Level;
  readonly place?: Place | undefined;
  readonly hint?: string | undefined;
  /** The offending lines of the file, ready to print. */
  readonly frame?: string | undefined;
  /** Edits of the plan that would do away with it, the least first. */
  readonly remedies?: readonly Remedy[] | undefined;
  readonly cause?: unknown;
}

export class Fault extends Error {
  readonly code: FaultCode;
  readonly level: Level;
  readonly place: Place | undefined;
  readonly hint: string | undefined;
  readonly frame: string | undefined;
  readonly remedies: readonly Remedy[];

  constructor(code: FaultCode, message: string, details: FaultDetails = {}) {
    super(message, details.cause === undefined ? undefined : { cause: details.cause });
    this.name = "Fault";
    this.code = code;
    this.level = details.level ?? "error";
    this.place = details.place;
    this.hint = details.hint;
    this.frame = details.frame;
    this.remedies = details.remedies ?? [];
  }

  /** Exit status that this fault asks for when it stops the program. */
  get exit(): number {
    return CATALOGUE[this.code].exit;
  }
}

/** A result together with what there is to say about it. */
export interface WithFaults<T> {
  readonly value: T;
  readonly faults: readonly Fault[];
}

/** Several faults at once, thrown where a caller asked for a value and there is none. */
export class FaultList extends Error {
  readonly faults: readonly Fault[];

  constructor(faults: readonly Fault[]) {
    super(faults.map((fault) => fault.message).join("\n"));
    this.name = "FaultList";
    this.faults = faults;
  }
}

export const isError = (fault: Fault): boolean => fault.level === "error";

/** Sorts by file, line, column, then errors before warnings, then code; a stable order. */
export function sortFaults(faults: readonly Fault[]): Fault[] {
  return [...faults].sort(
    (a, b) =>
      compare(a.place?.file ?? "", b.place?.file ?? "") ||
      (a.place?.line ?? 0) - (b.place?.line ?? 0) ||
      (a.place?.column ?? 0) - (b.place?.column ?? 0) ||
      compare(a.level, b.level) ||
      compare(a.code, b.code) ||
      compare(a.message, b.message),
  );
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
