/** What was read of a file is handed out again for the same text only. */
import { expect, test } from "vitest";
import { splitMarkdown } from "../../src/read/front-matter.ts";
import { keptByFile, keptLast } from "../../src/read/kept.ts";
import { change, demoClinic, shippedText } from "../support/world.ts";

const CARD = "exercises/calf-and-achilles/calf-stretch.md";

test.each([
  ["the same text", ["a.md", "one", "x"], 1],
  ["another text", ["a.md", "two", "x"], 2],
  ["another file of that text", ["b.md", "one", "x"], 2],
  ["another context", ["a.md", "one", "y"], 2],
] as const)("%s", (_name, again, made) => {
  let calls = 0;
  const read = keptByFile((file: string, text: string, context: string) => {
    calls += 1;
    return `${file} ${text} ${context}`;
  });
  expect(read("a.md", "one", "x")).toBe("a.md one x");
  expect(read(again[0], again[1], again[2])).toBe(again.join(" "));
  expect(calls).toBe(made);
  expect(read("a.md", "one", "x")).toBe("a.md one x");
});

test("equal values give the same object, others do not", () => {
  const make = keptLast((value: { a: number }) => ({ ...value }));
  const first = make({ a: 1 });
  expect(make({ a: 1 })).toBe(first);
  expect(make({ a: 2 })).toEqual({ a: 2 });
});

test("a card that changes, changes back, and changes its clinic's words is read each time", () => {
  const text = shippedText(CARD);
  const titleIn = (files: Record<string, string>) =>
    demoClinic(files).cards.library.cards.get("calf-stretch")?.card.title;
  const other = change(text, /^title: .*$/m, "title: Another name");
  const before = titleIn({});
  expect(titleIn({ [CARD]: other })).toBe("Another name");
  expect(titleIn({})).toBe(before);
  const words = shippedText("exercises/vocabulary.yaml");
  const without = demoClinic({
    "exercises/vocabulary.yaml": change(words, /^ {2}calf:.*\n/m, ""),
  });
  expect(without.faults.map(({ code }) => code)).toContain("wrong-value");
  expect(demoClinic().faults).toEqual([]);
  expect(splitMarkdown(CARD, text)).toBe(splitMarkdown(CARD, text));
});
