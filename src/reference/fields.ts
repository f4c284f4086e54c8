/** Turns a schema into the tables of an author's reference: every field with what may stand in it and why. */
import * as z from "zod";

/** The parts of JSON Schema that the schemas of this program come out as. */
export interface JsonSchema {
  readonly type?: string | readonly string[];
  readonly description?: string;
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly required?: readonly string[];
  readonly items?: JsonSchema;
  readonly additionalProperties?: JsonSchema | boolean;
  readonly anyOf?: readonly JsonSchema[];
  readonly oneOf?: readonly JsonSchema[];
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly default?: unknown;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly pattern?: string;
}

/** The JSON Schema of what an author writes (before anything is converted). */
export function authorSchema(schema: z.ZodType): JsonSchema {
  return z.toJSONSchema(schema, { io: "input", unrepresentable: "any" }) as JsonSchema;
}

/** The same as a file for editors: what is used several times is stated once. */
export function schemaFile(schema: z.ZodType): string {
  const json = z.toJSONSchema(schema, { io: "input", unrepresentable: "any", reused: "ref" });
  return `${JSON.stringify(json, null, 1)}\n`;
}

/**
 * A Markdown table of all fields, inner fields under their outer one but for those named in `closed`, and
 * those of a dose, which has a table of its own: `doses` says where.
 */
export function fieldTable(schema: JsonSchema, closed: readonly string[] = [], doses = ""): string {
  const rows = rowsOf(schema, "")
    .filter(({ name }) => !closed.some((outer) => name.startsWith(`\`${outer} › `)))
    .filter((row) => doses === "" || !isInDose(row.name))
    .map((row) =>
      doses !== "" && isDose(row.name) ? { ...row, kind: row.kind.replace(/^[^;]*/, doses) } : row,
    );
  return [
    "| Field | What stands in it | What it means |",
    "| --- | --- | --- |",
    ...rows.map(({ name, kind, says }) => `| ${name} | ${kind} | ${says} |`),
  ].join("\n");
}

/** Names of fields that hold a dose, at the end of the way to them: a row of a week table holds one too. */
const DOSE = "(?:dose|weeks › …|rule › from|rule › to)";
const isDose = (name: string): boolean => /(?:^`|› )dose`$|rule › (?:from|to)`$/.test(name);
const isInDose = (name: string): boolean => new RegExp(`(?:^\`|› )${DOSE} › `).test(name);

interface Row {
  readonly name: string;
  readonly kind: string;
  readonly says: string;
}

function rowsOf(schema: JsonSchema, prefix: string): Row[] {
  const required = new Set(schema.required ?? []);
  return Object.entries(schema.properties ?? {}).flatMap(([key, field]) => {
    const name = prefix === "" ? key : `${prefix} › ${key}`;
    const need = required.has(key) && field.default === undefined ? "" : optional(field);
    return [
      {
        name: `\`${name}\``,
        kind: cell(kindOf(field) + need),
        says: cell(field.description ?? ""),
      },
      ...inside(field, name),
    ];
  });
}

function inside(field: JsonSchema, name: string): Row[] {
  if (field.properties) return rowsOf(field, name);
  if (field.items) return inside(field.items, name);
  if (typeof field.additionalProperties === "object")
    return inside(field.additionalProperties, `${name} › …`);
  const branches = [...(field.anyOf ?? []), ...(field.oneOf ?? [])];
  const seen = new Set<string>();
  const rows = branches.flatMap((branch) =>
    inside(branch, name).map((row) => ({ ...row, form: formOf(branch) })),
  );
  const forms = new Set(rows.flatMap(({ form }) => form ?? []));
  return rows
    .filter((row) => !seen.has(row.name) && seen.add(row.name))
    .map((row) => together(row, rows, forms.size));
}

/** The word that tells a group of fields from the other forms of it. */
function formOf({ properties = {} }: JsonSchema): string | undefined {
  const word = Object.values(properties).find((field) => field.const !== undefined)?.const;
  return word === undefined ? undefined : String(word);
}

interface FormRow extends Row {
  readonly form: string | undefined;
}

/** A field that several forms of a group have: all that may stand in it, what it means, and in which forms it is. */
function together(row: FormRow, rows: readonly FormRow[], forms: number): Row {
  const same = rows.filter(({ name }) => name === row.name);
  const kinds = [...new Set(same.map(({ kind }) => kind.replace(/; .*$/, "")))];
  const needs = [...new Set(same.flatMap(({ kind }) => /; .*$/.exec(kind)?.[0] ?? []))];
  const means = [...new Set(same.map(({ says }) => says))];
  const in_ = [...new Set(same.flatMap(({ form }) => form ?? []))];
  // the field that names the form says what each of its words means
  if (in_.length > 1 && in_.join() === kinds.join()) {
    const each = same.map(({ kind, says }) => `${kind}: ${says}`);
    return { name: row.name, kind: kinds.join(", "), says: each.join(" ") };
  }
  const where = in_.length > 0 && in_.length < forms ? ` (${in_.join(", ")})` : "";
  const kind = `${kinds.join(", or ")}${needs.join("")}`;
  return { name: row.name, kind, says: `${means.join(" Or: ")}${where}` };
}

function optional(field: JsonSchema): string {
  const { default: value } = field;
  if (value === undefined || (typeof value === "object" && value !== null))
    return "; may be left out";
  return `; ${JSON.stringify(value).replaceAll('"', "")} if left out`;
}

function kindOf(field: JsonSchema): string {
  if (field.enum) {
    const words = field.enum.map(String);
    return words.length > 12 ? "a word of the vocabulary" : words.join(", ");
  }
  if (field.const !== undefined) return String(field.const);
  const branches = [...(field.anyOf ?? []), ...(field.oneOf ?? [])];
  if (branches.length > 0) return [...new Set(branches.map(kindOf))].join(", or ");
  if (field.type === "array") return `a list: ${field.items ? kindOf(field.items) : "anything"}`;
  if (field.type === "object") return "a group";
  if (field.type === "integer" || field.type === "number") return range(field);
  if (field.type === "boolean") return "true or false";
  return "text";
}

function range({ type, minimum, maximum }: JsonSchema): string {
  const name = type === "integer" ? "a whole number" : "a number";
  const bounded = maximum !== undefined && maximum < 1e6;
  if (minimum !== undefined && bounded) return `${name} from ${minimum} to ${maximum}`;
  return minimum === undefined || minimum < -1e6 ? name : `${name}, at least ${minimum}`;
}

const cell = (text: string): string => text.replaceAll("|", "\\|").replaceAll("\n", " ");
