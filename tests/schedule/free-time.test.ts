/** Events and free time that begin and end, and rotas by date, through the whole program. */
import { describe, expect, test } from "vitest";
import { addDays, dayNumber } from "../../src/units/dates.ts";
import { achillesPlan, outputsOf, tryPlan } from "../support/outputs.ts";
import { change, textAt } from "../support/world.ts";

const START = "2026-11-30";
const LAST = "2027-02-21";

/** The demo's plan with this week, without away, other events and other doses. */
const withWeek = (week: string) =>
  change(
    change(achillesPlan(), /redose:[\s\S]*?(?=signed:)/, ""),
    /week:[\s\S]*?(?=my_plan:)/,
    `week:\n${week}\n`,
  );
const evenings = (minutes: number) =>
  ["mon", "tue", "wed", "thu", "fri", "sat", "sun"]
    .map((day) => `${day}: { evening: ${minutes} min }`)
    .join(", ");

type Outputs = ReturnType<typeof outputsOf>;
const sessionsOf = ({ json }: Outputs) => json.weeks.flatMap(({ sessions }) => sessions);
const notesOf = ({ booklet }: Outputs) =>
  booklet.weeks.flatMap(({ days }) =>
    days.filter(({ notes }) => notes.length > 0).map(({ date }) => date),
  );

describe("an event of every week with a first and a last date", () => {
  const made = outputsOf(
    withWeek(`  free: { ${evenings(45)} }
  events: [{ what: Rowing, day: wed, part: evening, hard: true, tissues: [calf], from: 2026-12-14, until: 2027-01-06, clear_before: 36 h }]`),
  );
  const wednesdays = ["2026-12-16", "2026-12-23", "2026-12-30", "2027-01-06"];

  test("stands on the pages in its weeks and in no other", () => {
    expect(notesOf(made)).toEqual(wednesdays);
  });
  test("keeps hours clear in its weeks, and takes no day in others", () => {
    const dates = sessionsOf(made).map(({ date }) => date);
    for (const date of wednesdays) {
      expect(dates).not.toContain(date);
      expect(dates).not.toContain(addDays(date, -1));
    }
    const busy = new Set(wednesdays.flatMap((date) => [date, addDays(date, -1)]));
    const others = dates.filter((date) => [1, 2].includes((dayNumber(date) + 3) % 7));
    expect(others.filter((date) => !busy.has(date)).length).toBeGreaterThan(0);
    const starts = [...made.ics.matchAll(/DTSTART[^:]*:(\d{8})/g)].map(([, day]) => day);
    for (const date of wednesdays) expect(starts).not.toContain(date.replaceAll("-", ""));
  });
});

describe("other weeks", () => {
  test("have their own free time between their dates, and no other", () => {
    const made = outputsOf(
      withWeek(`  free: { mon: { evening: 45 min }, wed: { evening: 45 min }, fri: { evening: 45 min } }
  other_weeks: [{ from: 2026-12-14, until: 2026-12-27, free: { tue: { morning: 45 min }, thu: { morning: 45 min }, sat: { morning: 45 min } } }]`),
    );
    for (const { date, part } of sessionsOf(made)) {
      const other = date >= "2026-12-14" && date <= "2026-12-27";
      expect([date, part]).toEqual([date, other ? "morning" : "evening"]);
    }
    expect(sessionsOf(made)).toHaveLength(36);
  });
});

/** The most even ways to lay three sessions two days apart into a week, and after the one before. */
function evenWays(dates: readonly string[], before: number): string[][] {
  const ways = dates.flatMap((a, i) =>
    dates.flatMap((b, j) => dates.flatMap((c, k) => (j >= i + 2 && k >= j + 2 ? [[a, b, c]] : []))),
  );
  const open = ways.filter(([first = ""]) => dayNumber(first) - before >= 2);
  const spread = ([a = "", b = "", c = ""]: readonly string[]) => {
    const [x, y] = [dayNumber(b) - dayNumber(a), dayNumber(c) - dayNumber(b)];
    return x ** 2 + y ** 2 + (7 - x - y) ** 2;
  };
  const least = Math.min(...open.map(spread));
  return open.filter((way) => spread(way) === least);
}

describe("a rota", () => {
  const rota = (more = "", free = "free_on: { evening: 40 min }") =>
    withWeek(`  free: { ${evenings(45)} }
  rota: { on: 4, off: 4, from: 2026-12-07, ${free}, free_off: { morning: 60 min }${more} }`);
  const isOff = (date: string) => (dayNumber(date) - dayNumber("2026-12-07")) % 8 >= 4;
  const made = outputsOf(rota());

  test("gives every date its free time, from its first day on", () => {
    const all = sessionsOf(made);
    expect(all).toHaveLength(36);
    for (const { date, part } of all) {
      const expected = date >= "2026-12-07" && isOff(date) ? "morning" : "evening";
      expect([date, part]).toEqual([date, expected]);
    }
    expect(all.at(-1)?.date.localeCompare(LAST)).toBeLessThanOrEqual(0);
  });

  test("with hard exercises on days off where the client likes that: as many as an even week can hold", () => {
    const off = ({ made: { schedule } }: Outputs) =>
      schedule.weeks
        .flatMap(({ days }) => days)
        .filter(({ date, sessions }) => date >= "2026-12-07" && sessions.length > 0 && isOff(date))
        .length;
    const liked = outputsOf(rota(", hard_on_days_off: true"));
    expect(sessionsOf(liked)).toHaveLength(36);
    expect(off(liked)).toBeGreaterThan(off(made));
    // few sessions and an even week come first; of the most even ways the one with most days off is taken
    let before = Number.NEGATIVE_INFINITY;
    for (const { number, days } of liked.made.schedule.weeks) {
      const dates = days.map(({ date }) => date);
      const done = dates.filter((_, at) => (days[at]?.sessions.length ?? 0) > 0);
      const offs = (some: readonly string[]) =>
        some.filter((date) => date >= "2026-12-07" && isOff(date)).length;
      const ways = evenWays(dates, before);
      expect([number, offs(done)]).toEqual([number, Math.max(...ways.map(offs))]);
      before = Math.max(...done.map(dayNumber));
    }
  });

  test("tells how many hard exercises lie on days of work all the same, and is silent without the wish", () => {
    const liked = outputsOf(rota(", hard_on_days_off: true"));
    const told = ({ faults }: Outputs) => faults.filter(({ code }) => code === "days-off-missed");
    const hard = liked.json.weeks
      .flatMap(({ sessions }) => sessions)
      .filter(({ date }) => date >= "2026-12-07")
      .flatMap(({ date, bouts }) => bouts.filter((bout) => bout.hard).map(() => date));
    const onWork = hard.filter((date) => !isOff(date));
    expect(onWork.length).toBeGreaterThan(0);
    const [fault, ...others] = told(liked);
    expect(others).toEqual([]);
    expect(fault?.level).toBe("warning");
    expect(fault?.message).toContain(
      `${onWork.length} of ${hard.length} hard exercises of the rota's time lie on days of work`,
    );
    expect(fault?.message).toContain(`on ${onWork.sort()[0]},`);
    expect(told(made)).toEqual([]);
  });

  test("says on the pages that its days wander", () => {
    expect(made.booklet.phases[0]?.days).toMatch(/^Your days differ from week to week/);
  });

  test("that leaves too little time is a collision as any other, with no edit of days that it rules", () => {
    const { value, errors } = tryPlan(rota("", "free_on: {}").replace("60 min }", "10 min }"));
    expect(value).toBeUndefined();
    const [fault] = errors;
    expect(fault?.code).toBe("week-impossible");
    expect(JSON.stringify(fault?.remedies ?? [])).not.toContain('"free"');
  });
});

describe("what cannot be is told at its place", () => {
  const free = `  free: { ${evenings(45)} }\n`;
  test.each([
    [
      "an event that ends before it begins",
      `${free}  events: [{ what: Rowing, day: wed, part: evening, from: 2027-01-06, until: 2026-12-14 }]`,
      "error",
      "2026-12-14",
      "before",
    ],
    [
      "an end of an event on dates",
      `${free}  events: [{ what: Rowing, on: [2026-12-16], part: evening, until: 2026-12-24 }]`,
      "error",
      "{ what",
      "go with day",
    ],
    [
      "an event after the program",
      `${free}  events: [{ what: Rowing, day: wed, part: evening, from: 2028-01-06 }]`,
      "warning",
      "2028-01-06",
      "outside",
    ],
    [
      "other weeks of last year",
      `${free}  other_weeks: [{ from: 2025-12-14, until: 2025-12-27, free: {} }]`,
      "warning",
      "2025-12-27",
      "outside",
    ],
    [
      "a rota of next year",
      `${free}  rota: { on: 4, off: 3, from: 2028-01-01, free_off: { morning: 60 min } }`,
      "warning",
      "2028-01-01",
      "outside",
    ],
    [
      "free time past the next part of the day",
      `${free}  rota: { on: 4, off: 3, from: 2026-12-07, free_off: { morning: 9 h } }`,
      "warning",
      "9 h",
      "run past",
    ],
    ["no free time anywhere", "  free: {}", "error", "{}", "no free time"],
  ])("%s", (_, week, level, at, says) => {
    const text = withWeek(week);
    const { faults } = tryPlan(text);
    const fault = faults.find(
      (one) => one.level === level && `${one.message}`.includes(says) && one.code !== "not-signed",
    );
    expect(textAt(text, fault?.place).startsWith(at), JSON.stringify(faults)).toBe(true);
  });
  test("a rota alone is free time", () => {
    const text = withWeek(
      `  free: {}\n  rota: { on: 1, off: 1, from: ${START}, free_off: { evening: 60 min } }`,
    );
    expect(tryPlan(text).faults.map(({ code }) => code)).not.toContain("no-free-slot");
  });
});
