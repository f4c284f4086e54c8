/** What a phone makes of exercises that wait for a sign. */
import { describe, expect, test } from "vitest";
import { emptyEntry, entryFor } from "../../../src/phone/day/entries.ts";
import { gatesOn, openSessions } from "../../../src/phone/day/gates.ts";
import { bout, session } from "../support.ts";

const RISES = "You can do ten rises on the floor.";
const HOPS = "You can walk fast with no pain.";
const free = bout({ key: "p/walk", card: "walk", title: "Walk" });
const step = bout({ key: "p/step", card: "step", title: "Step", when: RISES });
const slow = bout({ key: "p/slow", card: "slow", title: "Slow", when: RISES });
const hop = bout({ key: "p/hop", card: "hop", title: "Hop", when: HOPS });
const short = {
  minutes: 5,
  bouts: [
    { key: "p/step", sets: 1 },
    { key: "p/walk", sets: 2 },
  ],
};
const sessions = [
  session("2027-01-04", { minutes: 20, bouts: [free, step, slow], short }),
  session("2027-01-05", {
    bouts: [hop],
    short: { minutes: 4, bouts: [{ key: "p/hop", sets: 1 }] },
  }),
  session("2027-01-06", { bouts: [free, hop] }),
];

const cards = (ready: readonly string[]) =>
  openSessions(sessions, ready).map(
    ({ date, bouts }) => `${date} ${bouts.map(({ card }) => card).join("+")}`,
  );

test.each([
  ["none seen", [], ["2027-01-04 walk", "2027-01-06 walk"]],
  ["one seen", [RISES], ["2027-01-04 walk+step+slow", "2027-01-06 walk"]],
  ["the other seen", [HOPS], ["2027-01-04 walk", "2027-01-05 hop", "2027-01-06 walk+hop"]],
  ["in other words", ["You can do ten rises"], ["2027-01-04 walk", "2027-01-06 walk"]],
])("%s", (_, ready, expected) => {
  expect(cards(ready)).toEqual(expected);
});

test("minutes stay as laid out, and the short version has none that waits", () => {
  const [first] = openSessions(sessions, []);
  expect(first?.minutes).toBe(20);
  expect(first?.short).toEqual({ minutes: 5, bouts: [{ key: "p/walk", sets: 2 }] });
  const waits = [
    session("2027-01-04", {
      bouts: [free, step],
      short: { minutes: 3, bouts: [{ key: "p/step", sets: 1 }] },
    }),
  ];
  expect(openSessions(waits, [])[0]?.short).toBeUndefined();
  expect(openSessions(waits, [RISES])[0]?.short).toEqual(waits[0]?.short);
});

test.each([
  ["the day's", "2027-01-04", [{ sign: RISES, titles: ["Step", "Slow"] }]],
  [
    "the next session's where a day has none",
    "2027-01-03",
    [{ sign: RISES, titles: ["Step", "Slow"] }],
  ],
  ["a session's of which nothing is open", "2027-01-05", [{ sign: HOPS, titles: ["Hop"] }]],
  ["none after the last", "2027-01-07", []],
])("signs shown: %s", (_, day, gates) => {
  expect(gatesOn(sessions, day)).toEqual(gates);
});

describe("an entry begun before a sign was seen", () => {
  test("keeps what was done and gets the new exercise", () => {
    const [before] = openSessions(sessions, []);
    const [after] = openSessions(sessions, [RISES]);
    if (!before || !after) throw new Error("no session");
    const kept = emptyEntry(before, "b", false, "");
    const done = {
      ...kept,
      done: "yes" as const,
      exercises: kept.exercises.map((one) => ({ ...one, done: "yes" as const })),
    };
    expect(entryFor(before, done, "b", false)).toBe(done);
    const more = entryFor(after, done, "b", false);
    expect(more.exercises.map(({ card, done }) => `${card} ${done}`)).toEqual([
      "walk yes",
      "step no",
      "slow no",
    ]);
    expect(more.done).toBe("part");
  });
});
