/** The words of the booklet's frame: headings, labels and column heads, by key. */
import { IntlMessageFormat } from "intl-messageformat";
import { parse } from "yaml";

/** What a message may have put into it. */
export type WordValues = Readonly<Record<string, string | number>>;

export interface Words {
  /** Says the message of a key. Throws when there is none, or when it needs a value not given. */
  readonly say: (key: string, values?: WordValues) => string;
  /** All keys, with dots between the levels of the file. */
  readonly keys: ReadonlySet<string>;
}

/**
 * Reads a words file: YAML, nested or with dotted keys, each text in ICU MessageFormat.
 *
 * A `<` in a message is an ordinary character: messages are plain text. Messages are parsed when
 * they are first used.
 */
export function readWords(yaml: string, language: string): Words {
  const messages = new Map(flatten(parse(yaml)));
  const parsed = new Map<string, IntlMessageFormat>();
  const message = (key: string): IntlMessageFormat => {
    const known = parsed.get(key);
    if (known !== undefined) return known;
    const text = messages.get(key);
    if (text === undefined) throw new Error(`The words have no message "${key}".`);
    const made = new IntlMessageFormat(text, language, undefined, { ignoreTag: true });
    parsed.set(key, made);
    return made;
  };
  const said = new Map<string, string>();
  const fixed = (key: string): string => {
    const text = said.get(key) ?? String(message(key).format());
    said.set(key, text);
    return text;
  };
  return {
    say: (key, values) =>
      values === undefined || Object.keys(values).length === 0
        ? fixed(key)
        : String(message(key).format(values)),
    keys: new Set(messages.keys()),
  };
}

function flatten(value: unknown, prefix = ""): [string, string][] {
  if (typeof value === "string") return [[prefix, value]];
  if (typeof value !== "object" || value === null || Array.isArray(value)) {
    throw new Error(`The words under "${prefix}" are not a text.`);
  }
  return Object.entries(value).flatMap(([key, inner]) =>
    flatten(inner, prefix === "" ? key : `${prefix}.${key}`),
  );
}
