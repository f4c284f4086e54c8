/** `paulatim booklet`: HTML and PDF for one client or thousands. */
import { mkdirSync } from "node:fs";
import { join, resolve } from "node:path";
import { makeBooklet } from "../booklet.ts";
import type { Booklet, Edition } from "../compose/model.ts";
import { EXIT } from "../faults/catalogue.ts";
import { Fault, isError } from "../faults/fault.ts";
import { faultsFrom } from "../faults/print.ts";
import { shippedFolder } from "../files/shipped.ts";
import { type Output, writeAll } from "../files/write.ts";
import type { PrintBooklet } from "../render/booklet-pdf.ts";
import { renderHtml } from "../render/html.ts";
import { loadAssets } from "../render/html-assets.ts";
import { loadWords } from "../words/load-words.ts";
import { Workspaces } from "./one-plan.ts";
import { dayOf, type Terminal, tellFaults } from "./terminal.ts";

export interface BookletOptions {
  readonly formats?: string;
  readonly out?: string;
  readonly edition?: string;
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
  const formats = formatsOf(options.formats);
  const edition = editionOf(options.edition);
  const day = dayOf(options.date, terminal);
  const out = resolve(terminal.cwd, options.out ?? "out");
  const assets = await loadAssets(join(shippedFolder(), "templates"), loadWords("en", "en-GB"));
  const tally = new Tally(plans.length, terminal);
  const jobs = () => readJobs(plans, { day, edition }, options, terminal, tally);
  const write = async (job: Job, pdf: Uint8Array | undefined) => {
    makeFolder(out);
    const files: Output[] = [];
    const add = (format: Format, content: Output["content"]) =>
      files.push({ path: join(out, `${job.id}.${format}`), content });
    if (formats.includes("html")) add("html", renderHtml(job.booklet, assets));
    if (pdf) add("pdf", pdf);
    if (formats.includes("ics"))
      add("ics", (await import("../render/calendar-file.ts")).calendarFile(job.booklet));
    await writeAll(files);
    tally.done(files.map(({ path }) => path));
  };
  const printer = formats.includes("pdf") ? await findPrinter(options, terminal, tally) : undefined;
  if (!printer) {
    if (formats.some((format) => format !== "pdf")) {
      for (const job of jobs()) await tally.guard(job.plan, () => write(job, undefined));
    }
    return tally.finish();
  }
  await printer(
    jobs(),
    (job) => job.booklet,
    { assets, day },
    async (job, result) => {
      if ("faults" in result) tally.failed(job.plan, result.faults);
      else await tally.guard(job.plan, () => write(job, result.pdf));
    },
  );
  return tally.finish();
}

/** Reads plans one after the other, so that thousands of booklets need no more memory than a few. */
function* readJobs(
  plans: readonly string[],
  { day, edition }: { readonly day: string; readonly edition: Edition },
  options: BookletOptions,
  terminal: Terminal,
  tally: Tally,
): Generator<Job> {
  const workspaces = new Workspaces(terminal, day);
  const used = new Map<string, string>();
  for (const plan of plans) {
    const { value, faults } = workspaces.make(plan);
    tellFaults(terminal, faults);
    const stops = !value || faults.some(isError) || (options.strict && faults.length > 0);
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
    const { language, locale } = made.program.clinic;
    const words = loadWords(language, locale);
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
  const { printerFor, closeOnExit } = await import("../render/booklet-pdf.ts");
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

function formatsOf(text: string | undefined): readonly Format[] {
  const wanted = (text ?? "html,pdf").split(",").map((one) => one.trim().toLowerCase());
  const odd = wanted.find((one) => !FORMATS.includes(one as Format));
  if (odd !== undefined) {
    throw new Fault("usage", `There is no format "${odd}".`, {
      hint: `Formats: ${FORMATS.join(", ")}.`,
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

/** Counts what was written and what was not, says so as it goes, and knows the exit status. */
class Tally {
  readonly #total: number;
  readonly #terminal: Terminal;
  #written = 0;
  #failed = 0;
  #status: number = EXIT.done;

  constructor(total: number, terminal: Terminal) {
    this.#total = total;
    this.#terminal = terminal;
  }

  done(paths: readonly string[]): void {
    this.#written += 1;
    if (this.#total === 1) this.#terminal.out(paths.join("\n"));
    else this.#progress();
  }

  failed(plan: string | undefined, faults: readonly Fault[]): void {
    if (plan !== undefined) this.#failed += 1;
    this.#status = Math.max(this.#status, EXIT.input, ...faults.map((fault) => fault.exit));
    tellFaults(this.#terminal, faults);
  }

  /** Runs a step of one plan; a fault of it does not stop the others. */
  async guard(plan: string, step: () => Promise<void>): Promise<void> {
    try {
      await step();
    } catch (thrown) {
      this.failed(plan, faultsFrom(thrown));
    }
  }

  finish(): number {
    if (this.#total > 1) {
      const failed = this.#failed > 0 ? `, ${this.#failed} not` : "";
      this.#terminal.out(`${this.#written} of ${this.#total} booklets written${failed}.`);
    }
    return this.#status;
  }

  /** A line for every hundredth part of the work, at most. */
  #progress(): void {
    const step = Math.max(1, Math.floor(this.#total / 100));
    if (this.#written % step === 0) this.#terminal.err(`${this.#written} of ${this.#total}`);
  }
}
