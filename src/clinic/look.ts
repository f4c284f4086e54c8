/** A clinic's own look: logo, colour, pages before and after, words and templates of its own. */
import { readPicture } from "../cards/images.ts";
import { Fault } from "../faults/fault.ts";
import type { Tree } from "../files/tree.ts";
import type { Read } from "../read/source.ts";
import { contrast } from "./contrast.ts";
import type { Clinic } from "./schema.ts";

/** A file of the clinic's as read: for parsing later, with places in it. */
export interface OwnFile {
  readonly file: string;
  readonly text: string;
}

export interface OwnPage {
  readonly title: string;
  /** Markdown. */
  readonly text: string;
}

export interface ClinicLook {
  readonly logo: { readonly url: string; readonly alt: string } | undefined;
  /** #rrggbb. */
  readonly colour: string | undefined;
  readonly before: readonly OwnPage[];
  readonly after: readonly OwnPage[];
  readonly words: OwnFile | undefined;
  /** Templates of the booklet by name, in place of the shipped ones. */
  readonly templates: ReadonlyMap<string, OwnFile>;
}

/** WCAG 2.2, success criterion 1.4.3 (AA): text on its ground, 4.5 to 1. */
const AA = 4.5;

export const NO_LOOK: ClinicLook = {
  logo: undefined,
  colour: undefined,
  before: [],
  after: [],
  words: undefined,
  templates: new Map(),
};

/**
 * What a clinic's folder holds of its own for the booklet: pages/before, pages/after, words.yaml,
 * booklet/*.hbs, and `look` in its settings. Faults: image-wrong, low-contrast, missing-section,
 * and those of reading files.
 */
export function readLook(
  tree: Tree,
  folder: string,
  clinic: Read<Clinic> | undefined,
): { readonly look: ClinicLook; readonly faults: readonly Fault[] } {
  const faults: Fault[] = [];
  const inFolder = (name: string) => (folder === "." ? name : `${folder}/${name}`);
  const own = (path: string): OwnFile[] => {
    const reading = tree.read(path);
    if (reading.fault) faults.push(reading.fault);
    return reading.fault ? [] : [{ file: path, text: reading.text }];
  };
  const listed = (name: string, ending: string): OwnFile[] => {
    const listing = tree.list(inFolder(name), ending);
    faults.push(...listing.faults);
    return listing.files.flatMap(own);
  };
  const pages = (name: string) => listed(name, ".md").flatMap((file) => ownPage(file, faults));
  const wordsFile = inFolder("words.yaml");
  const look: ClinicLook = {
    logo: logo(tree, inFolder, clinic, faults),
    colour: colour(clinic, faults),
    before: pages("pages/before"),
    after: pages("pages/after"),
    words: tree.exists(wordsFile) ? own(wordsFile)[0] : undefined,
    templates: new Map(listed("booklet", ".hbs").map((file) => [nameOf(file.file), file] as const)),
  };
  return { look, faults };
}

const nameOf = (file: string): string => file.replace(/^.*\//, "").replace(/\.hbs$/, "");

function ownPage({ file, text }: OwnFile, faults: Fault[]): OwnPage[] {
  const [first = "", ...rest] = text.replace(/^\uFEFF/, "").split(/\r?\n/);
  const title = /^#\s+(\S.*?)\s*$/.exec(first)?.[1];
  if (title !== undefined) return [{ title, text: rest.join("\n").trim() }];
  faults.push(
    new Fault("missing-section", "A page of the clinic's own begins with its title.", {
      place: { file, line: 1, column: 1 },
      hint: "Write # and the title on the first line.",
    }),
  );
  return [];
}

function logo(
  tree: Tree,
  inFolder: (name: string) => string,
  clinic: Read<Clinic> | undefined,
  faults: Fault[],
): ClinicLook["logo"] {
  const wanted = clinic?.value.look.logo;
  if (!clinic || !wanted) return undefined;
  const { url, fault } = readPicture(tree, inFolder(wanted.file));
  if (url !== undefined) return { url, alt: wanted.alt };
  const place = clinic.source.at(["look", "logo", "file"]);
  if (fault) {
    faults.push(
      new Fault(fault.code, fault.message, {
        place,
        frame: clinic.source.frame(place),
        hint: fault.hint,
      }),
    );
  }
  return undefined;
}

/** The clinic's colour, where it can be read on white and white on it. */
function colour(clinic: Read<Clinic> | undefined, faults: Fault[]): string | undefined {
  const wanted = clinic?.value.look.colour;
  if (!clinic || wanted === undefined) return undefined;
  const ratio = contrast(wanted, "#ffffff");
  if (ratio >= AA) return wanted;
  const place = clinic.source.at(["look", "colour"]);
  faults.push(
    new Fault(
      "low-contrast",
      `${wanted} on white has a contrast of ${ratio.toFixed(1)} to 1; text needs ${AA} to 1.`,
      {
        place,
        frame: clinic.source.frame(place),
        hint: `A darker tone of it would do: ${darkened(wanted)}.`,
      },
    ),
  );
  return undefined;
}

/** The lightest darker tone of a colour that can be read on white. */
function darkened(hex: string): string {
  for (let share = 99; share > 0; share -= 1) {
    const tone = `#${[1, 3, 5]
      .map((at) => Math.floor((Number.parseInt(hex.slice(at, at + 2), 16) * share) / 100))
      .map((part) => part.toString(16).padStart(2, "0"))
      .join("")}`;
    if (contrast(tone, "#ffffff") >= AA) return tone;
  }
  return "#000000";
}
