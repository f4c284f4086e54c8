/** Which day a night belongs to, and until when a session that was begun can be gone on with. */
import { expect, test } from "vitest";
import { underWay, wakingDay } from "../../../src/phone/day/night.ts";
import { dayClock } from "../../../src/units/clock.ts";

const usual = dayClock({ morning: "07:00", midday: "13:00", evening: "19:00" });
const early = dayClock({ morning: "02:00", midday: "10:00", evening: "18:00" });
/** Works at night: the day named Monday begins on Monday at 22:00. */
const nights = dayClock({ morning: "22:00", midday: "02:00", evening: "06:00" });

test.each([
  ["ten past midnight", usual, 10, "2026-11-30"],
  ["just before the morning has come", usual, 239, "2026-11-30"],
  ["when it has", usual, 240, "2026-12-01"],
  ["in the evening", usual, 23 * 60, "2026-12-01"],
  ["a day that begins at two has no night before it", early, 0, "2026-12-01"],
  ["asleep in the afternoon", nights, 15 * 60, "2026-11-30"],
  ["awake again", nights, 19 * 60, "2026-12-01"],
  ["at work after midnight, in the day that began the evening before", nights, 1500, "2026-12-01"],
])("the day whose morning has come: %s", (_, clock, minutes, day) => {
  expect(wakingDay({ date: "2026-12-01", minutes }, clock)).toBe(day);
});

test.each([
  ["begun that day", "2026-12-01", true],
  ["begun the evening before", "2026-11-30", false],
  ["begun tomorrow, where the client then was", "2026-12-02", true],
])("a session %s", (_, day, goesOn) => {
  const place = { key: "k", day, short: false, at: 0, stage: "ready", pace: undefined } as const;
  expect(underWay(place, "2026-12-01")).toBe(goesOn ? place : undefined);
  expect(underWay(undefined, "2026-12-01")).toBeUndefined();
});
