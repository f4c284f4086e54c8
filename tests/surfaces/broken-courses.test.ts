/** The comparison sees what is broken in easier moves, second booklets and weeks with days away. */
import { beforeAll, describe, expect, test } from "vitest";
import { change } from "../support/world.ts";
import { filesOf, inText, page } from "./breaking.ts";
import { addDays } from "./calendar-days.ts";
import { checkClient, type Files } from "./check.ts";
import type { Client } from "./clients.ts";
import { demoClient } from "./demo-client.ts";
import { disagreementText } from "./facts.ts";

let whole: Files;
let second: Files;
let taken: Files;

beforeAll(async () => {
  whole = await filesOf(demoClient("achilles"));
  second = await filesOf(withWeekAway(demoClient("achilles")));
  taken = await filesOf(withDayAway(demoClient("shoulder")));
});

/** The client's second booklet, made in the fourth week: the ninth is now a week away. */
function withWeekAway(first: Client): Client {
  const away = { from: "2027-01-25", to: "2027-01-31" };
  const { week } = first.plan;
  return {
    ...first,
    made: "2026-12-22",
    plan: { ...first.plan, week: { ...week, away: [...week.away, away] } },
    text: change(
      first.text,
      "to: 2027-01-01 }]",
      `to: 2027-01-01 }, { from: ${away.from}, to: ${away.to} }]`,
    ),
    before: { text: first.text, made: first.made },
  };
}

function withDayAway(client: Client): Client {
  const away = addDays(client.plan.starts, 16);
  const { week } = client.plan;
  return {
    ...client,
    plan: { ...client.plan, week: { ...week, away: [...week.away, away] } },
    text: change(client.text, "week:\n", `week:\n  away: [${away}]\n`),
  };
}

const SEATED = "exercise-heel-raise-seated-weight";

/** What is broken in the HTML file, and the kind of fact by which it is seen. */
const EASIER: readonly (readonly [string, (text: string) => string, string])[] = [
  [
    "exercise page: another easier move",
    page(SEATED, "one instead: Sit and rise up on your toes", "one instead: Stretch your calf"),
    "easier move",
  ],
  [
    "easier moves: in place of another exercise",
    page("part-easier", "In place of exercise 1.", "In place of exercise 2."),
    "easier move",
  ],
  [
    "easier moves: one is gone",
    page("part-easier", /<section class="easier-one">.*?<\/section>/s, ""),
    "easier move",
  ],
  [
    "easier moves: more sets than of the exercise",
    page("part-easier", "3 sets of 6", "5 sets of 6"),
    "no more than the exercise",
  ],
  [
    "easier moves: more repetitions than of the exercise",
    page("part-easier", "3 sets of 6", "3 sets of 7"),
    "no more than the exercise",
  ],
  [
    "easier moves: harder than the exercise",
    page("part-easier", "Should feel 7 out of 10", "Should feel 9 out of 10"),
    "no more than the exercise",
  ],
  [
    "easier moves: pain",
    page("part-easier", "Pain up to 5", "Pain up to 6"),
    "pain of an easier move",
  ],
  [
    "easier moves: a digit of the telephone",
    page("part-easier", ">01632 960 417<", ">01632 960 471<"),
    "telephone",
  ],
];

/** A second booklet, with a week away that the first did not have, and what breaks its calendar file. */
const SECOND: readonly (readonly [string, (text: string) => string, string])[] = [
  ["one session is not cancelled", inText("STATUS:CANCELLED", "STATUS:CONFIRMED"), "session"],
  [
    "one cancellation is lost",
    inText(/BEGIN:VEVENT(?:(?!BEGIN:VEVENT)[\s\S])*?STATUS:CANCELLED[\s\S]*?END:VEVENT\r\n/, ""),
    "session",
  ],
  [
    "a cancellation is no newer than what it cancels",
    inText(/SEQUENCE:\d+(?=(?:(?!END:VEVENT)[\s\S])*STATUS:CANCELLED)/, "SEQUENCE:1"),
    "session",
  ],
];

/** Exercises for every day, and a day away: what breaks the words that say so. */
const TAKEN: readonly (readonly [string, "html" | "json", (text: string) => string, string])[] = [
  ["JSON: nobody is told", "json", inText(/"instead": \[[^\]]*\]/, '"instead": null'), "often"],
  [
    "phase page: another number",
    "html",
    page("phase-twice-daily", /free: \d+ times/, "free: 5 times"),
    "times in the week",
  ],
  [
    "phase page: what it does in another way",
    "html",
    page("phase-once-daily", "Should feel 6 out of 10", "Should feel 7 out of 10"),
    "effort",
  ],
  [
    "phase page: for whom it does that",
    "html",
    page("phase-once-daily", "Exercises 1, 2, 3, 4:", "Exercises 1, 2, 4:"),
    "effort",
  ],
  [
    "phase page: what holds for most",
    "html",
    page("phase-twice-daily", "Rest 30 seconds", "Rest 40 seconds"),
    "rest",
  ],
  [
    "exercise page: nobody is told",
    "html",
    page("exercise-arm-lower-weight", /, on days that are free: \d+ times a week/i, ""),
    "often",
  ],
];

describe("a broken surface is seen", () => {
  test.each(EASIER)("%s", (_name, broken, kind) => {
    const seen = checkClient({ ...whole, html: broken(whole.html) }).disagreements;
    expect(seen.map((one) => one.kind)).toContain(kind);
  });

  test("and none is seen where a second booklet is whole", () => {
    const { client, ics, icsBefore } = second;
    expect(client.before?.made).toBe("2026-11-24");
    expect(ics).toContain("STATUS:CANCELLED");
    expect(icsBefore).not.toContain("STATUS:CANCELLED");
    expect(checkClient(second).disagreements.map(disagreementText)).toEqual([]);
  });

  test.each(SECOND)("second booklet: %s", (_name, broken, kind) => {
    const files = second;
    const seen = checkClient({ ...files, ics: broken(files.ics) }).disagreements;
    expect(seen.map((one) => one.kind)).toContain(kind);
  });

  test("and none is seen where a day away takes sessions and the pages say so", () => {
    expect(taken.html).toContain("on days that are free");
    expect(checkClient(taken).disagreements.map(disagreementText)).toEqual([]);
  });

  test.each(TAKEN)("a day away takes sessions: %s", (_name, output, broken, kind) => {
    const files = { ...taken, [output]: broken(taken[output]) };
    const seen = checkClient(files).disagreements.map((one) => one.kind);
    expect(seen).toContain(kind);
  });
});
