/** CRC-32 as of ISO 3309 and Ethernet: no changed character of a scanned code passes it, nor another exercise for a stored one. */

const POLYNOMIAL = 0xedb88320;

const TABLE: Uint32Array = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit += 1) {
    rest = rest & 1 ? (rest >>> 1) ^ POLYNOMIAL : rest >>> 1;
  }
  return rest;
});

/** Eight hexadecimal digits, capitals. */
export function checksum(bytes: Uint8Array): string {
  let rest = 0xffffffff;
  for (const byte of bytes) rest = (rest >>> 8) ^ (TABLE[(rest ^ byte) & 0xff] ?? 0);
  return (~rest >>> 0).toString(16).toUpperCase().padStart(8, "0");
}
