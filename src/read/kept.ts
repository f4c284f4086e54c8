/** Keeps what was made of each file's text until the text changes, so that a library read again costs only what is new. */

/**
 * The same function, which hands out what it made before where a file has the same text in the same
 * context (the same object). `make` must not depend on anything else, and nobody may change what it
 * gives. One result is kept for each file name: the last.
 */
export function keptByFile<Context, Result>(
  make: (file: string, text: string, context: Context) => Result,
): (file: string, text: string, context: Context) => Result {
  const kept = new Map<string, { text: string; context: Context; result: Result }>();
  return (file, text, context) => {
    const before = kept.get(file);
    if (before && before.text === text && before.context === context) return before.result;
    const result = make(file, text, context);
    kept.set(file, { text, context, result });
    return result;
  };
}

/** The same function of one value that can be written as JSON, which gives the same object for equal values. The last is kept. */
export function keptLast<Value, Result>(make: (value: Value) => Result): (value: Value) => Result {
  let last: { key: string; result: Result } | undefined;
  return (value) => {
    const key = JSON.stringify(value);
    if (last?.key !== key) last = { key, result: make(value) };
    return last.result;
  };
}
