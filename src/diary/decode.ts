/** The text in a file's bytes, in the encodings that phones and spreadsheets write. */

/** UTF-8, or UTF-16 with its byte order mark; undefined for what is no text in either. */
export function textOf(bytes: Uint8Array): string | undefined {
  const [first, second] = bytes;
  const encoding =
    first === 0xff && second === 0xfe
      ? "utf-16le"
      : first === 0xfe && second === 0xff
        ? "utf-16be"
        : "utf-8";
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}
