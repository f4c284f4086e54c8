/** The weeks of a phase and the length of its sessions: the same on its page, in the calendar, terminal and JSON. */
import { describe, expect, test } from "vitest";
import { PROTOCOLS, partsOf, shippedCourse, textOf } from "../support/shipped.ts";

/** Every shipped course as it is, and the courses of several phases cut in the middle. */
const COURSES: [string, number | undefined][] = [
  ...PROTOCOLS.map((protocol): [string, undefined] => [protocol, undefined]),
  ["achilles-four-phases", 2],
  ["achilles-four-phases", 4],
  ["achilles-four-phases", 9],
  ["groin-two-parts-ten-weeks", 5],
  ["shoulder-cuff-lowering", 8],
];

interface PhaseFacts {
  title: string;
  weeks: number[];
  /** Least and most minutes of a session. */
  minutes: [number, number];
}

const span = (first: number, last: number): number[] =>
  Array.from({ length: last - first + 1 }, (_, index) => first + index);

const minutesOf = (text: string): [number, number] => {
  const [, least = "", most = least] = /about (\d+)(?: to (\d+))? minutes/.exec(text) ?? [];
  return [Number(least), Number(most)];
};

/** “Week 3”, “Weeks 3 to 5” as numbers. */
function weeksIn(text: string): number[] {
  const [, first = "0", last = first] = /Weeks? (\d+)(?: to (\d+))?/.exec(text) ?? [];
  return span(Number(first), Number(last));
}

/** What stands under the heading of each phase; two of them may share a page. */
const phasesIn = (html: string): string[] =>
  partsOf(html, "phase").flatMap((page) => page.split(/(?=<h2)/).slice(1));

function pageFacts(html: string): PhaseFacts[] {
  return phasesIn(html).map((page) => {
    const [, title = ""] =
      /<h2[^>]*>(?:<span class="eyebrow">[^<]*<\/span>)?([^<]*)<\/h2>/.exec(page) ?? [];
    const [, when = ""] = /<p class="when">([^<]*)</.exec(page) ?? [];
    return { title, weeks: weeksIn(when), minutes: minutesOf(textOf(page)) };
  });
}

/** Weeks that the rows of a phase's table name; undefined where all that it says holds in all weeks. */
function rowWeeks(page: string): number[] | undefined {
  if (/<tr class="one-row">|<div class="dose-changes">/.test(page)) return undefined;
  const heads = [...page.matchAll(/<th scope="row">(Weeks? [^<]*)<\/th>/g)];
  return [...new Set(heads.flatMap(([, text = ""]) => weeksIn(text)))].sort((a, b) => a - b);
}

/** Weeks of each phase as the calendar groups them, with the minutes of their days where they are told. */
function calendarWeeks(html: string): Map<string, number[]> {
  const weeks = new Map<string, number[]>();
  const [calendar = ""] = /<table class="calendar[\s\S]*?<\/table>/.exec(html) ?? [];
  for (const group of calendar.split("<tbody>").slice(1)) {
    const names = [...group.matchAll(/<span class="phase-name">([^<]*)</g)].map(([, name = ""]) =>
      name.replace(/^Phase \d of \d: /, ""),
    );
    const numbers = [...group.matchAll(/<strong>Week (\d+)<\/strong>/g)].map(([, n]) => Number(n));
    for (const name of names) weeks.set(name, [...(weeks.get(name) ?? []), ...numbers]);
  }
  return weeks;
}

describe.each(COURSES)("%s, weeks: %s", (protocol, weeks) => {
  const { html, json, table, made } = shippedCourse(
    protocol,
    weeks === undefined ? {} : { more: `weeks: ${weeks}` },
  );
  const pages = pageFacts(html);

  test("a phase's page is headed by the weeks that its rows name", () => {
    expect(pages.length).toBeGreaterThan(0);
    phasesIn(html).forEach((page, index) => {
      const { weeks, title } = pages[index] ?? {};
      expect(weeks, title).toEqual(rowWeeks(page) ?? weeks);
    });
  });

  test("the calendar groups the same weeks under it", () => {
    const grouped = calendarWeeks(html);
    expect([...grouped.keys()].sort()).toEqual(pages.map(({ title }) => title).sort());
    for (const { title, weeks: own } of pages) expect(grouped.get(title), title).toEqual(own);
  });

  test("the machine form names it in the same weeks", () => {
    const ids = new Map(made.program.phases.map(({ id, title }) => [title, id]));
    for (const { title, weeks: own } of pages) {
      const id = ids.get(title) ?? "";
      const named = json.weeks.filter((week) => week.phases.includes(id)).map(({ week }) => week);
      expect(named, title).toEqual(own);
      const worked = json.weeks
        .filter(({ sessions }) =>
          sessions.some(({ bouts }) => bouts.some((one) => one.phase === id)),
        )
        .map(({ week }) => week);
      expect(worked, title).toEqual(own);
    }
  });

  test("its minutes are those of its sessions, from the shortest to the longest", () => {
    const ids = new Map(made.program.phases.map(({ id, title }) => [title, id]));
    for (const { title, minutes } of pages) {
      const sessions = json.weeks
        .flatMap((week) => week.sessions)
        .filter(({ bouts }) => bouts.some(({ phase }) => phase === ids.get(title)));
      const all = sessions.map((session) => session.minutes);
      expect(minutes, title).toEqual([Math.min(...all), Math.max(...all)]);
    }
  });

  test("the terminal says both as the page does", () => {
    for (const {
      title,
      weeks: own,
      minutes: [least, most],
    } of pages) {
      const from = table.indexOf(`${title}: Week`);
      const head = table.slice(from, from + 300);
      expect(weeksIn(head.slice(title.length)), title).toEqual(own);
      expect(minutesOf(head), title).toEqual([least, most]);
    }
  });
});

describe("a course whose phases overlap in its source", () => {
  const { html } = shippedCourse("achilles-four-phases");
  test("each phase has the weeks in which the client does it", () => {
    expect(pageFacts(html).map(({ weeks }) => weeks)).toEqual([
      span(1, 2),
      span(3, 5),
      span(6, 12),
      span(13, 26),
    ]);
  });
  test("cut after two weeks, it has one phase", () => {
    const cut = shippedCourse("achilles-four-phases", { more: "weeks: 2" });
    expect(pageFacts(cut.html).map(({ title }) => title)).toEqual(["First steps"]);
    expect(textOf(cut.html)).not.toContain("Phase 1 of");
  });
});

test("a phase whose sessions differ in length says from how long to how long", () => {
  const { html } = shippedCourse("achilles-four-phases");
  const [least, most] = pageFacts(html)[2]?.minutes ?? [0, 0];
  expect(least).toBeLessThan(most);
});
