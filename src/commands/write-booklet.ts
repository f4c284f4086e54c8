/** Writes the files of one booklet together: what could be made of it, or what is wrong with it. */
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import type { Booklet } from "../compose/model.ts";
import { EXIT } from "../faults/catalogue.ts";
import { Fault } from "../faults/fault.ts";
import { type Output, writeAll } from "../files/write.ts";
import type { BookletAssets } from "../html/assets.ts";
import { companionOf } from "../html/companion.ts";
import { renderHtml } from "../html/html.ts";
import type { IssuedRecord } from "../issued/record.ts";
import type { FinishedPdf } from "../pdf/post-process.ts";
import type { UnfinishedPdf } from "../pdf/print-numbered.ts";
import type { Format } from "./booklet-options.ts";
import type { Tally } from "./tally.ts";

/** A booklet ready to be printed and written. */
export interface Job {
  readonly plan: string;
  readonly id: string;
  readonly booklet: Booklet;
  /** What it issues, and the file that keeps it where there is to be one. */
  readonly record: IssuedRecord;
  readonly kept: readonly Output[];
}

/** How the files of every booklet of a call are written. */
export interface Writing {
  readonly formats: readonly Format[];
  /** The script of the companion in every HTML file. */
  readonly companion: string;
  /** Locks the PDFs. */
  readonly password: string | undefined;
  readonly out: string;
  readonly strict: boolean;
  readonly tally: Tally;
}

/**
 * A booklet that could not be printed: what is wrong with the plan or the clinic's templates leaves
 * no file; where the browser or the printing failed, the other formats are written.
 */
export async function writeUnprinted(
  job: Job,
  faults: readonly Fault[],
  assets: BookletAssets,
  run: Writing,
): Promise<void> {
  const atFault = faults.some(({ exit }) => exit === EXIT.input);
  if (atFault || run.formats.every((format) => format === "pdf")) {
    run.tally.failed(job.plan, faults);
    return;
  }
  run.tally.failed(undefined, faults);
  await run.tally.guard(job.plan, () => writeJob(job, undefined, assets, run));
}

/** That a PDF is as the browser made it: a warning. */
export function unfinished({ message, hint }: Fault): Fault {
  const left = `${message} It is written as the browser made it: its contents have no page numbers, and it does not claim to be accessible.`;
  return new Fault("pdf-unfinished", left, { level: "warning", hint });
}

/** All files of one booklet, written together. */
export async function writeJob(
  job: Job,
  printed: FinishedPdf | UnfinishedPdf | undefined,
  assets: BookletAssets,
  run: Writing,
): Promise<void> {
  const { formats, companion, password, out, strict, tally } = run;
  if (printed && "broken" in printed) {
    const { message, hint } = printed.broken;
    // What cannot be read cannot be locked: an open file in place of a locked one is no help.
    if (strict || password !== undefined) {
      const why = password === undefined ? "" : " It cannot be locked with the password.";
      const fault = new Fault("pdf-broken", `${message}${why}`, { hint, cause: printed.broken });
      await writeUnprinted(job, [fault], assets, run);
      return;
    }
    tally.warned([unfinished(printed.broken)]);
  }
  const pdf = printed?.pdf;
  const files: Output[] = [];
  const add = (format: Format, content: Output["content"]) =>
    files.push({ path: join(out, `${job.id}.${format}`), content });
  if (formats.includes("html")) add("html", companionHtml(job.booklet, assets, companion));
  if (pdf) add("pdf", password === undefined ? pdf : await locked(pdf, password));
  if (formats.includes("ics")) {
    const { calendarFile } = await import("../calendar/calendar-file.ts");
    add("ics", calendarFile(job.booklet, job.record));
  }
  makeFolder(out);
  await writeAll([...files, ...job.kept]);
  tally.done([...files, ...job.kept].map(({ path }) => path));
}

/** The file to read, print and carry on a phone; PDFs are printed from the booklet alone. */
function companionHtml(booklet: Booklet, assets: BookletAssets, code: string): string {
  const script = companionOf(booklet, code, assets.allWords);
  return renderHtml(booklet, assets, script === undefined ? {} : { script });
}

async function locked(pdf: Uint8Array, password: string): Promise<Uint8Array> {
  const { protectPdf } = await import("../pdf/protection/protect.ts");
  return protectPdf(pdf, { password });
}

function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true });
  } catch (cause) {
    throw new Fault("output-unwritable", `The folder ${folder} cannot be made.`, { cause });
  }
}
