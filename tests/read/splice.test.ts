/** Edits of front matter leave every byte that they do not concern as it was. */
import { readdirSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { type Edit, edited, type Path, type Value } from "../../src/edits/edit.ts";
import { spliceFrontMatter } from "../../src/read/splice.ts";
import { shippedText } from "../support/world.ts";

const file = (yaml: string, body = "\nDear Jo,\n\n---\n\n  keep  this \n"): string =>
  `---\n${yaml}---\n${body}`;
const yamlOf = (text: string): string => {
  const lines = text.split("\n");
  return lines
    .slice(
      1,
      lines.findIndex((line, at) => at > 0 && line.startsWith("---")),
    )
    .join("\n");
};
const set = (path: Path, value: Value): Edit => ({ kind: "set", path, value });
const append = (path: Path, value: Value): Edit => ({ kind: "append", path, value });
const SWAP = { card: "a", to: "b", why: "No time: never, ever", dose: { sets: 2 } };

describe("an edit is spliced in", () => {
  test.each<[string, string, Edit, string]>([
    ["a number", "a: 1   # one\nb: 2\n", set(["a"], 3), "a: 3   # one\nb: 2\n"],
    ["a quoted text", "a: 'x'  # c\n", set(["a"], "y"), "a: y  # c\n"],
    ["a text that needs quotes", "a: x\n", set(["a"], "y: # z"), 'a: "y: # z"\n'],
    ["a text like a number", "a: x\n", set(["a"], "12e4"), 'a: "12e4"\n'],
    ["a value left empty", "a:   # which?\nb: 1\n", set(["a"], "x"), "a: x   # which?\nb: 1\n"],
    ["a folded text", "a: >\n  one\n  two\nb: 1\n", set(["a"], "x"), "a: x\nb: 1\n"],
    [
      "a field of a group in braces",
      "a: { x: 1,  y: 2 } # c\n",
      set(["a", "y"], 3),
      "a: { x: 1,  y: 3 } # c\n",
    ],
    ["a new field in braces", "a: { x: 1 } # c\n", set(["a", "y"], "z"), "a: { x: 1, y: z } # c\n"],
    [
      "a new field in empty braces",
      "a: {}        # c\n",
      set(["a", "y"], 1),
      "a: { y: 1 }        # c\n",
    ],
    ["a new field in tight braces", "a: {x: 1}\n", set(["a", "y"], 1), "a: {x: 1, y: 1}\n"],
    [
      "a new field in a block",
      "a:\n    x: 1 # c\n# next\nb: 1\n",
      set(["a", "y"], 1),
      "a:\n    x: 1 # c\n    y: 1\n# next\nb: 1\n",
    ],
    [
      "a new field of an item",
      "a:\n  - x: 1\n    # z\n  - x: 2\n",
      set(["a", 0, "y"], 1),
      "a:\n  - x: 1\n    y: 1\n    # z\n  - x: 2\n",
    ],
    ["a new field of the file", "a: 1\n# end\n", set(["b"], 2), "a: 1\n# end\nb: 2\n"],
    ["groups that are not there", "a: 1\n", set(["b", "c", "d"], 2), "a: 1\nb: { c: { d: 2 } }\n"],
    [
      "a group, field by field",
      "s: { by: Ann, on: 1 } # c\n",
      set(["s"], { by: "Ann", on: 2, of: "x" }),
      "s: { by: Ann, on: 2, of: x } # c\n",
    ],
    [
      "a group in a block, field by field",
      "s:\n  by: Ann # who\n  on: 1\nz: 1\n",
      set(["s"], { by: "Bo", on: 1, of: "x" }),
      "s:\n  by: Bo # who\n  on: 1\n  of: x\nz: 1\n",
    ],
    [
      "a group with fewer fields",
      "s: { by: Ann, on: 1 } # c\n",
      set(["s"], { by: "Bo" }),
      "s: { by: Bo } # c\n",
    ],
    ["an item of a list in brackets", "a: [x, y] # c\n", append(["a"], "z"), "a: [x, y, z] # c\n"],
    ["an item after a comma", "a: [x, y, ]\n", append(["a"], "z"), "a: [x, y, z ]\n"],
    [
      "an item of an empty list",
      "a: []   # c\n",
      append(["a"], SWAP),
      'a: [{ card: a, to: b, why: "No time: never, ever", dose: { sets: 2 } }]   # c\n',
    ],
    [
      "an item below brackets",
      "a: [\n  x, # one\n  y # two\n  # three\n]\n",
      append(["a"], "z"),
      "a: [\n  x, # one\n  y, # two\n  z\n  # three\n]\n",
    ],
    [
      "an item below brackets, after a comma",
      "a: [\n  x, # one\n]\n",
      append(["a"], "z"),
      "a: [\n  x, # one\n  z,\n]\n",
    ],
    [
      "an item written line by line",
      "a:\n- card: x\n  why: y # c\n# next\nb: 1\n",
      append(["a"], SWAP),
      'a:\n- card: x\n  why: y # c\n- card: a\n  to: b\n  why: "No time: never, ever"\n  dose: { sets: 2 }\n# next\nb: 1\n',
    ],
    [
      "an item written in braces",
      "a:\n  - { card: x } # c\nb: 1\n",
      append(["a"], { card: "y" }),
      "a:\n  - { card: x } # c\n  - { card: y }\nb: 1\n",
    ],
    [
      "an item after a folded text",
      "a:\n  - card: x\n    why: >\n      one\n      two\nb: 1\n",
      append(["a"], { card: "y" }),
      "a:\n  - card: x\n    why: >\n      one\n      two\n  - card: y\nb: 1\n",
    ],
    [
      "a list that is not there",
      "a: 1\n",
      append(["b"], SWAP),
      'a: 1\nb:\n  - card: a\n    to: b\n    why: "No time: never, ever"\n    dose: { sets: 2 }\n',
    ],
    [
      "a list left empty",
      "a:   # c\nb: 1\n",
      append(["a"], { card: "x" }),
      "a:   # c\n  - card: x\nb: 1\n",
    ],
    ["a list of words that is not there", "a: 1\n", append(["b"], "x"), "a: 1\nb: [x]\n"],
    [
      "an octal-looking number beside it",
      "a: 010\nb: 1e3\nc: 1\n",
      set(["c"], 2),
      "a: 010\nb: 1e3\nc: 2\n",
    ],
  ])("%s", (_name, yaml, edit, wanted) => {
    const crlf = (text: string) => text.replaceAll("\n", "\r\n");
    for (const form of [(text: string) => text, crlf, (text: string) => `\uFEFF${text}`]) {
      const made = spliceFrontMatter(form(file(yaml)), [edit]);
      expect(made).toEqual({ text: form(file(wanted)), reprinted: [] });
    }
  });

  test("several, one after the other", () => {
    const edits = [append(["a"], "x"), append(["a"], "y"), set(["b"], 1)];
    const made = spliceFrontMatter(file("# top\nb: 0\n"), edits);
    expect(made?.text).toBe(file("# top\nb: 1\na: [x, y]\n"));
  });

  test("and where it cannot be, its field is written anew and named", () => {
    const made = spliceFrontMatter(file("z: 010 # keep\na: [ # c\n]\nb:   1\n"), [
      append(["a"], "x"),
    ]);
    expect(made).toEqual({ text: file("z: 010 # keep\na:\n  - x\nb:   1\n"), reprinted: ["a"] });
  });

  test.each([
    ["no front matter", "a: 1\n"],
    ["broken front matter", "---\na: [\n---\n"],
    ["an alias", "---\na: &x 1\nb: *x\n---\n"],
    ["no end", "---\na: 1\n"],
  ])("and not at all with %s", (_name, text) => {
    expect(spliceFrontMatter(text, [set(["a"], 2)])).toBeUndefined();
  });
});

/** Every shipped plan, card and protocol. */
const SHIPPED = ["templates/demo", "templates/demo-de", "templates/protocols", "exercises"].flatMap(
  (folder) =>
    readdirSync(new URL(`../../${folder}`, import.meta.url), { recursive: true, encoding: "utf8" })
      .filter((name) => name.endsWith(".md") && !name.endsWith("README.md"))
      .map((name) => `${folder}/${name}`),
);
const PLANS = SHIPPED.filter((name) => /^templates\/demo(-de)?\/[a-z]+\.md$/.test(name));

/** Comments behind lines and between them, where YAML allows them: not in texts over several lines. */
function commented(text: string, at: ReadonlySet<number>): string {
  const lines = text.split("\n");
  const end = lines.indexOf("---", 1);
  const whole = (line: string) => /^[^#"'>|]*$/.test(line) && !/[>|][+-]?$/.test(line);
  return lines
    .flatMap((line, index) => {
      if (index === 0 || index >= end || !at.has(index)) return [line];
      const indent = /^ */.exec(line)?.[0] ?? "";
      return [`${indent}# above ${index}`, whole(line) ? `${line} # behind ${index}` : line];
    })
    .join("\n");
}

/** Paths of all values of front matter, groups and lists too. */
function pathsOf(data: unknown, path: Path = []): Path[] {
  if (typeof data !== "object" || data === null) return [path];
  const entries = Array.isArray(data) ? [...data.entries()] : Object.entries(data);
  const inner = entries.flatMap(([key, value]) => pathsOf(value, [...path, key]));
  return path.length === 0 ? inner : [path, ...inner];
}

const valueAt = (data: unknown, path: Path): unknown =>
  path.reduce<unknown>((inner, key) => (inner as Record<string | number, unknown>)?.[key], data);

const anyValue = fc.letrec<{ value: Value; scalar: Value }>((tie) => ({
  scalar: fc.oneof(
    fc.constantFrom<Value>(
      "12 kg",
      "4-5",
      "no",
      "a, b",
      "x: y",
      "#",
      "- a",
      "{",
      "07:30",
      "1e3",
      "",
      " ",
      "ä",
      "“q”",
      "it's",
    ),
    fc.integer({ min: -5, max: 5000 }),
    fc.boolean(),
    fc.string({ maxLength: 12 }),
  ),
  value: fc.oneof(
    tie("scalar"),
    fc.array(tie("scalar"), { maxLength: 3 }),
    fc.dictionary(fc.constantFrom("card", "why", "dose", "by"), tie("scalar"), {
      noNullPrototype: true,
    }),
  ),
})).value;

/** An edit of some value of the data: it set anew, a field added beside it, or an item added to it. */
function someEdit(data: unknown, kind: "set" | "field" | "append", pick: number, value: Value) {
  const paths = pathsOf(data).filter((path) => {
    const old = valueAt(data, path);
    if (kind === "append") return Array.isArray(old);
    return kind === "set" || (typeof old === "object" && !Array.isArray(old));
  });
  const path = paths[pick % Math.max(1, paths.length)];
  if (path === undefined) return undefined;
  const lines = kind === "set" ? linesOf(valueAt(data, path)) : 1;
  if (kind === "append") return { edit: append(path, value), lines };
  return { edit: set(kind === "set" ? path : [...path, "new"], value), lines };
}

/** So many lines at most can hold a value; what has parts may be as long as it likes. */
function linesOf(value: unknown): number {
  if (typeof value === "object" && value !== null) return Number.POSITIVE_INFINITY;
  return typeof value === "string" ? 1 + Math.floor(value.length / 40) : 1;
}

/** How many lines lie between the first and the last that are not as they were. */
function touched(before: readonly string[], after: readonly string[]): number {
  const longer = after.length - before.length;
  const first = before.findIndex((line, at) => line !== after[at]);
  const last = before.findLastIndex((line, at) => line !== after[at + longer]);
  return first < 0 || last < first ? 0 : last - first + 1;
}

describe("whatever is edited in shipped files", () => {
  const texts = new Map(SHIPPED.map((name) => [name, shippedText(name)] as const));

  test("the data is what the edit says, and other lines are as they were", {
    timeout: 120_000,
  }, () => {
    let made = 0;
    const one = fc.record({
      name: fc.oneof(fc.constantFrom(...PLANS), fc.constantFrom(...SHIPPED)),
      comments: fc.array(fc.nat(80), { maxLength: 12 }),
      end: fc.constantFrom("\n", "\r\n"),
      kind: fc.constantFrom("set" as const, "field" as const, "append" as const),
      pick: fc.nat(),
      value: anyValue,
    });
    fc.assert(
      fc.property(one, ({ name, comments, end, kind, pick, value }) => {
        const plain = commented(texts.get(name) ?? "", new Set(comments));
        const data: unknown = parse(yamlOf(plain));
        const some = someEdit(data, kind, pick, value);
        if (some === undefined) return;
        const text = plain.replaceAll("\n", end);
        const spliced = spliceFrontMatter(text, [some.edit]);
        expect(spliced?.reprinted).toEqual([]);
        const after = (spliced?.text ?? "").split(end);
        expect(after.join("")).not.toMatch(/[\r\n]/);
        expect(parse(yamlOf(after.join("\n")))).toEqual(edited(data, [some.edit]));
        expect(touched(text.split(end), after)).toBeLessThanOrEqual(some.lines);
        made += 1;
      }),
      { numRuns: 300, seed: 7 },
    );
    expect(made).toBeGreaterThan(250);
  });
});
