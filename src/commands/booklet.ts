/** `paulatim booklet`: HTML and PDF for one client or thousands. */
import { mkdirSync } from "node:fs";
import { join, resolve } from "node:path";
import { makeBooklet } from "../booklet.ts";
import { NO_LOOK } from "../clinic/look.ts";
import type { Booklet, Edition } from "../compose/model.ts";
import { Fault, isError } from "../faults/fault.ts";
import { faultsFrom } from "../faults/print.ts";
import { shippedFolder } from "../files/shipped.ts";
import { type Output, writeAll } from "../files/write.ts";
import { type BookletAssets, loadAssets } from "../html/assets.ts";
import { companionOf, loadCompanion } from "../html/companion.ts";
import { renderHtml } from "../html/html.ts";
import type { PrintBooklet } from "../pdf/booklet-pdf.ts";
import { dayOf, printFaults, type Terminal } from "../terminal/terminal.ts";
import { loadWords } from "../words/load-words.ts";
import type { Words } from "../words/words.ts";
import { Workspaces } from "./one-plan.ts";
import { passwordFrom } from "./password.ts";
import { Tally } from "./tally.ts";

export interface BookletOptions {
  readonly formats?: string;
  readonly out?: string;
  readonly edition?: string;
  readonly passwordFile?: string;
  readonly browser?: string;
  readonly date?: string;
  readonly strict?: boolean;
}

const FORMATS = ["html", "pdf", "ics"] as const;
type Format = (typeof FORMATS)[number];

/** A booklet ready to be printed and written. */
interface Job {
  readonly plan: string;
  readonly id: string;
  readonly booklet: Booklet;
}

/** Writes the booklets of all plans into the output folder. Returns the exit status. */
export async function booklet(
  plans: readonly string[],
  options: BookletOptions,
  terminal: Terminal,
): Promise<number> {
  const formats = formatsOf(options);
  const run: Run = {
    formats,
    companion: formats.includes("html") ? await loadCompanion() : "",
    password:
      options.passwordFile === undefined
        ? undefined
        : passwordFrom(options.passwordFile, terminal.cwd),
    edition: editionOf(options.edition),
    day: dayOf(options.date, terminal),
    out: resolve(terminal.cwd, options.out ?? "out"),
    strict: options.strict ?? false,
    terminal,
    tally: new Tally(plans.length, terminal),
    used: new Map(),
  };
  const printer = run.formats.includes("pdf")
    ? await findPrinter(options, terminal, run.tally)
    : undefined;
  const workspaces = new Workspaces(terminal, run.day);
  for (const [clinic, group] of byClinic(plans, workspaces)) {
    await writeGroup(clinic, group, workspaces, printer, run);
  }
  return run.tally.finish();
}

/** What all plans of a call share. */
interface Run {
  readonly formats: readonly Format[];
  /** The script of the companion in every HTML file. */
  readonly companion: string;
  /** Locks the PDFs. */
  readonly password: string | undefined;
  readonly edition: Edition;
  readonly day: string;
  readonly out: string;
  readonly strict: boolean;
  readonly terminal: Terminal;
  readonly tally: Tally;
  /** Ids of the plans so far, and the plan that has each. */
  readonly used: Map<string, string>;
}

/** Plans by clinic: each clinic has words and templates of its own. */
function byClinic(
  plans: readonly string[],
  workspaces: Workspaces,
): Map<string | undefined, string[]> {
  const groups = new Map<string | undefined, string[]>();
  for (const plan of plans) {
    const clinic = workspaces.clinicOf(plan);
    groups.set(clinic, [...(groups.get(clinic) ?? []), plan]);
  }
  return groups;
}

async function writeGroup(
  clinicFolder: string | undefined,
  plans: readonly string[],
  workspaces: Workspaces,
  printer: PrintBooklet | undefined,
  run: Run,
): Promise<void> {
  const { formats, day, tally } = run;
  const workspace = clinicFolder === undefined ? undefined : workspaces.open(clinicFolder);
  const look = workspace?.look ?? NO_LOOK;
  const { language, locale } = workspace?.clinic?.value ?? { language: "en", locale: "en-GB" };
  const words = loadWords(language, locale, look.words);
  const assets = await loadAssets(join(shippedFolder(), "templates"), words, look.templates);
  const jobs = () => readJobs(plans, workspaces, words, run);
  if (printer) {
    const bookletOf = (job: Job) => job.booklet;
    await printer(jobs(), bookletOf, { assets, day }, async (job, result) => {
      if ("faults" in result) tally.failed(job.plan, result.faults);
      else await tally.guard(job.plan, () => writeJob(job, result.pdf, assets, run));
    });
  } else if (formats.some((format) => format !== "pdf")) {
    for (const job of jobs()) {
      await tally.guard(job.plan, () => writeJob(job, undefined, assets, run));
    }
  }
}

/** All files of one booklet, written together. */
async function writeJob(
  job: Job,
  pdf: Uint8Array | undefined,
  assets: BookletAssets,
  { formats, companion, password, out, tally }: Run,
): Promise<void> {
  const files: Output[] = [];
  const add = (format: Format, content: Output["content"]) =>
    files.push({ path: join(out, `${job.id}.${format}`), content });
  if (formats.includes("html")) add("html", companionHtml(job.booklet, assets, companion));
  if (pdf) add("pdf", password === undefined ? pdf : await locked(pdf, password));
  if (formats.includes("ics")) {
    const { calendarFile } = await import("../calendar/calendar-file.ts");
    add("ics", calendarFile(job.booklet));
  }
  makeFolder(out);
  await writeAll(files);
  tally.done(files.map(({ path }) => path));
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

/** Reads plans one after the other, so that thousands of booklets need no more memory than a few. */
function* readJobs(
  plans: readonly string[],
  workspaces: Workspaces,
  words: Words,
  { day, edition, strict, terminal, tally, used }: Run,
): Generator<Job> {
  for (const plan of plans) {
    const { value, faults } = workspaces.make(plan);
    printFaults(terminal, faults);
    const stops = !value || faults.some(isError) || (strict && faults.length > 0);
    if (stops) {
      tally.failed(plan, []);
      continue;
    }
    const { made, workspace } = value;
    const id = made.plan.value.id;
    const first = used.get(id);
    if (first !== undefined) {
      const place = made.plan.source.at(["id"]);
      tally.failed(plan, [
        new Fault("duplicate-id", `The plan id ${id} is used by ${plan} and by ${first}.`, {
          place,
          frame: made.plan.source.frame(place),
          hint: "Booklets are named by it: give one of them another id.",
        }),
      ]);
      continue;
    }
    used.set(id, plan);
    const name = edition === "standard" ? id : `${id}-${edition}`;
    yield { plan, id: name, booklet: makeBooklet(made, workspace, words, day, edition) };
  }
}

/** A browser to print with; without one the HTML is still written, and the fault told. */
async function findPrinter(
  options: BookletOptions,
  terminal: Terminal,
  tally: Tally,
): Promise<PrintBooklet | undefined> {
  const { printerFor, closeOnExit } = await import("../pdf/booklet-pdf.ts");
  closeOnExit();
  try {
    return await printerFor({
      setting: options.browser,
      env: terminal.env,
      platform: terminal.platform,
    });
  } catch (thrown) {
    tally.failed(undefined, faultsFrom(thrown));
    return undefined;
  }
}

/** Only a PDF can be locked: with a password nothing is written that anyone could read. */
function formatsOf({ formats, passwordFile }: BookletOptions): readonly Format[] {
  const usual = passwordFile === undefined ? "html,pdf" : "pdf";
  const wanted = (formats ?? usual).split(",").map((one) => one.trim().toLowerCase());
  const odd = wanted.find((one) => !FORMATS.includes(one as Format));
  if (odd !== undefined) {
    throw new Fault("usage", `There is no format "${odd}".`, {
      hint: `Formats: ${FORMATS.join(", ")}.`,
    });
  }
  const open = wanted.find((one) => one !== "pdf");
  if (passwordFile !== undefined && open !== undefined) {
    throw new Fault("usage", `A password cannot lock ${open}, only pdf.`, {
      hint: "Leave --formats out, or write the other formats without a password.",
    });
  }
  return wanted as Format[];
}

function editionOf(text = "standard"): Edition {
  const found = EDITIONS.find((one) => one === text.toLowerCase());
  if (!found) {
    throw new Fault("usage", `There is no edition "${text}".`, {
      hint: `Editions: ${EDITIONS.join(", ")}.`,
    });
  }
  return found;
}

const EDITIONS: readonly Edition[] = ["standard", "large", "summary"];

function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true });
  } catch (cause) {
    throw new Fault("output-unwritable", `The folder ${folder} cannot be made.`, { cause });
  }
}
