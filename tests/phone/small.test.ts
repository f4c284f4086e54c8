/** Addresses, words, days and settings of the companion. */
import { describe, expect, test } from "vitest";
import { dayNames } from "../../src/phone/day/dates.ts";
import { clockMinutes, hoursBetween, localTime } from "../../src/phone/day/local-day.ts";
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
  test("are the device's own", () => {
    expect(localTime(new Date(2026, 11, 2, 0, 5))).toEqual({ date: "2026-12-02", minutes: 5 });
  });
  test.each([
    ["an evening to the next", "2026-12-02", "19:00", "2026-12-03", "19:00", 24],
    [
      "a night in which clocks go back counts as any other",
      "2026-10-24",
      "19:00",
      "2026-10-25",
      "07:00",
      12,
    ],
    ["a night in which clocks go forward too", "2027-03-27", "19:00", "2027-03-28", "07:00", 12],
    ["back in time", "2026-12-03", "07:00", "2026-12-02", "19:00", -12],
  ])("hours from %s", (_, date, clock, toDate, toClock, hours) => {
    const from = { date, minutes: clockMinutes(clock) };
    expect(hoursBetween(from, { date: toDate, minutes: clockMinutes(toClock) })).toBe(hours);
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

  const place = { key: "2026-12-02 evening", short: false, at: 1, stage: "pace", pace: "x" };
  test.each([
    ["a place", place, place],
    ["no pace", { ...place, pace: 4 }, { ...place, pace: undefined }],
    ["no exercise", { ...place, at: -1 }, undefined],
    ["half an exercise", { ...place, at: 0.5 }, undefined],
    ["an unknown stage", { ...place, stage: "?" }, undefined],
    ["nothing", {}, undefined],
  ])("a place in a session from %s", (_, stored, found) => {
    expect(readPlace(JSON.stringify(stored))).toEqual(found);
  });
});
