/** Syllables of German words: as many as there are vowels and diphthongs. */

const SOUNDS = /aa|ai|au|ay|äu|ee|ei|eu|ey|ie|oo|oi|[aeiouyäöü]/g;

/** Syllables of one German word, at least one. */
export function germanSyllables(word: string): number {
  const sounds = word.toLowerCase().normalize("NFC").replaceAll("qu", "k").match(SOUNDS);
  return Math.max(1, sounds?.length ?? 0);
}
