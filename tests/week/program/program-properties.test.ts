/** Whole seeded programs: every rule counted again over all dates at once. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { layOutProgram } from "../../../src/week/program/program.ts";
import type {
  LaidWeek,
  ProgramExercise,
  ProgramWeeks,
} from "../../../src/week/program/program-types.ts";
import { dayNumber, isoDate } from "../../../src/week/search/dates.ts";
import { seededWeek } from "../search/seeded.ts";
import { MONDAY } from "./program-support.ts";

const START = dayNumber(MONDAY) ?? 0;

test("keeps recovery, groups, minutes and frequencies over all weeks and phases", () => {
  const seen = { "laid-out": 0, impossible: 0, unknown: 0, malformed: 0 };
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 100_000 }), fc.integer({ min: 2, max: 7 }), (seed, n) => {
      const program = seededProgram(seed, n);
      const result = layOutProgram(program);
      seen[result.status] += 1;
      if (result.status === "laid-out") checkAll(program, result.weeks);
    }),
    { numRuns: 80, seed: 6 },
  );
  expect(seen.malformed).toBe(0);
  expect(seen.unknown).toBeLessThan(4);
  expect(seen["laid-out"]).toBeGreaterThan(25);
}, 60_000);

/** Six weeks in two phases with a holiday, made from a seeded week. */
function seededProgram(seed: number, count: number): ProgramWeeks {
  const { clock, exercises, freeMinutes, events, groupHours, maxHardDaysInRow } = seededWeek(
    seed,
    count,
    false,
  );
  const list = exercises.map(({ times, ...one }): ProgramExercise => {
    if ("onDays" in times) return { ...one, times: { perWeek: 1 } };
    return { ...one, times: "everyDays" in times ? { everyDays: times.everyDays } : times };
  });
  const later = list.map((one) => ({ ...one, minutes: one.minutes + 1 }));
  const days = Array.from({ length: 42 }, (_, day) => {
    const at = (part: number) => (day === 17 ? 0 : (freeMinutes[3 * (day % 7) + part] ?? 0));
    const more = (minutes: number) => (minutes > 0 ? minutes + 5 : 0);
    return { free: { morning: more(at(0)), midday: more(at(1)), evening: more(at(2)) } };
  });
  return {
    firstDate: MONDAY,
    clock,
    phases: [
      { id: "one", weeks: new Array(3).fill({ exercises: list }) },
      { id: "two", weeks: new Array(3).fill({ exercises: later }) },
    ],
    days,
    events: [0, 1, 2, 3, 4, 5].flatMap((w) =>
      events.map(({ day, ...event }) => ({ ...event, date: isoDate(START + 7 * w + day) })),
    ),
    groupHours,
    ...(maxHardDaysInRow === undefined ? {} : { maxHardDaysInRow }),
  };
}

function checkAll(program: ProgramWeeks, weeks: readonly LaidWeek[]): void {
  const plan = program.phases.flatMap((phase) => phase.weeks);
  const bouts = weeks.flatMap((week, index) =>
    week.sessions.flatMap((session) => {
      const day = (dayNumber(session.date) ?? 0) - START;
      expect(Math.floor(day / 7)).toBe(index);
      expect(session.minutes).toBeLessThanOrEqual(program.days[day]?.free[session.part] ?? 0);
      return session.bouts.map((bout) => {
        const one = plan[index]?.exercises.find((each) => each.id === bout.exercise);
        if (one === undefined) throw new Error(`${bout.exercise} is not in the week`);
        return { index, day, minute: 1440 * day + program.clock[session.part], one };
      });
    }),
  );
  bouts.forEach((a, i) => {
    for (const b of bouts.slice(i + 1)) {
      if (a.minute === b.minute) continue;
      const apart = (b.minute - a.minute) / 60;
      if (a.one.id === b.one.id) expect(apart).toBeGreaterThanOrEqual(a.one.recoveryHours);
      if (!a.one.hard || !b.one.hard) continue;
      for (const group of a.one.groups.filter((each) => b.one.groups.includes(each))) {
        expect(apart).toBeGreaterThanOrEqual(program.groupHours[group] ?? 0);
      }
    }
  });
  plan.forEach((week, index) => {
    for (const one of week.exercises) {
      const mine = bouts.filter((bout) => bout.index === index && bout.one.id === one.id);
      if ("perWeek" in one.times) expect(mine).toHaveLength(one.times.perWeek);
    }
  });
  const hard = new Set([
    ...bouts.filter((bout) => bout.one.hard).map((bout) => bout.day),
    ...program.events.filter((e) => e.hard).map((e) => (dayNumber(e.date) ?? 0) - START),
  ]);
  const most = program.maxHardDaysInRow ?? 42;
  for (let first = 0; first + most < 42; first++) {
    const run = Array.from({ length: most + 1 }, (_, i) => first + i);
    expect(run.every((day) => hard.has(day))).toBe(false);
  }
}
