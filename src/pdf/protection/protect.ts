/** Locks a finished booklet with a password, for sending. */
import { randomBytes } from "node:crypto";
import { inflateSync } from "node:zlib";
import { Fault } from "../../faults/fault.ts";
import { broken } from "../objects/broken.ts";
import { Lexer } from "../objects/lexer.ts";
import { asBuffer } from "../objects/objects.ts";
import { Dict, dict, Name, Ref, Stream, Text, type Value, writeValue } from "../objects/values.ts";
import { FileWriter } from "../objects/write.ts";
import { encrypted, makeSecrets, PERMISSIONS, type Random } from "./password.ts";

export interface Protection {
  /** Opens the file. */
  readonly password: string;
  /** Also allows to change the protection; a random one, that nobody knows, where none is given. */
  readonly owner?: string;
  /** Where random bytes come from; the same bytes give the same file. Keep the default but in tests. */
  readonly random?: Random;
}

/**
 * Encrypts a PDF of `finishPdf` with AES-256, so that it opens with the password only.
 *
 * Reading aloud, printing and copying stay allowed. Throws `usage` for an empty password, and
 * `pdf-broken` for a file of another form.
 */
export function protectPdf(
  bytes: Uint8Array,
  { password, owner, random = randomBytes }: Protection,
): Uint8Array {
  if (password === "") throw new Fault("usage", "The password for the PDF is empty.");
  const { places, trailer } = readTable(asBuffer(bytes));
  const secrets = makeSecrets(password, owner ?? hex(random(16)), random);
  const locked = (text: Text) =>
    new Text(encrypted(Buffer.from(text.bytes, "latin1"), secrets.key, random).toString("latin1"));
  const file = new FileWriter();
  let last = 0;
  for (const [object, place] of places) {
    last = Math.max(last, object);
    if ("within" in place) {
      file.place(object, place);
      continue;
    }
    const value = readObject(asBuffer(bytes), object, place.offset);
    if (value instanceof Stream) {
      const entries = withTexts(value.dict, locked) as Dict;
      file.stream(object, new Stream(entries, encrypted(value.data, secrets.key, random)));
    } else file.plain(object, writeValue(withTexts(extended(value), locked)));
  }
  const text = (name: "U" | "UE" | "O" | "OE" | "Perms") =>
    new Text(secrets[name].toString("latin1"));
  const filter = dict({ CFM: new Name("AESV3"), AuthEvent: new Name("DocOpen"), Length: 32 });
  file.plain(
    last + 1,
    writeValue(
      dict({
        Filter: new Name("Standard"),
        V: 5,
        R: 6,
        Length: 256,
        P: PERMISSIONS,
        EncryptMetadata: true,
        CF: dict({ StdCF: filter }),
        StmF: new Name("StdCF"),
        StrF: new Name("StdCF"),
        U: text("U"),
        UE: text("UE"),
        O: text("O"),
        OE: text("OE"),
        Perms: text("Perms"),
      }),
    ),
  );
  return file.done(last + 2, {
    Root: trailer.get("Root"),
    Info: trailer.get("Info"),
    Encrypt: new Ref(last + 1),
  });
}

const hex = (bytes: Uint8Array) => Buffer.from(bytes).toString("hex");

/** The catalogue of a file of PDF 1.7 says that its encryption is newer. */
function extended(value: Value): Value {
  const type = value instanceof Dict ? value.get("Type") : undefined;
  if (!(value instanceof Dict) || !(type instanceof Name) || type.text !== "Catalog") return value;
  const extension = dict({ BaseVersion: new Name("1.7"), ExtensionLevel: 8 });
  return new Dict(value).set("Extensions", dict({ ADBE: extension }));
}

function withTexts(value: Value, change: (text: Text) => Text): Value {
  if (value instanceof Text) return change(value);
  if (Array.isArray(value)) return value.map((one) => withTexts(one, change));
  if (!(value instanceof Dict)) return value;
  return new Dict([...value].map(([key, one]) => [key, withTexts(one, change)]));
}

type Where = { readonly offset: number } | { readonly within: number; readonly index: number };

/** Reads the cross-reference stream in the one form in which we write it. */
function readTable(file: Buffer): { places: Map<number, Where>; trailer: Dict } {
  const tail = file.toString("latin1", Math.max(0, file.length - 64));
  const [, start] = /startxref\n(\d+)\n%%EOF\n$/.exec(tail) ?? [];
  const [, object] = /^(\d+) 0 obj/.exec(
    file.toString("latin1", Number(start ?? file.length), Number(start ?? 0) + 20),
  ) ?? [undefined, undefined];
  if (start === undefined || object === undefined) throw broken("It is not one that we finished.");
  const table = readObject(file, Number(object), Number(start));
  if (!(table instanceof Stream) || table.dict.has("Encrypt") || table.dict.has("Prev")) {
    throw broken("It is encrypted or has been changed.");
  }
  const places = new Map<number, Where>();
  const rows = unpacked(table);
  const row = Buffer.alloc(7);
  for (let at = 0, number = 0; at + 8 <= rows.length; at += 8, number++) {
    for (let byte = 0; byte < 7; byte++) {
      row[byte] = ((row[byte] as number) + (rows[at + 1 + byte] as number)) & 255;
    }
    const [first, second] = [row.readUInt32BE(1), row.readUInt16BE(5)];
    if (number === Number(object)) continue;
    if (row[0] === 1) places.set(number, { offset: first });
    if (row[0] === 2) places.set(number, { within: first, index: second });
  }
  return { places, trailer: table.dict };
}

function unpacked(table: Stream): Buffer {
  try {
    return inflateSync(table.data);
  } catch {
    throw broken("Its table of objects cannot be unpacked.");
  }
}

function readObject(file: Buffer, object: number, offset: number): Value {
  const head = `${object} 0 obj\n`;
  if (file.toString("latin1", offset, offset + head.length) !== head) {
    throw broken(`Object ${object} is not where it should be.`);
  }
  const lexer = new Lexer(file, offset + head.length);
  const value = lexer.value();
  lexer.skip();
  if (lexer.word() !== "stream") return value;
  const length = value instanceof Dict ? value.get("Length") : undefined;
  const end = lexer.at + 1 + (typeof length === "number" ? length : file.length);
  if (!(value instanceof Dict) || file.toString("latin1", end, end + 10) !== "\nendstream") {
    throw broken(`Object ${object} is cut off.`);
  }
  return new Stream(value, file.subarray(lexer.at + 1, end));
}
