/** Booklets locked with a password: opened by other programs, with the password and without. */
import fc from "fast-check";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import { describe, expect, it, test } from "vitest";
import { finishPdf } from "../../../src/pdf/post-process.ts";
import { protectPdf } from "../../../src/pdf/protection/protect.ts";
import { ask, has, latin1, makePdf } from "../support.ts";

const settled = finishPdf(makePdf({ title: "Grüße an (Edda)", ids: [3, 1] }), {
  date: new Date(0),
}).pdf;

/** Bytes that look random and are always the same. */
function counted(seed: number) {
  let state = seed;
  return (size: number) =>
    Uint8Array.from({ length: size }, () => {
      state = (state * 1_103_515_245 + 12_345) % 2_147_483_648;
      return state >> 16;
    });
}

const open = (data: Uint8Array, password?: string) =>
  getDocument({ data: data.slice(), verbosity: 0, ...(password === undefined ? {} : { password }) })
    .promise;

describe("protectPdf", () => {
  it("opens with the password only, and says the same as before", async () => {
    const locked = protectPdf(settled, { password: "three words long" });
    const pdf = await open(locked, "three words long");
    const before = await open(settled);
    expect((await pdf.getMetadata()).info).toMatchObject({
      ...(await before.getMetadata()).info,
      EncryptFilterName: "Standard",
    });
    expect(await (await pdf.getPage(1)).getStructTree()).toEqual(
      await (await before.getPage(1)).getStructTree(),
    );
    for (const wrong of [undefined, "", "Three words long"]) {
      await expect(open(locked, wrong)).rejects.toMatchObject({ name: "PasswordException" });
    }
  });

  it("lets nothing be read in the file itself", () => {
    const locked = latin1(protectPdf(settled, { password: "x" }));
    for (const word of ["Edda", "pdfuaid", "dc:title"]) {
      expect(locked).not.toContain(word);
    }
    expect(latin1(settled)).toContain("dc:title");
  });

  it("is another file each time, and the same with the same random bytes", () => {
    const once = () => latin1(protectPdf(settled, { password: "x" }));
    expect(once()).not.toBe(once());
    const same = () => latin1(protectPdf(settled, { password: "x", random: counted(5) }));
    expect(same()).toBe(same());
    expect(latin1(settled)).toBe(
      latin1(
        finishPdf(makePdf({ title: "Grüße an (Edda)", ids: [3, 1] }), { date: new Date(0) }).pdf,
      ),
    );
  });

  it("refuses an empty password, and what it did not finish itself", () => {
    expect(() => protectPdf(settled, { password: "" })).toThrow(
      expect.objectContaining({ code: "usage" }),
    );
    const locked = protectPdf(settled, { password: "x" });
    for (const bytes of [
      makePdf(),
      locked,
      settled.slice(0, -3),
      new Uint8Array(),
      settled.slice(0, 900),
    ]) {
      expect(() => protectPdf(bytes, { password: "x" })).toThrow(
        expect.objectContaining({ code: "pdf-broken" }),
      );
    }
  });

  // apt-get install qpdf
  test.skipIf(!has("qpdf"))("qpdf agrees for all kinds of passwords (needs qpdf)", () => {
    const passwords = fc.sample(
      fc.string({ unit: "grapheme-ascii", minLength: 1, maxLength: 40 }),
      { numRuns: 12, seed: 7 },
    );
    for (const [index, word] of [
      ...passwords,
      "Grüße 12",
      "длинный пароль",
      "日本語",
      "a".repeat(200),
    ].entries()) {
      const password = word.replace(/\0/g, "0");
      const locked = protectPdf(settled, {
        password,
        owner: `owner ${index}`,
        random: counted(index),
      });
      const check = (given: string) =>
        ask(locked, "qpdf", (file) => [`--password=${given}`, "--check", file]);
      expect(check(password).output).toContain("No syntax or stream encoding errors");
      expect(check(`owner ${index}`).output).toContain("Supplied password is owner password");
      expect(check(`${password.slice(0, 20)}!`).output).toContain("invalid password");
    }
  });

  test.skipIf(!has("qpdf"))("is AES-256 that lets readers read aloud (needs qpdf)", () => {
    const locked = protectPdf(settled, { password: "x" });
    const { output } = ask(locked, "qpdf", (file) => ["--password=x", "--show-encryption", file]);
    expect(output).toContain("R = 6");
    expect(output).toContain("extract for accessibility: allowed");
    expect(output.match(/AESv3/g)).toHaveLength(3);
  });
});
