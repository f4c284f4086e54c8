/** Readability: the formulas against worked examples, and whole texts against two independent programs. */
import { describe, expect, test } from "vitest";
import {
  fleschKincaidGrade,
  fleschReadingEase,
  smogLong,
  wienerSachtextGrade,
} from "../../src/readability/formulas.ts";
import { readText } from "../../src/readability/read-text.ts";
import { CLINICAL, LINCOLN, PLAIN } from "../readability/sample-texts.ts";

/**
 * Words, sentences, syllables, Flesch Reading Ease, Flesch–Kincaid grade. Worked out by hand from the
 * printed formulas (Flesch 1948, J Appl Psychol 32:221; Kincaid et al. 1975, Research Branch Report
 * 8-75); the bounds of a one-word text are widely printed as 121.22 and −3.40.
 */
const WORKED = [
  [6, 1, 6, 116.145, -1.45],
  [13, 1, 24, 37.455, 11.265],
  // the same sentence with its syllables counted otherwise: two grades apart
  [13, 1, 26, 24.44, 13.08],
  [100, 8, 140, 75.708, 5.805],
  [120, 10, 160, 81.855, 4.823],
  [1, 1, 1, 121.22, -3.4],
] as const;

describe("Flesch Reading Ease and Flesch–Kincaid grade", () => {
  test.each(WORKED)(
    "%i words in %i with %i syllables",
    (words, sentences, syllables, ease, grade) => {
      const counts = { words, sentences, syllables };
      expect(fleschReadingEase(counts)).toBeCloseTo(ease, 2);
      expect(fleschKincaidGrade(counts)).toBeCloseTo(grade, 2);
    },
  );

  test("a well-known children's book: 5.7 words a sentence, 1.02 syllables a word", () => {
    // printed as −1.3; by the formula −1.331
    const grade = fleschKincaidGrade({ words: 5700, sentences: 1000, syllables: 5814 });
    expect(grade).toBeCloseTo(-1.331, 3);
    expect(Math.round((grade ?? 0) * 10) / 10).toBe(-1.3);
  });

  test("nothing is said of no words or no sentences", () => {
    expect(fleschReadingEase({ words: 0, sentences: 0, syllables: 0 })).toBeUndefined();
    expect(fleschKincaidGrade({ words: 3, sentences: 0, syllables: 3 })).toBeUndefined();
    expect(smogLong({ polysyllables: 0, sentences: 0 })).toBeUndefined();
  });
});

/** Polysyllables, sentences, grade: by hand from McLaughlin 1969, J Reading 12:639. */
const SMOG = [
  [0, 30, 3.1291],
  [9, 30, 6.2581],
  [25, 30, 8.3441],
  [36, 30, 9.3871],
  [49, 30, 10.4301],
  [12, 10, 9.3871],
] as const;

describe("SMOG", () => {
  test.each(SMOG)("%i polysyllables in %i sentences", (polysyllables, sentences, grade) => {
    expect(smogLong({ polysyllables, sentences })).toBeCloseTo(grade, 4);
  });
});

/**
 * Counts and grades of whole texts as two other programs gave them, run once: textstat 0.7.7 (Python,
 * MIT, syllables from the Carnegie Mellon Pronouncing Dictionary 1.1.3) and text-readability 1.1.1
 * (JavaScript, ISC). The second rounds both means to one decimal before it reckons, which alone may
 * move the grade by 0.39 × 0.05 + 11.8 × 0.05 = 0.61 and the ease by 4.28.
 */
const OTHERS = [
  ["plain", PLAIN, [76, 10, 79, 0], [111.182, -0.36, 3.129], [114.52, -0.9, 3.1]],
  ["Lincoln", LINCOLN, [272, 10, 369, 19], [64.457, 11.026, 11.004], [69.25, 10.4, 11]],
  ["clinical", CLINICAL, [84, 10, 198, 39], [-1.105, 15.5, 14.411], [-4.74, 16, 14.4]],
] as const;

describe.each(OTHERS)(
  "%s text, as other programs read it",
  (_name, text, counts, first, second) => {
    const reading = readText(text, "en");
    const got = [reading?.fleschEase, reading?.grade, reading?.smog].map((value) => value ?? NaN);

    test("words, sentences and polysyllables are the same; syllables within 1 %", () => {
      const [words, sentences, syllables, polysyllables] = counts;
      expect(reading).toMatchObject({ words, sentences, polysyllables });
      expect(Math.abs((reading?.syllables ?? 0) - syllables) / syllables).toBeLessThan(0.01);
    });

    test("textstat: ease within 1, grades within 0.1", () => {
      expect(Math.abs((got[0] ?? NaN) - first[0])).toBeLessThan(1);
      expect(Math.abs((got[1] ?? NaN) - first[1])).toBeLessThan(0.1);
      expect(Math.abs((got[2] ?? NaN) - first[2])).toBeLessThan(0.1);
    });

    test("text-readability: within what its rounding moves", () => {
      expect(Math.abs((got[0] ?? NaN) - second[0])).toBeLessThan(4.28);
      expect(Math.abs((got[1] ?? NaN) - second[1])).toBeLessThan(0.66);
      expect(Math.abs((got[2] ?? NaN) - second[2])).toBeLessThan(0.06);
    });
  },
);

/** textstat 0.7.7 in German: 48 words, 6 sentences, 77 syllables, Amstad 78.16, Wiener Sachtextformel 2.67. */
const GERMAN = `Stellen Sie sich auf eine Stufe. Halten Sie sich mit einer Hand am Geländer fest. Heben Sie langsam beide Fersen. Senken Sie die Fersen wieder, so weit es angenehm ist. Machen Sie zwei Minuten Pause und wiederholen Sie die Übung. Ihre Wade darf dabei arbeiten und leicht ziehen.`;

describe("German", () => {
  test("a text of plain steps, as textstat reads it", () => {
    const reading = readText(GERMAN, "de-AT");
    expect(reading).toMatchObject({ words: 48, sentences: 6, smog: undefined });
    expect(Math.abs((reading?.syllables ?? 0) - 77)).toBeLessThanOrEqual(2);
    expect(Math.abs((reading?.fleschEase ?? 0) - 78.16)).toBeLessThan(2.5);
    expect(Math.abs((reading?.grade ?? 0) - 2.67)).toBeLessThan(0.5);
  });

  test("the first Wiener Sachtextformel, by hand from its printed coefficients", () => {
    // 20 % polysyllables, 10 words a sentence, 30 % long words, 50 % monosyllables
    const counts = {
      words: 100,
      sentences: 10,
      syllables: 170,
      polysyllables: 20,
      longWords: 30,
      monosyllables: 50,
    };
    // 3.87 + 1.672 + 3.891 − 1.635 − 0.875
    expect(wienerSachtextGrade(counts)).toBeCloseTo(6.923, 3);
  });
});
