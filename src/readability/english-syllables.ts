/** Syllables of English words. */
import { syllable } from "syllable";

/**
 * Everyday, body and exercise words that the general rules miscount, by their number of syllables
 * (Carnegie Mellon Pronouncing Dictionary 0.7b, the first pronunciation; for words of the body that
 * it lacks, by ear).
 */
const KNOWN: Readonly<Record<number, string>> = {
  1: `beer bronze bye charge cheers curled deer else false hurled large owe peer priest prone proof
    proud prove queen squeeze squeezed tier tongue whirled`,
  2: `anxious aug barefoot baseball billion brilliant chaos chocolate choir collapse colleague
    colleagues conscious cushion diamond doing elsewhere evening evenings fashion fatigue fired fires
    fluid fluids forest framework frequent genius going goodbye guideline guidelines hired homework
    household households junior largely lawyer lawyers lifestyle lifetime marriage million millions
    mrs naked nineteen ninety oblique opera poem poems poet precious ruin ruined safety science seeing senior
    sequence squeezes squeezing surgeon surgeons technique techniques teres therefore timeline tired
    typeface unions unique widespread`,
  3: `achilles acquire acquired area areas arguing basically beforehand behavior behaviour changeover
    consciousness delicious desire desired desires element elements entire equity everyday everything
    familiar fascia feb frequency frequently functional gentlest genuine ideas inspired linear
    moreover museum nuclear ongoing optional poetry possession posterior religious sciences scientist
    solely soleus subsequent theater theatre thirtieth twentieth valuable vegetables volunteer
    volunteers whoever`,
  4: `anxiety consequences continuing conventional coordinate diabetes dietary entirely everybody
    experience experienced insertional laboratory oriented professional professionals retirement
    scientific society specifically subsequently trapezius`,
  5: "appreciation association automatically experiences negotiations",
  6: "patellofemoral simultaneously",
};

const EXCEPTIONS: ReadonlyMap<string, number> = new Map(
  Object.entries(KNOWN).flatMap(([count, words]) =>
    words.split(/\s+/).map((word) => [word, Number(count)] as const),
  ),
);

/** Longer than any word: what is left is counted by its groups of vowels alone. */
const LONGEST = 60;

/** Endings in -ed that is not said, as in pressed; -ted and -ded are, and -led and -red may be. */
const SILENT_ED = /[aeiouy].*[^aeiouydtlr]ed$/;

/** Aches of every kind, but not reaches or coaches: the e is not said. */
const ACHES = /(?<![eo])aches$/;

/** Endings in -es that is said, as in reaches. */
const SPOKEN_ES = /[aeiouy].*(?:[^t]ch|tch|sh|ss|x|z|c|g|s)es$/;

/** Counts already made, since texts say the same words again and again; emptied when it grows large. */
const counted = new Map<string, number>();
const MOST_COUNTED = 5000;

/** Syllables of one English word, at least one. */
export function englishSyllables(word: string): number {
  const known = counted.get(word);
  if (known !== undefined) return known;
  const count = Math.max(1, countOf(word.toLowerCase().replaceAll("’", "'").replace(/'s$/, "")));
  if (counted.size >= MOST_COUNTED) counted.clear();
  counted.set(word, count);
  return count;
}

function countOf(word: string): number {
  const exception = EXCEPTIONS.get(word);
  if (exception !== undefined) return exception;
  if (word.length > LONGEST) return word.match(/[aeiouy]+/g)?.length ?? 0;
  if (ACHES.test(word)) return syllable(word.slice(0, -1));
  if (SILENT_ED.test(word)) return syllable(word.slice(0, -2));
  if (SPOKEN_ES.test(word)) return syllable(word.slice(0, -2)) + 1;
  return syllable(word);
}
