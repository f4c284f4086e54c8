/** The client's own hours: what is written in the calendar file keeps every exercise's recovery, by day and by night. */
import fc from "fast-check";
import ICAL from "ical.js";
import { describe, expect, test } from "vitest";
import { makeBooklet, makeProgram } from "../../src/booklet.ts";
import { calendarFile } from "../../src/calendar/calendar-file.ts";
import { issue } from "../../src/calendar/issue.ts";
import { loadAssets } from "../../src/html/assets.ts";
import { renderHtml } from "../../src/html/html.ts";
import { phoneData } from "../../src/html/phone.ts";
import { planJson } from "../../src/plan-text/json.ts";
import { planTable } from "../../src/plan-text/table.ts";
import { asSigned } from "../support/signed.ts";
import {
  change,
  DAY,
  DEMO,
  demoClinic,
  english,
  shippedText,
  textAt,
  worldWith,
} from "../support/world.ts";

const SHOULDER = `${DEMO}/shoulder.md`;
const ACHILLES = `${DEMO}/achilles.md`;
const NIGHT = { morning: "22:00", midday: "02:00", evening: "06:00" };

type Hours = Readonly<Record<"morning" | "midday" | "evening", string>>;

/** A demo plan with these hours, and with free time in all three parts of every day. */
function plan(file: string, hours: Hours, parts = "morning, midday, evening"): string {
  const text = shippedText(file);
  const free = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"].map((day) => {
    const minutes = parts.split(", ").map((part) => `${part}: 45 min`);
    return `    ${day}: { ${minutes.join(", ")} }`;
  });
  const clock = Object.entries(hours).map(([part, at]) => `${part}: "${at}"`);
  return change(
    text,
    /free:\n(?: {4}\w.*\n)+/,
    `hours: { ${clock.join(", ")} }\n  free:\n${free.join("\n")}\n`,
  );
}

const clinic = demoClinic();

function made(file: string, text: string) {
  const workspace = { ...clinic, tree: worldWith({ [file]: text }) };
  const { value, faults } = makeProgram(workspace, file);
  return { workspace, value, faults, library: workspace.texts.library };
}

/** Every appointment of the calendar file: start and end in minutes, and the cards it names. */
function appointments(file: string, text: string) {
  const { workspace, value, faults, library } = made(file, text);
  if (!value) throw new Error(faults.map(({ message, hint }) => `${message} ${hint}`).join("\n"));
  const cards = [...library.cards.values()];
  const booklet = makeBooklet(asSigned(value), workspace, english(), DAY);
  const ics = calendarFile(booklet, issue(booklet, value.program, undefined).value);
  return new ICAL.Component(ICAL.parse(ics)).getAllSubcomponents("vevent").map((component) => {
    const event = new ICAL.Event(component);
    const minutes = (time: ICAL.Time) => Date.parse(`${time.toString()}Z`) / 60_000;
    return {
      starts: event.startDate.toString(),
      from: minutes(event.startDate),
      to: minutes(event.endDate),
      cards: cards.filter(({ card }) =>
        event.description.split("\n").some((line) => line.startsWith(`${card.title}: `)),
      ),
    };
  });
}

/** Bouts of one card that are nearer to each other than its recovery, and appointments that overlap. */
function tooNear(all: ReturnType<typeof appointments>): string[] {
  const sorted = [...all].sort((a, b) => a.from - b.from);
  const found: string[] = [];
  sorted.forEach((one, index) => {
    const next = sorted[index + 1];
    if (next && next.from < one.to) found.push(`${one.starts} runs into ${next.starts}`);
    for (const { card } of one.cards) {
      const again = sorted
        .slice(index + 1)
        .find((other) => other.cards.some((c) => c.card === card));
      if (again && (again.from - one.from) * 60 < card.recovery) {
        found.push(`${card.id} at ${one.starts} and ${again.starts}`);
      }
    }
  });
  return found;
}

describe("recovery is counted by the plan's own clock", () => {
  test("eight hours do not fit between 12:00 and 17:00", () => {
    const close = { morning: "07:00", midday: "12:00", evening: "17:00" };
    const { value, faults } = made(SHOULDER, plan(SHOULDER, close, "midday, evening"));
    expect(value).toBeUndefined();
    expect(faults.map(({ code }) => code)).toContain("week-impossible");
  });

  test("exactly eight hours are enough, one minute less is not", () => {
    const at = (evening: string) =>
      made(
        SHOULDER,
        plan(SHOULDER, { morning: "07:00", midday: "11:15", evening }, "midday, evening"),
      );
    expect(at("19:15").value).toBeDefined();
    expect(at("19:14").value).toBeUndefined();
  });

  test("the bouts of a night worker are 48 hours apart, over midnight too", () => {
    const all = appointments(ACHILLES, plan(ACHILLES, NIGHT));
    expect(tooNear(all)).toEqual([]);
    expect(all.length).toBeGreaterThan(30);
  });

  test("for any hours, by the times that stand in the calendar file", () => {
    const minute = fc.integer({ min: 0, max: 95 }).map((quarter) => quarter * 15 + (quarter % 7));
    const two = (n: number) => String(n).padStart(2, "0");
    const text = (m: number) => `${two(Math.floor(m / 60))}:${two(m % 60)}`;
    let laid = 0;
    fc.assert(
      fc.property(minute, minute, minute, fc.nat(2), fc.boolean(), (a, b, c, turn, twice) => {
        const rising = [a, b, c].sort((x, y) => x - y).map(text);
        const [morning = "", midday = "", evening = ""] = [
          ...rising.slice(turn),
          ...rising.slice(0, turn),
        ];
        const file = twice ? SHOULDER : ACHILLES;
        const asked = change(plan(file, { morning, midday, evening }), "side:", "weeks: 2\nside:");
        const { value, faults } = made(file, asked);
        if (value === undefined) {
          expect(faults.some(({ code }) => /^week-|^wrong-value$/.test(code))).toBe(true);
          return;
        }
        laid += 1;
        expect(tooNear(appointments(file, asked))).toEqual([]);
      }),
      { numRuns: 16, seed: 17 },
    );
    expect(laid).toBeGreaterThan(5);
  }, 120_000);
});

describe("a day that begins in the evening", () => {
  const text = plan(ACHILLES, NIGHT, "midday");
  const { workspace, value } = made(ACHILLES, text);
  if (!value) throw new Error("the night worker's plan has errors");
  const booklet = makeBooklet(asSigned(value), workspace, english(), DAY);

  test("is named by the date on which it begins; its parts after midnight are on the next", () => {
    const [session] = booklet.sessions;
    expect([session?.date, session?.part]).toEqual(["2026-11-30", "midday"]);
    expect(appointments(ACHILLES, text)[0]?.starts).toBe("2026-12-01T02:00:00");
    const json = planJson(value, []).weeks[0]?.sessions[0];
    expect(json).toMatchObject({ date: "2026-11-30", part: "midday", starts: "2026-12-01T02:00" });
    expect(planTable(value, workspace.texts.library, english())).toMatch(
      /Mon.* midday \(02:00 the next date\) \d+ min/,
    );
  });

  test("is printed by the clock, with the weekday where the date is the next", async () => {
    const html = renderHtml(booklet, await loadAssets("templates", english()));
    expect(booklet.weeks[0]?.days[0]?.sessions[0]?.part).toBe("02:00 (Tue)");
    expect(booklet.diary[0]?.parts).toEqual(["02:00"]);
    expect(booklet.diary[0]?.weeks[0]?.rows[0]).toMatchObject({
      day: "Tue",
      date: "1 Dec",
      ticks: [true],
    });
    expect(booklet.phases[0]?.days).toMatch(/Tuesday.*, 02:00$/);
    expect(html).not.toMatch(/>Midday</);
  });

  test("is one day on the phone, whose parts are called by the clock", () => {
    const data = phoneData(booklet, english());
    expect(data.clock).toEqual({ morning: 1320, midday: 1560, evening: 1800 });
    expect(data.words["part.midday"]).toBe("02:00");
    expect(data.sessions[0]?.[0]).toBe("2026-11-30");
  });
});

describe("hours that cannot be", () => {
  test.each([
    ["turn back", '{ morning: "07:00", midday: "19:00", evening: "13:00" }'],
    ["stand twice", '{ morning: "07:00", midday: "07:00", evening: "19:00" }'],
    ["come round to their start", '{ evening: "07:00" }'],
  ])("because they %s are a fault at their place", (_, hours) => {
    const text = change(shippedText(ACHILLES), "  away:", `  hours: ${hours}\n  away:`);
    const { value, faults } = made(ACHILLES, text);
    expect(value).toBeUndefined();
    const fault = faults.find(({ level }) => level === "error");
    expect(fault?.message).toMatch(/that is no one day/);
    expect(textAt(text, fault?.place)).toMatch(/^(hours|\{)/);
  });

  test("free time that runs into the next part is used up to there, and said", () => {
    const text = change(
      shippedText(SHOULDER),
      "mon: { morning: 35 min, evening: 40 min }",
      "mon: { morning: 7 h, evening: 40 min }",
    );
    const { value, faults } = made(SHOULDER, text);
    expect(value).toBeDefined();
    const fault = faults.find(({ message }) => message.includes("next part of the day"));
    expect(fault?.level).toBe("warning");
    expect(fault?.message).toBe(
      "These 7 h begin at 07:00 and run past the start of the next part of the day, 13:00: 6 h of them are used.",
    );
    expect(textAt(text, fault?.place)).toMatch(/^7 h/);
  });

  test("a session is no longer than the time to the next part, over midnight too", () => {
    const late = plan(SHOULDER, { morning: "00:10", midday: "11:40", evening: "23:45" });
    const { value } = made(SHOULDER, late);
    if (value) expect(tooNear(appointments(SHOULDER, late))).toEqual([]);
    else
      expect(made(SHOULDER, late).faults.some(({ code }) => code.startsWith("week-"))).toBe(true);
  });
});
