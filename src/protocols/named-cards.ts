/** Exercises that a sentence of a protocol names by the card's id in braces, as in “Do {heel-dig-hold} alone.” */
import type { Sign } from "./schema.ts";

const NAMED = /\{([^{}]*)\}/g;

/** The ids that a text names, in their order. */
export const cardsNamed = (text: string): string[] =>
  [...text.matchAll(NAMED)].map(([, id = ""]) => id);

/** The text with each id replaced by what stands for it. */
export const withNames = (text: string, nameOf: (id: string) => string): string =>
  text.replace(NAMED, (_, id: string) => nameOf(id));

/** The words of a sign, however it is written. */
export const wordsOf = (sign: Sign): string => (typeof sign === "string" ? sign : sign.say);
