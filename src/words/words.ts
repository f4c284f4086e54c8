/** The words of a language: messages by key, in ICU message format, from one YAML file. */
import { IntlMessageFormat } from "intl-messageformat";
import { Fault } from "../faults/fault.ts";
import { parseYaml } from "../read/front-matter.ts";
import type { Source } from "../read/source.ts";
import { nearest } from "../read/validate.ts";

export type Values = Readonly<Record<string, string | number>>;

export interface Words {
  /** The message of a key with its values filled in. Throws a template-broken fault for an unknown key. */
  readonly say: (key: string, values?: Values) => string;
  readonly has: (key: string) => boolean;
  /** The message of a key as it is written, its values not filled in; empty for an unknown key. */
  readonly raw: (key: string) => string;
  /** Messages under a group, in the order of the file: lists such as the emergency signs. */
  readonly list: (group: string) => readonly string[];
  /** The same by their names in the group. */
  readonly named: (group: string) => ReadonlyMap<string, string>;
  readonly keys: readonly string[];
}

/**
 * The words in one or several YAML texts. Later ones stand in for words of the first and cannot add
 * any. Throws yaml-syntax, unknown-field.
 */
export function readWords(
  files: readonly { readonly file: string; readonly text: string }[],
  locale: string,
): Words {
  const messages = new Map<string, string>();
  for (const { file, text } of files) {
    const parsed = parseYaml(file, text, text);
    if (parsed.faults[0]) throw parsed.faults[0];
    const own = new Map<string, string>();
    collect(parsed.data, "", own);
    const stray = [...own.keys()].find((key) => messages.size > 0 && !messages.has(key));
    if (stray !== undefined) throw unknownWord(stray, parsed.source, [...messages.keys()]);
    for (const [key, message] of own) messages.set(key, message);
  }
  const formats = new Map<string, IntlMessageFormat>();
  const formatOf = (key: string): IntlMessageFormat => {
    const known = formats.get(key);
    if (known) return known;
    const message = messages.get(key);
    if (message === undefined) {
      throw new Fault("template-broken", `There are no words for ${key}.`, {
        hint: "Add the key to the file of words.",
      });
    }
    const made = new IntlMessageFormat(message, locale, undefined, { ignoreTag: true });
    formats.set(key, made);
    return made;
  };
  const named = (group: string): Map<string, string> =>
    new Map(
      [...messages].flatMap(([key, message]) =>
        key.startsWith(`${group}.`) ? [[key.slice(group.length + 1), message]] : [],
      ),
    );
  return {
    say: (key, values) => {
      const text = messages.get(key);
      return text !== undefined && !text.includes("{") && !text.includes("'")
        ? text
        : String(formatOf(key).format(values));
    },
    has: (key) => messages.has(key),
    raw: (key) => messages.get(key) ?? "",
    list: (group) => [...named(group).values()],
    named,
    keys: [...messages.keys()],
  };
}

function unknownWord(key: string, source: Source, known: readonly string[]): Fault {
  const place = source.atKey(key.split("."));
  const near = nearest(key, known);
  return new Fault("unknown-field", `The booklet has no words called ${key}.`, {
    place,
    frame: source.frame(place),
    hint: near ? `Did you mean ${near}?` : "See templates/words of the program for all of them.",
  });
}

/** The words under one group, by their keys within it. */
export function wordsUnder(words: Words, group: string): Words {
  const inside = (key: string) => `${group}.${key}`;
  return {
    say: (key, values) => words.say(inside(key), values),
    has: (key) => words.has(inside(key)),
    raw: (key) => words.raw(inside(key)),
    list: (key) => words.list(inside(key)),
    named: (key) => words.named(inside(key)),
    keys: words.keys.flatMap((key) =>
      key.startsWith(`${group}.`) ? [key.slice(group.length + 1)] : [],
    ),
  };
}

function collect(data: unknown, prefix: string, into: Map<string, string>): void {
  if (typeof data === "string" || typeof data === "number") {
    into.set(prefix, String(data));
    return;
  }
  if (data === null) into.set(prefix, "");
  if (typeof data !== "object" || data === null) return;
  for (const [key, value] of Object.entries(data)) {
    collect(value, prefix === "" ? key : `${prefix}.${key}`, into);
  }
}
