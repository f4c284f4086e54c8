/** Base45 against the examples and the forbidden texts of RFC 9285. */
import { describe, expect, test } from "vitest";
import { decodeBase45, encodeBase45 } from "../../src/diary/base45.ts";

const bytes = (text: string) => new TextEncoder().encode(text);

describe("RFC 9285, sections 4.3 and 4.4", () => {
  test.each([
    ["AB", "BB8"],
    ["Hello!!", "%69 VD92EX0"],
    ["base-45", "UJCLQE7W581"],
    ["ietf!", "QED8WEX0"],
  ])("%s is %s", (text, coded) => {
    expect(encodeBase45(bytes(text))).toBe(coded);
    expect(decodeBase45(coded)).toEqual(bytes(text));
  });
});

describe("texts that are no Base45 (RFC 9285, sections 4 and 6)", () => {
  test("FGW is the largest of two bytes", () => {
    expect(decodeBase45("FGW")).toEqual(Uint8Array.of(0xff, 0xff));
    expect(encodeBase45(Uint8Array.of(0xff, 0xff))).toBe("FGW");
  });

  test.each([
    ["65536 does not fit into two bytes", "GGW"],
    ["three colons", ":::"],
    ["256 does not fit into one byte", "V5"],
    ["two colons", "::"],
    ["a last group of one character", "BB8A"],
    ["one character", "0"],
    ["a small letter", "bb8"],
    ["a character outside the table", "BB!"],
    ["a line end", "BB8\n"],
    ["a character of two UTF-16 units", "B😀"],
  ])("%s", (_name, text) => {
    expect(decodeBase45(text)).toBeUndefined();
  });
});

test("nothing is nothing", () => {
  expect(encodeBase45(new Uint8Array())).toBe("");
  expect(decodeBase45("")).toEqual(new Uint8Array());
});

test("every single byte and every pair of bytes comes back", () => {
  for (let value = 0; value < 65_536; value += 1) {
    const pair = Uint8Array.of(value >> 8, value & 0xff);
    const coded = encodeBase45(pair);
    const back = decodeBase45(coded);
    if (coded.length !== 3 || back?.[0] !== pair[0] || back?.[1] !== pair[1]) {
      throw new Error(`${value} does not come back`);
    }
    if (value < 256) expect(decodeBase45(encodeBase45(pair.slice(1)))).toEqual(pair.slice(1));
  }
});
