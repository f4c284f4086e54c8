/** What a printed page must not do to a reader: rules on its text as it stands on paper. */
import type { Edition } from "../../src/compose/model.ts";
import { loadWords } from "../../src/words/load-words.ts";
import type { Block, Line, Page, Picture } from "./pages.ts";

export interface Problem {
  readonly rule: RuleName;
  readonly page: number;
  readonly says: string;
}

export interface Book {
  readonly edition: Edition;
  readonly paper: "A4" | "Letter";
  readonly pages: readonly Page[];
}

/** Points of a millimetre. */
const MM = 72 / 25.4;

/** Room that text keeps to the edges of the paper: left and right, top, bottom. */
const MARGINS = {
  A4: { sides: 20 * MM, top: 18 * MM, bottom: 16 * MM },
  Letter: { sides: 16 * MM, top: 14 * MM, bottom: 12 * MM },
  summary: { sides: 15 * MM, top: 14 * MM, bottom: 13 * MM },
};

const marginsOf = ({ edition, paper }: Book) => MARGINS[edition === "summary" ? edition : paper];

/**
 * Points: 12 and 16 for what is read are the least of clear and of large print (RNIB, Clear print guidelines;
 * from memory), 10 and 14 for anything at all are ours.
 */
const SIZES = {
  standard: { body: 12, any: 10 },
  large: { body: 16, any: 14 },
  summary: { body: 12, any: 10 },
} as const;

const BODY = /^(P|LI)$/;

/** Least contrast of text once it is grey: WCAG 2, 1.4.3. */
const LEAST_CONTRAST = 4.5;

/** Least height of a picture in millimetres; one that is long is that wide instead, in large print as the page. */
const PICTURES = {
  standard: { high: 19, wide: 70 },
  large: { high: 60, wide: 155 },
  summary: { high: 19, wide: 42 },
} as const;

/** A page has to be so full, unless it is the last of its part. */
const LEAST_FULL = 0.4;

type Rule = (book: Book) => readonly Problem[];
export type RuleName = keyof typeof RULES;

export const RULES = {
  /** A heading is followed by what it belongs to, on its page. */
  "heading-apart": ({ pages }: Book) =>
    pages.flatMap((page) => {
      const lowest = page.blocks.reduce<Block | undefined>(
        (low, block) => (low && bottomOf(low) > bottomOf(block) ? low : block),
        undefined,
      );
      return lowest && isHeading(lowest) ? [problem("heading-apart", page, textOf(lowest))] : [];
    }),

  /** A table stands on the page of its heading, or begins on it. */
  "table-apart": ({ pages }: Book) =>
    pages.flatMap((page, at) => {
      if (pages[at + 1]?.blocks[0]?.role !== "TH") return [];
      const cell = page.blocks.findLastIndex(({ role }) => /^T[DH]$/.test(role));
      const heading = page.blocks.findLast(isHeading);
      return heading && page.blocks.indexOf(heading) > cell
        ? [problem("table-apart", page, textOf(heading))]
        : [];
    }),

  /** No page holds one box or one table's end alone that belongs to the page before. */
  "box-alone": (book: Book) =>
    book.pages.flatMap((page, at) => {
      if (at === 0 || beginsPart(page) || holdsWeeks(page)) return [];
      if (isWholeExercise(page)) return [];
      const headings = page.blocks.filter(isHeading);
      const inner = headings.filter(({ role }) => role === "H3" || role === "H4");
      return inner.length <= 1 && fullness(page, marginsOf(book)) < LEAST_FULL
        ? [problem("box-alone", page, headings.map(textOf).join(" · ") || textOf(page.blocks[0]))]
        : [];
    }),

  /** A page that is not the last of its part is not left empty. */
  "page-empty": (book: Book) =>
    book.pages.flatMap((page, at) => {
      const next = book.pages[at + 1];
      if (!next || beginsPart(next)) return [];
      const full = fullness(page, marginsOf(book));
      return full < LEAST_FULL
        ? [problem("page-empty", page, `${Math.round(100 * full)} % full`)]
        : [];
    }),

  /** The signs to stop never leave their exercise: in the standard edition they stand on its one page. */
  "stop-apart": ({ edition, pages }: Book) =>
    pages.flatMap((page) =>
      page.blocks.some(isStop) &&
      page.blocks[0] !== undefined &&
      (isStop(page.blocks[0]) || (edition === "standard" && isLabel(page.blocks[0])))
        ? [problem("stop-apart", page, textOf(page.blocks[0]))]
        : [],
    ),

  "type-small": ({ edition, pages }: Book) =>
    pages.flatMap((page) =>
      page.blocks.flatMap((block) => {
        const least = BODY.test(block.role) ? SIZES[edition].body : SIZES[edition].any;
        return block.lines
          .filter(({ size, text }) => size < least - 0.05 && /[\p{L}\p{N}]/u.test(text))
          .slice(0, 1)
          .map((line) =>
            problem("type-small", page, `${line.size.toFixed(1)} pt, ${block.role}: ${line.text}`),
          );
      }),
    ),

  /** Running heads and feet are no smaller than anything else. */
  "head-small": ({ edition, pages }: Book) =>
    pages.flatMap((page) =>
      page.margins
        .filter(({ size, text }) => size < SIZES[edition].any - 0.05 && /[\p{L}\p{N}]/u.test(text))
        .map(({ size, text }) => problem("head-small", page, `${size.toFixed(1)} pt: ${text}`)),
    ),

  /** What is read stands out from its ground when it is printed or copied in grey. */
  "grey-faint": ({ pages }: Book) =>
    pages.flatMap((page) => {
      const faint = page.inks.filter(({ contrast }) => contrast < LEAST_CONTRAST);
      const least = Math.min(...faint.map(({ contrast }) => contrast));
      return faint.length === 0
        ? []
        : [
            problem(
              "grey-faint",
              page,
              `${least.toFixed(1)}: ${faint.map(({ text }) => text).join("")}`,
            ),
          ];
    }),

  /** Pictures of exercises are large enough to see a hand and a foot. */
  "picture-small": (book: Book) => {
    const { high, wide } = PICTURES[book.edition];
    return book.pages.flatMap((page) =>
      page.pictures
        .filter((picture) => !picture.lettered && !isCode(picture) && !isLogo(book, page))
        .filter(
          ({ left, right, top, bottom }) => bottom - top < high * MM && right - left < wide * MM,
        )
        .map(({ says, top, bottom }) =>
          problem("picture-small", page, `${Math.round((bottom - top) / MM)} mm: ${says}`),
        ),
    );
  },

  /** The steps of an exercise stand on one page. */
  "steps-split": ({ pages }: Book) =>
    pages.flatMap((page, at) => {
      const [first] = page.blocks;
      const before = pages[at - 1]?.blocks.at(-1);
      const goesOn = first !== undefined && isStep(first) && before !== undefined && isStep(before);
      return goesOn ? [problem("steps-split", page, textOf(first))] : [];
    }),

  /** A cell is wide enough for more than one word a line. */
  "cell-narrow": ({ pages }: Book) =>
    pages.flatMap((page) =>
      page.blocks
        // lines that the page made: those of a day in the calendar are stacked on purpose
        .filter(({ role, wraps }) => /^T[DH]$/.test(role) && wraps.length >= 2)
        .filter(({ lines }) => lines.every(({ text }) => !/\s/.test(text)))
        .map((block) => problem("cell-narrow", page, textOf(block))),
    ),

  "over-margin": (book: Book) => {
    const { sides, top, bottom } = marginsOf(book);
    return book.pages.flatMap((page) => [
      ...page.pictures
        .filter(({ left, right }) => left < sides - 2 || right > page.width - sides + 2)
        .map(({ says }) => problem("over-margin", page, says)),
      ...page.blocks.flatMap(({ lines }) =>
        lines
          .filter(
            ({ left, right, base, size }) =>
              left < sides - 1 ||
              right > page.width - sides + 1 ||
              base - size < top - 3 ||
              base > page.height - bottom + 1,
          )
          .map(({ text }) => problem("over-margin", page, text)),
      ),
    ]);
  },

  /** Numbers stay with what they belong to: "8 out of" and "10", "2.5" and "kg". */
  "number-torn": ({ pages }: Book) =>
    pages.flatMap((page) =>
      page.blocks.flatMap(({ lines }) =>
        lines.flatMap((line, at) => {
          const next = lines[at + 1];
          return next && isTorn(line, next)
            ? [problem("number-torn", page, `${line.text.slice(-24)} / ${next.text.slice(0, 16)}`)]
            : [];
        }),
      ),
    ),

  /** Words that are wrapped keep the blank between them in the text of the file. */
  "blank-lost": ({ pages }: Book) =>
    pages.flatMap((page) =>
      page.blocks.flatMap(({ role, wraps }) =>
        (role === "Figure" ? [] : wraps)
          .filter(
            ([before, after]) => /[\p{L}\p{N},.;:]$/u.test(before) && /^[\p{L}\p{N}]/u.test(after),
          )
          .filter(([before, after]) =>
            page.drawn.includes(`${before.slice(-20)}${after.slice(0, 16)}`),
          )
          .map(([before, after]) =>
            problem("blank-lost", page, `${before.slice(-20)}/${after.slice(0, 16)}`),
          ),
      ),
    ),
} satisfies Record<string, Rule>;

/** Every problem of a printed booklet, rule by rule. */
export function problemsOf(book: Book): readonly Problem[] {
  return Object.values(RULES).flatMap((rule: Rule) => rule(book));
}

const problem = (rule: string, { number }: Page, says = ""): Problem => ({
  rule: rule as RuleName,
  page: number,
  says: says.slice(0, 100),
});

const textOf = (block: Block | undefined): string =>
  block?.lines.map(({ text }) => text).join(" ") ?? "";

/** A week of the diary is whole in itself: its rows are named, and their cells are empty or say that nothing is asked. */
const holdsWeeks = ({ blocks }: Page): boolean =>
  blocks.some(({ role }) => role === "TD") || blocks.filter(({ role }) => role === "TH").length > 3;

const isHeading = ({ role }: Block): boolean => /^H\d$/.test(role);

/** Parts of the booklet begin with a heading of the first two levels. */
const beginsPart = ({ blocks }: Page): boolean =>
  blocks.length === 0 || blocks.slice(0, 2).some(({ role }) => role === "H1" || role === "H2");

/** A label within an exercise: a page that begins with one begins in its middle. */
const LANGUAGES = [loadWords("en", "en-GB"), loadWords("de", "de-DE")];
const LABELS = new Set(
  LANGUAGES.flatMap((words) =>
    ["why", "needs", "dose", "set-up", "move", "feel", "check", "pain", "easier", "care"].map(
      (key) => words.say(`frame.exercise.${key}`),
    ),
  ),
);
const isLabel = (block: Block): boolean => isHeading(block) && LABELS.has(textOf(block));

const STOPS = new Set(LANGUAGES.map((words) => words.say("frame.exercise.stop")));
const isStop = (block: Block): boolean => {
  const [said = ""] = textOf(block).split(" (");
  return isHeading(block) && STOPS.has(said);
};

/** A step of an exercise: an item that is counted. */
const isStep = (block: Block): boolean =>
  block.role === "LI" && /^\d+\.\s?\p{L}/u.test(textOf(block));

/** The square code of an address has a size of its own. */
const CODES = LANGUAGES.map((words) => words.say("frame.to-phone.code", { address: "" }));
const isCode = ({ says }: Picture): boolean => CODES.some((words) => says.startsWith(words));

/** The clinic's own picture stands on the first page, above all text. */
const isLogo = ({ edition }: Book, { number }: Page): boolean =>
  edition !== "summary" && number === 1;

/** An easier exercise that begins on its page and ends there with its signs to stop. */
const isWholeExercise = ({ blocks: [first, ...rest] }: Page): boolean =>
  first !== undefined && isHeading(first) && !isLabel(first) && !isStop(first) && rest.some(isStop);

const bottomOf = ({ lines }: Block): number => Math.max(...lines.map(({ base }) => base));

/** How far down a page its text reaches, as a share of the room between the margins. */
function fullness({ blocks, height }: Page, { top, bottom }: (typeof MARGINS)["A4"]): number {
  const lowest = Math.max(top, ...blocks.map(bottomOf));
  return (lowest - top) / (height - top - bottom);
}

const PAIR_BEFORE = /\d\s(out of|of|to|von|bis|×|x)$/;
const UNIT_AFTER =
  /^(out of \d|von \d|kg|lb|km|m|cm|%|s|seconds?|minutes?|min|Sekunden?|Minuten?|pt)(?![\p{L}-])/u;

function isTorn(line: Line, next: Line): boolean {
  const begins = /^\d/.test(next.text);
  if (PAIR_BEFORE.test(line.text) && begins) return true;
  if (/\d\sout$/.test(line.text) && /^of\s\d/.test(next.text)) return true;
  return /(^|\s)\d+([.,]\d+)?$/.test(line.text) && UNIT_AFTER.test(next.text);
}
