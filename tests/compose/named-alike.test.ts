/** Calendar and diary call a phase the same; days that are alike are said as a person would. */
import { describe, expect, test } from "vitest";
import { PROTOCOLS, partsOf, shippedCourse, textOf } from "../support/shipped.ts";
import { DAY } from "../support/world.ts";

const course = (name: string) => shippedCourse(name);

/** Whole elements of a class, as text. */
const said = (html: string, element: RegExp): string[] =>
  [...html.matchAll(element)].map(([, inner = ""]) => textOf(inner));

describe("phases", () => {
  test.each([...PROTOCOLS])("of %s", (name) => {
    const { html, made } = course(name);
    const [weeks = ""] = partsOf(html, "weeks-page");
    const [diary = ""] = partsOf(html, "diary");
    const named = said(diary, /<span class="phase-name">(.*?)<\/span>/gs);
    expect(new Set(named).size).toBe(made.program.phases.length);
    for (const one of named) expect(textOf(weeks)).toContain(one);
  });
});

test("twice a day, every day, is said in one sentence", () => {
  const { print } = course("achilles-lowering-twice-daily");
  const text = textOf(print(DAY, "summary"));
  expect(text).toContain("Every day, morning and evening.");
  expect(text).not.toMatch(/every day, [^.;]*; every day/i);
});
