/** Addresses, words, days and settings of the companion. */
import { describe, expect, test } from "vitest";
import { dayNames } from "../../src/phone/day/dates.ts";
import { localTime } from "../../src/phone/day/local-day.ts";
import { hashOf, type Route, routeOf } from "../../src/phone/screens/route.ts";
import { sayFrom } from "../../src/phone/screens/words.ts";
import { readPlace, readSettings, USUAL_SETTINGS } from "../../src/phone/store/settings.ts";

describe("an address", () => {
  const routes: [string, Route][] = [
    ["#/today", { screen: "today" }],
    ["#/diary", { screen: "diary" }],
    ["#/bring", { screen: "bring" }],
    ["#/stop", { screen: "stop" }],
    ["#/booklet", { screen: "booklet", anchor: undefined }],
    ["#exercise-rise", { screen: "booklet", anchor: "exercise-rise" }],
    ["#/session/2026-12-02-evening", { screen: "session", key: "2026-12-02 evening" }],
    ["#/write/2026-12-02-midday", { screen: "write", key: "2026-12-02 midday" }],
  ];
  test.each(routes)("%s is a screen and back", (hash, route) => {
    expect(routeOf(hash)).toEqual(route);
    expect(hashOf(route)).toBe(hash);
  });
  test.each([[""], ["#"], ["#/"], ["#/nothing"], ["#/%00"]])("%j leads to today", (hash) => {
    expect(routeOf(hash)).toEqual({ screen: "today" });
  });
});

describe("words", () => {
  const say = sayFrom({ a: "Set {n} of {of}", b: "{x} and {x}" });
  test.each([
    ["values are filled in", say("a", { n: 1, of: 3 }), "Set 1 of 3"],
    ["every time they are named", say("b", { x: "$&" }), "$& and $&"],
    ["a missing value shows", say("a", { n: 1 }), "Set 1 of {of}"],
    ["a value with braces stays as it is", say("b", { x: "{n}" }), "{n} and {n}"],
    ["a missing word shows its key", say("c.d"), "c.d"],
  ])("%s", (_, said, expected) => {
    expect(said).toBe(expected);
  });
});

describe("days", () => {
  test("have names in the booklet's locale, whatever the device's", () => {
    expect(dayNames("en-GB").long("2026-12-02")).toBe("Wednesday 2 December");
    expect(dayNames("de-DE").long("2026-12-02")).toBe("Mittwoch, 2. Dezember");
    expect(dayNames("de-DE").number(2.5)).toBe("2,5");
    expect(dayNames("not a locale").short("2026-12-02")).toMatch(/2/);
  });
  test.each([
    ["a day that ends at midnight", 1440, new Date(2026, 11, 2, 0, 5), "2026-12-02", 5],
    [
      "the night of a day that began in the evening",
      2280,
      new Date(2026, 11, 2, 2, 0),
      "2026-12-01",
      1560,
    ],
    ["the last minute of it", 2280, new Date(2026, 11, 2, 13, 59), "2026-12-01", 2279],
    ["the first minute of the next", 2280, new Date(2026, 11, 2, 14, 0), "2026-12-02", 840],
    ["the night of New Year", 2280, new Date(2027, 0, 1, 1, 0), "2026-12-31", 1500],
  ])("are the device's own: %s", (_, ends, instant, date, minutes) => {
    expect(localTime(instant, ends)).toEqual({ date, minutes });
  });
});

describe("what the device keeps", () => {
  test.each([
    ["nothing", null, USUAL_SETTINGS],
    ["no JSON", "{", USUAL_SETTINGS],
    ["a list", "[1]", USUAL_SETTINGS],
    ["null", "null", USUAL_SETTINGS],
    ["odd values", '{"sound":"no","passed":[1,"a"]}', { ...USUAL_SETTINGS, passed: ["a"] }],
    ["choices", '{"sound":false,"voice":true}', { ...USUAL_SETTINGS, sound: false, voice: true }],
  ])("settings from %s", (_, text, settings) => {
    expect(readSettings(text)).toEqual(settings);
  });

  const day = "2026-12-02";
  const place = { key: `${day} evening`, day, short: false, at: 1, stage: "pace", pace: "x" };
  test.each([
    ["a place", place, place],
    ["no pace", { ...place, pace: 4 }, { ...place, pace: undefined }],
    ["an open question", { ...place, hurts: true }, { ...place, hurts: true }],
    ["no question", { ...place, hurts: false }, place],
    [
      "no question after the pace",
      { ...place, stage: "end", hurts: true },
      { ...place, stage: "end" },
    ],
    [
      "what is to be asked back",
      { ...place, stage: "after", unsure: { sets: 3, reps: 8, whole: true } },
      { ...place, stage: "after", unsure: { sets: 3, reps: 8, whole: true } },
    ],
    [
      "an odd one",
      { ...place, stage: "after", unsure: { sets: "3", whole: true } },
      { ...place, stage: "after" },
    ],
    ["one at another stage", { ...place, unsure: { sets: 3, whole: true } }, place],
    ["no exercise", { ...place, at: -1 }, undefined],
    ["half an exercise", { ...place, at: 0.5 }, undefined],
    ["an unknown stage", { ...place, stage: "?" }, undefined],
    ["nothing", {}, undefined],
  ])("a place in a session from %s", (_, stored, found) => {
    expect(readPlace(JSON.stringify(stored))).toEqual(found);
  });
});
