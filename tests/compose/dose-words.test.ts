/** Doses in the client's words: every way in which a set can be stated. */
import { describe, expect, test } from "vitest";
import { makeProgram } from "../../src/booklet.ts";
import { doseLines, doseWords, oftenWords, shortDose } from "../../src/compose/dose-words.ts";
import { writer } from "../../src/compose/numbers.ts";
import type { Bout } from "../../src/dose/types.ts";
import { DEMO, demoClinic, english } from "../support/world.ts";

const workspace = demoClinic();
const { value } = makeProgram(workspace, `${DEMO}/achilles.md`);
const base = value?.dosed.weeks[0]?.bouts[1] as Bout;
const things = workspace.cards.library.words;
const write = writer(english(), "en-GB");
const card = (id: string) => {
  const found = workspace.cards.library.cards.get(id);
  if (!found) throw new Error(id);
  return found;
};
const heel = card("heel-raise-one-leg-step-weight");
const bare = { reps: undefined, holdS: undefined, timeS: undefined, distanceM: undefined };
const all = (low: number, high = low) => Array(3).fill({ low, high });

describe("how much", () => {
  test.each([
    ["repetitions", { reps: all(15) }, "3 sets of 15", "3 × 15"],
    ["one set", { sets: 1, reps: [{ low: 15, high: 15 }] }, "1 set of 15", "1 × 15"],
    ["a range", { reps: all(6, 8) }, "3 sets of 6 to 8", "3 × 6–8"],
    [
      "one number a set",
      { reps: [12, 10, 8].map((n) => ({ low: n, high: n })) },
      "3 sets: 12, 10, 8",
      "3 sets: 12, 10, 8",
    ],
    ["holds", { sets: 5, holdS: 45 }, "5 holds of 45 seconds", "5 × 45 s"],
    [
      "holds counted as repetitions",
      { sets: 3, reps: all(10), holdS: 10 },
      "3 sets of 10 holds, 10 seconds each",
      "3 sets of 10 holds, 10 s each",
    ],
    ["time", { sets: 3, timeS: 60 }, "3 times 1 minute", "3 × 60 s"],
    ["one long time", { sets: 1, timeS: 480 }, "8 minutes", "1 × 8 min"],
    ["distance", { sets: 4, distanceM: 20 }, "4 times 20 m", undefined],
  ] as const)("%s", (_name, change, words, short) => {
    const bout = { ...base, ...bare, load: { kind: "none" }, ...change } as Bout;
    expect(doseWords(bout, heel, things, write).work).toBe(words);
    if (short !== undefined) expect(shortDose(bout, heel, write)).toBe(short);
  });
});

describe("with what", () => {
  test.each([
    ["a weight", { kind: "weight", kg: 7.5, equipment: "dumbbells" }, "7.5 kg (hand weights)"],
    ["a weight left to feel", { kind: "weight" }, "A weight that feels right"],
    ["nothing but the body", { kind: "weight", kg: 0, addedTo: "body" }, "Your own weight"],
    [
      "the body and a weight",
      { kind: "weight", kg: 8, addedTo: "body", equipment: "backpack" },
      "Your own weight and 8 kg (backpack)",
    ],
    ["a band", { kind: "band", level: 2 }, "Band, level 2"],
    ["a band left to feel", { kind: "band" }, "A band that feels right"],
    ["the body", { kind: "body" }, "Your own weight"],
    ["nothing", { kind: "none" }, undefined],
  ] as const)("%s", (_name, load, words) => {
    expect(doseWords({ ...base, load } as Bout, heel, things, write).load).toBe(words);
  });
});

describe("how fast", () => {
  test.each([
    [
      "up comes first",
      "heel-raise-one-leg-step-weight",
      [3, 0, 3, 0],
      "3 seconds up, 3 seconds down",
    ],
    [
      "a pause at the top",
      "heel-raise-one-leg-step-weight",
      [3, 0, 3, 2],
      "3 seconds up, hold 2 seconds, 3 seconds down",
    ],
    [
      "as fast as is safe",
      "heel-raise-one-leg-step-weight",
      [1, 0, "X", 0],
      "Up fast, 1 second down",
    ],
    ["no lifting part", "heel-raise-one-leg-step-weight", [3, 0, 0, 0], "3 seconds down"],
    [
      "down comes first, the card's own words",
      "wall-push-up-plus",
      [2, 1, 1, 0],
      "2 seconds to the wall, hold 1 second, 1 second to push away",
    ],
  ] as const)("%s", (_name, id, [lower, bottom, lift, top], words) => {
    const bout = { ...base, tempo: { lower, bottom, lift, top } } as Bout;
    expect(doseWords(bout, card(id), things, write).pace).toBe(words);
  });
});

test.each([
  [{ perWeek: 1 }, "Once a week"],
  [{ perWeek: 3 }, "3 days a week"],
  [{ perWeek: 7 }, "Every day"],
  [{ perDay: 1 }, "Once every day"],
  [{ perDay: 2 }, "Twice every day"],
  [{ everyDays: 2 }, "Every second day"],
  [{ everyDays: 3 }, "Every third day"],
] as const)("how often: %j is %s", (frequency, words) => {
  expect(oftenWords({ frequency, sessions: 0, instead: undefined }, write)).toBe(words);
});

test.each([
  [{ perWeek: 3 }, 2, 2, "Twice a week"],
  [{ perWeek: 1 }, 0, 0, "None: no day is free"],
  [{ perDay: 2 }, 10, 10, "Twice every day, on days that are free: 10 times a week"],
  [{ everyDays: 2 }, 1, 1, "Every second day, on days that are free: once a week"],
  [{ everyDays: 2 }, 2, 2, "Every second day, on days that are free: twice a week"],
  [{ everyDays: 2 }, 3, 4, "Every second day, on days that are free: 3 or 4 times a week"],
] as const)(
  "how often, where the calendar has %j %i or %i times",
  (frequency, low, high, words) => {
    const often = { frequency, sessions: high, instead: { low, high } };
    expect(oftenWords(often, write)).toBe(words);
  },
);

test("weeks of the same dose are brought together, others are not", () => {
  const dose = { ...doseWords(base, heel, things, write), often: "3 days a week" };
  const other = { ...dose, work: "4 sets of 10" };
  const lines = doseLines(
    [1, 2, 3, 4, 6].map((week) => ({ week, dose: week === 3 ? other : dose })),
    write,
  );
  expect(lines.map(({ weeks }) => weeks)).toEqual(["Weeks 1 to 2", "Week 3", "Week 4", "Week 6"]);
});

describe("numbers and dates by locale", () => {
  test.each([
    ["en-GB", "2.5", "Monday, 30 November 2026"],
    ["en-US", "2.5", "Monday, November 30, 2026"],
    ["de-DE", "2,5", "Montag, 30. November 2026"],
  ])("%s", (locale, number, date) => {
    const by = writer(english(), locale);
    expect(by.number(2.5)).toBe(number);
    expect(by.longDate("2026-11-30").replace(/^Monday (?=30)/, "Monday, ")).toBe(date);
  });

  test.each([
    [1, "1 second"],
    [45, "45 seconds"],
    [60, "1 minute"],
    [90, "90 seconds"],
    [150, "2 min 30 s"],
    [180, "3 minutes"],
    [7200, "2 hours"],
  ])("%i seconds is %s", (seconds, words) => expect(write.time(seconds)).toBe(words));
});

test("between sets one rests, between runs one walks", () => {
  const bout = { ...base, ...bare, sets: 6, timeS: 60, restS: 120, restRepsS: undefined } as Bout;
  expect(doseWords(bout, heel, things, write).rest).toBe("Rest 2 minutes between sets");
  const run = { ...heel, card: { ...heel.card, trains: "running" as const } };
  expect(doseWords(bout, run, things, write).rest).toBe("Walk 2 minutes in between");
});
