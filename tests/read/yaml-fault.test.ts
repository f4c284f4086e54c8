/** What cannot be read as YAML is said in words for people, each with what to do. */
import { expect, test } from "vitest";
import { parseYaml } from "../../src/read/front-matter.ts";

test.each([
  ["a quotation mark left open", 'a: "x', /^A text that begins with a quotation mark does not end/],
  ["a brace left open", "a: {b: 1", /^What begins with \{ has no \} at its end\.$/],
  ["a bracket left open", "a: [1, 2", /^What begins with \[ has no \] at its end\.$/],
  ["a second colon", "a: b: c", /second colon/],
  ["lines under a finished value", "a: 1\n b: 2", /lines that belong to nothing/],
  ["a tab", "a:\n\tb: 1", /begins with a tab/],
  ["a sign that YAML keeps for itself", "a: @x", /cannot begin with @ here/],
  ["a list with a field after it", "- a\nb: 1", /does not belong here/],
  ["lines of one group in two columns", "a:\n  - b\n  c: d", /same column/],
  ["a second part", "a: 1\n---\nb: 2", /second part/],
  ["a field twice", "a: 1\na: 2", /given twice/],
  ["a backslash that is nothing", 'a: "\\q"', /backslash/],
  ["a name that is a list", "[a]: 2", /name of a field is not a plain text/],
  ["a field without its colon", "a: >\nb", /no colon after its name/],
] as const)("%s", (_name, text, says) => {
  const [fault, ...others] = parseYaml("a.yaml", text, text).faults;
  expect(fault?.code).toBe("yaml-syntax");
  expect(fault?.message).toMatch(says);
  for (const one of [fault, ...others]) {
    expect(one?.message).not.toMatch(/flow|block|scalar|token|implicit|mapping|YAML\./i);
    expect(one?.hint).toMatch(/\.$/);
  }
});

test.each([
  ["a tab before a list", "a:\n\t- b\n  - { c: 1, d: 2 }\ne:\n  f: { g: 1 }\n", [2]],
  ["tabs on two lines", "a:\n\tb: 1\nc:\n\td: 1\n", [2, 4]],
  ["two slips that have nothing to do with each other", "a: b: c\nd: @x\n", [1, 2]],
  ["a brace left open, then a field twice", "a: {b: 1\nc: 2\nc: 3\n", [2, 3]],
  ["a field twice, twice", "a: 1\na: 2\na: 3\n", [2, 3]],
] as const)("no error that only follows from another: %s", (_name, text, lines) => {
  const { faults } = parseYaml("a.yaml", text, text);
  expect(faults.map(({ place }) => place?.line)).toEqual(lines);
});
