/** Published courses laid out on dates: as many sessions as the trial prescribed. */
import { expect, test } from "vitest";
import { layOutProgram } from "../../src/week/program/program.ts";
import {
  course,
  datesOf,
  gaps,
  laidOut,
  programExercise,
} from "../week/program/program-support.ts";

const heelRaise = { minutes: 15, recoveryHours: 48, hard: true, groups: ["calf"] };

// Rathleff et al. 2015, Scand J Med Sci Sports 25:e292: high-load heel raises every second day
// for three months (84 days).
test("every second day for 84 days is 42 sessions, four and three in alternate weeks", () => {
  const exercise = programExercise("heel-raise", { ...heelRaise, times: { everyDays: 2 } });
  const weeks = laidOut(layOutProgram(course(12, [exercise])));
  const dates = datesOf(weeks, "heel-raise");
  expect(dates).toHaveLength(42);
  expect(new Set(gaps(dates))).toEqual(new Set([2]));
  expect(weeks.map((week) => week.sessions.length)).toEqual([4, 3, 4, 3, 4, 3, 4, 3, 4, 3, 4, 3]);
});

// Beyer et al. 2015, Am J Sports Med 43:1704: heavy slow resistance three times a week for 12
// weeks; 48 h between sessions.
test("three a week for 12 weeks is 36 sessions, never less than two days apart", () => {
  const exercise = programExercise("heavy-slow", { ...heelRaise, times: { perWeek: 3 } });
  const weeks = laidOut(layOutProgram(course(12, [exercise])));
  const dates = datesOf(weeks, "heavy-slow");
  expect(dates).toHaveLength(36);
  expect(Math.min(...gaps(dates))).toBe(2);
  expect(Math.max(...gaps(dates))).toBe(3);
});

// Alfredson et al. 1998, Am J Sports Med 26:360: twice a day, seven days a week, for 12 weeks.
test("twice a day for 12 weeks is 168 sessions", () => {
  const exercise = programExercise("heel-drop", { times: { perDay: 2 }, recoveryHours: 6 });
  const day = { free: { morning: 20, midday: 0, evening: 20 } };
  const days = new Array(84).fill(day);
  const weeks = laidOut(layOutProgram(course(12, [exercise], { days })));
  expect(weeks.flatMap((week) => week.sessions)).toHaveLength(168);
});
