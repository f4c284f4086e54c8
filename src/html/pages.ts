/** Paper size, running heads and widths of pictures: what CSS can only say once the booklet is known. */
import type { Booklet } from "../compose/model.ts";
import type { Words } from "../words/words.ts";

/** A run of pages with its own words at the head. */
export interface Part {
  /** Name of its pages in the CSS; its section has it as `data-page`. */
  readonly page: string;
  readonly head: string;
  /** Width of its picture in millimetres, where it has one. */
  readonly picture?: number | undefined;
}

/** Stand in for the page counters while the words are put together. */
const PAGE = "\uE000";
const PAGES = "\uE001";

/** The rules of one booklet: its `@page`s, which part is on which, pictures and colour. */
export function pageCss(booklet: Booklet, parts: readonly Part[], words: Words): string {
  const { clinic, client } = booklet;
  const rightToLeft = booklet.direction === "rtl";
  // a page's boxes are named by hand, left and right: a booklet read from the right has them swapped
  const [start, end] = rightToLeft ? ["right", "left"] : ["left", "right"];
  const foot = words.say("page.number", { page: PAGE, pages: PAGES });
  const boxes = [
    box(
      `top-${start}`,
      cssString(words.say("page.head", { clinic: clinic.name, reference: client.reference })),
    ),
    box(
      `bottom-${start}`,
      cssString(
        words.say("page.help", { phone: rightToLeft ? isolated(clinic.phone) : clinic.phone }),
      ),
    ),
    box(`bottom-${end}`, counters(foot)),
    ...(booklet.draft ? [box("top-center", cssString(words.say("draft.mark")))] : []),
  ];
  return [
    `@page{size:${booklet.paper};${boxes.join("")}}`,
    ROOM[booklet.paper],
    ...(booklet.edition === "summary" ? [SUMMARY_ROOM[booklet.paper]] : []),
    ...(rightToLeft ? [SWAPPED_HEADS] : []),
    ...(booklet.edition === "large" ? [LARGE_HEADS] : []),
    ...parts.map(({ page, head }) => `@page ${page}{${box(`top-${end}`, cssString(head))}}`),
    ...parts.flatMap(partRules),
    ...(booklet.colour === undefined ? [] : [colourCss(booklet.colour)]),
    `@page :first{${box(`top-${start}`, "none")}}`,
  ].join("\n");
}

function partRules({ page, picture }: Part): string[] {
  const section = `[data-page=${page}]`;
  return [
    `${section}{page:${page}}`,
    ...(picture === undefined ? [] : [`${section} .figure{width:${picture}mm}`]),
  ];
}

/** Letter is 18 mm shorter than A4 and 6 mm wider: narrower margins keep an exercise to its page. */
const LETTER_MARGINS = "@page{margin:14mm 16mm 12mm}";

/** What the margins leave of the paper: a part that has to stay on one page is set to fit it. */
const ROOM = {
  A4: ":root{--page-width:170mm;--page-height:263mm}",
  Letter: `${LETTER_MARGINS}\n:root{--page-width:183.9mm;--page-height:253.4mm}`,
} as const;

/** The summary's own margins, which stand in its styles, leave more. */
const SUMMARY_ROOM = {
  A4: ":root{--page-width:180mm;--page-height:270mm}",
  Letter: ":root{--page-width:185.9mm;--page-height:252.4mm}",
} as const;

/** Running heads read from the right: the widths of left and right change places with the words. */
const SWAPPED_HEADS = `@page{${[
  ["top-left", "40%"],
  ["top-right", "60%"],
  ["bottom-left", "30%"],
  ["bottom-right", "70%"],
]
  .map(([place, width]) => `@${place}{width:${width};direction:rtl}`)
  .join("")}@top-center{direction:rtl}}`;

/** Running heads of the large-print edition: no smaller than its text. */
const LARGE_HEADS = [
  "@page{margin-top:25mm}",
  ...["top-left", "top-right", "bottom-left", "bottom-right"].map(
    (place) => `@page{@${place}{font:16pt/1.15 Booklet,sans-serif}}`,
  ),
].join("");

/** The clinic's colour on paper and in light; in the dark our own is kept, which is known to be read. */
function colourCss(colour: string): string {
  return `@media print,(prefers-color-scheme:light){:root{--main:${colour}}}`;
}

/** A number with spaces keeps its order among words that are read from the right (Unicode UAX 9). */
const isolated = (text: string): string => `\u2066${text}\u2069`;

function box(place: string, content: string): string {
  return `@${place}{content:${content}}`;
}

/** A CSS string that no text can break out of, nor out of the style element. */
function cssString(text: string): string {
  const safe = text.replace(
    /[^A-Za-z0-9 .,:]/gu,
    (character) => `\\${(character.codePointAt(0) ?? 0).toString(16)} `,
  );
  return `"${safe}"`;
}

function counters(text: string): string {
  return text
    .split(new RegExp(`(${PAGE}|${PAGES})`))
    .filter((piece) => piece !== "")
    .map((piece) => {
      if (piece === PAGE) return "counter(page)";
      return piece === PAGES ? "counter(pages)" : cssString(piece);
    })
    .join(" ");
}
