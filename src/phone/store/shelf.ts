/** The device's storage with what it does when it is missing, full or closed: values, never an exception. */

/** The part of the Web Storage API that is used. */
export type KeyValueStore = Pick<Storage, "getItem" | "setItem" | "removeItem">;

export interface Shelf {
  readonly read: (key: string) => string | null;
  /** Keeps a text, or nothing in its place. Whether it is known to be so: it was read back. */
  readonly write: (key: string, text: string | undefined) => boolean;
  /** Whether it keeps anything at all. */
  readonly works: boolean;
  /** Whether it has room for what one session may add. */
  readonly hasRoom: () => boolean;
}

/** Characters: a note of the greatest length and a row for each of two dozen exercises take less. */
const ROOM = 8192;

const TRY = "paulatim try";

export function shelf(storage: KeyValueStore | undefined): Shelf {
  const kept = (key: string, text: string | undefined): boolean => {
    if (text === undefined) storage?.removeItem(key);
    else storage?.setItem(key, text);
    return storage?.getItem(key) === (text ?? null);
  };
  const write = (key: string, text: string | undefined): boolean => {
    try {
      return kept(key, text);
    } catch {
      return false;
    }
  };
  const works = () => {
    try {
      return kept(TRY, "1");
    } catch (thrown) {
      // full is not the same as missing: what is kept can still be read
      return thrown instanceof Error && thrown.name === "QuotaExceededError";
    }
  };
  const triedOut = <Found>(found: Found): Found => {
    write(TRY, undefined);
    return found;
  };
  return {
    read: (key) => {
      try {
        return storage?.getItem(key) ?? null;
      } catch {
        return null;
      }
    },
    write,
    works: triedOut(storage !== undefined && works()),
    hasRoom: () => triedOut(write(TRY, "0".repeat(ROOM))),
  };
}

/** A storage of the device, or undefined where asking for it is refused. */
export function deviceStorage<Name extends "localStorage" | "sessionStorage">(
  from: { readonly [N in Name]: Storage },
  name: Name,
): Storage | undefined {
  try {
    return from[name] ?? undefined;
  } catch {
    return undefined;
  }
}
