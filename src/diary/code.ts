/**
 * A diary as texts for QR codes, and back: for a client who shows the phone at the desk.
 *
 * The CSV without its byte order mark is deflated (RFC 1951) and written in Base45 (RFC 9285), then
 * cut into parts: PAULATIM1:part/parts:checksum:Base45: with the CRC-32 of the deflated whole. The
 * last colon says that nothing is missing at the end, where a space could be.
 */
import { deflateSync, Inflate } from "fflate";
import { decodeBase45, encodeBase45 } from "./base45.ts";
import { checksum } from "./checksum.ts";
import { LARGEST } from "./columns.ts";
import { diaryCsv, type ReadDiary, readDiary } from "./csv.ts";
import { textOf } from "./decode.ts";
import type { Diary } from "./entry.ts";
import { type DiaryProblem, inOrderOfPlace, ofFile, shown } from "./problem.ts";

/** Grows when the make-up of the codes changes. */
const CODE_VERSION = 1;

/** Longest part: QR version 15 with error correction M holds 600 such characters (ISO/IEC 18004, table 7). */
export const LONGEST_PART = 600;

/** Room for the header with four digits for each number, and the last colon. */
const PAYLOAD = LONGEST_PART - "PAULATIM1:9999/9999:FFFFFFFF::".length;

/** The texts of a diary, in order; one of them where it is short. */
export function diaryCodes(diary: Diary): string[] {
  const csv = new TextEncoder().encode(diaryCsv(diary).slice(1));
  const bytes = deflateSync(csv, { level: 9 });
  const text = encodeBase45(bytes);
  const parts = Math.max(1, Math.ceil(text.length / PAYLOAD));
  const size = Math.ceil(text.length / parts);
  const sum = checksum(bytes);
  return Array.from({ length: parts }, (_, n) => {
    const payload = text.slice(n * size, (n + 1) * size);
    return `PAULATIM${CODE_VERSION}:${n + 1}/${parts}:${sum}:${payload}:`;
  });
}

/** Whether a text holds something that begins as a code does. */
export const holdsCode = (text: string): boolean => /^[ \t]*PAULATIM\d+:/im.test(text);

interface Part {
  /** Number of the text it was in, from 1. */
  readonly line: number;
  readonly part: number;
  readonly parts: number;
  readonly sum: string;
  readonly payload: string;
}

/**
 * The diary in scanned texts, in any order, some of them several times, in capitals or not.
 * Nothing is read unless all parts of one diary are there and whole.
 */
export function readCodes(texts: readonly string[]): ReadDiary {
  const read = texts.flatMap(codesIn).map(readPart);
  const problems = read.flatMap((one) => ("code" in one ? [one] : []));
  const parts = read.flatMap((one) => ("code" in one ? [] : [one]));
  if (problems.length === 0 || parts.length > 0) problems.push(...setProblems(parts));
  if (problems.length > 0) return { diary: undefined, problems: inOrderOfPlace(problems) };
  const inOrder = [...parts].sort((a, b) => a.part - b.part);
  const once = inOrder.filter(({ part }, at) => part !== inOrder[at - 1]?.part);
  const csv = contentOf(once.map(({ payload }) => payload).join(""), parts[0]?.sum);
  if (csv === undefined) return { diary: undefined, problems: [ofFile("codes-damaged")] };
  // the lines of the text inside are no lines that anybody sees
  const { diary, problems: inside } = readDiary(csv);
  return { diary, problems: inside.map((problem) => ({ ...problem, line: 1, position: 1 })) };
}

interface Scanned {
  readonly line: number;
  readonly text: string;
}

/** The codes in one text: a scanner that sends no line end puts them one behind the other. */
function codesIn(text: string, at: number): Scanned[] {
  return text
    .replaceAll(/[\t\r\n\uFEFF]/g, "")
    .split(/(?=PAULATIM\d+:)/i)
    .filter((piece) => piece.trim() !== "")
    .map((piece) => ({ line: at + 1, text: piece.toUpperCase() }));
}

function readPart({ line, text }: Scanned): Part | DiaryProblem {
  const [, version, rest = ""] = /^ *PAULATIM([1-9]\d*):(.*)$/.exec(text) ?? [];
  if (version === undefined) return ofFile("code-unknown", { found: shown(text) }, line);
  if (Number(version) > CODE_VERSION)
    return ofFile("code-newer", { found: shown(version), known: CODE_VERSION }, line);
  const [, part, parts, sum, payload] =
    /^([1-9]\d{0,3})\/([1-9]\d{0,3}):([0-9A-F]{8}):(.*): *$/.exec(rest) ?? [];
  if (sum === undefined || payload === undefined) return ofFile("code-cut", {}, line);
  const numbers = { part: Number(part), parts: Number(parts) };
  if (numbers.part > numbers.parts) return ofFile("code-part", numbers, line);
  return { line, ...numbers, sum, payload };
}

/** Why these parts are not all of one diary. */
function setProblems(parts: readonly Part[]): DiaryProblem[] {
  const [first] = parts;
  if (!first) return [ofFile("not-a-diary")];
  const other = parts.find(({ sum, parts: n }) => sum !== first.sum || n !== first.parts);
  if (other)
    return [ofFile("codes-mixed", { first: nameOf(first), found: nameOf(other) }, other.line)];
  const seen = new Map<number, string>();
  for (const { part, payload, line } of parts) {
    const same = seen.get(part) ?? payload;
    if (same !== payload) return [ofFile("code-differs", { part }, line)];
    seen.set(part, payload);
  }
  if (seen.size === first.parts) return [];
  const missing = Array.from({ length: first.parts }, (_, n) => n + 1).filter((n) => !seen.has(n));
  const named = missing.length > 12 ? [...missing.slice(0, 12), "…"] : missing;
  return [ofFile("codes-missing", { missing: named.join(", "), parts: first.parts })];
}

const nameOf = ({ sum, parts }: Part): string =>
  `${sum} (${parts} ${parts === 1 ? "part" : "parts"})`;

/** The CSV in a Base45 text; undefined where it is not what the checksum was made of, or too large. */
function contentOf(text: string, sum: string | undefined): string | undefined {
  const bytes = decodeBase45(text);
  if (bytes === undefined || checksum(bytes) !== sum) return undefined;
  const content = inflated(bytes);
  return content && textOf(content);
}

/** Bytes fed at a time: deflate packs at most 1,032 to one, so that no step makes much more than 2 MB. */
const STEP = 2048;

/** Inflates, but never to more than a diary may have; undefined for more, and for what is not deflated. */
function inflated(bytes: Uint8Array): Uint8Array | undefined {
  const pieces: Uint8Array[] = [];
  let size = 0;
  const stream = new Inflate((piece) => {
    pieces.push(piece);
    size += piece.length;
  });
  try {
    for (let at = 0; at < bytes.length && size <= LARGEST; at += STEP) {
      stream.push(bytes.subarray(at, at + STEP), at + STEP >= bytes.length);
    }
  } catch {
    return undefined;
  }
  if (size > LARGEST) return undefined;
  const whole = new Uint8Array(size);
  let end = 0;
  for (const piece of pieces) {
    whole.set(piece, end);
    end += piece.length;
  }
  return whole;
}
