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

const PRESS = ["{ have: leg-press-machine, from: 20 kg, up_to: 400 kg, steps: 5 kg }"];
const GYM = [...PRESS, "{ have: calf-raise-machine, from: 10 kg, up_to: 300 kg, steps: 2.5 kg }"];

/** What a page may name, and how “You need” then calls it. */
const THINGS: readonly (readonly [RegExp, RegExp])[] = [
  [/\bchair\b/, /chair/],
  [/\bbook\b/, /book/],
  [/\bsoft pad\b/, /soft pad/],
  [/\btowel\b/, /towel/],
  [/\bpillow\b/, /pillow/],
  [/\brail\b|handrail|worktop/, /handrail/],
  [/\bwall\b/, /wall/],
  [/Fix the band|Band, level/, /stretch band/],
  [/backpack/, /backpack/],
  [/\bvest\b/, /vest/],
  [/\bbar\b/, /long bar/],
  [/\bmachine\b/, /machine|leg press/],
  [/\bstrap\b/, /strap/],
  [/Wear (running )?shoes|wear shoes/, /shoes/],
];

const EASIER = /<div class="row"><h3>If it is too hard<\/h3>[\s\S]*?<\/div>/;

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

  test("“You need” lists what each page names, and what makes its load", () => {
    for (const page of partsOf(html, "exercise")) {
      const [, listed = ""] = /<ul class="needs">([\s\S]*?)<\/ul>/.exec(page) ?? [];
      // an easier exercise has a list of its own, where it stands
      const own = page.replace(/<ul class="needs">[\s\S]*?<\/ul>/, "").replace(EASIER, "");
      const said = textOf(own);
      for (const [named, thing] of THINGS) {
        if (named.test(said)) expect(listed, `${said.slice(0, 60)} … ${named}`).toMatch(thing);
      }
      expect(listed).not.toContain("undefined");
    }
  });
});

describe("a page says only what this client has", () => {
  const HEAVY = "achilles-heavy-slow-resistance";
  const pageOf = (html: string, title: string) =>
    textOf(partsOf(html, "exercise").find((page) => page.includes(title)) ?? "");
  const SEATED = "Sit and rise up on your toes with a heavy weight";
  const STANDING = "Rise up on both legs with a heavy weight";

  test("at home: chair, book and pad, and no machine", () => {
    const page = pageOf(shippedCourse(HEAVY).html, SEATED);
    expect(page).toContain("You need a firm chair that does not roll a thick book");
    expect(page).toContain("Put the balls of your feet on a thick book.");
    expect(page).not.toContain("machine");
  });

  test("in a gym: the machine, and no chair or book", () => {
    const machine = "{ have: seated-calf-machine, from: 10 kg, up_to: 200 kg, steps: 2.5 kg }";
    const page = pageOf(shippedCourse(HEAVY, { things: [machine, ...GYM] }).html, SEATED);
    expect(page).toContain("You need a seated calf machine");
    expect(page).toContain("Sit in the machine with the balls of your feet on its edge.");
    expect(page).not.toMatch(/chair|book/);
  });

  test("with a bar: how to carry it, and no other weight", () => {
    const bar =
      "{ have: barbell, bar: 20 kg, plates: [1.25 kg, 2.5 kg, 5 kg, 10 kg, 20 kg, 20 kg] }";
    const page = pageOf(shippedCourse(HEAVY, { things: ["step", bar, ...PRESS] }).html, STANDING);
    expect(page).toContain("Put the bar across your upper back.");
    expect(page).not.toMatch(/backpack|vest|machine/);
  });

  test("the band, where a band makes the load", () => {
    const { html } = shippedCourse("shoulder-cuff-lowering");
    expect(pageOf(html, "Pull a band back with both arms")).toMatch(
      /You need a safe point to tie the band to a stretch band/,
    );
  });
});
