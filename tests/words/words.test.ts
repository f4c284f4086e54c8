/** The words of a language: every key used is there, every key there is used, every message fills in. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { readWords, wordsUnder } from "../../src/words/words.ts";
import { english, ROOT } from "../support/world.ts";

const words = english();

/** Keys as the composer asks for them; parts put together at run time stand as a pattern. */
function usedPatterns(): RegExp[] {
  return ["src/compose", "src/plan-text"].flatMap((folder) =>
    sourcesIn(folder).flatMap((text) => {
      return [
        ...text.matchAll(/(?:say|list|named|has)\(\s*(?:[^()]*\?\s*)?["`]([\w.${}-]+)["`]/g),
        ...text.matchAll(/["`]((?:dose|time|side|pain)\.[\w.${}-]+)["`]/g),
      ].map(
        ([, key = ""]) =>
          new RegExp(`^${key.replaceAll(".", "\\.").replace(/\$\{[^}]*\}/g, "[\\w-]+")}(\\.|$)`),
      );
    }),
  );
}

/** The texts of all source files under a folder. */
function sourcesIn(folder: string): string[] {
  return readdirSync(join(ROOT, folder), { recursive: true, encoding: "utf8" })
    .filter((file) => /\.tsx?$/.test(file))
    .map((file) => readFileSync(join(ROOT, folder, file), "utf8"));
}

/** Keys of the companion's screens: `say("…")`, a table of keys, or a cue's `say: "…"`. */
function phonePatterns(): RegExp[] {
  return sourcesIn("src/phone").flatMap((text) =>
    [...text.matchAll(/["`]((?:[a-z][\w-]*|\$\{[^}]*\})(?:\.(?:[\w-]+|\$\{[^}]*\}))*)["`]/g)].map(
      ([, key = ""]) =>
        new RegExp(`^phone\\.${key.replaceAll(".", "\\.").replace(/\$\{[^}]*\}/g, "[\\w-]+")}$`),
    ),
  );
}

test("every message of the phone is used, fills in names alone, and none is missing", () => {
  const patterns = phonePatterns().filter(({ source }) => source !== "^phone\\.[\\w-]+$");
  const keys = words.keys.filter((key) => key.startsWith("phone."));
  expect(keys.filter((key) => !patterns.some((pattern) => pattern.test(key)))).toEqual([]);
  expect(keys.filter((key) => /\{[^}]*,/.test(words.raw(key)))).toEqual([]);
  const said = sourcesIn("src/phone").flatMap((text) =>
    [...text.matchAll(/\bsay\(\s*"([\w.-]+)"/g)].map(([, key]) => `phone.${key}`),
  );
  expect(said.filter((key) => !words.has(key) && key !== "phone.settle")).toEqual([]);
});

test("every message outside the frame is used", () => {
  const patterns = usedPatterns();
  const unused = words.keys.filter(
    (key) => !/^(frame|phone)\./.test(key) && !patterns.some((pattern) => pattern.test(key)),
  );
  expect(unused).toEqual([]);
});

test("every message of the frame is used by the templates or what draws for them", () => {
  const templates = readdirSync(join(ROOT, "templates/booklet"), { encoding: "utf8" })
    .filter((file) => file.endsWith(".hbs"))
    .map((file) => readFileSync(join(ROOT, "templates/booklet", file), "utf8"));
  const sources = [...templates, ...sourcesIn("src")].join("\n");
  const frame = words.keys.filter((key) => key.startsWith("frame."));
  const unused = frame.filter((key) => !sources.includes(`"${key.slice("frame.".length)}"`));
  expect(unused).toEqual([]);
});

test("every key the composer names in full is there", () => {
  const named = usedPatterns().filter(({ source }) => !source.includes("[\\w-]+"));
  const missing = named.filter((pattern) => !words.keys.some((key) => pattern.test(key)));
  expect(missing.map(String)).toEqual([]);
});

test("every message is sound ICU message format, and uses only letters the typeface has", () => {
  for (const key of words.keys) {
    const names = { n: 2, sets: 3, reps: 8, low: 6, high: 8, seconds: 3, minutes: 5, kg: "5" };
    const values = new Proxy(names as Record<string, string | number>, {
      get: (all, name) => all[String(name)] ?? "x",
      has: () => true,
    });
    const text = words.say(key, values);
    expect(text).not.toMatch(/[≥≤→✓☐≈]/);
    expect(text.length).toBeGreaterThan(0);
  }
});

describe("reading", () => {
  const read = (text: string) => readWords([{ file: "x.yaml", text }], "en");

  test.each([
    ["plural one", "{n, plural, one {# set} other {# sets}}", { n: 1 }, "1 set"],
    ["plural other", "{n, plural, one {# set} other {# sets}}", { n: 3 }, "3 sets"],
    ["a value with braces", "for {x}", { x: "{y} <b>" }, "for {y} <b>"],
    ["plain text", "Rest", undefined, "Rest"],
    ["an angle bracket", "a < b {x}", { x: "c" }, "a < b c"],
  ])("%s", (_name, message, values, expected) => {
    expect(read(`a: ${JSON.stringify(message)}`).say("a", values)).toBe(expected);
  });

  test("an unknown key is a fault with its name", () => {
    expect(() => read("a: b").say("c")).toThrow(/no words for c/);
  });

  test("a clinic's own words cannot add to them", () => {
    const file = (text: string) => ({ file: "own.yaml", text });
    expect(() => readWords([file("a: { bc: x }"), file("a: { bd: z }")], "en")).toThrow(
      /no words called a\.bd/,
    );
  });

  test("later files win", () => {
    const two = readWords(
      [
        { file: "1", text: "a: x\nb: y" },
        { file: "2", text: "a: z" },
      ],
      "en",
    );
    expect([two.say("a"), two.say("b")]).toEqual(["z", "y"]);
  });

  test("a group seen by itself", () => {
    const group = wordsUnder(read("g: { a: x, l: { p: 1st, q: 2nd } }\nh: y"), "g");
    expect(group.say("a")).toBe("x");
    expect(group.list("l")).toEqual(["1st", "2nd"]);
    expect(group.keys).toEqual(["a", "l.p", "l.q"]);
    expect(group.has("h")).toBe(false);
  });
});
