/** Each rule finds the page that breaks it, and leaves the page that does not. */
import { expect, test } from "vitest";
import type { Block, Line, Page } from "./pages.ts";
import { type Book, problemsOf, RULES, type RuleName } from "./rules.ts";

const FULL = 700;

interface Text {
  readonly base?: number;
  readonly size?: number;
  readonly left?: number;
  readonly right?: number;
  readonly wraps?: Block["wraps"];
}

const block = (
  role: string,
  text: string,
  { base = FULL, size = 12, left = 60, right = 300, wraps = [] }: Text = {},
): Block => ({
  role,
  wraps,
  lines: text.split(" / ").map((words) => line(words, { base, size, left, right })),
});
const line = (text: string, { base = FULL, size = 12, left = 60, right = 300 }: Text): Line => ({
  text,
  left,
  right,
  base,
  size,
});
const page = (number: number, ...blocks: readonly Block[]): Page => ({
  number,
  width: 595,
  height: 842,
  blocks,
  pictures: [],
  margins: [],
  inks: [],
  drawn: blocks.flatMap(({ lines }) => lines.map(({ text }) => text)).join(""),
});
const first = page(1, block("H1", "A course"), block("P", "It begins.", { base: FULL }));
const kept = page(2, block("H2", "Exercise 1", { base: 90 }), block("P", "Steps."));
const standard = (more: Partial<Page>): Book => ({
  edition: "standard",
  paper: "A4",
  pages: [first, { ...kept, ...more }],
});
const rest = page(2, block("H2", "Exercise 1"), block("P", "Steps."));

const ROWS: readonly (readonly [RuleName, string, readonly Page[]])[] = [
  [
    "table-apart",
    "a heading and its list, whose table begins on the next page",
    [
      first,
      page(
        2,
        block("H2", "Your diary"),
        block("TH", "Mon 4 Jan", { base: 300 }),
        block("H3", "Phase 2", { base: 120 }),
        block("LI", "6 Lift", { base: 100 }),
      ),
      page(3, block("TH", "Day"), block("TD", "–", { base: 100 })),
    ],
  ],
  [
    "heading-apart",
    "a heading at the foot",
    [
      first,
      page(
        2,
        block("H2", "One", { base: 90 }),
        block("P", "Text", { base: 300 }),
        block("H3", "Move", { base: FULL }),
      ),
    ],
  ],
  [
    "box-alone",
    "a box that belongs to the page before",
    [
      first,
      rest,
      page(3, block("H3", "Take care", { base: 70 }), block("LI", "Slowly.", { base: 90 })),
    ],
  ],
  [
    "page-empty",
    "a page with a third of its text",
    [
      first,
      page(2, block("H2", "One", { base: 90 }), block("P", "Text", { base: 200 })),
      page(3, block("H3", "Two"), block("H3", "Three"), block("P", "Text")),
    ],
  ],
  [
    "stop-apart",
    "signs to stop on the next page",
    [
      first,
      rest,
      page(3, block("H3", "Stop and call us if", { base: 70 }), block("LI", "A sharp pain.")),
    ],
  ],
  [
    "stop-apart",
    "the end of an exercise on the next page",
    [
      first,
      rest,
      page(
        3,
        block("H3", "Pain", { base: 70 }),
        block("P", "Up to 3."),
        block("H3", "Stop and call us if", { base: 90 }),
        block("LI", "A sharp pain."),
      ),
    ],
  ],
  [
    "stop-apart",
    "signs to stop on the next page, in German",
    [
      first,
      rest,
      page(3, block("H3", "Aufhören und anrufen, wenn", { base: 70 }), block("LI", "Es schmerzt.")),
    ],
  ],
  [
    "type-small",
    "small letters in a sentence",
    [first, page(2, block("H2", "One"), block("P", "Small.", { size: 11 }))],
  ],
  [
    "type-small",
    "very small letters in a cell",
    [first, page(2, block("H2", "One"), block("TD", "Small", { size: 9 }))],
  ],
  [
    "cell-narrow",
    "a word a line",
    [
      first,
      page(
        2,
        block("H2", "One"),
        block("TD", "Your / own / weight", {
          wraps: [
            ["Your", "own"],
            ["own", "weight"],
          ],
        }),
      ),
    ],
  ],
  [
    "over-margin",
    "text in the margin",
    [first, page(2, block("H2", "One"), block("P", "Far out", { right: 580 }))],
  ],
  [
    "number-torn",
    "8 out of / 10",
    [first, page(2, block("H2", "One"), block("P", "Should feel 8 out of / 10."))],
  ],
  [
    "number-torn",
    "8 out / of 10",
    [first, page(2, block("H2", "One"), block("P", "Should feel 8 out / of 10."))],
  ],
  [
    "number-torn",
    "2.5 / kg",
    [first, page(2, block("H2", "One"), block("P", "With 2.5 / kg in each hand"))],
  ],
  [
    "blank-lost",
    "two words in one",
    [
      first,
      page(2, block("H2", "One"), block("P", "when you / move", { wraps: [["when you", "move"]] })),
    ],
  ],
];

/** Faults of pictures, of contrast, of running heads and over two pages. */
const picture = {
  says: "Standing.",
  lettered: false,
  left: 100,
  right: 300,
  top: 100,
  bottom: 280,
};
const low = { ...picture, right: 290, bottom: 150 };
const OTHERS: readonly (readonly [RuleName, string, Book])[] = [
  ["head-small", "a small running head", standard({ margins: [line("Brookfold", { size: 9 })] })],
  [
    "head-small",
    "a running head that is small for large print",
    { ...standard({ margins: [line("Brookfold", { size: 12 })] }), edition: "large" },
  ],
  ["grey-faint", "yellow letters on white", standard({ inks: [{ text: "Rest", contrast: 3.9 }] })],
  ["picture-small", "a picture of 18 mm", standard({ pictures: [low] })],
  [
    "picture-small",
    "a picture in large print that is not 60 mm high",
    { ...standard({ pictures: [{ ...picture, bottom: 260 }] }), edition: "large" },
  ],
  [
    "picture-small",
    "one in the summary",
    { ...standard({ pictures: [{ ...low, right: 200 }] }), edition: "summary" },
  ],
  ["over-margin", "a picture in the margin", standard({ pictures: [{ ...picture, left: 30 }] })],
  [
    "steps-split",
    "a step on the next page",
    {
      ...standard({}),
      pages: [
        first,
        page(2, block("H2", "Exercise 1", { base: 90 }), block("LI", "1.Rise up.")),
        page(3, block("LI", "2.Lower slowly."), block("H3", "Feel"), block("H3", "Check")),
      ],
    },
  ],
];

test.each(OTHERS)("%s finds %s", (rule, _name, book) => {
  expect(problemsOf(book).map((one) => one.rule)).toContain(rule);
});

test.each([
  [
    "grey-faint",
    "grey at the least contrast",
    standard({ inks: [{ text: "Rest", contrast: 4.5 }] }),
  ],
  [
    "picture-small",
    "a picture of 63 mm",
    { ...standard({ pictures: [picture] }), edition: "large" },
  ],
  ["picture-small", "a ruler", standard({ pictures: [{ ...low, lettered: true }] })],
  ["picture-small", "a long one", standard({ pictures: [{ ...low, right: 320 }] })],
  [
    "picture-small",
    "the code of an address",
    standard({ pictures: [{ ...low, says: "Code for the address clinic.example" }] }),
  ],
  [
    "steps-split",
    "bullets that go on",
    {
      ...standard({}),
      pages: [first, kept, page(3, block("LI", "A fall."), block("H3", "One"), block("H3", "Two"))],
    },
  ],
] as readonly (readonly [RuleName, string, Book])[])("%s leaves %s", (rule, _name, book) => {
  expect(problemsOf(book).map((one) => one.rule)).not.toContain(rule);
});

test("every rule is seen to find something", () => {
  const tried = new Set<string>([...ROWS, ...OTHERS].map(([rule]) => rule));
  expect([...tried].sort()).toEqual(Object.keys(RULES).sort());
});

test.each(ROWS)("%s finds %s", (rule, _name, pages) => {
  const found = problemsOf({ edition: "standard", paper: "A4", pages });
  expect(found.map((one) => one.rule)).toContain(rule);
});

test("an easier exercise that stands on a page as a whole is not alone", () => {
  const whole = page(
    3,
    block("H3", "Sit and rise", { base: 70 }),
    block("H4", "Stop and call us if (01632 960 214)", { base: 90 }),
    block("LI", "A sharp pain.", { base: 110 }),
  );
  const pages = [first, rest, whole];
  expect(problemsOf({ edition: "standard", paper: "A4", pages })).toEqual([]);
});

test("pages that keep the rules have no problems", () => {
  const whole = page(
    2,
    block("H2", "Exercise 1", { base: 90 }),
    block("P", "Should feel / 8 out of 10, for 3 seconds.", {
      wraps: [["Should feel", "8 out of 10"]],
    }),
    block("TD", "Your own / weight", { size: 10 }),
    block("TD", "9 / Morning / Evening", { size: 10 }),
    block("H3", "Stop and call us if", { base: 600 }),
    block("LI", "A sharp pain."),
  );
  const drawn = { ...whole, drawn: "Should feel 8 out of 10" };
  expect(problemsOf({ edition: "standard", paper: "A4", pages: [first, drawn] })).toEqual([]);
});
