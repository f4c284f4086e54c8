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
  const { html, json, print } = shippedCourse(protocol, { more: MY_PLAN });
  const text = textOf(html);

  test("on the page to hang up a dose goes on with a capital only after its own mark", () => {
    const summary = print(DAY, "summary");
    const spans = [...summary.matchAll(/<p class="spans">([\s\S]*?)<\/p>/g)].map(([, one]) =>
      textOf(one ?? ""),
    );
    expect(spans.length).toBeGreaterThan(0);
    for (const span of spans) expect(span).not.toMatch(/, \p{Lu}/u);
  });

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

  test("the cover's steps are those of the weights, or of the minutes, and none where both stay level", () => {
    const [cover = ""] = partsOf(html, "cover");
    const [steps = ""] = /<div class="steps">[\s\S]*?<\/div>/.exec(cover) ?? [];
    const heights = [...steps.matchAll(/<rect [^>]*height="([\d.]+)"/g)].map(([, h]) => Number(h));
    const loads = json.weeks.map(({ sessions }) => {
      const bouts = sessions.flatMap((session) => session.bouts);
      return new Map(bouts.map((bout) => [bout.card, bout.load_kg ?? undefined]));
    });
    const changing = [...new Set(loads.flatMap((week) => [...week.keys()]))].filter(
      (card) => new Set(loads.flatMap((week) => week.get(card) ?? [])).size > 1,
    );
    const minutes = json.weeks.map(({ totals }) => totals.minutes);
    if (changing.length === 0 && new Set(minutes).size === 1) {
      expect(steps).toBe("");
      return;
    }
    expect(textOf(steps)).toContain(changing.length > 0 ? "Your weights" : "Your minutes");
    expect(heights).toHaveLength(json.weeks.length);
    const shares = json.weeks.map((_, week) => {
      if (changing.length === 0) return (minutes[week] ?? 0) / Math.max(...minutes);
      const own = changing.flatMap((card) => {
        const kg = loads[week]?.get(card);
        const most = Math.max(...loads.flatMap((one) => one.get(card) ?? []));
        return kg === undefined ? [] : [kg / most];
      });
      return own.reduce((sum, share) => sum + share, 0) / Math.max(own.length, 1);
    });
    for (const [week, height] of heights.entries()) {
      expect(height / 12.5).toBeCloseTo(shares[week] ?? 0, 2);
    }
  });

  test("what a page names as easier is in the booklet, with steps, dose and signs to stop", () => {
    const easier = partsOf(html, "easier").join("");
    const named = partsOf(html, "exercise").map((page) => EASIER.exec(page)?.[0] ?? "");
    for (const row of named) {
      const [, anchor] = /<a href="#([\w-]+)">/.exec(row) ?? [];
      if (anchor === undefined) {
        expect(textOf(row)).toContain("Do fewer, and take your time.");
        continue;
      }
      expect(html).toContain(`id="${anchor}"`);
      const block = easier
        .split('<section class="easier-one">')
        .find((one) => one.includes(anchor));
      if (anchor.startsWith("exercise-")) continue;
      const text = textOf(block ?? "");
      for (const part of [
        "In place of exercise",
        "Set up",
        "Move",
        "Pain",
        "Stop and call us if",
      ]) {
        expect(text, anchor).toContain(part);
      }
      expect(text, anchor).toMatch(/\d+ (sets?|holds?|times?) /);
      expect(block, anchor).toMatch(/<ol>/);
    }
  });
});

describe("the easier exercise", () => {
  const rows = (html: string) =>
    partsOf(html, "exercise").map((page) => textOf(EASIER.exec(page)?.[0] ?? ""));
  const COURSE = "groin-side-lift-eight-weeks";
  const FIRST = "Squeeze a ball between your knees";

  test("is the next rung down, on a page of its own where the course does not give it", () => {
    const { html } = shippedCourse(COURSE);
    expect(rows(html)[0]).toContain(FIRST);
    expect(rows(html)[1]).toContain("Do exercise 1 instead, as in Week 1");
  });

  test("is none that the client lacks a thing for", () => {
    const { html } = shippedCourse(COURSE, { things: ["low-box", "high-bench", "helper"] });
    expect(rows(html)[0]).not.toContain(FIRST);
    expect(rows(html)[0]).toContain("Do fewer, and take your time.");
    expect(textOf(html)).not.toContain(FIRST);
  });

  test("is none that a flag of the client rules out", () => {
    const gentle = (flags: string) => ({
      more: `weeks: 2
flags: [${flags}]
leave_out:
  - { card: heel-raise-one-leg-floor, why: too much }
  - { card: heel-lower-floor, why: too much }
  - { card: heel-raise-two-legs-step, why: too much }
  - { card: heel-raise-one-leg-step, why: too much }
  - { card: heel-lower-knee-straight, why: too much }
  - { card: heel-raise-quick-rebound, why: too much }`,
    });
    const hold = "Stand on your toes and hold, both legs";
    const course = "achilles-four-phases";
    expect(rows(shippedCourse(course, gentle("")).html)[0]).toContain(hold);
    const ruledOut = shippedCourse(course, gentle("heart-condition-unstable")).html;
    expect(textOf(ruledOut)).not.toContain(hold);
  });

  test("asks for no more sets, repetitions or effort than the exercise it stands for", () => {
    const { html } = shippedCourse("achilles-heavy-slow-resistance");
    const text = textOf(partsOf(html, "easier").join(""));
    // three to four sets of six to fifteen are planned, at an effort of 8
    for (const [, sets, reps] of text.matchAll(/(\d+) sets of (\d+)/g)) {
      expect(Number(sets)).toBeLessThanOrEqual(3);
      expect(Number(reps)).toBeLessThanOrEqual(6);
    }
    for (const [, effort] of text.matchAll(/feel (\d+) out of 10/g)) {
      expect(Number(effort)).toBeLessThanOrEqual(8);
    }
  });

  test("in place of one long hold asks for no more seconds a set, and not for a single short one", () => {
    const easierOf = (course: string, given = {}) =>
      textOf(partsOf(shippedCourse(course, given).html, "easier").join(""));
    // five holds of 45 s; ten presses of 5 s are a set of the easier card
    expect(easierOf("knee-tendon-holds")).toContain("2 sets of 9 holds, 5 seconds each.");
    // three stretches of 30 s; twenty pumps of 1 and 1 s are a set of the easier card
    const more = "add: [{ card: calf-stretch, why: stiff }]";
    expect(easierOf("achilles-lowering-twice-daily", { more })).toContain("2 sets of 15.");
  });

  test("with a band is the lightest the client has", () => {
    const { html } = shippedCourse("shoulder-cuff-lowering");
    expect(textOf(partsOf(html, "easier").join(""))).toMatch(
      /Turn your arm out with a band .*? Band, level 1\./,
    );
  });

  test("is not one that asks for a longer rest than the exercise it stands for", () => {
    // sliding both arms up a wall needs 12 h, the course has its exercises twice a day
    const { html } = shippedCourse("shoulder-cuff-lowering");
    expect(rows(html)[0]).not.toContain("Slide both arms up a wall");
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
