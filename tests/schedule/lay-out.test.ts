/** Plans laid out on real dates: the client's week is respected, and a plan that cannot be done says why. */
import { describe, expect, test } from "vitest";
import { makeProgram } from "../../src/booklet.ts";
import type { Session } from "../../src/schedule/schedule.ts";
import { addDays, weekdayOf } from "../../src/units/dates.ts";
import { change, DEMO, demoClinic, shippedText } from "../support/world.ts";

const FILE = `${DEMO}/achilles.md`;
const GOOD = shippedText(FILE);
const COURSE = "templates/protocols/achilles-heavy-slow-resistance.md";

function made(text: string, more: Record<string, string> = {}) {
  const { value, faults } = makeProgram(demoClinic({ [FILE]: text, ...more }), FILE);
  return { value, faults };
}

function sessionsOf(text: string, more: Record<string, string> = {}): Session[] {
  const { value, faults } = made(text, more);
  if (!value) throw new Error(faults.map(({ message, hint }) => `${message} ${hint}`).join("\n"));
  return value.schedule.weeks.flatMap((week) => week.days.flatMap((day) => day.sessions));
}

const HOURS = { morning: 7, midday: 13, evening: 19 };
const hourOf = ({ date, part }: Pick<Session, "date" | "part">) =>
  Date.parse(`${date}T00:00:00Z`) / 3_600_000 + HOURS[part];

const free = (days: string) => change(GOOD, /free:\n(?: {4}\w.*\n)+/, `free: { ${days} }\n`);
const withoutHolidays = (text: string) =>
  change(change(text, / {2}away:.*\n/, ""), /redose:[\s\S]*?(?=signed:)/, "");

describe("the demo client's week", () => {
  const sessions = sessionsOf(GOOD);

  test("no session on a day away or in the evening of a night shift", () => {
    const away = ["2026-12-25", "2026-12-31", "2027-01-01"];
    const shifts = ["2026-12-08", "2026-12-10", "2027-01-19", "2027-01-21"];
    for (const { date, part } of sessions) {
      expect(away).not.toContain(date);
      if (part === "evening") expect(shifts).not.toContain(date);
    }
  });

  test("no heavy session within 24 hours before the long walk", () => {
    for (const session of sessions) {
      const sunday = addDays(session.date, 6 - weekdayOf(session.date));
      const before = hourOf({ date: sunday, part: "midday" }) - hourOf(session);
      expect(before >= 24 || before <= 0).toBe(true);
    }
  });

  test("48 hours from one heavy session to the next, over the ends of weeks too", () => {
    sessions.slice(1).forEach((session, index) => {
      expect(hourOf(session) - hourOf(sessions[index] as Session)).toBeGreaterThanOrEqual(48);
    });
  });

  test("only in the client's free time, and no longer than it is", () => {
    for (const { part, minutes } of sessions) {
      expect(part).toBe("evening");
      expect(minutes).toBeLessThanOrEqual(45);
    }
  });

  test("the day kept free is named", () => {
    expect(made(GOOD).value?.schedule.kept).toEqual([
      { event: "Long walk", weekday: 6, side: "before" },
    ]);
  });
});

describe("wishes", () => {
  test("a plan may start on any weekday", () => {
    for (const day of ["2026-12-01", "2026-12-03", "2026-12-05"]) {
      const sessions = sessionsOf(
        withoutHolidays(change(GOOD, "starts: 2026-11-30", `starts: ${day}`)),
      );
      expect(sessions).toHaveLength(36);
      expect(Math.min(...sessions.map(({ date }) => Date.parse(date)))).toBeGreaterThanOrEqual(
        Date.parse(day),
      );
    }
  });

  test("days the client likes best; otherwise those of the clinic", () => {
    const open = free(
      "tue: { evening: 45 min }, wed: { evening: 45 min }, thu: { evening: 45 min }, fri: { evening: 45 min }, mon: { evening: 45 min }",
    );
    const shifts = change(withoutHolidays(open), / {4}- \{ what: Night shift.*\n/, "");
    const weekly = ["heel-raise-seated-weight", "heel-raise-one-leg-step-weight"].map(
      (card) => `  - { card: ${card}, why: x, dose: { per_week: 1 } }`,
    );
    const once = change(shifts, "signed:", `redose:\n${weekly.join("\n")}\nsigned:`);
    const days = (text: string, clinic = {}) =>
      new Set(sessionsOf(text, clinic).map(({ date }) => weekdayOf(date)));
    expect(days(change(once, "  events:", "  prefer: [thu]\n  events:"))).toEqual(new Set([3]));
    const clinic = {
      [`${DEMO}/clinic.yaml`]: `${shippedText(`${DEMO}/clinic.yaml`)}\nweek: { prefer: [wed] }\n`,
    };
    expect(days(once, clinic)).toEqual(new Set([2]));
  });

  test("jumps come before heavy work in one session", () => {
    const text = change(
      withoutHolidays(GOOD),
      "swap:",
      "add:\n  - { card: hops-two-legs, why: Ready for it, dose: { sets: 3, reps: 10, per_week: 3 } }\nswap:",
    );
    const all = sessionsOf(
      change(text, /45 min/, "60 min")
        .replaceAll("45 min", "60 min")
        .replace("  - chair", "  - chair\n  - clear-floor"),
    );
    const mixed = all.filter(
      ({ bouts }) => bouts.some(({ card }) => card === "hops-two-legs") && bouts.length > 1,
    );
    expect(mixed.length).toBeGreaterThan(0);
    for (const { bouts } of mixed) expect(bouts[0]?.card).toBe("hops-two-legs");
  });

  test("an order and a common session that the protocol asks for", () => {
    const course = change(
      shippedText(COURSE),
      "      - card: heel-press-leg-press\n",
      "      - card: heel-press-leg-press\n        same_session_as: heel-raise-seated-weight\n",
    );
    const turned = change(
      course,
      "      - card: heel-raise-seated-weight\n",
      "      - card: heel-raise-seated-weight\n        after: [heel-press-leg-press]\n",
    );
    for (const { bouts } of sessionsOf(GOOD, { [COURSE]: turned })) {
      expect(bouts.map(({ card }) => card)).toEqual([
        "heel-raise-one-leg-step-weight",
        "heel-raise-seated-weight",
      ]);
    }
  });

  test("naming an exercise that is not in the phase is a fault of the protocol", () => {
    const course = change(
      shippedText(COURSE),
      "      - card: heel-press-leg-press\n",
      "      - card: heel-press-leg-press\n        same_session_as: calf-stretch\n",
    );
    const { protocols } = demoClinic({ [COURSE]: course });
    expect(protocols.faults.map(({ code, message }) => `${code}: ${message}`)).toEqual([
      "unknown-card: The phase heavy-slow has no other exercise calf-stretch.",
    ]);
  });
});

describe("a plan that cannot be done says what collides, where it stands, and what would help", () => {
  test.each([
    [
      "three evenings in a row",
      withoutHolidays(
        free("mon: { evening: 45 min }, tue: { evening: 45 min }, wed: { evening: 45 min }"),
      ),
      /is done three times a week, at most once a day\. \(templates\/demo\/achilles\.md:\d+\)[\s\S]*needs 48 hours from one bout to the next[\s\S]*Only Monday, Tuesday and Wednesday evening are open\. \(templates\/demo\/achilles\.md:\d+\)/,
      /^The least that would help: Open Friday evening for 30 minutes\. With the free time as it is: Do “Sit and rise up on your toes with a heavy weight” twice a week and do/,
    ],
    [
      "evenings that are too short",
      withoutHolidays(
        free("mon: { evening: 8 min }, wed: { evening: 8 min }, fri: { evening: 8 min }"),
      ),
      /A session takes at most the 8 minutes that are free/,
      /Allow \d+ minutes more each time/,
    ],
    [
      "a walk that leaves no day",
      withoutHolidays(
        change(
          free("mon: { evening: 45 min }, wed: { evening: 45 min }, fri: { evening: 45 min }"),
          "clear_before: 24 h",
          "clear_before: 100 h",
        ),
      ),
      /keeps clear of the 100 hours before and 24 hours after Sunday’s Long walk/,
      /Open (Monday|Tuesday|Wednesday)|once a week|twice a week/,
    ],
    [
      "Christmas without fewer sessions",
      change(GOOD, /redose:[\s\S]*?(?=signed:)/, ""),
      /The sessions of week 4 \(from 2026-12-21\) do not fit/,
      /Open (Friday|Saturday|Sunday)/,
    ],
  ])("%s", (_name, text, collision, help) => {
    const { value, faults } = made(text);
    expect(value).toBeUndefined();
    const fault = faults.find(({ code }) => code === "week-impossible");
    expect(fault?.message).toMatch(collision);
    expect(fault?.hint).toMatch(help);
    expect(fault?.place?.file).toBe(FILE);
    expect(fault?.hint).not.toMatch(/recovery|hours apart|clear of/);
  });
});
