/** How often an exercise is done: it fits as it is asked for, or it collides, and no page says what the calendar does not hold. */
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { makeBooklet } from "../../src/booklet.ts";
import { calendarFile } from "../../src/calendar/calendar-file.ts";
import { issue } from "../../src/calendar/issue.ts";
import { loadAssets } from "../../src/html/assets.ts";
import { renderHtml } from "../../src/html/html.ts";
import { planJson } from "../../src/plan-text/json.ts";
import { planTable } from "../../src/plan-text/table.ts";
import { madeSmall, smallCourse } from "../support/small-course.ts";
import { DAY, english, ROOT } from "../support/world.ts";

const DAYS = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];
const WITHOUT_SUNDAY = DAYS.slice(0, 6);

interface Client {
  readonly often: string;
  /** Weekdays with a free evening, and its minutes. */
  readonly days?: readonly string[];
  readonly minutes?: number;
  readonly weeks?: number;
  /** More of the plan's week. */
  readonly more?: string;
}

/** Twelve minutes of work; the course begins on Monday 4 January 2027. */
const course = ({ often, days = DAYS, minutes = 45, weeks = 3, more = "" }: Client) => ({
  weeks,
  says: `dose: { sets: 5, reps: 10, tempo: 3-0-3-0, rest: 2 min, ${often} }`,
  week: `{ free: { ${days.map((day) => `${day}: { evening: ${minutes} min }`).join(", ")} }, ${more} }`,
});

const choir = (days: readonly string[]) =>
  `events: [${days.map((day) => `{ what: Choir, day: ${day}, part: evening, blocks: true }`).join(", ")}]`;

describe("stops with what collides and what would help", () => {
  test.each<[string, Client]>([
    ["every second day, two evenings", { often: "every: 2 days", days: ["mon", "thu"] }],
    ["every second day, 10 minutes", { often: "every: 2 days", minutes: 10 }],
    ["every second day, 5 minutes once", { often: "every: 2 days", days: ["mon"], minutes: 5 }],
    ["every second day, no Sunday", { often: "every: 2 days", days: WITHOUT_SUNDAY }],
    ["every third day, no Sunday", { often: "every: 3 days", days: WITHOUT_SUNDAY }],
    ["three days a week, two evenings", { often: "per_week: 3", days: ["mon", "thu"] }],
    ["three days a week, 10 minutes", { often: "per_week: 3", minutes: 10 }],
    ["three days a week, 5 minutes once", { often: "per_week: 3", days: ["mon"], minutes: 5 }],
    ["once a day, two evenings", { often: "per_day: 1", days: ["mon", "thu"] }],
    ["once a day, 10 minutes", { often: "per_day: 1", minutes: 10 }],
    ["once a day, 5 minutes once", { often: "per_day: 1", days: ["mon"], minutes: 5 }],
    ["every second day, all taken", { often: "every: 2 days", more: choir(DAYS) }],
    ["three days a week, all taken", { often: "per_week: 3", more: choir(DAYS) }],
    ["once a day, all taken", { often: "per_day: 1", more: choir(DAYS) }],
  ])("%s", (_, client) => {
    const { made, all } = smallCourse(course(client));
    expect(made).toBeUndefined();
    const [fault] = all.filter(({ level }) => level === "error");
    expect(fault?.code).toBe("week-impossible");
    expect(fault?.message).toMatch(/^The sessions of week \d .* do not fit the client's week:\n- /);
    expect(fault?.hint).toMatch(/^The least that would help: |all of it together: /);
  });
});

test("evenings that are all too short may be made longer, besides less work", () => {
  const { all } = smallCourse(course({ often: "per_week: 3", minutes: 10 }));
  const [fault] = all.filter(({ level }) => level === "error");
  expect(fault?.hint).toBe(
    "The least that would help: Do 4 sets of “Move it”. With the work as it is: Allow 5 minutes more each time.",
  );
});

const assets = await loadAssets(join(ROOT, "templates"), english());

/** What the outputs say: words of the weeks, days of the sessions. */
function outputs(client: Client) {
  const { made, workspace, warnings } = madeSmall(course(client));
  const booklet = makeBooklet(made, workspace, english(), DAY);
  const text = (html: string) => html.replace(/<[^>]*>/g, " ").replace(/\s+/g, " ");
  const { program } = made;
  const ics = calendarFile(booklet, issue(booklet, program, undefined).value);
  const summary = makeBooklet(made, workspace, english(), DAY, "summary");
  return {
    warnings: warnings.map(({ code }) => code),
    json: planJson(made, []),
    html: text(renderHtml(booklet, assets)),
    summary: text(renderHtml(summary, assets)),
    table: planTable(made, workspace.texts.library, english()),
    dates: [...ics.matchAll(/DTSTART[^:]*:(\d{4})(\d\d)(\d\d)/g)].map(([, ...date]) =>
      date.join("-"),
    ),
  };
}

describe("the sums that a source prints are compared with what is laid out", () => {
  const twice = "expect: { small-card: { reps: 1050, sessions: 21 } }\n";
  const told = (client: Client, plan = "") => {
    const { warnings } = madeSmall({ ...course(client), protocol: twice, plan });
    return warnings.filter(({ code }) => code === "sum-not-laid").map(({ message }) => message);
  };
  const daily = { often: "per_day: 1" };
  const away = { ...daily, more: "away: [2027-01-13, 2027-01-14]" };

  test.each<[string, Client, string, readonly string[]]>([
    ["all of them", daily, "", []],
    [
      "days away take two sessions",
      away,
      "",
      [
        "small-card: the source prints 21 sessions, this plan lays out 19.",
        "small-card: the source prints 1050 repetitions, this plan lays out 950.",
      ],
    ],
    [
      "a week away is made up for",
      { ...daily, more: "away: [{ from: 2027-01-11, to: 2027-01-17 }]" },
      "",
      [],
    ],
    [
      "the plan changes the dose, and says why",
      away,
      "redose: [{ card: small-card, why: x, dose: { sets: 4 } }]",
      [],
    ],
    ["the plan prints a part of the course", away, "weeks: 2", []],
  ])("%s", (_, client, plan, messages) => {
    expect(told(client, plan)).toEqual(messages);
  });
});

describe("every page says what the calendar holds", () => {
  test.each<[string, Client, readonly string[], number, readonly (string | null)[]]>([
    ["every second day", { often: "every: 2 days" }, ["Every second day"], 11, [null, null, null]],
    [
      "every second day with a day away",
      { often: "every: 2 days", more: "away: [2027-01-06]" },
      ["Every second day, on days that are free: 3 times a week", "Every second day"],
      10,
      ["3,3", null, null],
    ],
    [
      "every second day with a weekly event",
      { often: "every: 2 days", more: choir(["sat"]) },
      ["Every second day, on days that are free: 3 or 4 times a week"],
      10,
      ["3,4", "3,4", "3,4"],
    ],
    [
      "every 7 days, of which one has no day left in its week",
      {
        often: "every: 7 days",
        days: ["tue", "sun"],
        more: "events: [{ what: Choir, on: [2027-01-12, 2027-01-17], part: evening, blocks: true }]",
      },
      ["Every 7 days", "None: no day is free"],
      2,
      [null, "0,0", "1,1"],
    ],
    [
      "once every day",
      { often: "per_day: 1", more: "away: [2027-01-13, 2027-01-14]" },
      ["Once every day", "Once every day, on days that are free: 5 times a week"],
      19,
      [null, "5,5", null],
    ],
  ])("%s", (_, client, words, sessions, instead) => {
    const { json, html, summary, table, dates, warnings } = outputs(client);
    for (const surface of [html, summary, table]) {
      // not the whole page where it fails
      expect(words.filter((one) => !surface.includes(one))).toEqual([]);
    }
    expect(dates).toHaveLength(sessions);
    const said = json.weeks.map(({ frequency }) => Object.values(frequency)[0]);
    expect(said.map((one) => one?.instead?.join() ?? null)).toEqual(instead);
    expect(said.map((one) => one?.sessions)).toEqual(
      json.weeks.map((week) => week.sessions.length),
    );
    const told = warnings.filter((code) => ["days-wait", "sessions-taken"].includes(code));
    expect(told.length > 0).toBe(instead.some((one) => one !== null));
  });
});

test("the first week of a phase says that its exercise waited for a day from the phase before it", () => {
  const dose = "{ sets: 5, reps: 10, tempo: 3-0-3-0, rest: 2 min, every: 2 days }";
  // Tuesday, Thursday and Saturday; due again on the Monday of the second phase, which is taken
  const { week } = course({ often: "", more: choir(["mon"]) });
  const { made, workspace } = madeSmall({ doses: [dose, dose], week });
  const { phases } = makeBooklet(made, workspace, english(), DAY);
  const said = phases.map(({ rows }) =>
    rows.flatMap(({ doses }) => doses.map(({ often }) => often)),
  );
  expect(said).toEqual([
    ["Every second day"],
    ["Every second day, on days that are free: 3 times a week"],
  ]);
});

test("a week that is past says how often it was done as issued", () => {
  const first = madeSmall(course({ often: "per_week: 3" }));
  const booklet = makeBooklet(first.made, first.workspace, english(), DAY);
  const record = issue(booklet, first.made.program, undefined).value;
  const before = { today: "2027-01-14", recordOf: () => ({ value: record, faults: [] }) };
  const { made, workspace } = madeSmall(course({ often: "per_week: 5" }), before);
  const rows = makeBooklet(made, workspace, english(), "2027-01-14").phases[0]?.rows[0]?.doses;
  expect(rows?.map(({ weeks, often }) => `${weeks}: ${often}`)).toEqual([
    "Week 1: 3 days a week",
    "Weeks 2 to 3: 5 days a week",
  ]);
});

describe("the one page names days that hold in the weeks it says", () => {
  test.each<[string, Client, string]>([
    [
      "all weeks alike",
      { often: "per_week: 3" },
      "Move: Monday, Wednesday and Friday, evening. A session",
    ],
    [
      "two kinds of weeks in turn",
      { often: "every: 2 days", weeks: 4 },
      "Move: Some weeks: Monday, Wednesday, Friday and Sunday, evening. Other weeks: Tuesday, Thursday and Saturday, evening. A session",
    ],
    [
      "one week of three with a day away",
      { often: "per_week: 3", more: "away: [2027-01-13]" },
      "Move: Most weeks: Monday, Wednesday and Friday, evening. A session",
    ],
    [
      "each week another",
      { often: "every: 5 days" },
      "Move: Your days differ from week to week: look at your weeks. A session",
    ],
  ])("%s", (_, client, words) => {
    const { summary } = outputs(client);
    expect(summary.slice(summary.indexOf(" When Move:"))).toContain(words);
  });
});
