/** What reading needs to know of each language: how figures and short forms are said, and its own formulas. */
import { englishNumber } from "./english-numbers.ts";
import { englishSyllables } from "./english-syllables.ts";
import {
  amstadReadingEase,
  type Counts,
  fleschKincaidGrade,
  fleschReadingEase,
  smogLong,
  wienerSachtextGrade,
} from "./formulas.ts";
import { germanNumber } from "./german-numbers.ts";
import { germanSyllables } from "./german-syllables.ts";

export interface Language {
  readonly syllables: (word: string) => number;
  /** The words of a number in figures. */
  readonly number: (figures: string) => readonly string[];
  /** Short forms and the words said for them; their full stop ends no sentence. */
  readonly shortForms: ReadonlyMap<string, string>;
  /** Short forms whose full stop ends a sentence if a capital letter follows. */
  readonly endingForms: ReadonlyMap<string, string>;
  /** Units after a number, and the words said for them. */
  readonly units: ReadonlyMap<string, string>;
  readonly signs: ReadonlyMap<string, string>;
  /** Words before which a number with a full stop is an ordinal: months where dates are so written. */
  readonly afterOrdinal: RegExp | undefined;
  readonly ease: (counts: Counts) => number | undefined;
  readonly grade: (counts: Counts) => number | undefined;
  readonly smog: (counts: Counts) => number | undefined;
}

const table = (words: Readonly<Record<string, string>>): ReadonlyMap<string, string> =>
  new Map(Object.entries(words));

const english: Language = {
  syllables: englishSyllables,
  number: englishNumber,
  shortForms: table({
    "e.g.": "for example",
    "i.e.": "that is",
    "mr.": "mister",
    "mrs.": "missis",
    "ms.": "miz",
    "dr.": "doctor",
    "prof.": "professor",
    "st.": "saint",
    "vs.": "versus",
    "approx.": "approximately",
    "incl.": "including",
    "fig.": "figure",
    "cf.": "compare",
  }),
  endingForms: table({
    "etc.": "et cetera",
    "a.m.": "a m",
    "p.m.": "p m",
    "min.": "minutes",
    "sec.": "seconds",
    "hr.": "hours",
  }),
  units: table({
    s: "seconds",
    sec: "seconds",
    min: "minutes",
    h: "hours",
    kg: "kilograms",
    g: "grams",
    lb: "pounds",
    m: "metres",
    cm: "centimetres",
    mm: "millimetres",
    km: "kilometres",
  }),
  signs: table({
    "%": "percent",
    "°": "degrees",
    "×": "times",
    "&": "and",
    "+": "plus",
    "=": "equals",
    "€": "euros",
    "£": "pounds",
    $: "dollars",
    "½": "half",
    "¼": "quarter",
    "–": "to",
  }),
  afterOrdinal: undefined,
  ease: fleschReadingEase,
  grade: fleschKincaidGrade,
  smog: smogLong,
};

const german: Language = {
  syllables: germanSyllables,
  number: germanNumber,
  shortForms: table({
    "z.b.": "zum Beispiel",
    "d.h.": "das heißt",
    "z.": "zum",
    "d.": "das",
    "b.": "Beispiel",
    "bzw.": "beziehungsweise",
    "ca.": "zirka",
    "evtl.": "eventuell",
    "ggf.": "gegebenenfalls",
    "dr.": "Doktor",
    "nr.": "Nummer",
    "vgl.": "vergleiche",
    "inkl.": "inklusive",
    "max.": "maximal",
    "mind.": "mindestens",
  }),
  endingForms: table({
    "usw.": "und so weiter",
    "etc.": "et cetera",
    "min.": "Minuten",
    "sek.": "Sekunden",
    "std.": "Stunden",
    "wdh.": "Wiederholungen",
  }),
  units: table({
    s: "Sekunden",
    min: "Minuten",
    h: "Stunden",
    kg: "Kilogramm",
    g: "Gramm",
    m: "Meter",
    cm: "Zentimeter",
    mm: "Millimeter",
    km: "Kilometer",
  }),
  signs: table({
    "%": "Prozent",
    "°": "Grad",
    "×": "mal",
    "&": "und",
    "+": "plus",
    "=": "gleich",
    "€": "Euro",
    "½": "halb",
    "–": "bis",
  }),
  afterOrdinal:
    /^(?:\p{Ll}|Januar|Februar|März|April|Mai|Juni|Juli|August|September|Oktober|November|Dezember)/u,
  ease: amstadReadingEase,
  grade: wienerSachtextGrade,
  smog: () => undefined,
};

const LANGUAGES: ReadonlyMap<string, Language> = new Map([
  ["en", english],
  ["de", german],
]);

/** The language of a tag such as en or en-GB; undefined where reading in it cannot be judged. */
export function languageOf(tag: string): Language | undefined {
  return LANGUAGES.get(tag.toLowerCase().split("-")[0] ?? "");
}
