/** Syllables of words that cards use, by the Carnegie Mellon Pronouncing Dictionary and by ear. */
import { expect, test } from "vitest";
import { englishSyllables } from "../../src/readability/english-syllables.ts";
import { germanSyllables } from "../../src/readability/german-syllables.ts";

const ENGLISH: Readonly<Record<number, string>> = {
  1: "heel rise raised pressed stretched curled squeeze knee calf large false we're don't aches the I",
  2: "ankle shoulder lowered rested needed reaches stretches raises tired settled muscle handled evening people towel headaches science doesn't",
  3: "exercise area Achilles posterior tendency easier another however seventeen physical",
  4: "exercises diabetes isometric experience society temperature's",
  5: "tendinopathy association",
  6: "physiotherapist rehabilitation",
};

test.each(Object.entries(ENGLISH))("English words of %s", (count, words) => {
  for (const word of words.split(" ")) {
    expect([word, englishSyllables(word)]).toEqual([word, Number(count)]);
  }
});

const GERMAN: Readonly<Record<number, string>> = {
  1: "Bein Knie Fuß heiß",
  2: "Ferse Treppe Übung Schulter Pause neue bequem",
  3: "Geländer bewegen einatmen Beinheben Kniebeugen",
  4: "Wiederholung Muskulatur",
  5: "Achillessehne",
  6: "Physiotherapeut",
};

test.each(Object.entries(GERMAN))("German words of %s", (count, words) => {
  for (const word of words.split(" ")) {
    expect([word, germanSyllables(word)]).toEqual([word, Number(count)]);
  }
});

/** Every word that a number in figures is said with. */
const NUMBERS: Readonly<Record<number, string>> = {
  1: "one two three four five six eight nine ten twelve point",
  2: "zero seven thirteen fourteen fifteen sixteen eighteen nineteen twenty thirty forty fifty sixty eighty ninety hundred thousand million billion",
  3: "eleven seventeen seventy",
};

test.each(Object.entries(NUMBERS))("words of numbers with %s", (count, words) => {
  for (const word of words.split(" ")) {
    expect([word, englishSyllables(word)]).toEqual([word, Number(count)]);
  }
});

test("a word is never without a syllable, and a huge one is counted at once", () => {
  for (const word of ["", "b", "'", "hm", "ß"]) expect(englishSyllables(word)).toBe(1);
  expect(englishSyllables("na".repeat(50_000))).toBe(50_000);
});
