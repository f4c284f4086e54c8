/** Health flags that end, through the whole program: what they rule out, what waits for a review, and words of care. */
import { describe, expect, test } from "vitest";
import { achillesPlan, outputsOf, textOf, tryPlan } from "../support/outputs.ts";
import { change, textAt } from "../support/world.ts";

const BAG = "heel-raise-one-leg-step-weight";
const SEATED = "heel-raise-seated-weight";
const SIGN = "Your clinician has said that you may.";

/** The demo's plan with these flags, without days away. */
const flagged = (flags: string, plan = achillesPlan()) =>
  change(change(plan, / {2}away:.*\n/, ""), "flags: none", `flags: [${flags}]`);

/** The same with nothing heavy in the first two weeks. */
const later = (flags: string) =>
  flagged(flags)
    .replace(/swap:[\s\S]*?(?=signed:)/, "")
    .replace(
      "signed:",
      `swap: [{ card: heel-press-leg-press, to: ${BAG}, weeks: 3-12, why: No leg press. }]
leave_out:
  - { card: heel-press-leg-press, weeks: 1-2, why: The tear. }
  - { card: ${SEATED}, weeks: 1-2, why: The tear. }
  - { card: heel-raise-standing-weight, why: Two are enough. }
add: [{ card: ankle-circles, weeks: 1-2, why: To keep it moving., dose: { per_week: 3 } }]
signed:`,
    );

const ruledOut = (text: string) => {
  const { value, errors, faults } = tryPlan(text);
  return {
    made: value !== undefined,
    errors: errors.map(({ code, message, hint, place }) => ({
      code,
      says: `${message} ${hint}`,
      at: textAt(text, place),
    })),
    warnings: faults.filter(({ level }) => level === "warning"),
  };
};

describe("a flag with an end rules a card out until then", () => {
  test.each([
    ["a week of the course", "{ week: 3 }"],
    ["the date on which that week begins", "2026-12-14"],
    ["a date in the week before it", "2026-12-08"],
    ["a review planned then", "{ review: { week: 3 } }"],
    ["a review on a date", "{ review: 2026-12-14 }"],
  ])("%s: the weeks before it are an error, with the moves for them", (_, until) => {
    const { made, errors } = ruledOut(flagged(`{ flag: muscle-tear-recent, until: ${until} }`));
    expect(made).toBe(false);
    expect(errors.map(({ code }) => code)).toEqual(["not-for-client", "not-for-client"]);
    const [seated] = errors;
    expect(seated?.says).toContain(
      `${SEATED} is not for a client with the flag muscle-tear-recent`,
    );
    expect(seated?.says).toContain("holds in weeks 1-2");
    expect(seated?.says).toMatch(/phase: heavy-slow, weeks: 1-2/);
    expect(seated?.at).toMatch(/^\{ flag: muscle-tear-recent/);
  });

  test("and no later: what is planned from then on is done, and says nothing of it", () => {
    const { cardsIn, booklet, ics } = outputsOf(
      later("{ flag: muscle-tear-recent, until: { week: 3 } }"),
    );
    expect(cardsIn(2)).toEqual(["ankle-circles"]);
    expect(cardsIn(3)).toEqual([BAG, SEATED].sort());
    expect(JSON.stringify(booklet)).not.toContain(SIGN);
    expect(ics).not.toContain(SIGN);
  });

  test("a week more, and the first of them is ruled out", () => {
    const { errors } = ruledOut(later("{ flag: muscle-tear-recent, until: { week: 4 } }"));
    expect(errors.map(({ says }) => says).join()).toMatch(/holds in week 3:/);
  });

  test("weeks away move it with the course, but not a date", () => {
    const away = (text: string) =>
      change(text, "week:\n", "week:\n  away: [{ from: 2026-11-30, to: 2026-12-06 }]\n");
    const tear = (until: string) => away(later(`{ flag: muscle-tear-recent, until: ${until} }`));
    expect(ruledOut(tear("{ week: 3 }")).made).toBe(true);
    expect(ruledOut(tear("2026-12-14")).made).toBe(true);
    expect(ruledOut(tear("2026-12-22")).errors[0]?.says).toMatch(/holds in week 4:/);
  });

  test("a word alone, and a review without a time, hold throughout", () => {
    for (const flag of ["muscle-tear-recent", "{ flag: muscle-tear-recent, until: review }"]) {
      const { errors } = ruledOut(later(flag));
      expect(errors.map(({ code }) => code)).toEqual(["not-for-client", "not-for-client"]);
      expect(errors[0]?.says.includes("until: { review: { week: 6 } }")).toBe(
        flag.includes("review"),
      );
    }
  });
});

describe("what a review frees is planned with the sign that frees it", async () => {
  const made = outputsOf(later("{ flag: muscle-tear-recent, until: { review: { week: 3 } } }"));
  const html = await made.html();
  const titles = made.booklet.exercises.filter(({ when }) => when).map(({ title }) => title);

  test("on its page, the phase's page, the phone, the terminal and the calendar", () => {
    expect(titles).toHaveLength(2);
    expect(
      made.booklet.exercises.find(({ title }) => title === "Draw circles with your foot")?.when,
    ).toBeUndefined();
    for (const title of titles) {
      const group = html.match(
        new RegExp(`<tr class="group">(?:(?!</tr>).)*${title}(?:(?!</tr>).)*</tr>`),
      )?.[0];
      expect(textOf(group ?? "")).toContain(SIGN);
      const page = html
        .split('<section class="part exercise"')
        .find((part) => part.includes(`${title}</h2>`));
      expect(textOf(page?.split("</section>")[0] ?? "")).toContain(SIGN);
    }
    const data = /<script[^>]*type="application\/json"[^>]*>([\s\S]*?)<\/script>/.exec(html)?.[1];
    const bouts: { title: string; when?: string }[] = JSON.parse(data ?? "{}").bouts;
    expect(bouts.length).toBeGreaterThan(2);
    for (const { title, when } of bouts) {
      expect([title, when]).toEqual([title, titles.includes(title) ? SIGN : undefined]);
    }
    expect(made.table.split(SIGN)).toHaveLength(3);
    const events = made.ics.split("BEGIN:VEVENT").slice(1);
    for (const event of events) {
      expect(event.includes(SIGN)).toBe(titles.some((title) => event.includes(title)));
    }
  });

  test("and in the machine form", () => {
    const bouts = made.json.weeks.flatMap(({ sessions }) => sessions.flatMap((one) => one.bouts));
    for (const { card, after_review } of bouts) {
      expect([card, after_review]).toEqual([card, card !== "ankle-circles"]);
    }
  });
});

describe("words of care", () => {
  const CARE = "Do less if they get sorer, and stop if a joint swells.";
  const seated = (until: string) =>
    outputsOf(flagged(`{ flag: rheumatoid-flare, until: ${until} }`)).booklet;
  const onPage = (booklet: ReturnType<typeof seated>) =>
    booklet.exercises.find(({ anchor }) => anchor.endsWith(SEATED))?.care ?? [];

  test("stay as long as the flag, on the exercise's page and on the first", () => {
    const ends = seated("{ week: 5 }");
    expect(onPage(ends)).toEqual([
      `Until the end of week 4: Your joints are sore just now. ${CARE}`,
    ]);
    expect(ends.stop.care).toContain(onPage(ends)[0]);
  });
  test("stay where a review ends it, and to the end", () => {
    for (const until of ["review", "{ review: { week: 3 } }", "2027-12-01"]) {
      expect(onPage(seated(until))).toEqual([`Your joints are sore just now. ${CARE}`]);
    }
  });
});

describe("an end that is none", () => {
  test.each([
    ["a phase that is not there", "{ phase: heavy-slo }", "heavy-slo", "Did you mean heavy-slow?"],
    ["a week that is not there", "{ week: 13 }", "13", "has 12 weeks"],
    ["no date", "soon", "soon", "review"],
    ["a week of nothing", "{ weak: 3 }", "weak", "Did you mean week?"],
  ])("%s is an error at its place", (_, until, at, says) => {
    const { made, errors } = ruledOut(flagged(`{ flag: pregnancy, until: ${until} }`));
    expect(made).toBe(false);
    const fault = errors.find((one) => one.says.includes(says));
    expect([errors, fault?.at]).toEqual([errors, expect.stringMatching(new RegExp(`^${at}`))]);
  });
  test("a flag that has ended before the course begins is told", () => {
    for (const until of ["2026-11-20", "{ phase: heavy-slow }", "{ week: 1 }"]) {
      const { warnings } = ruledOut(flagged(`{ flag: pregnancy, until: ${until} }`));
      expect(warnings.map(({ message }) => message).join()).toContain("ended before the course");
    }
  });
  test("the same flag twice is refused", () => {
    const { errors } = ruledOut(flagged("pregnancy, { flag: pregnancy, until: { week: 2 } }"));
    expect(errors[0]?.says).toContain("named twice");
  });
});

test.each([
  ["no card speaks of", "steroid-tablets", true],
  ["cards of other regions speak of", "cannot-kneel", false],
  [
    "some of its cards rule out later",
    "{ flag: muscle-tear-recent, until: { review: 2026-11-30 } }",
    false,
  ],
])("a flag that %s: told that it changes nothing, or not", (_, flag, told) => {
  const silent = ruledOut(flagged(flag)).warnings.filter(({ code }) => code === "flag-silent");
  expect(silent.map(({ message }) => message.split(":")[0])).toEqual(
    told ? [`The flag ${flag} changes nothing in this booklet`] : [],
  );
});
