/** Checks plain data against a schema and says each problem where it stands in the file. */
import { closest, distance } from "fastest-levenshtein";
import type * as z from "zod";
import { Fault } from "../faults/fault.ts";
import type { Path, Source } from "./source.ts";

type Issue = z.core.$ZodIssue;

export type Validated<T> =
  | { readonly value: T; readonly faults: readonly Fault[] }
  | { readonly value: undefined; readonly faults: readonly Fault[] };

/** The value as the schema types it, or every problem with it: unknown-field, missing-field, wrong-value. */
export function validate<S extends z.ZodType>(
  schema: S,
  data: unknown,
  source: Source,
): Validated<z.infer<S>> {
  const result = schema.safeParse(data ?? {}, { reportInput: true });
  if (result.success) return { value: result.data, faults: [] };
  return {
    value: undefined,
    faults: result.error.issues.flatMap((issue) => faultsOf(issue, schema, source, [])),
  };
}

function faultsOf(issue: Issue, schema: z.ZodType, source: Source, prefix: Path): Fault[] {
  const path = [...prefix, ...issue.path.map(keyOf)];
  if (issue.code === "unrecognized_keys") {
    return issue.keys.map((key) =>
      unknownField(key, [...path, key], schemasAt(schema, issue.path.map(keyOf)), source),
    );
  }
  if (isAbsent(issue)) {
    const name = String(path.at(-1) ?? "the front matter");
    const what = issue.input === null ? "empty" : "missing";
    const place = issue.input === null ? source.atKey(path) : source.at(path);
    const help = issue.message.startsWith("Invalid")
      ? (hintOf(issue) ?? `Write “${name}:” with its value.`)
      : sentence(issue.message);
    return [
      make("missing-field", `The field ${name} is ${what}${inWhat(path)}.`, source, place, help),
    ];
  }
  if (issue.code === "invalid_union") return unionFaults(issue, schema, source, path);
  if (issue.code === "invalid_key") {
    const inner = issue.issues[0]?.message ?? "This name is not allowed here.";
    return [make("wrong-value", `${fieldName(path)}: ${inner}.`, source, source.atKey(path))];
  }
  return [
    make(
      "wrong-value",
      `${fieldName(path)}: ${messageOf(issue)}`,
      source,
      source.at(path),
      hintOf(issue),
    ),
  ];
}

/** Whether the value is not there: left out, or left empty. A check across fields also has no input. */
function isAbsent(issue: Issue): boolean {
  const typed =
    issue.code === "invalid_type" ||
    issue.code === "invalid_value" ||
    issue.code === "invalid_union";
  return issue.input === null || (typed && issue.input === undefined);
}

/** The branch of a union that came nearest; one plain fault where none came near. */
function unionFaults(
  issue: Extract<Issue, { code: "invalid_union" }>,
  schema: z.ZodType,
  source: Source,
  path: Path,
): Fault[] {
  const custom = issue.message !== "Invalid input" ? issue.message : undefined;
  const structured = issue.errors.filter(
    (branch) => !branch.some((inner) => inner.path.length === 0 && inner.code === "invalid_type"),
  );
  const deepest = [...structured].sort((a, b) => depth(b) - depth(a) || a.length - b.length)[0];
  if (
    deepest &&
    (!custom || depth(deepest) > 0 || deepest.some((inner) => inner.code === "unrecognized_keys"))
  ) {
    return deepest.flatMap((inner) => faultsOf(inner, schema, source, path));
  }
  return [
    make(
      "wrong-value",
      `${fieldName(path)}: ${custom ? `${got(issue)}${custom}.` : "this value is not one that can stand here."}`,
      source,
      source.at(path),
      nearWord(issue),
    ),
  ];
}

/** Where a word was written and a branch is a list of words: the one that may be meant. */
function nearWord({
  input,
  errors,
}: Extract<Issue, { code: "invalid_union" }>): string | undefined {
  if (typeof input !== "string") return undefined;
  const words = errors
    .flat()
    .flatMap((inner) =>
      inner.code === "invalid_value" && inner.path.length === 0 ? inner.values.map(String) : [],
    );
  return words.length > 0 ? nearOrAll(input, words) : undefined;
}

const depth = (issues: readonly Issue[]): number =>
  Math.max(0, ...issues.map((issue) => issue.path.length));

function unknownField(
  key: string,
  path: Path,
  schemas: readonly z.core.$ZodType[],
  source: Source,
): Fault {
  const elsewhere = [...new Set(schemas.flatMap((one) => formsWith(one, key)))];
  const known = [...new Set(schemas.flatMap(namesOf))].filter((name) => name !== key);
  const near = nearest(key, known);
  // { say: one thing, then another } reads as two fields
  const hint = /\s/.test(key)
    ? "If this is part of a text with a comma, put the text in quotation marks."
    : elsewhere.length > 0
      ? `It goes with ${elsewhere.join(" or ")}.`
      : near
        ? `Did you mean ${near}?`
        : known.length > 0
          ? `Known here: ${known.join(", ")}.`
          : undefined;
  return make(
    "unknown-field",
    `There is no field ${key}${inWhat(path)}.`,
    source,
    source.atKey(path),
    hint,
  );
}

/** The known word nearest to what was written, if it is near enough to be meant. */
export function nearest(word: string, known: readonly string[]): string | undefined {
  if (known.length === 0) return undefined;
  const best = closest(word, [...known]);
  const shared = known.find(
    (name) => name.length > 3 && (name.includes(word) || word.includes(name)),
  );
  return distance(word, best) <= Math.max(2, Math.floor(word.length / 3)) ? best : shared;
}

function make(
  code: "unknown-field" | "missing-field" | "wrong-value",
  message: string,
  source: Source,
  place: ReturnType<Source["at"]>,
  hint?: string,
): Fault {
  return new Fault(code, message, { place, frame: source.frame(place), hint });
}

function messageOf(issue: Issue): string {
  if (issue.code === "invalid_value") return `${shown(issue.input)} is not a known word here.`;
  if (issue.code === "too_small" && issue.message.startsWith("Too")) {
    return `${shown(issue.input)} is too ${amount(issue.origin)}; the least is ${issue.minimum}.`;
  }
  if (issue.code === "too_big" && issue.message.startsWith("Too")) {
    return `${shown(issue.input)} is too much; the most is ${issue.maximum}.`;
  }
  if (issue.code === "invalid_type" && issue.message.startsWith("Invalid input")) {
    return `${got(issue)}${expected(issue.expected)} is expected.`;
  }
  return `${got(issue)}${issue.message}.`;
}

/** A known word near to what was written, or what a check of ours says to do (its params' hint). */
function hintOf(issue: Issue): string | undefined {
  if (issue.code === "custom") {
    const hint: unknown = issue.params?.hint;
    return typeof hint === "string" ? hint : undefined;
  }
  if (issue.code !== "invalid_value") return undefined;
  const known = issue.values.map(String);
  return known.length === 1 ? `Write ${known[0]}.` : nearOrAll(String(issue.input), known);
}

function nearOrAll(word: string, known: readonly string[]): string {
  const near = nearest(word, known);
  return near ? `Did you mean ${near}?` : `Known words: ${known.join(", ")}.`;
}

function got(issue: Issue): string {
  // what a check of ours says of a whole group names its fields itself
  if (issue.input === undefined || (issue.code === "custom" && typeof issue.input === "object"))
    return "";
  return `${shown(issue.input)} was given; `;
}

/** A value as a person would name it. */
function shown(input: unknown): string {
  if (typeof input === "string") return `"${input.length > 60 ? `${input.slice(0, 60)}…` : input}"`;
  if (Array.isArray(input)) return input.length === 0 ? "an empty list" : "a list";
  if (input === null || input === undefined) return "nothing";
  return typeof input === "object" ? "a group of fields" : String(input);
}

const amount = (origin: string): string =>
  origin === "array" ? "short" : origin === "string" ? "short" : "little";

const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

const NAMES: Record<string, string> = {
  string: "text",
  number: "a number",
  int: "a whole number",
  boolean: "true or false",
  array: "a list",
  object: "a group of fields",
  record: "a group of fields",
};

const expected = (type: string): string => NAMES[type] ?? type;

function fieldName(path: Path): string {
  if (path.length === 0) return "The front matter";
  // entries of a list are counted from 1
  return path.map((key) => (typeof key === "number" ? key + 1 : key)).join(" › ");
}

function inWhat(path: Path): string {
  return path.length > 1 ? ` in ${fieldName(path.slice(0, -1))}` : "";
}

const keyOf = (key: PropertyKey): string | number => (typeof key === "number" ? key : String(key));

/** The schemas at a path; those of all branches where it has several. */
function schemasAt(schema: z.ZodType, path: Path): z.core.$ZodType[] {
  let current: z.core.$ZodType[] = [schema];
  for (const key of path) current = current.flatMap((one) => inside(one, key));
  return current;
}

/** The forms of a group told apart by one field that have a field of this name: "test: repetitions". */
function formsWith(schema: z.core.$ZodType, key: string): string[] {
  const def = schema._zod.def as z.core.$ZodTypes["_zod"]["def"];
  if (def.type !== "union" || !("discriminator" in def)) {
    return through(schema).flatMap((one) => formsWith(one, key));
  }
  const field = String(def.discriminator);
  return def.options.flatMap((form) => {
    const own = form._zod.def as z.core.$ZodTypes["_zod"]["def"];
    if (own.type !== "object" || own.shape[key] === undefined) return [];
    const names = own.shape[field]?._zod.values;
    return [...(names ?? [])].map((name) => `${field}: ${String(name)}`);
  });
}

function inside(schema: z.core.$ZodType, key: string | number): z.core.$ZodType[] {
  const def = schema._zod.def as z.core.$ZodTypes["_zod"]["def"];
  if (def.type === "object")
    return def.shape[String(key)] ? [def.shape[String(key)] as z.core.$ZodType] : [];
  if (def.type === "array") return [def.element];
  if (def.type === "record") return [def.valueType];
  return through(schema).flatMap((one) => inside(one, key));
}

function namesOf(schema: z.core.$ZodType): string[] {
  const def = schema._zod.def as z.core.$ZodTypes["_zod"]["def"];
  if (def.type === "object") return Object.keys(def.shape);
  if (def.type === "record") {
    const key = def.keyType._zod.def as z.core.$ZodTypes["_zod"]["def"];
    return key.type === "enum" ? Object.values(key.entries).map(String) : [];
  }
  return through(schema).flatMap(namesOf);
}

function through(schema: z.core.$ZodType): z.core.$ZodType[] {
  const def = schema._zod.def as z.core.$ZodTypes["_zod"]["def"];
  if (def.type === "optional" || def.type === "default" || def.type === "nullable")
    return [def.innerType];
  if (def.type === "prefault" || def.type === "nonoptional" || def.type === "readonly")
    return [def.innerType];
  if (def.type === "pipe") return [def.in];
  if (def.type === "union") return [...def.options];
  return [];
}
