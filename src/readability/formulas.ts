/** Published readability formulas, each from plain counts, each undefined where nothing was counted. */

/** What the formulas need to know of a text. */
export interface Counts {
  readonly words: number;
  readonly sentences: number;
  readonly syllables: number;
  /** Words of three syllables and more. */
  readonly polysyllables: number;
  /** Words of one syllable. */
  readonly monosyllables: number;
  /** Words of more than six letters. */
  readonly longWords: number;
}

type Basic = Pick<Counts, "words" | "sentences" | "syllables">;

/**
 * Flesch Reading Ease: 0 very hard to 100 very easy, beyond both for extreme texts.
 * Flesch 1948, J Appl Psychol 32:221.
 */
export function fleschReadingEase(counts: Basic): number | undefined {
  const means = meansOf(counts);
  return means && 206.835 - 1.015 * means.length - 84.6 * means.syllables;
}

/**
 * Flesch–Kincaid grade: the US school grade of readers who understand about three quarters.
 * Kincaid et al. 1975, Naval Technical Training Command, Research Branch Report 8-75.
 */
export function fleschKincaidGrade(counts: Basic): number | undefined {
  const means = meansOf(counts);
  return means && 0.39 * means.length + 11.8 * means.syllables - 15.59;
}

type Smog = Pick<Counts, "polysyllables" | "sentences">;

/**
 * SMOG, long form: the US school grade of readers who understand all of it, so a grade or two above
 * Flesch–Kincaid. McLaughlin 1969, J Reading 12:639; made for 30 sentences, scaled for other numbers.
 */
export function smogLong(counts: Smog): number | undefined {
  const in30 = polysyllablesIn30(counts);
  return in30 === undefined ? undefined : 1.043 * Math.sqrt(in30) + 3.1291;
}

/**
 * Flesch Reading Ease fitted to German, on the same scale.
 * Amstad 1978, Wie verständlich sind unsere Zeitungen?, dissertation, University of Zurich.
 */
export function amstadReadingEase(counts: Basic): number | undefined {
  const means = meansOf(counts);
  return means && 180 - means.length - 58.5 * means.syllables;
}

/**
 * First Wiener Sachtextformel: the school grade a German factual text fits, made for 4 to 15.
 * Bamberger and Vanecek 1984, Lesen – Verstehen – Lernen – Schreiben, Vienna.
 */
export function wienerSachtextGrade(counts: Counts): number | undefined {
  const means = meansOf(counts);
  const share = (part: number) => (100 * part) / counts.words;
  return (
    means &&
    0.1935 * share(counts.polysyllables) +
      0.1672 * means.length +
      0.1297 * share(counts.longWords) -
      0.0327 * share(counts.monosyllables) -
      0.875
  );
}

function meansOf({ words, sentences, syllables }: Basic) {
  if (!(words > 0 && sentences > 0)) return undefined;
  return { length: words / sentences, syllables: syllables / words };
}

function polysyllablesIn30({ polysyllables, sentences }: Smog): number | undefined {
  return sentences > 0 ? (polysyllables * 30) / sentences : undefined;
}
