/** Faults as people and programs read them. */
import { styleText } from "node:util";
import { asksWhy, type Edit, type Remedy } from "../edits/edit.ts";
import { Fault, FaultList, type Level, sortFaults } from "./fault.ts";

/**
 * A fault on a few lines: place, level and code; what is wrong; the lines of the file; what to do.
 *
 * @param numbered remedies by the numbers they are to be taken by; others are listed without
 */
export function faultText(fault: Fault, colour = false, numbered: readonly Remedy[] = []): string {
  const paint = (format: Parameters<typeof styleText>[0], text: string) =>
    colour ? styleText(format, text) : text;
  const place = fault.place
    ? `${paint("bold", `${fault.place.file}:${fault.place.line}:${fault.place.column}`)}  `
    : "";
  const level = paint(fault.level === "error" ? "red" : "yellow", fault.level);
  const lines = [`${place}${level}  ${fault.code}`, indent(fault.message)];
  if (fault.frame !== undefined) lines.push(indent(paint("dim", fault.frame)));
  if (fault.remedies.length > 0) lines.push(indent(remedyText(fault.remedies, numbered)));
  else if (fault.hint !== undefined) lines.push(indent(fault.hint));
  return lines.join("\n");
}

/** The remedies below what they are, each on a line of its own. */
function remedyText(remedies: readonly Remedy[], numbered: readonly Remedy[]): string {
  const lines = remedies.flatMap((remedy, at) => {
    const { lead, sentence } = remedy;
    const number = numbered.findIndex((one) => isSame(one, remedy)) + 1;
    const line = `${number > 0 ? String(number).padStart(3) : "  -"}  ${sentence}`;
    return remedies[at - 1]?.lead === lead ? [line] : [`${lead}:`, line];
  });
  return lines.join("\n");
}

/** All remedies of the faults in the order in which they are printed, each once: the first is number 1. */
export function numberedRemedies(faults: readonly Fault[]): readonly Remedy[] {
  const all = sortFaults(faults).flatMap(({ remedies }) => remedies);
  return all.filter((one, at) => all.findIndex((other) => isSame(other, one)) === at);
}

const isSame = (one: Remedy, other: Remedy): boolean =>
  JSON.stringify(one.edits) === JSON.stringify(other.edits);

/** The machine form of a fault. */
export interface FaultJson {
  readonly code: string;
  readonly level: Level;
  readonly file: string | null;
  readonly line: number | null;
  readonly column: number | null;
  readonly message: string;
  readonly hint: string | null;
  readonly remedies: readonly RemedyJson[];
}

interface RemedyJson {
  readonly sentence: string;
  /** Whether a reason is asked for: it takes the place of every null in the edits. */
  readonly needs_why: boolean;
  /** What to change in the front matter of the plan. */
  readonly edits: readonly Edit[];
}

/** A fault as `--json` prints it; the fields do not change their names. */
export function faultJson(fault: Fault): FaultJson {
  return {
    code: fault.code,
    level: fault.level,
    file: fault.place?.file ?? null,
    line: fault.place?.line ?? null,
    column: fault.place?.column ?? null,
    message: fault.message,
    hint: fault.hint ?? null,
    remedies: fault.remedies.map(({ sentence, edits }) => {
      return { sentence, needs_why: asksWhy(edits), edits };
    }),
  };
}

/** "2 errors, 1 warning", or "No problems". */
export function countText(faults: readonly Fault[]): string {
  const count = (level: Level, name: string) => {
    const n = faults.filter((fault) => fault.level === level).length;
    return n === 0 ? [] : [`${n} ${name}${n === 1 ? "" : "s"}`];
  };
  const counts = [...count("error", "error"), ...count("warning", "warning")];
  return counts.length === 0 ? "No problems" : counts.join(", ");
}

/** The faults in anything thrown; what the program did not foresee becomes an internal fault. */
export function faultsFrom(thrown: unknown): readonly Fault[] {
  if (thrown instanceof FaultList) return thrown.faults;
  if (thrown instanceof Fault) return [thrown];
  const code = (thrown as NodeJS.ErrnoException | undefined)?.code;
  if (code === "ENOSPC") return [new Fault("disk-full", "The disk is full.", { cause: thrown })];
  const message = thrown instanceof Error ? thrown.message : String(thrown);
  return [
    new Fault("internal", `The program made a mistake: ${message}`, {
      hint: "Please report this, with the command and what --verbose adds.",
      cause: thrown,
    }),
  ];
}

function indent(text: string): string {
  return text
    .split("\n")
    .map((line) => `  ${line}`)
    .join("\n");
}
