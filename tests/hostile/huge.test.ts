/** Enormous and twisted input: it ends soon, with a fault or a result, never with a crash. */
import { describe, expect, test } from "vitest";
import { makeProgram } from "../../src/booklet.ts";
import { readLibrary } from "../../src/cards/read-library.ts";
import { protocolSchema } from "../../src/protocols/schema.ts";
import { splitMarkdown } from "../../src/read/front-matter.ts";
import { validate } from "../../src/read/validate.ts";
import { change, DAY, DEMO, demoClinic, shippedText, worldWith } from "../support/world.ts";

const codes = (text: string) => splitMarkdown("x.md", text).faults.map((fault) => fault.code);

describe("front matter", () => {
  const bomb = [
    "a: &a [x, x, x, x, x, x, x, x, x]",
    ..."bcdefghij".split("").map((name, index) => {
      const before = "abcdefghij"[index];
      return `${name}: &${name} [${Array(9).fill(`*${before}`).join(", ")}]`;
    }),
  ].join("\n");

  test.each([
    ["an alias bomb", `---\n${bomb}\n---\n`, ["yaml-alias"]],
    ["one alias", "---\na: &a 1\nb: *a\n---\n", ["yaml-alias"]],
    ["a merge key", "---\na: &a { x: 1 }\nb: { <<: *a }\n---\n", ["yaml-alias"]],
    ["a tag that asks for code", "---\na: !!js/function 'x'\n---\n", []],
    ["ten thousand open brackets", `---\na: ${"[".repeat(10_000)}\n---\n`, ["yaml-syntax"]],
    ["a key of 100,000 letters", `---\n${"a".repeat(100_000)}: 1\n---\n`, undefined],
    ["two hundred thousand hyphens", `---\n${"-".repeat(200_000)}\n---\n`, undefined],
    ["control characters", "---\na: \u0000\u0007\n---\n", undefined],
    ["front matter of the wrong kind", "---\n- a\n- b\n---\n", []],
    ["several documents", "---\na: 1\n---\nb: 2\n---\n", []],
    ["the name of a prototype", "---\n__proto__: { polluted: true }\n---\n", []],
  ] as const)("%s", (_name, text, expected) => {
    const got = codes(text);
    if (expected) expect([...new Set(got)]).toEqual(expected);
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
  });

  test("a front matter that is a list is told as such", () => {
    const { split } = splitMarkdown("x.md", "---\n- a\n---\n");
    if (!split) throw new Error("not split");
    const { value, faults } = validate(protocolSchema, split.data, split.source);
    expect(value).toBeUndefined();
    expect(faults[0]?.message).toContain("a list was given");
  });
});

test("two thousand cards on one ladder", () => {
  const base = shippedText("exercises/calf-and-achilles/calf-stretch.md");
  const files = Object.fromEntries(
    Array.from({ length: 2000 }, (_, n) => {
      let text = base
        .replace(/^id: .*$/m, `id: rung-${n}`)
        .replace(/^demand: .*$/m, `demand: ${1 + n / 300}`);
      text = text.replace(
        /^easier: .*$/m,
        n === 0 ? "easier: []" : `easier: [{ to: rung-${n - 1} }]`,
      );
      text = text.replace(
        /^harder: .*$/m,
        n === 1999 ? "harder: []" : `harder: [{ to: rung-${n + 1} }]`,
      );
      return [`exercises/calf-and-achilles/rung-${n}.md`, text];
    }),
  );
  const { faults, library } = readLibrary(worldWith(files), ["exercises"], DAY);
  expect(faults).toEqual([]);
  expect(library.cards.size).toBeGreaterThan(2000);
});

test("a plan with two hundred added exercises is answered", () => {
  const file = `${DEMO}/achilles.md`;
  const adds = Array.from(
    { length: 200 },
    () => "  - { card: ankle-circles, why: Test, dose: { per_day: 1 } }",
  );
  const text = change(shippedText(file), "swap:", `add:\n${adds.join("\n")}\nswap:`);
  const { value, faults } = makeProgram(demoClinic({ [file]: text }), file);
  expect(value === undefined || faults.length > 0).toBe(true);
});
