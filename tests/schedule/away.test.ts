/** Weeks away, through the whole program: no sessions in them, the course moved or left out, and the way back in. */
import { describe, expect, test } from "vitest";
import { makeBooklet, makeProgram } from "../../src/booklet.ts";
import { calendarFile } from "../../src/calendar/calendar-file.ts";
import { issue } from "../../src/calendar/issue.ts";
import { planJson } from "../../src/plan-text/json.ts";
import { planTable } from "../../src/plan-text/table.ts";
import { addDays } from "../../src/units/dates.ts";
import { asSigned } from "../support/signed.ts";
import {
  change,
  DAY,
  DEMO,
  demoClinic,
  english,
  shippedText,
  worldWith,
} from "../support/world.ts";

const ACHILLES = `${DEMO}/achilles.md`;
const SHOULDER = `${DEMO}/shoulder.md`;
const clinic = demoClinic();

/** The demo's Achilles plan without its Christmas. */
const PLAIN = change(
  change(shippedText(ACHILLES), / {2}away:.*\n/, "  away: []\n"),
  /redose:[\s\S]*?(?=signed:)/,
  "",
);
const START = "2026-11-30";

/** Weeks away, from 1, as the plan's author would write them. */
const weeksAway = (first: number, last: number, then?: string) =>
  change(
    PLAIN,
    "away: []",
    `away: [{ from: ${addDays(START, 7 * (first - 1))}, to: ${addDays(START, 7 * last - 1)}${then ? `, then: ${then}` : ""} }]`,
  );

function made(text: string, { file = ACHILLES, settings = "" } = {}) {
  const files = {
    [file]: text,
    [`${DEMO}/clinic.yaml`]: `${shippedText(`${DEMO}/clinic.yaml`)}${settings}`,
  };
  const workspace = settings ? demoClinic(files) : { ...clinic, tree: worldWith(files) };
  const { value, faults } = makeProgram(workspace, file);
  if (!value) throw new Error(faults.map(({ message, hint }) => `${message} ${hint}`).join("\n"));
  return { value, faults, workspace, json: planJson(value, faults) };
}

type Json = ReturnType<typeof made>["json"];

/** The numbers of a week without its days and provenance. */
const numbers = ({ weeks }: Json, week: number) => {
  const bouts = weeks[week - 1]?.sessions.flatMap((session) => session.bouts) ?? [];
  return bouts.map(({ card, sets, reps, reps_by_set, load_kg, rest_s, tempo }) =>
    JSON.stringify([card, sets, reps, reps_by_set, load_kg, rest_s, tempo]),
  );
};
const sessions = ({ weeks }: Json) => weeks.map((week) => week.sessions.length);
const awayIn = ({ weeks }: Json) => weeks.filter(({ away }) => away).map(({ week }) => week);
const backIn = ({ weeks }: Json) =>
  weeks.filter(({ first_back }) => first_back).map(({ week }) => week);

const plain = made(PLAIN).json;
const total = plain.weeks.length;

describe("a week away", () => {
  test.each([
    ["in the middle", 4, 4],
    ["the first", 1, 1],
    ["the last", 12, 12],
    ["two", 4, 5],
  ])("%s: the course goes on later, with the same numbers", (_, first, last) => {
    const { json } = made(weeksAway(first, last));
    const more = last - first + 1;
    expect(json.weeks).toHaveLength(total + more);
    expect(awayIn(json)).toEqual(Array.from({ length: more }, (_, at) => first + at));
    expect(sessions(json).reduce((a, b) => a + b)).toBe(sessions(plain).reduce((a, b) => a + b));
    for (let week = 1; week <= total; week++) {
      const now = week < first ? week : week + more;
      if (backIn(json).includes(now)) continue;
      expect([now, numbers(json, now)]).toEqual([now, numbers(plain, week)]);
    }
  });

  test.each([
    ["in the middle", 4],
    ["the first", 1],
    ["the last", 12],
  ])("%s, left out: the others keep their dates", (_, away) => {
    const { json } = made(weeksAway(away, away, "skip"));
    expect(json.weeks).toHaveLength(total);
    expect(awayIn(json)).toEqual([away]);
    const rest = sessions(plain).map((count, at) => (at + 1 === away ? 0 : count));
    expect(sessions(json)).toEqual(rest);
    expect(json.weeks.map(({ from }) => from)).toEqual(plain.weeks.map(({ from }) => from));
  });

  test("one moved and one left out in one program", () => {
    const text = change(
      weeksAway(3, 3, "skip"),
      "then: skip }",
      `then: skip }, { from: ${addDays(START, 35)}, to: ${addDays(START, 41)} }`,
    );
    const { json } = made(text);
    expect(awayIn(json)).toEqual([3, 6]);
    expect(json.weeks).toHaveLength(total + 1);
    expect(numbers(json, 7).length).toBe(numbers(plain, 6).length);
  });

  test("is one where the days that are left have no free time, and none where one has", () => {
    const from = addDays(START, 21);
    const away = (to: number) =>
      change(PLAIN, "away: []", `away: [{ from: ${from}, to: ${addDays(from, to)} }]`);
    expect(awayIn(made(away(5)).json)).toEqual([4]);
    const { faults, value } = makeProgram(
      { ...clinic, tree: worldWith({ [ACHILLES]: away(4) }) },
      ACHILLES,
    );
    expect(value).toBeUndefined();
    const [fault] = faults.filter(({ code }) => code === "week-impossible");
    expect(fault?.message).toMatch(/week 4/i);
    expect(fault?.message).not.toContain("No part of any day is open");
    expect(fault?.hint).not.toMatch(/Monday|Tuesday|Wednesday|Thursday|Friday/);
  });

  test("that leaves nothing of an exercise is said", () => {
    const { faults } = made(weeksAway(1, 11, "skip"));
    expect(faults.map(({ code }) => code)).not.toContain("weeks-left-out");
    const all = makeProgram(
      { ...clinic, tree: worldWith({ [ACHILLES]: weeksAway(1, 12, "skip") }) },
      ACHILLES,
    );
    expect(all.value).toBeUndefined();
    expect(all.faults.map(({ code }) => code)).toContain("weeks-left-out");
  });
});

describe("the first week back after more than a week", () => {
  const two = made(weeksAway(4, 5));

  test("has two thirds of the sets, and says why", () => {
    expect(backIn(two.json)).toEqual([6]);
    const usual = plain.weeks[3]?.sessions[0]?.bouts ?? [];
    const back = two.json.weeks[5]?.sessions.flatMap(({ bouts }) => bouts) ?? [];
    expect(back.length).toBeGreaterThan(0);
    for (const { card, sets, load_kg, key } of back) {
      const before = usual.find((one) => one.card === card);
      expect(sets).toBe(Math.floor(((before?.sets ?? 0) * 67) / 100));
      expect(load_kg).toBe(before?.load_kg);
      const steps = two.json.weeks[5]?.trails[key]?.sets ?? [];
      expect(steps.at(-1)?.says).toContain(`67 % of ${before?.sets} sets`);
    }
  });

  test("is not warned of as growth in the week after it", () => {
    const ramps = (faults: readonly { code: string; message: string }[]) =>
      faults.filter(({ code }) => code === "ramp-steep").map(({ message }) => message);
    expect(ramps(two.faults).filter((one) => one.includes("week 6 to week 7"))).toEqual([]);
  });

  test.each([
    ["not after one week", weeksAway(4, 4), "", []],
    ["not where the clinic eases nothing: no sets fall", weeksAway(4, 5), "100 %", [6]],
    ["not before the course has begun", weeksAway(1, 2), "", []],
  ])("%s", (_, text, ease, weeks) => {
    const settings = ease ? `week: { ease_after_away: ${ease} }\n` : "";
    const { json } = made(text, { settings });
    expect(backIn(json)).toEqual(weeks);
    if (ease) expect(numbers(json, 6)).toEqual(numbers(plain, 4));
  });

  test("ten days from the middle of a week: days away take daily sessions, and it is told", () => {
    const text = shippedText(SHOULDER);
    const [, starts = ""] = /^starts: (\S+)/m.exec(text) ?? [];
    const from = addDays(starts, 9);
    const to = addDays(from, 9);
    const away = change(
      text,
      /^week:\n( {2}away:.*\n)?/m,
      `week:\n  away: [{ from: ${from}, to: ${to} }]\n`,
    );
    const { json, faults } = made(away, { file: SHOULDER });
    const dates = json.weeks.flatMap((week) => week.sessions.map(({ date }) => date));
    expect(dates.filter((date) => date >= from && date <= to)).toEqual([]);
    expect(dates).toContain(addDays(from, -1));
    expect(dates).toContain(addDays(to, 1));
    expect(backIn(json)).toContain(3);
    expect(faults.map(({ code }) => code)).toContain("sessions-taken");
  });
});

test("an exercise of every second day begins anew after a week away, as often as it asks for", () => {
  const every = change(
    change(
      weeksAway(3, 3),
      "signed:",
      "redose:\n  - { card: heel-raise-seated-weight, why: x, dose: { every: 3 days } }\n  - { card: heel-raise-one-leg-step-weight, why: x, dose: { every: 3 days } }\nsigned:",
    ),
    "    mon:",
    "    sun: { evening: 45 min }\n    mon:",
  ).replace(/ {4}- \{ what: Long walk.*\n/, "");
  const { json, faults, value } = made(every);
  expect(faults.map(({ code }) => code)).not.toContain("sessions-taken");
  expect(awayIn(json)).toEqual([3]);
  expect(json.weeks[3]?.sessions[0]?.date).toBe(addDays(START, 21));
  value.dosed.weeks.forEach(({ bouts }, at) => {
    for (const bout of bouts) {
      const laid = json.weeks[at]?.sessions.filter((session) =>
        session.bouts.some(({ key }) => key === bout.key),
      );
      expect([at + 1, bout.key, laid?.length]).toEqual([at + 1, bout.key, bout.sessions]);
    }
  });
});

describe("it is said", () => {
  const { value, workspace } = made(weeksAway(4, 5));
  const booklet = makeBooklet(asSigned(value), workspace, english(), DAY);

  test("on the calendar page, the cover, the diary and the terminal", () => {
    expect(booklet.weeks[3]?.summary).toBe("Away: no sessions this week");
    expect(booklet.cover.length).toBe("14 weeks");
    expect(booklet.cover.dates).toContain("7 March 2027");
    expect(booklet.firstBack).toMatch(/^Week 6 is your first week back/);
    expect(booklet.diary.flatMap(({ weeks }) => weeks.map(({ number }) => number))).not.toContain(
      4,
    );
    expect(planTable(value, workspace.texts.library, english())).toMatch(
      /Week 4 .*Away: no sessions this week/,
    );
    const rows = booklet.phases.flatMap((phase) => phase.rows.flatMap(({ doses }) => doses));
    expect(rows.map(({ weeks }) => weeks)).toContain("Week 6");
  });

  test("no appointment and no session of the phone lies in it", () => {
    const [from, to] = [addDays(START, 21), addDays(START, 34)];
    const inside = booklet.sessions.filter(({ date }) => date >= from && date <= to);
    expect(inside).toEqual([]);
    const text = calendarFile(booklet, issue(booklet, value.program, undefined).value);
    const starts = [...text.matchAll(/DTSTART[^:]*:(\d{8})/g)].map(([, day]) => day ?? "");
    expect(starts.length).toBeGreaterThan(20);
    const days = [from, to].map((date) => date.replaceAll("-", ""));
    expect(starts.filter((day) => day >= (days[0] ?? "") && day <= (days[1] ?? ""))).toEqual([]);
  });
});
