/** A plan's file that a command changes: read as it is, written back only where nobody else changed it. */

import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import type { Edit } from "../edits/edit.ts";
import { Fault } from "../faults/fault.ts";
import { unreadable } from "../files/unreadable.ts";
import { type Output, writeAll } from "../files/write.ts";
import { type Spliced, spliceFrontMatter } from "../read/splice.ts";
import type { Terminal } from "../terminal/terminal.ts";
import { shownPath } from "./check.ts";

export class PlanFile {
  /** As the user would write it. */
  readonly shown: string;
  readonly text: string;
  readonly #path: string;
  readonly #bytes: Buffer;

  /** Throws `file-unreadable` for a file that is not there, or that is no text in UTF-8. */
  constructor(path: string, terminal: Terminal) {
    this.shown = shownPath(path, terminal.cwd);
    this.#path = resolve(terminal.cwd, path);
    this.#bytes = this.#read();
    this.text = this.#bytes.toString("utf8");
    if (!Buffer.from(this.text, "utf8").equals(this.#bytes)) {
      const message = "This file is not written in UTF-8, so it cannot be changed.";
      throw new Fault("file-unreadable", message, {
        place: { file: this.shown, line: 1, column: 1 },
        hint: "Save it again as UTF-8.",
      });
    }
  }

  /** The text with the edits made. Throws `edit-impossible` where that cannot be done safely. */
  edited(edits: readonly Edit[]): Spliced {
    const spliced = spliceFrontMatter(this.text, edits);
    if (spliced !== undefined) return spliced;
    throw new Fault("edit-impossible", "The change could not be written into this file safely.", {
      place: { file: this.shown, line: 1, column: 1 },
      hint: "Write it in by hand.",
    });
  }

  /**
   * Writes the new text, and what else belongs to it, together. Throws `edit-impossible` where the file
   * was changed since it was read, and what `writeAll` throws.
   */
  async write(text: string, others: readonly Output[] = []): Promise<void> {
    if (!this.#read().equals(this.#bytes)) {
      throw new Fault("edit-impossible", "This file was changed while it was worked on.", {
        place: { file: this.shown, line: 1, column: 1 },
        hint: "Nothing was written. Run the command again.",
      });
    }
    await writeAll([{ path: this.#path, content: text }, ...others]);
  }

  #read(): Buffer {
    try {
      return readFileSync(this.#path);
    } catch (cause) {
      throw unreadable(this.shown, "plan", cause);
    }
  }
}

/** The lines that an edit takes out and puts in, marked as they are in a patch. */
export function changedLines(before: string, after: string): string {
  const [old, now] = [before.split(/\r?\n/), after.split(/\r?\n/)];
  const longer = now.length - old.length;
  const shorter = Math.min(old.length, now.length);
  let first = 0;
  while (first < shorter && old[first] === now[first]) first += 1;
  let last = old.length;
  while (last > first && last + longer > first && old[last - 1] === now[last + longer - 1])
    last -= 1;
  return [
    ...old.slice(first, last).map((line) => `- ${line}`),
    ...now.slice(first, last + longer).map((line) => `+ ${line}`),
  ].join("\n");
}
