/** The client's day on the clock: parts in order, over midnight too, and what date a moment has. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  clockMinutes,
  clockText,
  dayClock,
  dayEnds,
  minutesBetween,
  minutesInPart,
  minutesToNext,
  onTheWall,
  passesMidnight,
  rises,
} from "../../src/units/clock.ts";
import { PARTS } from "../../src/units/day-parts.ts";

const times = (morning: string, midday: string, evening: string) => ({ morning, midday, evening });

describe("a client's day", () => {
  test.each([
    ["by day", times("07:00", "13:00", "19:00"), [420, 780, 1140], true, 1440],
    ["to the minute", times("07:30", "12:05", "20:15"), [450, 725, 1215], true, 1440],
    ["of a night worker", times("22:00", "02:00", "06:00"), [1320, 1560, 1800], true, 2280],
    [
      "with its last part after midnight",
      times("10:00", "17:00", "01:00"),
      [600, 1020, 1500],
      true,
      1770,
    ],
    [
      "with its last part at midnight",
      times("10:00", "17:00", "00:00"),
      [600, 1020, 1440],
      true,
      1740,
    ],
    ["from midnight on", times("00:00", "08:00", "16:00"), [0, 480, 960], true, 1440],
    ["that turns back", times("07:00", "19:00", "13:00"), [420, 1140, 2220], false, undefined],
    ["with one time twice", times("07:00", "07:00", "19:00"), [420, 1860, 2580], false, undefined],
    [
      "that comes round to its start",
      times("07:00", "13:00", "07:00"),
      [420, 780, 1860],
      false,
      undefined,
    ],
  ])("%s", (_, at, minutes, oneDay, ends) => {
    const clock = dayClock(at);
    expect(PARTS.map((part) => clock[part])).toEqual(minutes);
    expect(rises(clock)).toBe(oneDay);
    if (ends !== undefined) expect(dayEnds(clock)).toBe(ends);
  });

  test("each part lasts until the next, the last one until the next day", () => {
    const clock = dayClock(times("22:00", "02:00", "06:30"));
    expect(PARTS.map((part) => minutesToNext(clock, part))).toEqual([240, 270, 930]);
  });
});

test("a moment is shown with the date and the time that it really has", () => {
  const shown = (date: string, minutes: number) => {
    const wall = onTheWall({ date, minutes });
    return `${wall.date} ${clockText(wall.minutes)}`;
  };
  expect(shown("2026-12-31", 1560)).toBe("2027-01-01 02:00");
  expect(shown("2026-12-31", 1439)).toBe("2026-12-31 23:59");
  expect(shown("2026-12-31", 1440)).toBe("2027-01-01 00:00");
});

test.each([
  ["an evening to the next", "2026-12-02", 1140, "2026-12-03", 1140, 1440],
  [
    "a night in which clocks go back counts as any other",
    "2026-10-24",
    1140,
    "2026-10-25",
    420,
    720,
  ],
  ["a night in which clocks go forward too", "2027-03-27", 1140, "2027-03-28", 420, 720],
  ["back in time", "2026-12-03", 420, "2026-12-02", 1140, -720],
])("minutes from %s", (_, date, minutes, toDate, toMinutes, apart) => {
  expect(minutesBetween({ date, minutes }, { date: toDate, minutes: toMinutes })).toBe(apart);
});

test("any three times that rise make one day, and its parts tile it", () => {
  const minute = fc.integer({ min: 0, max: 1439 });
  fc.assert(
    fc.property(minute, minute, minute, (a, b, c) => {
      const clock = dayClock(times(clockText(a), clockText(b), clockText(c)));
      expect(PARTS.map((part) => clock[part] % 1440)).toEqual([a, b, c]);
      expect(clock.morning < clock.midday && clock.midday < clock.evening).toBe(true);
      if (!rises(clock)) return;
      expect(PARTS.reduce((sum, part) => sum + minutesToNext(clock, part), 0)).toBe(1440);
      expect(dayEnds(clock)).toBeGreaterThanOrEqual(passesMidnight(clock) ? clock.evening : 1440);
      expect(dayEnds(clock)).toBeLessThanOrEqual(
        clock.morning + 1440 + (passesMidnight(clock) ? 0 : 1440),
      );
    }),
    { numRuns: 300, seed: 11 },
  );
});

test("clock times are read to the minute", () => {
  expect(["00:00", "07:30", "23:59"].map(clockMinutes)).toEqual([0, 450, 1439]);
});

describe("how long work begun with a part can last", () => {
  test.each([
    ["to the next part", times("07:00", "13:00", "19:00"), [360, 360, 300]],
    ["to midnight, late", times("07:00", "13:00", "23:30"), [360, 630, 30]],
    [
      "half the time to the next day, past midnight",
      times("22:00", "02:00", "06:00"),
      [240, 240, 480],
    ],
  ])("%s", (_name, day, minutes) => {
    const clock = dayClock(day);
    expect(PARTS.map((part) => minutesInPart(clock, part))).toEqual(minutes);
  });
});
