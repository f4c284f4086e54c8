/** A text file that remembers where each of its front-matter values stands. */
import {
  type Document,
  isCollection,
  isMap,
  isNode,
  isPair,
  isScalar,
  type LineCounter,
  type Node,
} from "yaml";
import type { Path } from "../edits/edit.ts";
import type { Place } from "../faults/fault.ts";

export type { Path };

export class Source {
  /** The path as the user would write it. */
  readonly file: string;
  readonly text: string;
  readonly #document: Document | undefined;
  readonly #lines: LineCounter | undefined;
  /** Line of the file on which the YAML begins, less one. */
  readonly #offset: number;

  constructor(
    file: string,
    text: string,
    yaml?: { document: Document; lines: LineCounter; firstLine: number },
  ) {
    this.file = file;
    this.text = text;
    this.#document = yaml?.document;
    this.#lines = yaml?.lines;
    this.#offset = (yaml?.firstLine ?? 1) - 1;
  }

  /** Place of a value; of the nearest value around it where the path leads to nothing. */
  at(path: Path = []): Place {
    for (let length = path.length; length > 0; length -= 1) {
      const offset = this.#offsetOf(path.slice(0, length));
      if (offset !== undefined) return this.#placeAt(offset);
    }
    return this.atLine(this.#document === undefined ? 1 : this.#offset + 1);
  }

  /** Whether something is written at a path: a value, or a list or group with something in it. */
  holds(path: Path): boolean {
    const node = this.#document?.getIn(path, true);
    if (isCollection(node)) return node.items.length > 0;
    return isScalar(node) && node.value !== null;
  }

  /** Place of a key (not of its value), for fields that should not be there. */
  atKey(path: Path): Place {
    const parent =
      path.length > 1 ? this.#document?.getIn(path.slice(0, -1), true) : this.#document?.contents;
    if (isMap(parent)) {
      const pair = parent.items.find((item) => keyText(item.key) === String(path.at(-1)));
      if (pair && isNode(pair.key) && pair.key.range) return this.#placeAt(pair.key.range[0]);
    }
    return this.at(path);
  }

  /** Place of the first column of a line of the file, counted from 1. */
  atLine(line: number, column = 1): Place {
    return { file: this.file, line, column };
  }

  /** The line in question with a mark under the column, and one line on each side. */
  frame(place: Place): string {
    return frameOf(this.text, place);
  }

  #offsetOf(path: Path): number | undefined {
    const node = this.#document?.getIn(path, true);
    if (isNode(node)) return startOf(node);
    return undefined;
  }

  #placeAt(offset: number): Place {
    const position = this.#lines?.linePos(offset);
    return this.atLine((position?.line ?? 1) + this.#offset, position?.col ?? 1);
  }
}

/** A value as read from a file, with the file it came from. */
export interface Read<T> {
  readonly value: T;
  readonly source: Source;
}

/** Lines around a place, numbered, with a mark under its column. */
export function frameOf(text: string, place: Place): string {
  const lines = text.split(/\r?\n/);
  const first = Math.max(1, place.line - 1);
  const last = Math.min(lines.length, place.line + 1);
  const width = String(last).length;
  const out: string[] = [];
  for (let number = first; number <= last; number += 1) {
    const shown = (lines[number - 1] ?? "").slice(0, 160).replaceAll("\t", " ");
    const mark = number === place.line ? ">" : " ";
    out.push(`${mark} ${String(number).padStart(width)} | ${shown}`);
    if (number === place.line && place.column <= 160) {
      out.push(`  ${" ".repeat(width)} | ${" ".repeat(place.column - 1)}^`);
    }
  }
  return out.join("\n");
}

function startOf(node: Node): number | undefined {
  return node.range?.[0];
}

function keyText(key: unknown): string {
  return isScalar(key) ? String(key.value) : isPair(key) ? keyText(key.key) : String(key);
}
