/** `paulatim diary`: what a client wrote down, from the files sent or the codes scanned from the phone. */

import { createReadStream } from "node:fs";
import { resolve } from "node:path";
import { holdsCode, readCodes } from "../diary/code.ts";
import { LARGEST } from "../diary/columns.ts";
import { diaryCsv, type ReadDiary, readDiary } from "../diary/csv.ts";
import { textOf } from "../diary/decode.ts";
import type { Diary } from "../diary/entry.ts";
import { diaryFaults } from "../diary/faults.ts";
import { diaryJson } from "../diary/json.ts";
import { mergeDiaries } from "../diary/merge.ts";
import { printable, printableJson } from "../diary/printable.ts";
import { ofFile } from "../diary/problem.ts";
import { diaryTable } from "../diary/table.ts";
import { EXIT } from "../faults/catalogue.ts";
import { Fault, sortFaults } from "../faults/fault.ts";
import { unreadable } from "../files/unreadable.ts";
import { writeAll } from "../files/write.ts";
import { printFaults, type Terminal } from "../terminal/terminal.ts";
import { shownPath } from "./check.ts";

export interface DiaryOptions {
  readonly json?: boolean;
  /** File to write the diaries into as one. */
  readonly csv?: string;
}

/** Standard input: a scanner types into it as a keyboard does. */
export interface Input extends AsyncIterable<Uint8Array> {
  readonly isTTY?: boolean;
}

/**
 * Puts the diaries of one client together and prints them. What cannot be read is told, and
 * nothing is written then. Returns the exit status. Throws `output-unwritable` or `disk-full`.
 */
export async function diary(
  paths: readonly string[],
  options: DiaryOptions,
  terminal: Terminal,
  input: Input = process.stdin,
): Promise<number> {
  const sent: Sent[] = [];
  for (const path of new Set(paths)) sent.push(await readSent(path, terminal, input));
  const mixed = mixedFaults(sent);
  const faults = sortFaults([...sent.flatMap((one) => one.faults), ...mixed]);
  const diaries = mixed.length > 0 ? [] : sent.flatMap((one) => one.diary ?? []);
  const [first, ...others] = diaries;
  const whole = first && others.reduce(mergeDiaries, first);
  if (options.json) terminal.out(printableJson(diaryJson(whole, faults)));
  else {
    if (whole) terminal.out(diaryTable(whole));
    printFaults(terminal, faults);
  }
  if (options.csv !== undefined) {
    if (!whole || faults.length > 0) terminal.err(`${options.csv} was not written.`);
    else {
      const path = resolve(terminal.cwd, options.csv);
      await writeAll([{ path, content: diaryCsv(whole) }]);
      if (!options.json) terminal.out(`\n${path}`);
    }
  }
  return faults.length > 0 ? EXIT.input : EXIT.done;
}

/** What came from one file. */
interface Sent {
  readonly file: string;
  readonly diary: Diary | undefined;
  readonly faults: readonly Fault[];
}

async function readSent(path: string, terminal: Terminal, input: Input): Promise<Sent> {
  const typed = path === "-";
  // a client may have chosen the name of a file as well
  const file = typed ? "standard input" : printable(shownPath(path, terminal.cwd));
  if (typed && input.isTTY) terminal.err("Scan the codes, then press Ctrl-D.");
  let bytes: Uint8Array;
  try {
    bytes = await bytesOf(typed ? input : createReadStream(resolve(terminal.cwd, path)));
  } catch (cause) {
    return { file, diary: undefined, faults: [unreadable(file, "file", cause)] };
  }
  const text = bytes.length > LARGEST ? undefined : textOf(bytes);
  const unread = ofFile(bytes.length > LARGEST ? "too-large" : "not-text");
  const read = text === undefined ? { diary: undefined, problems: [unread] } : readText(text);
  return { file, diary: read.diary, faults: diaryFaults(read.problems, file, text) };
}

/** A diary's file, or a list of codes. */
export const readText = (text: string): ReadDiary =>
  !isTable(text) && holdsCode(text) ? readCodes(text.split(/\r\n|\r|\n/)) : readDiary(text);

const isTable = (text: string): boolean => /^[^\r\n]*paulatim_diary/i.test(text);

/** All bytes, but not many more than a diary may have. */
async function bytesOf(stream: AsyncIterable<Uint8Array>): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  let size = 0;
  for await (const chunk of stream) {
    chunks.push(chunk);
    size += chunk.length;
    if (size > LARGEST) break;
  }
  return Buffer.concat(chunks);
}

/** One fault for each file that is of another client or plan than the first. */
function mixedFaults(sent: readonly Sent[]): Fault[] {
  const first = sent.find(({ diary }) => diary !== undefined);
  return sent.flatMap(({ file, diary }) => {
    if (!first?.diary || !diary) return [];
    const { plan, client } = first.diary;
    if (diary.plan === plan && diary.client === client) return [];
    const message = `This is the diary of ${whose(diary)}; ${first.file} is that of ${whose(first.diary)}.`;
    return new Fault("diaries-mixed", message, {
      place: { file, line: 1, column: 1 },
      hint: "Give the diaries of one client and plan at a time.",
    });
  });
}

const whose = ({ plan, client }: Diary): string =>
  `"${printable(client)}" with the plan ${printable(plan)}`;
