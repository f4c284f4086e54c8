/** What holds for every text, however strange. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Reading, readText } from "../../src/readability/read-text.ts";
import { LINCOLN, PLAIN } from "./sample-texts.ts";

const word = fc.constantFrom(
  ..."rise slowly on your toes hold the exercise shoulder physiotherapist area step 12 left again".split(
    " ",
  ),
);
const sentence = fc.array(word, { minLength: 3, maxLength: 20 }).map((words) => words.join(" "));
const sentences = fc.array(sentence, { minLength: 5, maxLength: 15 });

const written = (all: readonly string[], between = ". "): string =>
  all.map((one) => `S${one.slice(1)}`).join(between);

const read = (text: string, language = "en"): Reading => {
  const reading = readText(text, language);
  if (!reading) throw new Error(`no reading in ${language}`);
  return reading;
};

const numbersOf = (reading: Reading) =>
  [
    reading.words,
    reading.sentences,
    reading.syllables,
    reading.polysyllables,
    reading.fleschEase,
    reading.grade,
    reading.smog,
    ...reading.hardest.flatMap(({ grade, line, column }) => [grade, line, column]),
  ].filter((value) => value !== undefined);

describe.each(["en", "de"])("in %s", (language) => {
  test("more words a sentence never lower the grade", () => {
    fc.assert(
      fc.property(sentences, (all) => {
        const short = read(written(all), language).grade ?? NaN;
        const long = read(written(all, " "), language).grade ?? NaN;
        expect(long).toBeGreaterThanOrEqual(short - 1e-9);
      }),
    );
  });

  test("the order of sentences does not matter", () => {
    fc.assert(
      fc.property(sentences, fc.integer({ min: 0, max: 14 }), (all, turn) => {
        const turned = [...all.slice(turn), ...all.slice(0, turn)];
        const [one, other] = [read(written(all), language), read(written(turned), language)];
        expect(other).toMatchObject({ ...one, hardest: expect.anything() });
        expect(other.hardest.map(({ grade }) => grade)).toEqual(
          one.hardest.map(({ grade }) => grade),
        );
      }),
    );
  });

  test("a list reads as the same sentences in a row do", () => {
    fc.assert(
      fc.property(sentences, (all) => {
        const list = read(`- ${written(all, "\n- ")}`, language);
        expect(list.grade).toBeCloseTo(read(written(all), language).grade ?? NaN, 9);
      }),
    );
  });

  test("every number is finite and every place lies in the text, whatever is typed", () => {
    const part = fc.oneof(
      fc.string({ unit: "binary" }),
      word,
      fc.constantFrom(..."\n.-#*>{}[]()0\r\u0000"),
    );
    fc.assert(
      fc.property(
        fc.array(part).map((parts) => parts.join("")),
        (text) => {
          const reading = read(text, language);
          for (const number of numbersOf(reading)) expect(Number.isFinite(number)).toBe(true);
          const lines = text.split(/\r\n?|\n/);
          for (const { line, column } of reading.hardest) {
            expect(column).toBeLessThanOrEqual(lines[line]?.length ?? -1);
          }
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe("hostile text", () => {
  test("no words: nothing is judged", () => {
    for (const text of [
      "",
      " \n\n",
      "*** --- ***",
      "# Heading only",
      "\u0000\u0007\u001b[31m".slice(0, 3),
    ]) {
      expect(read(text)).toEqual({
        words: 0,
        sentences: 0,
        syllables: 0,
        polysyllables: 0,
        fleschEase: undefined,
        grade: undefined,
        smog: undefined,
        hardest: [],
      });
    }
  });

  test("too little text has counts but no grade", () => {
    expect(read("Rise up. Hold.")).toMatchObject({ words: 3, grade: undefined, smog: undefined });
  });

  test("control characters are not shown again", () => {
    const [hardest] = read(`Rise\u0007 \u001b[31mup\u0000 now`).hardest;
    expect(hardest?.sentence).not.toMatch(/\p{Cc}/u);
  });

  test.each([
    ["one word", "a".repeat(100_000)],
    ["figures", "7".repeat(100_000)],
    ["groups of figures", "12 34-".repeat(17_000)],
    ["full stops", ".".repeat(100_000)],
    ["full stops and a letter", `${".".repeat(100_000)}a`],
    ["brackets", ".)".repeat(50_000)],
    ["links", "[](".repeat(33_000)],
    ["placeholders", "{".repeat(100_000)],
    ["apostrophes", `a${"'".repeat(100_000)}`],
    ["deep lists", "- ".repeat(50_000)],
    ["quotations", ">".repeat(100_000)],
    ["marks", "*_`~".repeat(25_000)],
    ["dashes", "a–1—".repeat(25_000)],
    ["short sentences", "Go. ".repeat(25_000)],
    ["short items", "- go\n".repeat(20_000)],
    ["prose", `${LINCOLN} ${PLAIN} `.repeat(55)],
  ])("100 KB of %s are read, in numbers that are numbers", (_name, text) => {
    const reading = read(text);
    for (const number of numbersOf(reading)) expect(Number.isFinite(number)).toBe(true);
  });
});
