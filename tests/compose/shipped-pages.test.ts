/** What the pages of every shipped course say, read from the booklet's HTML. */
import { describe, expect, test } from "vitest";
import { PROTOCOLS, partsOf, shippedCourse, textOf } from "../support/shipped.ts";
import { DAY } from "../support/world.ts";

/** Answers as authors write them: with their own “I”, without one, and as a half sentence. */
const MY_PLAN = `
my_plan:
  when: After the news
  if_then:
    - { if: I come home late., do: I do the short version. }
    - { if: it rains, do: the short version right away }
    - { if: Robin is ill, do: do it alone }`;

describe.each(PROTOCOLS)("%s", (protocol) => {
  const { html, print } = shippedCourse(protocol, { more: MY_PLAN });
  const text = textOf(html);

  test("the plan's day is that of its sign-off, whenever it is printed", () => {
    expect(text).toContain("It was signed off on Monday, 28 December 2026.");
    expect(text).toContain("Printed on Wednesday, 25 November 2026.");
    const later = textOf(print("2027-02-01"));
    expect(later).toContain("Printed on Monday, 1 February 2027.");
    expect(later.replace("Monday, 1 February 2027.", "")).toBe(
      text.replace("Wednesday, 25 November 2026.", ""),
    );
    expect(textOf(print(DAY))).toBe(text);
  });

  test("answers in the client's own plan stand as they were written", () => {
    const page = textOf(partsOf(html, "my-plan").join(""));
    expect(page).toContain("If: I come home late. Then: I do the short version.");
    expect(page).toContain("If: it rains Then: the short version right away");
    expect(page).toContain("If: Robin is ill Then: do it alone");
    expect(page).not.toMatch(/\b(\w+) \1\b/i);
  });
});
