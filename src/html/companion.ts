/** The script that makes a booklet's file a companion on a phone, with the data of this booklet. */
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import type { Booklet } from "../compose/model.ts";
import { Fault } from "../faults/fault.ts";
import { shippedFolder } from "../files/shipped.ts";
import type { Words } from "../words/words.ts";
import { phoneData } from "./phone.ts";
import type { BookletScript } from "./policy.ts";

/** Reads the script as it was built with the program; it serves any number of booklets. Throws internal. */
export async function loadCompanion(): Promise<string> {
  const file = join(shippedFolder(), "out", "bin", "phone.js");
  try {
    return await readFile(file, "utf8");
  } catch (cause) {
    throw new Fault("internal", "The program cannot find its own files.", {
      hint: "Install it again, or build it with npm run build.",
      cause,
    });
  }
}

/**
 * The companion of a booklet. A draft has none, since nobody may start from it; nor has the page to
 * hang up, which is paper.
 */
export function companionOf(
  booklet: Booklet,
  code: string,
  words: Words,
): BookletScript | undefined {
  if (booklet.draft || booklet.edition === "summary") return undefined;
  return { code, data: JSON.stringify(phoneData(booklet, words)) };
}
