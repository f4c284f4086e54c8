/** The typeface of every booklet, as data: addresses, with only the alphabets that a text uses. */
import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";

/** One alphabet's share of the typeface, in one weight. */
export interface FontFace {
  readonly weight: number;
  readonly alphabet: Alphabet;
  readonly base64: string;
}

/** Code points of an alphabet; the CSS says the same of them. */
interface Alphabet {
  readonly name: string;
  /** In CSS notation. */
  readonly range: string;
  /** Finds one of its characters in a text; undefined: always needed. */
  readonly finds: RegExp | undefined;
}

/** Name of the typeface in the CSS. */
const FONT_FAMILY = "Booklet";

const WEIGHTS = [400, 700];

/** The first holds what every booklet uses; the ranges are those of the files, not more. */
const ALPHABETS: readonly Alphabet[] = [
  {
    name: "latin",
    range:
      "U+0000-00FF,U+0131,U+0152-0153,U+02BC,U+02C6,U+02DA,U+02DC,U+2000-206F,U+2074,U+20AC,U+2122,U+2212,U+2215,U+FEFF,U+FFFD",
    finds: undefined,
  },
  alphabet("latin-ext", [
    [0x100, 0x130],
    [0x132, 0x151],
    [0x154, 0x24f],
    [0x259, 0x259],
    [0x1e00, 0x1e9f],
    [0x1ef2, 0x1eff],
    [0x20a3, 0x20a8],
    [0x2113, 0x2113],
  ]),
  alphabet("vietnamese", [
    [0x1ea0, 0x1ef1],
    [0x20ab, 0x20ab],
  ]),
  alphabet("greek", [[0x370, 0x3ff]]),
  alphabet("cyrillic", [
    [0x400, 0x45f],
    [0x490, 0x491],
    [0x2116, 0x2116],
  ]),
  alphabet("hebrew", [[0x590, 0x5ff]]),
];

/** Reads the typeface from its package, wherever that is installed. */
export async function loadFonts(): Promise<readonly FontFace[]> {
  const require = createRequire(import.meta.url);
  const folder = join(dirname(require.resolve("@fontsource/open-sans/package.json")), "files");
  const faces = ALPHABETS.flatMap((alphabet) => WEIGHTS.map((weight) => ({ alphabet, weight })));
  return await Promise.all(
    faces.map(async ({ alphabet, weight }) => ({
      alphabet,
      weight,
      base64: await readFile(
        join(folder, `open-sans-${alphabet.name}-${weight}-normal.woff2`),
        "base64",
      ),
    })),
  );
}

/** The `@font-face` rules for a text: alphabets that it does not use are left out. */
export function fontCss(fonts: readonly FontFace[], text: string): string {
  const used = new Set(ALPHABETS.filter(({ finds }) => finds === undefined || finds.test(text)));
  return fonts
    .filter(({ alphabet }) => used.has(alphabet))
    .map(
      ({ alphabet, weight, base64 }) =>
        `@font-face{font-family:${FONT_FAMILY};font-weight:${weight};unicode-range:${alphabet.range};src:url(data:font/woff2;base64,${base64}) format("woff2")}`,
    )
    .join("\n");
}

/** Characters that the typeface has no alphabet for, each once, in the order of the text. */
export function outsideTypeface(text: string): string[] {
  return [...new Set(text)].filter((character) => {
    const point = character.codePointAt(0) ?? 0;
    return !SPANS.some(([from, to]) => from <= point && point <= to);
  });
}

/** First and last code points of all alphabets. */
const SPANS = ALPHABETS.flatMap(({ range }) =>
  range.split(",").map((span) => {
    const [from = "", to = from] = span.slice(2).split("-");
    return [Number.parseInt(from, 16), Number.parseInt(to, 16)] as const;
  }),
);

function alphabet(name: string, spans: readonly (readonly [number, number])[]): Alphabet {
  const hex = (point: number) => point.toString(16).toUpperCase().padStart(4, "0");
  return {
    name,
    range: spans
      .map(([from, to]) => (from === to ? `U+${hex(from)}` : `U+${hex(from)}-${hex(to)}`))
      .join(","),
    finds: new RegExp(`[${spans.map(([from, to]) => `\\u${hex(from)}-\\u${hex(to)}`).join("")}]`),
  };
}
