/** Marks all that a page shows but that is not part of the text as an artifact. */
import { broken } from "../objects/broken.ts";
import { type Operation, type Operations, operands } from "../objects/content.ts";
import { Dict, Name, type Value } from "../objects/values.ts";

/** Operators that show something by themselves. */
const SHOWS = new Set(["Do", "sh", "BI"]);
const SHOWS_TEXT = new Set(["Tj", "TJ", "'", '"']);
/** Operators that a path begins with, and those that end it; `n` ends one that is not painted. */
const BEGINS_PATH = new Set(["m", "re"]);
const ENDS_PATH = new Set(["n", "f", "F", "f*", "S", "s", "B", "B*", "b", "b*"]);
const BEGINS_MARK = new Set(["BMC", "BDC"]);

/** Where marked content of the document begins: its number in the page. */
export function markedId(bytes: Buffer, operation: Operation): number | undefined {
  if (operation.operator !== "BDC") return undefined;
  const [, properties] = operands(bytes, operation) as [Value, Value?];
  const id = properties instanceof Dict ? properties.get("MCID") : undefined;
  return typeof id === "number" ? id : undefined;
}

/**
 * What a mark says of what it holds: that it is content of the document, that it is an artifact, or
 * neither, such as how a ligature is spelled.
 */
type Meaning = number | "artifact" | "plain";

function meaningOf(bytes: Buffer, operation: Operation): Meaning {
  const [tag] = operands(bytes, operation);
  if (tag instanceof Name && tag.text === "Artifact") return "artifact";
  return markedId(bytes, operation) ?? "plain";
}

export interface Wrapped {
  readonly content: Buffer;
  /** Numbers of the marked content that is left. */
  readonly marked: ReadonlySet<number>;
}

/**
 * Puts everything that is shown outside marked content between `/Artifact BMC` and `EMC`, and makes
 * artifacts of the marked content whose number is in `decoration`.
 *
 * Nothing is moved or left out: the page looks as before. Throws `pdf-broken` when the marks do not
 * close as they open.
 */
export function wrapArtifacts(
  bytes: Buffer,
  operations: Operations,
  decoration: ReadonlySet<number> = new Set(),
): Wrapped {
  const wrapper = new Wrapper(bytes, operations, decoration);
  for (let index = 0; index < operations.length; index++) wrapper.take(index);
  return wrapper.done();
}

/** An open mark; `split` is a plain one with marked content in it. */
type Open = "real" | "plain" | "split";

/** Follows the operations: what is open, and where an artifact has to begin and end. */
class Wrapper {
  readonly #bytes: Buffer;
  readonly #operations: Operations;
  readonly #decoration: ReadonlySet<number>;
  readonly #out: Pieces;
  readonly #marked = new Set<number>();
  readonly #open: Open[] = [];
  /** How many of the open marks are real: while there are any, nothing is an artifact. */
  #real = 0;
  /** Saved graphics states. */
  #saved = 0;
  /** Whether the text object here holds marked content: each showing in it is wrapped alone. */
  #mixed = false;
  /** Whether a path has begun that has not ended yet. */
  #path = false;

  constructor(bytes: Buffer, operations: Operations, decoration: ReadonlySet<number>) {
    this.#bytes = bytes;
    this.#operations = operations;
    this.#decoration = decoration;
    this.#out = new Pieces(bytes);
  }

  take(index: number): void {
    const operator = this.#operations.operator(index);
    const start = this.#operations.start(index);
    if (BEGINS_MARK.has(operator)) this.#begin(index);
    else if (operator === "EMC") this.#end(index);
    else if (operator === "q") this.#saved++;
    else if (operator === "Q") this.#out.close(start, this.#saved--);
    else if (operator === "BT") {
      this.#mixed = this.#holdsReal(index, "ET");
      if (this.#mixed) this.#out.close(start);
      else this.#wrap(start);
    } else if (operator === "ET") this.#mixed = false;
    else if (BEGINS_PATH.has(operator)) {
      if (!this.#path && this.#real === 0 && isPainted(this.#operations, index)) this.#wrap(start);
      this.#path = true;
    } else if (ENDS_PATH.has(operator)) this.#path = false;
    else if (SHOWS.has(operator)) this.#wrap(start);
    else if (this.#mixed && SHOWS_TEXT.has(operator)) {
      this.#wrap(start);
      this.#closeMixed(index);
    }
  }

  done(): Wrapped {
    if (this.#open.length > 0) throw broken("A page opens more marks than it closes.");
    this.#out.close(this.#bytes.length);
    return { content: this.#out.done(), marked: this.#marked };
  }

  /** Begins an artifact where nothing is marked. */
  #wrap(at: number): void {
    if (this.#real === 0) this.#out.open(at, this.#saved);
  }

  #begin(index: number): void {
    const operation = this.#operations.get(index);
    if (this.#real > 0) {
      this.#open.push("plain");
      return;
    }
    const meaning = meaningOf(this.#bytes, operation);
    if (meaning === "plain") {
      const split = this.#holdsReal(index, "EMC");
      if (split) this.#out.close(operation.start);
      else this.#wrap(operation.start);
      this.#open.push(split ? "split" : "plain");
      return;
    }
    this.#out.close(operation.start);
    this.#open.push("real");
    this.#real++;
    if (typeof meaning !== "number") return;
    if (!this.#decoration.has(meaning)) this.#marked.add(meaning);
    else this.#out.replace(operation.start, operation.end, "/Artifact BMC");
  }

  #end(index: number): void {
    const open = this.#open.pop();
    if (open === undefined) throw broken("A page closes more marks than it opens.");
    if (open === "real") this.#real--;
    else if (open === "split") this.#out.close(this.#operations.start(index));
    else if (this.#mixed) this.#closeMixed(index);
  }

  /** In a text object with marked content: an artifact ends with the showing, or the mark around it. */
  #closeMixed(index: number): void {
    if (this.#real === 0 && this.#open.at(-1) !== "plain")
      this.#out.close(this.#operations.end(index));
  }

  /** Whether marked content begins or ends between here and the end of this mark or text object. */
  #holdsReal(from: number, end: "ET" | "EMC"): boolean {
    let plain = 0;
    for (let index = from + 1; index < this.#operations.length; index++) {
      const operator = this.#operations.operator(index);
      if (operator === end && plain === 0) return false;
      if (operator === "EMC" && --plain < 0) return true;
      if (!BEGINS_MARK.has(operator)) continue;
      if (meaningOf(this.#bytes, this.#operations.get(index)) !== "plain") return true;
      plain++;
    }
    return false;
  }
}

/** The bytes as they were, with what was put between them. */
class Pieces {
  readonly #bytes: Buffer;
  readonly #pieces: Buffer[] = [];
  #copied = 0;
  /** How deep in saved states the artifact was opened; undefined while none is open. */
  #opened: number | undefined;

  constructor(bytes: Buffer) {
    this.#bytes = bytes;
  }

  replace(start: number, end: number, text: string): void {
    this.#pieces.push(this.#bytes.subarray(this.#copied, start), Buffer.from(text, "latin1"));
    this.#copied = end;
  }

  open(at: number, saved: number): void {
    if (this.#opened !== undefined) return;
    this.replace(at, at, "/Artifact BMC\n");
    this.#opened = saved;
  }

  /** Closes the artifact, if one is open; given a depth, only one that was opened that deep. */
  close(at: number, saved?: number): void {
    if (this.#opened === undefined || (saved ?? this.#opened) !== this.#opened) return;
    this.replace(at, at, this.#bytes[at - 1] === 10 ? "EMC\n" : "\nEMC\n");
    this.#opened = undefined;
  }

  done(): Buffer {
    return Buffer.concat([...this.#pieces, this.#bytes.subarray(this.#copied)]);
  }
}

/** Whether the path that begins here is painted, not only cut out. */
function isPainted(operations: Operations, from: number): boolean {
  for (let index = from + 1; index < operations.length; index++) {
    const operator = operations.operator(index);
    if (ENDS_PATH.has(operator)) return operator !== "n";
  }
  return false;
}
