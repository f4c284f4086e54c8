/** `paulatim booklet`: HTML and PDF for one client or thousands. */
import { join, resolve } from "node:path";
import { NO_LOOK } from "../clinic/look.ts";
import type { Edition } from "../compose/model.ts";
import { Fault, isError } from "../faults/fault.ts";
import { faultsFrom } from "../faults/print.ts";
import { shippedFolder } from "../files/shipped.ts";
import { loadAssets } from "../html/assets.ts";
import { loadCompanion } from "../html/companion.ts";
import type { PrintBooklet } from "../pdf/booklet-pdf.ts";
import { dayOf, printFaults, type Terminal } from "../terminal/terminal.ts";
import { loadWords } from "../words/load-words.ts";
import type { Words } from "../words/words.ts";
import { type BookletOptions, editionOf, formatsOf } from "./booklet-options.ts";
import { IssuedRecords } from "./issued.ts";
import { issuedBooklet } from "./issued-booklet.ts";
import { Workspaces } from "./one-plan.ts";
import { passwordFrom } from "./password.ts";
import { Tally } from "./tally.ts";
import { type Job, type Writing, writeJob, writeUnprinted } from "./write-booklet.ts";

/** What all plans of a call share. */
interface Run extends Writing {
  readonly edition: Edition;
  readonly day: string;
  readonly terminal: Terminal;
  readonly issued: IssuedRecords;
  /** Ids of the plans so far, and the plan that has each. */
  readonly used: Map<string, string>;
}

/**
 * Writes the booklets of all plans into the output folder. Returns the exit status.
 *
 * @param print prints the PDFs, in place of the browser that `options` and the machine have
 */
export async function booklet(
  plans: readonly string[],
  options: BookletOptions,
  terminal: Terminal,
  print?: PrintBooklet,
): Promise<number> {
  const formats = formatsOf(options);
  const day = dayOf(options.date, terminal);
  const out = resolve(terminal.cwd, options.out ?? "out");
  const { issued } = options;
  const run: Run = {
    formats,
    issued: new IssuedRecords({ issued, out, today: day, plans: plans.length }, terminal),
    companion: formats.includes("html") ? await loadCompanion() : "",
    password:
      options.passwordFile === undefined
        ? undefined
        : passwordFrom(options.passwordFile, terminal.cwd),
    edition: editionOf(options.edition),
    day,
    out,
    strict: options.strict ?? false,
    terminal,
    tally: new Tally(plans.length, terminal),
    used: new Map(),
  };
  const printer = run.formats.includes("pdf")
    ? (print ?? (await findPrinter(options, terminal, run.tally)))
    : undefined;
  const workspaces = new Workspaces(terminal, run.day);
  for (const [clinic, group] of byClinic(plans, workspaces)) {
    await writeGroup(clinic, group, workspaces, printer, run);
  }
  return run.tally.finish();
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
      if ("faults" in result) await writeUnprinted(job, result.faults, assets, run);
      else await tally.guard(job.plan, () => writeJob(job, result, assets, run));
    });
  } else if (formats.some((format) => format !== "pdf")) {
    for (const job of jobs()) {
      await tally.guard(job.plan, () => writeJob(job, undefined, assets, run));
    }
  }
}

/** Reads plans one after the other, so that thousands of booklets need no more memory than a few. */
function* readJobs(
  plans: readonly string[],
  workspaces: Workspaces,
  words: Words,
  { day, edition, strict, terminal, tally, used, issued, password }: Run,
): Generator<Job> {
  for (const plan of plans) {
    const { value, faults: found } = workspaces.make(plan, issued);
    const ready = value && issuedBooklet(value, words, day, edition, issued);
    const faults = [...found, ...(ready?.faults ?? [])];
    printFaults(terminal, faults);
    if (!value || !ready || faults.some(isError) || (strict && faults.length > 0)) {
      tally.failed(plan, []);
      continue;
    }
    const { booklet, record } = ready.value;
    const { source } = value.made.plan;
    const id = booklet.plan;
    const first = used.get(id);
    if (first !== undefined) {
      const place = source.at(["id"]);
      tally.failed(plan, [
        new Fault("duplicate-id", `The plan id ${id} is used by ${plan} and by ${first}.`, {
          place,
          frame: source.frame(place),
          hint: "Booklets are named by it: give one of them another id.",
        }),
      ]);
      continue;
    }
    used.set(id, plan);
    const name = edition === "standard" ? id : `${id}-${edition}`;
    // A draft issues nothing, and beside a locked PDF nothing lies open but where the call says so.
    const isKept = !booklet.draft && (password === undefined || issued.named);
    yield { plan, id: name, booklet, record, kept: isKept ? [issued.output(record)] : [] };
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
