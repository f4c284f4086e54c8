/** The keys and check values of a PDF that opens with a password: AES-256, revision 6. */
import { createCipheriv, createHash } from "node:crypto";

/** Gives so many random bytes. */
export type Random = (size: number) => Uint8Array;

export interface Secrets {
  /** With which every string and stream is encrypted. */
  readonly key: Buffer;
  /** Entries of the encryption dictionary. */
  readonly U: Buffer;
  readonly UE: Buffer;
  readonly O: Buffer;
  readonly OE: Buffer;
  readonly Perms: Buffer;
}

/** What a reader may do: everything (bits 1 and 2 are always 0). */
export const PERMISSIONS = -4;
/** A password is cut off after so many bytes of UTF-8. */
const LONGEST = 127;
const NO_IV = Buffer.alloc(16);

/** Works out all of them; the same passwords and random bytes give the same. */
export function makeSecrets(password: string, owner: string, random: Random): Secrets {
  const key = Buffer.from(random(32));
  const user = sealed(prepared(password), key, { random, above: Buffer.alloc(0) });
  const owned = sealed(prepared(owner), key, { random, above: user.check });
  const perms = Buffer.alloc(16);
  perms.writeInt32LE(PERMISSIONS, 0);
  perms.writeUInt32LE(0xffffffff, 4);
  perms.write("Tadb", 8, "latin1");
  Buffer.from(random(4)).copy(perms, 12);
  const cipher = createCipheriv("aes-256-ecb", key, null).setAutoPadding(false);
  return {
    key,
    U: user.check,
    UE: user.key,
    O: owned.check,
    OE: owned.key,
    Perms: cipher.update(perms),
  };
}

/** A password in the one form that all keyboards give (SASLprep, nearly), as bytes. */
function prepared(password: string): Buffer {
  const text = password.replace(/[\u00A0\u1680\u2000-\u200B\u202F\u205F\u3000]/g, " ");
  return Buffer.from(text.replace(/\u00AD/g, "").normalize("NFKC"), "utf8").subarray(0, LONGEST);
}

/** The value that checks a password, and the file's key as only it can read it. */
function sealed(
  password: Buffer,
  key: Buffer,
  { random, above }: { readonly random: Random; readonly above: Buffer },
): { check: Buffer; key: Buffer } {
  const salts = Buffer.from(random(16));
  const [checkSalt, keySalt] = [salts.subarray(0, 8), salts.subarray(8)];
  const check = Buffer.concat([hash(password, checkSalt, above), salts]);
  const cipher = createCipheriv("aes-256-cbc", hash(password, keySalt, above), NO_IV);
  return { check, key: cipher.setAutoPadding(false).update(key) };
}

/** Algorithm 2.B of ISO 32000-2. */
function hash(password: Buffer, salt: Buffer, above: Buffer): Buffer {
  let k = createHash("sha256").update(password).update(salt).update(above).digest();
  for (let round = 0, last = 0; round < 64 || last > round - 32; round++) {
    const once = Buffer.concat([password, k, above]);
    const many = Buffer.concat(Array.from({ length: 64 }, () => once));
    const cipher = createCipheriv("aes-128-cbc", k.subarray(0, 16), k.subarray(16, 32));
    const e = cipher.setAutoPadding(false).update(many);
    const sum = e.subarray(0, 16).reduce((total, byte) => total + byte, 0);
    k = createHash(["sha256", "sha384", "sha512"][sum % 3] as string)
      .update(e)
      .digest();
    last = e.at(-1) ?? 0;
  }
  return k.subarray(0, 32);
}

/** Bytes as they stand in the file: the random start, then the text. */
export function encrypted(data: Uint8Array, key: Buffer, random: Random): Buffer {
  const start = Buffer.from(random(16));
  const cipher = createCipheriv("aes-256-cbc", key, start);
  return Buffer.concat([start, cipher.update(data), cipher.final()]);
}
