/** Places in files: every value and key is found again, and frames show the right line. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { splitMarkdown } from "../../src/read/front-matter.ts";
import { frameOf } from "../../src/read/source.ts";
import { nearest } from "../../src/read/validate.ts";
import { textAt } from "../support/world.ts";

const text = `---
# a comment
id: x
list: [one, two, { deep: yes }]
block:
  - a
  - b: 1
    c: 2
weeks:
  1: { sets: 3 }
  2-3: { sets: 4 }
---
body
`;
const split = splitMarkdown("x.md", text).split;

describe("the place of a value", () => {
  test.each([
    [["id"], "x"],
    [["list"], "["],
    [["list", 1], "two"],
    [["list", 2, "deep"], "yes"],
    [["block", 1, "c"], "2"],
    [["weeks", "1", "sets"], "3"],
    [["weeks", "2-3", "sets"], "4"],
    [["list", 9], "["],
    [["nowhere", "at", "all"], "# a comment"],
  ] as const)("%j", (path, begins) => {
    expect(textAt(text, split?.source.at(path)).startsWith(begins)).toBe(true);
  });

  test.each([
    [["id"], "id:"],
    [["list", 2, "deep"], "deep:"],
    [["weeks", "2-3"], "2-3:"],
  ] as const)("of a key %j", (path, begins) => {
    expect(textAt(text, split?.source.atKey(path)).startsWith(begins)).toBe(true);
  });
});

test("the body begins where it begins", () => {
  expect(split?.bodyLine).toBe(13);
  expect(split?.body).toBe("body\n");
});

test("a frame marks the column under the line", () => {
  expect(frameOf("a\nbcd\ne", { file: "x", line: 2, column: 3 })).toBe(
    "  1 | a\n> 2 | bcd\n    |   ^\n  3 | e",
  );
});

test("a value put anywhere in the file is found at its line", () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 30 }), fc.integer({ min: 0, max: 8 }), (lines, depth) => {
      const before = Array.from({ length: lines }, (_, n) => `k${n}: ${n}\n`).join("");
      const nested = Array.from({ length: depth }, (_, n) => `${"  ".repeat(n)}d${n}:\n`).join("");
      const file = `---\n${before}${nested}${"  ".repeat(depth)}needle: here\n---\n`;
      const path = [...Array.from({ length: depth }, (_, n) => `d${n}`), "needle"];
      const place = splitMarkdown("f.md", file).split?.source.at(path);
      expect(place).toEqual({ file: "f.md", line: lines + depth + 2, column: 2 * depth + 9 });
    }),
  );
});

test.each([
  ["tempoo", ["tempo", "reps"], "tempo"],
  ["rep", ["tempo", "reps"], "reps"],
  ["xyz", ["tempo", "reps"], undefined],
  ["anything", [], undefined],
] as const)("the word nearest to %s", (word, known, expected) => {
  expect(nearest(word, known)).toBe(expected);
});
