/** Files made to harm: huge, packed, binary, cut off, or slow to read. Each is a problem, soon told. */
import { deflateRawSync } from "node:zlib";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { encodeBase45 } from "../../src/diary/base45.ts";
import { checksum } from "../../src/diary/checksum.ts";
import { readCodes } from "../../src/diary/code.ts";
import { COLUMN_NAMES, LARGEST } from "../../src/diary/columns.ts";
import { diaryCsv, readDiary } from "../../src/diary/csv.ts";
import { textOf } from "../../src/diary/decode.ts";
import { sessionKey } from "../../src/diary/entry.ts";
import { THREE } from "./fixtures.ts";

const HEADER = COLUMN_NAMES.join(",");
const CSV = diaryCsv(THREE);
const filled = (piece: string) => piece.repeat(Math.floor((LARGEST - 2000) / piece.length));
const code = (bytes: Uint8Array) => `PAULATIM1:1/1:${checksum(bytes)}:${encodeBase45(bytes)}:`;

// each of these ends in a few seconds at most, or the test's own time runs out
describe("two megabytes of", () => {
  test.each([
    ["more than that", filled("x").padEnd(LARGEST + 1), "too-large"],
    ["one letter", filled("x"), "not-a-diary"],
    ["line ends under a header", `${HEADER}\n${filled("\n")}`, "no-rows"],
    ["empty rows", `${HEADER}\n${filled(`${",".repeat(25)}\n`)}`, "no-rows"],
    ["columns", `${HEADER},${filled("x,")}\n1`, "not-a-diary"],
    ["commas", `${HEADER}\n1${filled(",")}`, "value-missing"],
    ["cells", `${HEADER}\n1${filled(",x")}`, "row-long"],
    ["rows", `${HEADER}\n${filled("1,a,b\n")}`, "too-many-rows"],
    ["quotation marks", `${HEADER}\n${filled('"')}x`, "quotes-broken"],
    ["marks in a cell", `${HEADER}\n"${filled('x"')}`, "quotes-broken"],
    [
      "marks in a cell before blanks",
      `${HEADER}\n"${'x"'.repeat(500_000)}${" ".repeat(1_000_000)},b\n`,
      "quotes-broken",
    ],
    ["a cell that does not end", `${HEADER}\n"${filled("x\n")}`, "quotes-broken"],
    ["a cell in marks before blanks", `${HEADER}\n"x"${filled(" ")}`, "row-short"],
  ])("%s", (_name, text, problem) => {
    const read = readDiary(text);
    expect(read.problems[0]?.code).toBe(problem);
    expect(read.problems.length).toBeLessThanOrEqual(101);
  });

  test("rows under as many columns as may be", () => {
    const text = `${",".repeat(170)}${HEADER}\n${`1${",".repeat(190)}\n`.repeat(9_999)}`;
    expect(readDiary(text).problems).toHaveLength(101);
  });

  test("rows, each of them wrong", () => {
    const rows = `1,a,b${",x".repeat(23)}\n`.repeat(9_999);
    expect(readDiary(`${HEADER}\n${rows}`).problems).toHaveLength(101);
  });
});

describe("codes", () => {
  test("a hundred megabytes of nothing packed into a code", () => {
    const bytes = deflateRawSync(Buffer.alloc(100 * 1024 * 1024), { level: 9 });
    expect(bytes.length).toBeLessThan(200_000);
    const { diary, problems } = readCodes([code(bytes)]);
    expect(diary).toBeUndefined();
    expect(problems.map((problem) => problem.code)).toEqual(["codes-damaged"]);
  });

  test("a diary a little larger than may be", () => {
    const bytes = deflateRawSync(`${HEADER}\n`.padEnd(LARGEST + 1, "\n"), { level: 9 });
    expect(readCodes([code(bytes)]).diary).toBeUndefined();
  });

  test("a long list of nothing", () => {
    const texts = Array.from({ length: 1_000_000 }, () => "x");
    expect(readCodes(texts).problems).toHaveLength(101);
  });

  test("any text at all", () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: "binary" })), (texts) => {
        expect(readCodes(texts).diary).toBeUndefined();
      }),
    );
  });
});

describe("bytes", () => {
  const utf16 = (text: string) => Buffer.from(text, "utf16le");
  test.each([
    ["UTF-8", Buffer.from("Füße"), "Füße"],
    ["UTF-8 with its mark", Buffer.from("\uFEFFFüße"), "Füße"],
    ["UTF-16", utf16("\uFEFFFüße"), "Füße"],
    ["UTF-16, high byte first", utf16("\uFEFFFüße").swap16(), "Füße"],
    ["nothing", Buffer.of(), ""],
    ["Windows' own letters", Buffer.from("Füße", "latin1"), undefined],
    ["a picture", Buffer.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0), undefined],
    ["nothing printed", Buffer.of(0), "\0"],
    ["a packed file", Buffer.of(0x1f, 0x8b, 0x08, 0x00), undefined],
    ["half a letter of UTF-16", Buffer.of(0xff, 0xfe, 0x00, 0xd8), undefined],
  ])("%s", (_name, bytes, text) => {
    expect(textOf(bytes)).toBe(text);
  });
});

describe("any damage to a diary's file", () => {
  const known = new Map(THREE.entries.map((one) => [sessionKey(one), one]));

  test("cut off anywhere, it holds whole sessions or tells a problem", () => {
    for (let end = 0; end < CSV.length; end += 1) {
      const { diary, problems } = readDiary(CSV.slice(0, end));
      // an end between two rows cannot be told from one that was meant
      const between = /(?:^|Z\r?\n?)$/.test(CSV.slice(0, end));
      if (!between) expect([end, problems.length > 0]).toEqual([end, true]);
      if (!between)
        for (const one of diary?.entries ?? []) expect(one).toEqual(known.get(sessionKey(one)));
    }
  });

  test("any text in any place is read or told, never an exception", () => {
    const text = fc.oneof(
      fc.string({ unit: "binary" }),
      fc.constantFrom('"', ",", "\r\n", "\n", "'"),
    );
    fc.assert(
      fc.property(fc.nat(CSV.length), fc.nat(40), text, (at, less, more) => {
        const read = readDiary(CSV.slice(0, at) + more + CSV.slice(at + less));
        expect(read.diary === undefined && read.problems.length === 0).toBe(false);
      }),
      { numRuns: 1000 },
    );
  });
});
