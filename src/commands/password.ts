/** The password that locks PDFs for sending; from a file, so that no list of commands keeps it. */
import { readFileSync, statSync } from "node:fs";
import { resolve } from "node:path";
import { Fault } from "../faults/fault.ts";

/** AES-256 in PDF takes the first 127 bytes of a password only (ISO 32000-2, 7.6.4.3.3). */
const LONGEST = 127;
const LARGEST_FILE = 4096;

/**
 * The first line of a file, without its line end.
 *
 * Throws `file-unreadable`, and `usage` for a password that is empty or longer than PDF can hold.
 */
export function passwordFrom(file: string, folder: string): string {
  const password = firstLine(file, resolve(folder, file));
  const bytes = Buffer.byteLength(password);
  if (bytes === 0) {
    throw new Fault("usage", `The first line of ${file} is empty.`, {
      hint: "Write the password on its first line.",
    });
  }
  if (bytes > LONGEST) {
    throw new Fault("usage", `The password in ${file} is longer than ${LONGEST} bytes.`, {
      hint: "A PDF keeps no more of it: take a shorter one.",
    });
  }
  return password;
}

function firstLine(file: string, path: string): string {
  try {
    if (statSync(path).size <= LARGEST_FILE) {
      const text = readFileSync(path, "utf8").replace(/^\uFEFF/, "");
      return text.split(/\r?\n/, 1)[0] ?? "";
    }
  } catch (cause) {
    throw new Fault("file-unreadable", `The password file ${file} cannot be read.`, { cause });
  }
  throw new Fault("usage", `${file} is too large for a file with a password.`);
}
