/** A course that takes longer for a client, through the whole program; and weeks that it does not have. */
import { describe, expect, test } from "vitest";
import { achillesPlan, outputsOf, tryPlan } from "../support/outputs.ts";
import { change, textAt } from "../support/world.ts";

const PLAIN = change(change(achillesPlan(), / {2}away:.*\n/, ""), /redose:[\s\S]*?(?=signed:)/, "");
const extended = (fields: string, plan = PLAIN) =>
  change(plan, "signed:", `extend: [{ ${fields}, why: Still sore. }]\nsigned:`);

type Json = ReturnType<typeof outputsOf>["json"];
const numbers = ({ weeks }: Json, week: number) =>
  (weeks[week - 1]?.sessions[0]?.bouts ?? []).map(({ card, sets, reps, load_kg, tempo, rest_s }) =>
    [card, sets, reps, load_kg, tempo, rest_s].join(" "),
  );

const plain = outputsOf(PLAIN).json;

describe("a phase that takes two weeks more", () => {
  test("does its last week three times, on every surface", () => {
    const { json, booklet, ics, table } = outputsOf(extended("phase: heavy-slow, weeks: 2"));
    expect(json.weeks).toHaveLength(14);
    for (const week of [13, 14]) expect(numbers(json, week)).toEqual(numbers(plain, 12));
    for (let week = 1; week <= 12; week++)
      expect(numbers(json, week)).toEqual(numbers(plain, week));
    expect(booklet.cover.length).toBe("14 weeks");
    expect(booklet.phases[0]?.when).toMatch(/^Weeks 1 to 14: .* to Sunday, 7 March 2027$/);
    expect(booklet.phases[0]?.rows[0]?.doses.at(-1)?.weeks).toBe("Weeks 9 to 14");
    expect(ics).toMatch(/DTSTART[^:]*:202703/);
    expect(table).toContain("Week 14");
  });

  test("or a week that is named, right after itself: no dose goes back", () => {
    const { json } = outputsOf(extended("phase: heavy-slow, weeks: 2, repeat_week: 3"));
    expect(json.weeks).toHaveLength(14);
    const from = (week: number) => (week <= 3 ? week : week <= 5 ? 3 : week - 2);
    for (let week = 1; week <= 14; week++) {
      expect([week, numbers(json, week)]).toEqual([week, numbers(plain, from(week))]);
    }
    const growth = (one: Json) => Math.max(...one.weeks.map(({ totals }) => totals.change ?? 0));
    expect(growth(json)).toBeLessThanOrEqual(growth(plain) + 1e-9);
  });

  test("moves the phases after it, with the weeks in which they overlap", () => {
    const days = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];
    const free = days.map((day) => `${day}: { morning: 2 h, evening: 2 h }`).join(", ");
    const four = PLAIN.replace(/swap:[\s\S]*?(?=signed:)/, "")
      .replace(/week:[\s\S]*?(?=my_plan:)/, `week: { free: { ${free} } }\n`)
      .replace("protocol: achilles-heavy-slow-resistance", "protocol: achilles-four-phases");
    const phases = (text: string) =>
      outputsOf(text).made.program.phases.map(({ id, firstWeek, weeks }) => [id, firstWeek, weeks]);
    expect(phases(change(four, "signed:", "weeks: 5\nsigned:"))).toEqual([
      ["begin", 1, 2],
      ["step", 2, 4],
      ["heavy-and-fast", 3, 3],
    ]);
    const later = extended("phase: begin, weeks: 2", change(four, "signed:", "weeks: 7\nsigned:"));
    expect(phases(later)).toEqual([
      ["begin", 1, 4],
      ["step", 4, 4],
      ["heavy-and-fast", 5, 3],
    ]);
  });

  test("changes count the weeks of the longer phase", () => {
    const text = extended(
      "phase: heavy-slow, weeks: 2",
      change(
        PLAIN,
        "signed:",
        "redose: [{ card: heel-raise-seated-weight, weeks: 13-14, why: x, dose: { sets: 2 } }]\nsigned:",
      ),
    );
    expect(numbers(outputsOf(text).json, 13).join()).toContain("heel-raise-seated-weight 2 ");
  });
});

describe("weeks that the course does not have", () => {
  test("are an error, with the move", () => {
    const text = change(PLAIN, "signed:", "weeks: 14\nsigned:");
    const { value, errors } = tryPlan(text);
    expect(value).toBeUndefined();
    expect(errors.map(({ code }) => code)).toEqual(["wrong-value"]);
    expect(errors[0]?.message).toBe("weeks asks for 14, and the course has 12.");
    expect(errors[0]?.hint).toContain("extend: [{ phase: heavy-slow, weeks: 2,");
    expect(textAt(text, errors[0]?.place)).toMatch(/^14/);
    const more = extended("phase: heavy-slow, weeks: 2", text);
    expect(outputsOf(more).json.weeks).toHaveLength(14);
  });

  test.each([
    ["a phase", "phase: heavy, weeks: 2", "heavy,", "heavy-slow"],
    ["a week to repeat", "phase: heavy-slow, weeks: 2, repeat_week: 13", "13", "no week 13"],
    ["no weeks at all", "phase: heavy-slow, weeks: 0", "0", "least is 1"],
  ])("%s to extend", (_, fields, at, says) => {
    const text = extended(fields);
    const { errors } = tryPlan(text);
    expect(`${errors[0]?.message} ${errors[0]?.hint}`).toContain(says);
    expect(textAt(text, errors[0]?.place).startsWith(at)).toBe(true);
  });

  test("more than the protocol plans at most is told", () => {
    const { faults } = tryPlan(extended("phase: heavy-slow, weeks: 13"));
    expect(faults.map(({ message }) => message).join()).toContain("plans at most 24");
    expect(
      tryPlan(extended("phase: heavy-slow, weeks: 12"))
        .faults.map(({ message }) => message)
        .join(),
    ).not.toContain("plans at most");
  });
});
