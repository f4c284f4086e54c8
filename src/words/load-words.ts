/** Loads the words of a language from the program's own files. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { shippedFolder } from "../files/shipped.ts";
import { readWords, type Words } from "./words.ts";

/** The words of a language, with numbers and plurals by the locale; `own` words stand in for some of them. */
export function loadWords(
  language: string,
  locale: string,
  own?: { readonly file: string; readonly text: string },
): Words {
  const file = join(shippedFolder(), "templates", "words", `${language}.yaml`);
  return readWords([{ file, text: readFileSync(file, "utf8") }, ...(own ? [own] : [])], locale);
}
