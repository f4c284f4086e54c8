/** A client's outputs, made by the stages that the commands call, in their order. */
import { join } from "node:path";
import { makeBooklet, makeProgram } from "../../src/booklet.ts";
import { calendarFile } from "../../src/calendar/calendar-file.ts";
import { issue } from "../../src/calendar/issue.ts";
import type { Booklet } from "../../src/compose/model.ts";
import { type Fault, isError } from "../../src/faults/fault.ts";
import { diskTree, type Tree } from "../../src/files/tree.ts";
import { type BookletAssets, loadAssets } from "../../src/html/assets.ts";
import { companionOf, loadCompanion } from "../../src/html/companion.ts";
import { renderHtml } from "../../src/html/html.ts";
import { type IssuedRecord, readRecord, recordText } from "../../src/issued/record.ts";
import { printerFor } from "../../src/pdf/booklet-pdf.ts";
import { planJson } from "../../src/plan-text/json.ts";
import { planTable } from "../../src/plan-text/table.ts";
import { loadWords } from "../../src/words/load-words.ts";
import { openWorkspace, type Workspace } from "../../src/workspace.ts";
import { memoryTree } from "../support/memory-tree.ts";
import { asSigned } from "../support/signed.ts";
import { DAY, ROOT } from "../support/world.ts";
import type { Client } from "./clients.ts";
import { CLINICS, type ClinicText, clinicFile } from "./clinics.ts";

/** What a client and a program get, as text; and the booklet, for the printer alone. */
export interface Outputs {
  readonly client: Client;
  readonly html: string;
  readonly ics: string;
  /** The calendar file that came with the booklet before, which the client has taken in. */
  readonly icsBefore?: string | undefined;
  readonly json: string;
  readonly table: string;
  readonly booklet: Booklet;
}

/** A clinic with its files read, and the plan of the client at hand among them. */
interface Opened {
  readonly workspace: Workspace;
  readonly assets: BookletAssets;
  readonly plans: Map<string, string>;
}

const opened = new Map<string, Promise<Opened>>();
const companion = await loadCompanion();

/** The client's outputs, or the faults that say why there are none. */
export async function outputsOf(
  client: Client,
): Promise<Outputs | { readonly faults: readonly Fault[] }> {
  const { assets, workspace } = await open(client.clinic);
  const words = wordsOf(client.clinic);
  const make = await makerOf(client);
  const before = client.before && make(client.before.text, client.before.made);
  if (before && !before.made) return before;
  const now = make(client.text, client.made, before && throughItsFile(before.issued));
  if (!now.made) return now;
  const { made, booklet, faults, ics } = now;
  const script = companionOf(booklet, companion, assets.allWords);
  return {
    client,
    html: renderHtml(booklet, assets, script === undefined ? {} : { script }),
    ics,
    icsBefore: before?.ics,
    json: JSON.stringify(planJson(made, faults), null, 2),
    table: planTable(made, workspace.texts.library, words),
    booklet,
  };
}

/** Makes booklets of a client's plan, one after the other. */
async function makerOf({ clinic, path, edition }: Client) {
  const { workspace, plans } = await open(clinic);
  const words = wordsOf(clinic);
  return (text: string, day: string, record?: IssuedRecord) => {
    plans.set(path, text);
    const before = { today: day, recordOf: () => ({ value: record, faults: [] }) };
    const { value: unsigned, faults } = makeProgram(workspace, path, before);
    plans.delete(path);
    if (!unsigned || faults.some(isError)) return { faults };
    const value = asSigned(unsigned);
    const booklet = makeBooklet(value, workspace, words, day, edition);
    const issued = issue(booklet, value.program, record).value;
    return { made: value, booklet, issued, faults, ics: calendarFile(booklet, issued) };
  };
}

/** One of the booklets that a client gets in turn; `anew`: as if none had been issued before. */
export interface InTurn {
  readonly text: string;
  readonly made: string;
  readonly anew?: boolean;
}

/** The HTML files of booklets that a client gets one after the other; undefined where one of them cannot be made. */
export async function issuedInTurn(
  client: Client,
  all: readonly InTurn[],
): Promise<readonly string[] | undefined> {
  const { assets } = await open(client.clinic);
  const make = await makerOf(client);
  const files: string[] = [];
  let record: IssuedRecord | undefined;
  for (const { text, made, anew } of all) {
    const { booklet, issued } = make(text, made, anew ? undefined : record);
    if (!booklet) return undefined;
    record = throughItsFile(issued);
    const script = companionOf(booklet, companion, assets.allWords);
    files.push(renderHtml(booklet, assets, script === undefined ? {} : { script }));
  }
  return files;
}

/** A record as the next booklet finds it: written, and read again. */
function throughItsFile(record: IssuedRecord): IssuedRecord {
  const { value, faults } = readRecord("issued.json", recordText(record), record.plan);
  if (!value) throw new Error(faults.map(({ message }) => message).join(" "));
  return value;
}

let printing: ReturnType<typeof printerFor> | undefined;

/** Prints the booklets of several clients with one browser and hands over each as it comes. */
export async function printAll(
  all: readonly Outputs[],
  take: (outputs: Outputs, pdf: Uint8Array) => Promise<void>,
): Promise<void> {
  printing ??= printerFor({ env: process.env, platform: process.platform });
  const printer = await printing;
  for (const clinic of CLINICS) {
    const here = all.filter((outputs) => outputs.client.clinic === clinic);
    if (here.length === 0) continue;
    const { assets } = await open(clinic);
    await printer(
      here,
      ({ booklet }) => booklet,
      { assets, day: DAY },
      async (outputs, result) => {
        if ("faults" in result)
          throw new Error(
            `client ${outputs.client.seed} could not be printed: ${result.faults.map(({ message }) => message).join(" ")}`,
          );
        await take(outputs, result.pdf);
      },
    );
  }
}

const wordsOf = ({ language, locale }: ClinicText) => loadWords(language, locale);

function open(clinic: ClinicText): Promise<Opened> {
  const known = opened.get(clinic.folder);
  if (known) return known;
  const made = openNow(clinic);
  opened.set(clinic.folder, made);
  return made;
}

async function openNow(clinic: ClinicText): Promise<Opened> {
  const plans = new Map([[`${clinic.folder}/clinic.yaml`, clinicFile(clinic)]]);
  const workspace = openWorkspace({
    tree: treeWith(plans),
    clinicFolder: clinic.folder,
    shipped: ".",
    today: DAY,
  });
  const broken = workspace.faults.filter(isError);
  if (broken[0]) throw broken[0];
  return { workspace, assets: await loadAssets(join(ROOT, "templates"), wordsOf(clinic)), plans };
}

/** The package's files with those of a clinic that come and go. */
function treeWith(files: ReadonlyMap<string, string>): Tree {
  const disk = diskTree(ROOT);
  const memory = () => memoryTree(Object.fromEntries(files));
  return {
    list: (folder, ending) => disk.list(folder, ending),
    readBytes: (path) => (files.has(path) ? memory().readBytes(path) : disk.readBytes(path)),
    read: (path) => (files.has(path) ? memory().read(path) : disk.read(path)),
    exists: (path) => files.has(path) || disk.exists(path),
  };
}
