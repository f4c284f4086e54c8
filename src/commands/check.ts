/** `paulatim check`: every problem of cards, protocols and plans, in one run. */

import { isAbsolute, join, relative, resolve, sep } from "node:path";
import { type MadeProgram, makeProgram } from "../booklet.ts";
import { figureFaults } from "../cards/figures.ts";
import { CLINIC_FILE } from "../clinic/read-clinic.ts";
import { EXIT } from "../faults/catalogue.ts";
import { Fault, isError, sortFaults } from "../faults/fault.ts";
import { countText, faultJson, faultsFrom, faultText } from "../faults/print.ts";
import { shippedFolder } from "../files/shipped.ts";
import { diskTree, type Tree } from "../files/tree.ts";
import { unreadable } from "../files/unreadable.ts";
import type { Source } from "../read/source.ts";
import {
  cardTextFaults,
  clinicTextFaults,
  planTextFaults,
  protocolTextFaults,
  USUAL_GRADE,
} from "../readability/text-faults.ts";
import {
  cardTitleFaults,
  protocolTitleFaults,
  titlesByLanguage,
} from "../readability/titles-in-words.ts";
import { dayOf, type Terminal } from "../terminal/terminal.ts";
import { translatedCards, translatedProtocols } from "../translations/in-language.ts";
import { TRANSLATED } from "../words/languages.ts";
import { loadWords } from "../words/load-words.ts";
import {
  CARDS_FOLDER,
  clinicFolderOf,
  openWorkspace,
  PROTOCOLS_FOLDER,
  type Workspace,
} from "../workspace.ts";
import { withCauses } from "./causes.ts";
import { IssuedRecords } from "./issued.ts";
import { issuedBooklet } from "./issued-booklet.ts";

export interface CheckOptions {
  readonly json?: boolean;
  readonly strict?: boolean;
  readonly date?: string;
  /** What the client already has, or "none", as for `booklet`. */
  readonly issued?: string;
  /** The folder of the booklets, where that lies unless it is named. */
  readonly out?: string;
}

/** Checks the paths (by default the folder one stands in) and prints what is wrong. Returns the exit status. */
export async function check(
  paths: readonly string[],
  options: CheckOptions,
  terminal: Terminal,
): Promise<number> {
  const tree = diskTree(terminal.cwd);
  const today = dayOf(options.date, terminal);
  const shown = (paths.length > 0 ? paths : ["."]).map((path) => shownPath(path, terminal.cwd));
  const out = resolve(terminal.cwd, options.out ?? "out");
  const records = { issued: options.issued, out, today, plans: shown.length };
  const issued = new IssuedRecords(records, terminal);
  const faults = sortFaults(unique(await checkPaths(tree, shown, terminal.cwd, issued)));
  if (options.json) {
    terminal.out(JSON.stringify(faults.map(faultJson), null, 2));
  } else {
    for (const fault of faults) terminal.out(`${faultText(fault, terminal.colour.out)}\n`);
    terminal.out(`${countText(faults)}.`);
  }
  const bad = options.strict ? faults.length > 0 : faults.some(isError);
  return bad ? EXIT.input : EXIT.done;
}

/** A path as the tree names it: from where one stands, with forward slashes. */
export function shownPath(path: string, cwd: string): string {
  const full = isAbsolute(path) ? path : resolve(cwd, path);
  return relative(cwd, full).split(sep).join("/") || ".";
}

async function checkPaths(
  tree: Tree,
  paths: readonly string[],
  cwd: string,
  issued: IssuedRecords,
): Promise<Fault[]> {
  const { today } = issued;
  const shipped = shownPath(shippedFolder(), cwd);
  const faults: Fault[] = [];
  const groups = new Map<string | undefined, Set<string>>();
  const known = new Map<string, string | undefined>();
  for (const path of paths) {
    if (!tree.exists(path)) {
      faults.push(unreadable(path, "file or folder"));
      continue;
    }
    for (const file of filesAt(tree, path, faults, known)) {
      const clinic = clinicFolderOf(tree, file, known);
      groups.set(clinic, (groups.get(clinic) ?? new Set()).add(file));
    }
  }
  for (const [clinicFolder, files] of groups) {
    faults.push(...(await checkGroup({ tree, clinicFolder, shipped, today }, files, issued)));
  }
  return faults;
}

/** The files of one clinic, or of a library that belongs to none. */
async function checkGroup(
  place: Omit<Parameters<typeof openWorkspace>[0], "cardFolders" | "protocolFolders">,
  files: ReadonlySet<string>,
  issued: IssuedRecords,
): Promise<Fault[]> {
  const folders = (name: string) =>
    place.clinicFolder === undefined
      ? [...new Set([...files].flatMap((file) => folderNamed(file, name) ?? []))]
      : [];
  const workspace = openWorkspace({
    ...place,
    cardFolders: folders(CARDS_FOLDER),
    protocolFolders: folders(PROTOCOLS_FOLDER),
  });
  const cards = [...workspace.cards.library.cards.values()];
  const faults = [
    ...workspace.faults.filter((fault) => !fault.place || files.has(fault.place.file)),
    ...cards.filter(({ source }) => files.has(source.file)).flatMap(figureFaults),
    ...textFaults(workspace, files),
  ];
  const plans = [...files].filter(
    (file) =>
      file.endsWith(".md") &&
      folderNamed(file, CARDS_FOLDER) === undefined &&
      folderNamed(file, PROTOCOLS_FOLDER) === undefined &&
      folderNamed(file, "pages") === undefined,
  );
  if (place.clinicFolder === undefined) return faults;
  const { grade, language } = reading(workspace);
  faults.push(...(await lookFaults(workspace)));
  const ids = new Map<string, string>();
  for (const plan of plans) {
    const made = makeProgram(workspace, plan, issued);
    faults.push(...withCauses(made.faults, workspace));
    if (made.value) {
      faults.push(...issuingFaults(made.value, workspace, issued));
      faults.push(...planTextFaults(made.value.plan, grade, language));
    }
    const id = made.value?.plan.value.id;
    const first = id === undefined ? undefined : ids.get(id);
    if (id !== undefined && first !== undefined && made.value) {
      const at = made.value.plan.source.at(["id"]);
      faults.push(
        new Fault("duplicate-id", `The plan id ${id} is used by ${plan} and by ${first}.`, {
          place: at,
          frame: made.value.plan.source.frame(at),
          hint: "Booklets are named by it: give one of them another id.",
        }),
      );
    }
    if (id !== undefined) ids.set(id, plan);
  }
  return faults;
}

/** What `booklet` would say of a signed plan whose client has a booklet already. */
function issuingFaults(
  made: MadeProgram,
  workspace: Workspace,
  issued: IssuedRecords,
): readonly Fault[] {
  if (made.signedOff === undefined) return [];
  const before = issued.revisionsOf(made.plan.value.id);
  if (before.value === undefined) return before.faults;
  const { language, locale } = made.program.clinic;
  const words = loadWords(language, locale, workspace.look.words);
  return issuedBooklet({ made, workspace }, words, issued.today, "standard", issued).faults;
}

/** Texts for clients that are harder to read than the clinic's limit, or name exercises in plain words. */
function textFaults(workspace: Workspace, files: ReadonlySet<string>): Fault[] {
  const { grade, language } = reading(workspace);
  const asked = ({ source }: { readonly source: Source }) => files.has(source.file);
  const all = [
    ...workspace.cards.library.cards.values(),
    ...translatedCards(workspace.cards.library, workspace.translations),
  ];
  const cards = all.filter(asked);
  const protocols = [
    ...workspace.protocols.protocols.values(),
    ...translatedProtocols(workspace.protocols.protocols, workspace.translations),
  ].filter(asked);
  const clinic = workspace.clinic && asked(workspace.clinic) ? [workspace.clinic] : [];
  const titles = titlesByLanguage(all);
  const titlesIn = (own: string) => titles.get(own) ?? new Map<string, string>();
  return [
    ...cards.flatMap((card) => cardTitleFaults(card, titlesIn(card.card.language))),
    ...protocols.flatMap((one) => protocolTitleFaults(one, titlesIn(one.value.language))),
    ...cards.flatMap((card) => cardTextFaults(card, grade, card.card.language)),
    ...protocols.flatMap((protocol) =>
      protocolTextFaults(protocol, grade, protocol.value.language),
    ),
    ...clinic.flatMap((one) => clinicTextFaults(one, grade, language)),
  ];
}

/** The limit and language by which texts are read; a library without a clinic is read by the usual ones. */
function reading({ clinic }: Workspace): { readonly grade: number; readonly language: string } {
  return {
    grade: clinic?.value.limits.reading_grade ?? USUAL_GRADE,
    language: clinic?.value.language ?? "en",
  };
}

/** What is wrong with a clinic's own words and templates. */
async function lookFaults({ look, clinic }: Workspace): Promise<readonly Fault[]> {
  if (look.words === undefined && look.templates.size === 0) return [];
  const { language, locale } = clinic?.value ?? { language: "en", locale: "en-GB" };
  try {
    const { loadAssets } = await import("../html/assets.ts");
    const words = loadWords(language, locale, look.words);
    await loadAssets(join(shippedFolder(), "templates"), words, look.templates);
    return [];
  } catch (thrown) {
    return faultsFrom(thrown);
  }
}

/** Every card, protocol, plan and settings file at a path. */
function filesAt(
  tree: Tree,
  path: string,
  faults: Fault[],
  known: Map<string, string | undefined>,
): string[] {
  if (/\.(md|yaml)$/.test(path)) return [path];
  const translated = TRANSLATED.map((language) => `vocabulary.${language}.yaml`);
  return [".md", CLINIC_FILE, "vocabulary.yaml", ...translated].flatMap((ending) => {
    const listing = tree.list(path, ending);
    faults.push(...listing.faults);
    return listing.files.filter((file) => belongs(tree, file, known));
  });
}

/** A Markdown file that is no card, protocol or plan of a clinic is none of ours. */
function belongs(tree: Tree, file: string, known: Map<string, string | undefined>): boolean {
  return (
    folderNamed(file, CARDS_FOLDER) !== undefined ||
    folderNamed(file, PROTOCOLS_FOLDER) !== undefined ||
    clinicFolderOf(tree, file, known) !== undefined
  );
}

/** The folder of that name in which a file lies, at whatever depth. */
function folderNamed(file: string, name: string): string | undefined {
  const parts = file.split("/");
  const at = parts.slice(0, -1).lastIndexOf(name);
  return at < 0 ? undefined : parts.slice(0, at + 1).join("/");
}

function unique(faults: readonly Fault[]): Fault[] {
  const seen = new Map<string, Fault>();
  for (const fault of faults) {
    const { file = "", line = 0, column = 0 } = fault.place ?? {};
    seen.set(`${file}:${line}:${column} ${fault.code} ${fault.message}`, fault);
  }
  return [...seen.values()];
}
