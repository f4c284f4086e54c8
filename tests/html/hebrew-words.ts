/** Frame words in Hebrew letters, for testing: nonsense, but as long as the English ones. */
import type { Values, Words } from "../../src/words/words.ts";
import { english } from "../support/world.ts";

export const HEBREW = /[\u05d0-\u05ea]/;

/** Letters that stand for Latin ones; no last form within a word. */
const LETTERS = "אבגדהוזחטיכלמנסעפצקרשת";

/** The English words with every word of their own in Hebrew letters; what is filled in stays. */
export function hebrew(): Words {
  const words = english();
  return {
    ...words,
    say: (key: string, values?: Values) => translated(words.say(key, values), values ?? {}),
    list: (group) => words.list(group).map((message) => translated(message, {})),
    named: (group) =>
      new Map([...words.named(group)].map(([name, text]) => [name, translated(text, {})])),
  };
}

function translated(text: string, values: Values): string {
  const kept = Object.values(values)
    .map(String)
    .filter((value) => value !== "")
    .map((value) => value.replace(/[.*+?^${}()|[\]\\]/g, "\\$&"));
  const pattern = new RegExp(`(${["<[^>]*>", ...kept].join("|")})`);
  return text
    .split(pattern)
    .map((piece, index) => (index % 2 === 1 ? piece : piece.replace(/[A-Za-z]/g, letter)))
    .join("");
}

function letter(latin: string): string {
  const at = latin.toLowerCase().charCodeAt(0) - 97;
  return LETTERS.charAt(at % LETTERS.length);
}
