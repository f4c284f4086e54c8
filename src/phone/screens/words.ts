/** The screens' words: a message of the booklet's language with its values filled in. */

export type Say = (key: string, values?: Readonly<Record<string, string | number>>) => string;

/**
 * Messages by key. `{name}` takes a value; a key that the booklet does not have shows itself, so
 * that a gap is seen rather than a blank screen.
 */
export function sayFrom(words: Readonly<Record<string, string>>): Say {
  return (key, values = {}) =>
    (words[key] ?? key).replace(/\{(\w+)\}/g, (whole, name: string) =>
      String(values[name] ?? whole),
    );
}
