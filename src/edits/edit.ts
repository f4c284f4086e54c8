/** What an edit of a file's front matter is, as data: what it makes of the data, and who has to give a reason. */

/** The way to a value inside front matter: keys and list positions, outermost first. */
export type Path = readonly (string | number)[];

/** What can be written there. A plan holds no empty value: null stands for the reason, yet to be given. */
export type Value =
  | string
  | number
  | boolean
  | null
  | readonly Value[]
  | { readonly [name: string]: Value };

export type Edit =
  /** The field has this value from now on; groups around it that are missing are made. */
  | { readonly kind: "set"; readonly path: Path; readonly value: Value }
  /** The list at the path gets this item at its end; a missing list is made. */
  | { readonly kind: "append"; readonly path: Path; readonly value: Value };

/** What could be done about a fault: edits that, made together, are to do away with it. */
export interface Remedy {
  /** What all remedies of a group are, such as "The least that would help". */
  readonly lead: string;
  readonly sentence: string;
  readonly edits: readonly Edit[];
}

/** Remedies of which the clinician chooses one, or none. */
export function choices(remedies: readonly Omit<Remedy, "lead">[]): Remedy[] {
  const which = remedies.length === 1 ? "This" : "One of these";
  const lead = `${which} can be done, if it is right for this client`;
  return remedies.map((remedy) => ({ lead, ...remedy }));
}

/**
 * The data with the edits made, one after the other; what is given stays as it is. Throws a RangeError
 * for a path that leads through a value without parts, or past the end of a list.
 */
export function edited(data: unknown, edits: readonly Edit[]): unknown {
  return edits.reduce(
    (now: unknown, { kind, path, value }) =>
      changedAt(now, path, (old) => (kind === "set" ? value : [...listOf(old), value])),
    data,
  );
}

/** Whether somebody has to say why before the edits can be made. */
export function asksWhy(edits: readonly Edit[]): boolean {
  return edits.some(({ value }) => holdsNull(value));
}

/** The edits with the reason wherever one is asked for. */
export function withReason(edits: readonly Edit[], why: string): Edit[] {
  return edits.map((edit) => ({ ...edit, value: filled(edit.value, why) }));
}

/** Whether a value is a group of fields. */
export function isGroup(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function changedAt(data: unknown, path: Path, change: (old: unknown) => unknown): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return change(data);
  if (typeof key === "number") {
    if (!Array.isArray(data) || key >= data.length)
      throw new RangeError(`There is no item ${key}.`);
    return data.with(key, changedAt(data[key], rest, change));
  }
  if (!isGroup(data) && data !== undefined && data !== null) {
    throw new RangeError(`There can be no field ${key} in this value.`);
  }
  return { ...data, [key]: changedAt(data?.[key], rest, change) };
}

function listOf(value: unknown): readonly unknown[] {
  if (value === undefined || value === null) return [];
  if (Array.isArray(value)) return value;
  throw new RangeError("This is no list.");
}

function holdsNull(value: Value): boolean {
  if (value === null) return true;
  return typeof value === "object" && Object.values(value).some(holdsNull);
}

function filled(value: Value, why: string): Value {
  if (value === null) return why;
  if (typeof value !== "object") return value;
  if (isList(value)) return value.map((one) => filled(one, why));
  return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, filled(one, why)]));
}

const isList = (value: Value): value is readonly Value[] => Array.isArray(value);
