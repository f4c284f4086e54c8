/** What is wrong with a diary in the desk's words, with the place in the file. */
import type { FaultCode } from "../faults/catalogue.ts";
import { Fault, type Place } from "../faults/fault.ts";
import { frameOf } from "../read/source.ts";
import { COLUMNS, LARGEST } from "./columns.ts";
import { oneLine, printable } from "./printable.ts";
import type {
  DiaryProblem,
  DiaryProblemCode,
  FileProblemCode,
  ScanProblemCode,
} from "./problem.ts";

/** The faults of one file; `text` is what was read, for the lines around a place. */
export function diaryFaults(
  problems: readonly DiaryProblem[],
  file: string,
  text = "",
): readonly Fault[] {
  const lines = text.split(/\r\n|\r|\n/).map((line) => printable(line.replaceAll("\t", " ")));
  const framed = lines.join("\n");
  return problems.map((problem) => {
    const [code, message, hint] = sayings(problem)[problem.code];
    const place: Place = { file, line: problem.line, column: problem.position };
    const frame = code === "diary-broken" && text !== "" ? frameOf(framed, place) : undefined;
    return new Fault(code, message, { place, frame, hint });
  });
}

type Saying = readonly [code: FaultCode, message: string, hint?: string | undefined];

const AS_SENT = "Take the file as the client's phone wrote it.";
const AGAIN = "Scan it again.";
const LAYOUT = "If that does not help, set the scanner to the layout of the keyboard.";

function sayings({ column, values }: DiaryProblem): Readonly<Record<DiaryProblemCode, Saying>> {
  const of = (name: string): string => oneLine(String(values[name] ?? ""));
  const found = `"${of("found")}"`;
  const first = `"${of("first")}"`;
  const name = column ?? "This row";
  const form = column && `Here stands ${COLUMNS[column].kind.values}.`;
  return {
    ...ofFiles(of, name),
    "other-client": [
      "diaries-mixed",
      `${name}: ${found} is not ${first}, as in the rows before.`,
      "Give each diary as a file of its own.",
    ],
    "quotes-broken": [
      "diary-broken",
      "A quotation mark is not closed as it should be: nothing from this row on can be read.",
      "Put a text into quotation marks, and write those inside it twice.",
    ],
    "row-short": [
      "diary-broken",
      "This row ends too early: the file may have been cut off.",
      "Ask the client to send it once more.",
    ],
    "row-long": ["diary-broken", "This row has more cells than there are columns.", AS_SENT],
    "session-twice": [
      "diary-broken",
      `The session of ${of("session")} is there twice.`,
      "Give two diaries as two files: of each session the entry written last is taken.",
    ],
    "session-missing": [
      "diary-broken",
      `The session of ${of("session")} has exercises but no row of its own.`,
      AS_SENT,
    ],
    "value-wrong": ["diary-broken", `${name}: ${found} cannot stand here.`, form],
    "date-rewritten": [
      "diary-broken",
      `${name}: ${found} is not as the phone wrote it; a spreadsheet has probably changed it.`,
      `What was meant cannot be told from it. ${AS_SENT}`,
    ],
    "text-long": ["diary-broken", `${name}: this text is too long.`, form],
    "value-missing": ["diary-broken", `${name} is empty.`, form],
    "value-misplaced": [
      "diary-broken",
      `${name}: ${found} cannot stand in this row.`,
      column && `Only the row of ${ROWS[COLUMNS[column].rows]} has it.`,
    ],
    "value-differs": [
      "diary-broken",
      `${name}: ${found} is not ${first}, as in the session's own row.`,
      AS_SENT,
    ],
    ...ofCodes(of, found),
  };
}

const ROWS = {
  every: "a session",
  session: "the session as a whole",
  exercise: "an exercise",
} as const;

function ofFiles(of: (name: string) => string, column: string): Record<FileProblemCode, Saying> {
  return {
    "too-large": [
      "file-too-large",
      `This file has more than ${LARGEST / 1024 / 1024} MB; no diary has.`,
      AS_SENT,
    ],
    "not-text": [
      "diary-unreadable",
      "This file is not text in UTF-8.",
      "If a spreadsheet saved it, save it again as CSV in UTF-8.",
    ],
    "not-a-diary": [
      "diary-unreadable",
      "This is not a diary: it has neither a column paulatim_diary nor codes.",
      "Take the file that the client's phone wrote, or codes scanned from its screen.",
    ],
    "newer-version": [
      "diary-unreadable",
      `This diary has version ${of("found")}; versions up to ${of("known")} are read here.`,
      "Install a newer Paulatim.",
    ],
    "column-missing": ["diary-unreadable", `The column ${column} is missing.`, AS_SENT],
    "column-twice": ["diary-unreadable", `The column ${column} is there twice.`, AS_SENT],
    "too-many-rows": [
      "diary-unreadable",
      `This file has ${of("found")} rows; no diary has more than ${of("most")}.`,
      AS_SENT,
    ],
    "no-rows": ["diary-unreadable", "There is nothing under the names of the columns.", AS_SENT],
    more: ["diary-broken", `${of("n")} more problems follow.`, AS_SENT],
  };
}

function ofCodes(of: (name: string) => string, found: string): Record<ScanProblemCode, Saying> {
  return {
    "code-unknown": [
      "diary-code-broken",
      `${found} is no code of a diary; each begins with PAULATIM1:`,
      `${AGAIN} ${LAYOUT}`,
    ],
    "code-newer": [
      "diary-unreadable",
      `This code has version ${of("found")}; versions up to ${of("known")} are read here.`,
      "Install a newer Paulatim.",
    ],
    "code-cut": ["diary-code-broken", "This code is not all there.", `${AGAIN} ${LAYOUT}`],
    "code-part": ["diary-code-broken", `There is no part ${of("part")} of ${of("parts")}.`, AGAIN],
    "code-differs": [
      "diary-code-broken",
      `Part ${of("part")} is there twice, with different content.`,
      "Scan all parts again, into a new file.",
    ],
    "codes-missing": [
      "diary-code-broken",
      `Not all ${of("parts")} parts are there: ${of("missing")} missing.`,
      "Scan what is missing too; the order does not matter.",
    ],
    "codes-mixed": [
      "diary-code-broken",
      `Codes of two diaries are mixed: ${of("first")} and ${of("found")}.`,
      "Scan each diary into a file of its own.",
    ],
    "codes-damaged": [
      "diary-code-broken",
      "The codes do not give what they were made from.",
      `Scan all parts again. ${LAYOUT}`,
    ],
  };
}
