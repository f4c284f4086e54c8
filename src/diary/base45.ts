/** Base45 (RFC 9285): bytes as the 45 characters that QR codes hold in few modules. */

/** RFC 9285, table 1; the same characters as QR's alphanumeric mode (ISO/IEC 18004). */
const ALPHABET = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:";

const VALUES: ReadonlyMap<string, number> = new Map(
  [...ALPHABET].map((character, value) => [character, value]),
);

/** Two bytes as three characters, least first; a last single byte as two. */
export function encodeBase45(bytes: Uint8Array): string {
  const out: string[] = [];
  for (let at = 0; at < bytes.length; at += 2) {
    const [first = 0, second] = bytes.subarray(at, at + 2);
    if (second === undefined) out.push(digits(first, 2));
    else out.push(digits(first * 256 + second, 3));
  }
  return out.join("");
}

/** The bytes; undefined for a text that is no Base45: a wrong character or length, or a number too large. */
export function decodeBase45(text: string): Uint8Array | undefined {
  if (text.length % 3 === 1) return undefined;
  const bytes = new Uint8Array(Math.floor(text.length / 3) * 2 + (text.length % 3 === 2 ? 1 : 0));
  let end = 0;
  for (let at = 0; at < text.length; at += 3) {
    const value = numberOf(text.slice(at, at + 3));
    const pair = at + 3 <= text.length;
    if (value === undefined || value > (pair ? 0xffff : 0xff)) return undefined;
    if (pair) bytes[end++] = value >> 8;
    bytes[end++] = value & 0xff;
  }
  return bytes;
}

function digits(value: number, count: number): string {
  let left = value;
  let out = "";
  for (let n = 0; n < count; n += 1) {
    out += ALPHABET.charAt(left % 45);
    left = Math.floor(left / 45);
  }
  return out;
}

function numberOf(group: string): number | undefined {
  let value = 0;
  for (const character of [...group].reverse()) {
    const digit = VALUES.get(character);
    if (digit === undefined) return undefined;
    value = value * 45 + digit;
  }
  return value;
}
