/** What counts as a sentence and as a word, and where each begins. */
import { describe, expect, test } from "vitest";
import { languageOf } from "../../src/readability/languages.ts";
import { sentencesOf } from "../../src/readability/sentences.ts";
import { wordsOf } from "../../src/readability/words.ts";

function language(tag: string) {
  const found = languageOf(tag);
  if (!found) throw new Error(`no language ${tag}`);
  return found;
}

const english = language("en");
const german = language("de");
const split = (markdown: string, tag = english) =>
  sentencesOf(markdown, tag).map(({ text }) => text);
const syllables = (text: string, tag = english) => wordsOf(text, tag).map((word) => word.syllables);

describe("sentences", () => {
  test("items of a list are sentences without a full stop, and may hold several", () => {
    expect(split("- a step\n- a rail\n\n1. Rise up. Hold.\n2. Lower")).toEqual([
      "a step",
      "a rail",
      "Rise up.",
      "Hold.",
      "Lower",
    ]);
  });

  test("a broken line goes on; an empty line ends", () => {
    expect(split("Rise up\non your toes.\n\nLower")).toEqual(["Rise up on your toes.", "Lower"]);
  });

  test("headings are left out", () => {
    expect(split("# Move\n\nRise up.\n\nThen\n---\n\nLower.")).toEqual(["Rise up.", "Lower."]);
  });

  test.each([
    ["Use aids, e.g. a stick or a rail. Then rise.", 2],
    ["See Dr. Ashdown on Monday. She knows.", 2],
    ["Rest for 1.5 min. Then rise.", 2],
    ["Hold 2 min. between sets.", 1],
    ["Ask R. Ashdown. She knows.", 2],
    ["Bands, weights, etc. are fine.", 1],
    ["Bands, weights, etc. Ask us.", 2],
    ["Wait … and rise. Is it sore? Stop!", 3],
    ["**Stop.** Then *rest.* “Slow.” (Do so.) End", 5],
    ["Come at 8 a.m. or at 3 p.m. Bring shoes.", 2],
  ])("%s", (text, count) => {
    expect(split(text)).toHaveLength(count);
  });

  test("in German a number with a full stop before a month ends nothing", () => {
    expect(split("Kommen Sie am 3. Mai. Bis dann, z. B. abends.", german)).toHaveLength(2);
  });

  test("each sentence knows its line and column", () => {
    const text = "- First.\n- Second\n  goes on. Third.\n\nA *fourth.* Fifth.";
    const lines = text.split("\n");
    for (const sentence of sentencesOf(text, english)) {
      const [start = ""] = sentence.text.split(/[ .]/);
      expect(lines[sentence.line]?.slice(sentence.column)).toMatch(new RegExp(`^\\*?${start}`));
    }
    expect(sentencesOf(text, english).map(({ line }) => line)).toEqual([0, 1, 2, 4, 4]);
  });

  test("a link is read by its words, not by its address", () => {
    expect(split("See [the pain page](#how-much-pain) first.")).toEqual([
      "See the pain page first.",
    ]);
  });
});

describe("words", () => {
  test.each<[string, number[]]>([
    ["12", [1]],
    ["do 17 rises", [1, 3, 2]],
    ["110", [5]],
    ["1,000", [3]],
    ["1.5 kg", [3, 3]],
    ["in 1918", [1, 4]],
    ["in 2026", [1, 5]],
    ["2–3 sets", [3, 1]],
    ["30 s", [2, 2]],
    ["50%", [4]],
    ["3 × 12", [1, 1, 1]],
    ["8:00 to 18:30", [1, 1, 4]],
    ["Call 01632 960 214", [1, 1]],
    ["one-leg rise", [2, 1]],
    ["and/or", [1, 1]],
    ["up — and – down - now", [1, 1, 1, 1]],
    ["an MRI or GP", [1, 3, 1, 2]],
    ["STOP NOW", [1, 1]],
    ["your {side} leg, the {other} one", [1, 1, 1, 1, 1, 1]],
    ["e.g. this", [4, 1]],
    ["*** ~ ( )", []],
  ])("%s", (text, counts) => {
    expect(syllables(text)).toEqual(counts);
  });

  test.each<[string, number[]]>([
    ["21 Tage", [4, 2]],
    ["1,5 kg", [4, 3]],
    ["1.234", [10]],
    ["Übung und Pause", [2, 1, 2]],
  ])("German: %s", (text, counts) => {
    expect(syllables(text, german)).toEqual(counts);
  });
});

test("languages by their tag; no judgement for others", () => {
  expect(languageOf("en-GB")).toBe(english);
  expect(languageOf("de-CH")).toBe(german);
  expect(languageOf("xx")).toBeUndefined();
});
