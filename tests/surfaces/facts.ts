/** Facts as surfaces state them, and where two surfaces state the same fact differently. */

/** What is compared. A key says of what: a date, a session, an exercise in a week. */
export type Kind = string;

export interface Fact {
  readonly kind: Kind;
  readonly key: string;
  readonly value: string;
  /** Where it stands: selector, page, UID, path in the JSON. */
  readonly place: string;
}

/** Adds a fact to those of the surface at hand. */
export type Say = (kind: Kind, key: string, value: string, place: string) => void;

/** A place for facts, and the way to add one. */
export function collector(): { readonly facts: Fact[]; readonly say: Say } {
  const facts: Fact[] = [];
  return { facts, say: (kind, key, value, place) => facts.push({ kind, key, value, place }) };
}

/** All facts that one file states, and for which kinds it states every fact there is. */
export interface Surface {
  readonly name: string;
  readonly facts: readonly Fact[];
  readonly complete: ReadonlySet<Kind>;
}

export interface Disagreement {
  readonly kind: Kind;
  readonly key: string;
  readonly says: readonly {
    readonly surface: string;
    readonly value: string;
    readonly place: string;
  }[];
}

export interface Comparison {
  readonly disagreements: readonly Disagreement[];
  /** By kind, how many statements of a fact were held against another surface's. */
  readonly compared: ReadonlyMap<Kind, number>;
}

const SILENT = "(says nothing)";

/** Holds all surfaces against each other. What only one surface can state has only not to contradict itself. */
export function compare(surfaces: readonly Surface[]): Comparison {
  const kinds = new Map<Kind, Map<string, Map<string, Fact[]>>>();
  for (const { name, facts } of surfaces) {
    for (const fact of facts) {
      const keys = entry(kinds, fact.kind, () => new Map<string, Map<string, Fact[]>>());
      const said = entry(keys, fact.key, () => new Map<string, Fact[]>());
      entry(said, name, (): Fact[] => []).push(fact);
    }
  }
  const disagreements: Disagreement[] = [];
  const compared = new Map<Kind, number>();
  for (const [kind, keys] of kinds) {
    const every = surfaces.filter(({ complete }) => complete.has(kind)).map(({ name }) => name);
    for (const [key, said] of keys) {
      const names = new Set([...said.keys(), ...every]);
      compared.set(kind, (compared.get(kind) ?? 0) + names.size - 1);
      const says = [...names].map((surface) => statement(surface, said.get(surface)));
      const alone =
        names.size === 1 && new Set([...said.values()].flat().map(({ value }) => value)).size > 1;
      if (alone || new Set(says.map(({ value }) => value)).size > 1) {
        disagreements.push({ kind, key, says });
      }
    }
  }
  return { disagreements, compared };
}

/** What a surface says of one fact, in one or several places. */
function statement(surface: string, facts: readonly Fact[] | undefined) {
  if (facts === undefined) return { surface, value: SILENT, place: "" };
  const values = new Map(facts.map(({ value, place }) => [value, place]));
  const sorted = [...values].sort(([a], [b]) => (a < b ? -1 : 1));
  return {
    surface,
    value: sorted.map(([value]) => value).join(" and "),
    place: sorted.map(([, place]) => place).join("; "),
  };
}

/** A disagreement for people: the fact, then who says what, and where. */
export function disagreementText({ kind, key, says }: Disagreement): string {
  const lines = says.map(
    ({ surface, value, place }) => `    ${surface}: ${value}${place === "" ? "" : `   [${place}]`}`,
  );
  return [`  ${kind} · ${key}`, ...lines].join("\n");
}

function entry<K, V>(map: Map<K, V>, key: K, made: () => V): V {
  const found = map.get(key);
  if (found !== undefined) return found;
  const value = made();
  map.set(key, value);
  return value;
}
