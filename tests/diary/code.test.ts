/** A diary as codes: what is shown is read again, whatever way it is scanned, and damage is never read as a diary. */
import { crc32, deflateRawSync, inflateRawSync } from "node:zlib";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { decodeBase45, encodeBase45 } from "../../src/diary/base45.ts";
import { checksum } from "../../src/diary/checksum.ts";
import { diaryCodes, LONGEST_PART, readCodes } from "../../src/diary/code.ts";
import { diaryCsv } from "../../src/diary/csv.ts";
import { anyDiary, diaryOf, entry, exercise, THREE } from "./fixtures.ts";

/** QR's alphanumeric mode (ISO/IEC 18004, table 5). */
const ALPHANUMERIC = /^[0-9A-Z $%*+\-./:]+$/;

/** Long enough for several parts. */
const LONG = diaryOf(
  ...Array.from({ length: 28 }, (_, n) =>
    entry({
      date: `2026-12-${String(n + 1).padStart(2, "0")}`,
      week: 1 + Math.floor(n / 7),
      effort: n % 11,
      painAfter: (n * 7) % 11,
      note: n % 3 === 0 ? `Day ${n}: ${(n * 7919).toString(36)}` : "",
      exercises: Array.from({ length: 5 }, (_, at) =>
        exercise({ card: `card-${at}`, title: `Exercise ${at}`, pain: (n + at) % 5 }),
      ),
      written: `2026-12-${String(n + 1).padStart(2, "0")}T18:${String(10 + n)}:05Z`,
    }),
  ),
);

const CODES = diaryCodes(LONG);
const [ONLY = ""] = diaryCodes(diaryOf(entry()));

/** A code as someone else could make it. */
const forged = (bytes: Uint8Array) => `PAULATIM1:1/1:${checksum(bytes)}:${encodeBase45(bytes)}:`;

const codesOf = (texts: readonly string[]) =>
  readCodes(texts).problems.map(({ code, line, values }) =>
    [line, code, ...Object.values(values)].join(" "),
  );

test("CRC-32 of 123456789 is its published check value, and any other the platform's", () => {
  expect(checksum(new TextEncoder().encode("123456789"))).toBe("CBF43926");
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
      expect(Number.parseInt(checksum(bytes), 16)).toBe(crc32(bytes));
    }),
  );
});

describe("writing", () => {
  test("a short diary is one code, a long one several of the same length", () => {
    expect(CODES.length).toBeGreaterThan(3);
    expect(new Set(CODES.slice(0, -1).map(({ length }) => length)).size).toBe(1);
    expect(ONLY).toMatch(/^PAULATIM1:1\/1:[0-9A-F]{8}:/);
  });

  test("the make-up is the one documented, as others would undo it", () => {
    const parts = CODES.map((code) => /^PAULATIM1:\d+\/\d+:([0-9A-F]{8}):(.*):$/.exec(code));
    const bytes = decodeBase45(parts.map((part) => part?.[2]).join("")) ?? new Uint8Array();
    expect(inflateRawSync(bytes).toString("utf8")).toBe(diaryCsv(LONG).slice(1));
    expect(new Set(parts.map((part) => part?.[1]))).toEqual(new Set([checksum(bytes)]));
  });

  test("the same diary gives the same codes", () => {
    expect(diaryCodes(structuredClone(LONG))).toEqual(CODES);
  });
});

describe("round trip", () => {
  test("any diary comes back, in characters of QR's alphanumeric mode and short parts", () => {
    fc.assert(
      fc.property(anyDiary, (diary) => {
        const codes = diaryCodes(diary);
        for (const code of codes) {
          expect(code).toMatch(ALPHANUMERIC);
          expect(code.length).toBeLessThanOrEqual(LONGEST_PART);
        }
        expect(readCodes(codes)).toEqual({ diary, problems: [] });
      }),
      { numRuns: 200 },
    );
  });

  test.each([
    ["parts in another order", [...CODES].reverse()],
    ["parts scanned twice", [...CODES, ...CODES.slice(1, 3)]],
    ["small letters", CODES.map((code) => code.toLowerCase())],
    ["empty lines", CODES.flatMap((code) => ["", code, "  "])],
    ["blanks and line ends around", CODES.map((code) => `  ${code} \r\n`)],
    ["one behind the other", [CODES.join("")]],
    ["broken lines", CODES.flatMap((code) => `${code.slice(0, 80)}\r\n${code.slice(80)}`)],
    ["tabs sent after each", CODES.map((code) => `${code}\t`)],
    ["another program's deflate", [forged(deflateRawSync(diaryCsv(LONG).slice(1)))]],
  ])("%s", (_name, texts) => {
    expect(readCodes(texts)).toEqual({ diary: LONG, problems: [] });
  });
});

describe("what is not all there, or not whole", () => {
  const other = diaryCodes(diaryOf(entry({ note: "another" })));
  const [first = "", second = "", ...rest] = CODES;
  const n = CODES.length;
  const sumOf = (code: string) => code.split(":")[2];
  test.each([
    ["nothing", [], ["1 not-a-diary"]],
    ["a part missing", [first, ...rest], [`1 codes-missing 2 ${n}`]],
    [
      "most parts missing",
      [second],
      [
        `1 codes-missing ${CODES.map((_, at) => at + 1)
          .filter((at) => at !== 2)
          .join(", ")} ${n}`,
      ],
    ],
    ["another text", [...CODES, "4006381333931"], [`${n + 1} code-unknown 4006381333931`]],
    [
      "another text, a part missing",
      ["x", ...CODES.slice(1)],
      ["1 code-unknown X", `1 codes-missing 1 ${n}`],
    ],
    [
      "a code cut off",
      [first, second.slice(0, -1), ...rest],
      [`1 codes-missing 2 ${n}`, "2 code-cut"],
    ],
    ["a newer version", [ONLY.replace("PAULATIM1", "PAULATIM2")], ["1 code-newer 2 1"]],
    [
      "version nought",
      [ONLY.replace("PAULATIM1", "PAULATIM0")],
      [`1 code-unknown ${ONLY.replace("PAULATIM1", "PAULATIM0").slice(0, 60)}…`],
    ],
    ["part nought", [ONLY.replace(":1/", ":0/")], ["1 code-cut"]],
    ["part 3 of 1", [ONLY.replace(":1/", ":3/")], ["1 code-part 3 1"]],
    [
      "codes of two diaries",
      [...CODES, ...other],
      [`${n + 1} codes-mixed ${sumOf(first)} (${n} parts) ${sumOf(other[0] ?? "")} (1 part)`],
    ],
    [
      "a part twice with other content",
      [...CODES, first.replace(/..:$/, "00:")],
      [`${n + 1} code-differs 1`],
    ],
    ["no Base45", [`PAULATIM1:1/1:00000000:!:`], ["1 codes-damaged"]],
    ["a text that is not deflated", [forged(Uint8Array.of(7, 7, 7, 7))], ["1 codes-damaged"]],
    [
      "deflated bytes that are no text",
      [forged(deflateRawSync(Uint8Array.of(0xff, 0xfe, 0xff)))],
      ["1 codes-damaged"],
    ],
    ["a deflated letter", [forged(deflateRawSync("Dear clinic"))], ["1 not-a-diary"]],
    [
      "a newer diary inside",
      [forged(deflateRawSync(diaryCsv(THREE).slice(1).replaceAll("\r\n1,", "\r\n9,")))],
      ["1 newer-version 9 1"],
    ],
  ])("%s", (_name, texts, problems) => {
    expect(codesOf(texts)).toEqual(problems);
    expect(readCodes(texts).diary).toBeUndefined();
  });
});

describe("damage", () => {
  const ALPHABET = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:";

  const thorough = test.skipIf(process.env.PAULATIM_MUTANTS);
  thorough("no single wrong character anywhere in a code is read as a diary", () => {
    let tried = 0;
    for (let at = 0; at < ONLY.length; at += 1) {
      for (const wrong of `${ALPHABET}!Ä\n`) {
        if (wrong === ONLY[at] || (wrong === "\n" && at === ONLY.length)) continue;
        const { diary, problems } = readCodes([ONLY.slice(0, at) + wrong + ONLY.slice(at + 1)]);
        tried += 1;
        if (diary !== undefined || problems.length === 0) throw new Error(`${at}: ${wrong}`);
      }
    }
    expect(tried).toBeGreaterThan(10_000);
  });

  test("nor in one of several", () => {
    const character = fc.constantFrom(...ALPHABET);
    fc.assert(
      fc.property(fc.nat(CODES.length - 1), fc.nat(), character, (which, at, wrong) => {
        const texts = CODES.map((code, n) => {
          const place = at % code.length;
          return n === which ? code.slice(0, place) + wrong + code.slice(place + 1) : code;
        });
        const { diary, problems } = readCodes(texts);
        if (texts[which] === CODES[which]) expect(diary).toEqual(LONG);
        else expect([diary, problems.length > 0]).toEqual([undefined, true]);
      }),
      { numRuns: 2000 },
    );
  });

  test("nor one lost, put in or changed with its neighbour", () => {
    fc.assert(
      fc.property(fc.nat(ONLY.length - 1), fc.constantFrom(...ALPHABET), (at, more) => {
        const [before, after] = [ONLY.slice(0, at), ONLY.slice(at + 1)];
        const swapped = before + after.charAt(0) + ONLY.charAt(at) + after.slice(1);
        for (const text of [before + after, before + more + ONLY.slice(at), swapped]) {
          // blanks around a code are no damage
          if (text.trim() === ONLY) continue;
          expect(readCodes([text]).diary).toBeUndefined();
        }
      }),
      { numRuns: 2000 },
    );
  });
});
