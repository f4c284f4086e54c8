/** Programs changed after they were issued: what is past stays, what need not move stays, and HiGHS agrees. */
import { describe, expect, test } from "vitest";
import { layOutProgram } from "../../../src/week/program/program.ts";
import type { LaidWeek, ProgramWeeks } from "../../../src/week/program/program-types.ts";
import {
  boutsSeenFrom,
  type ProgramWeek,
  programWeeks,
} from "../../../src/week/program/program-weeks.ts";
import type { WeekProblem } from "../../../src/week/search/problem.ts";
import { oracle } from "../search/oracle.ts";
import {
  CLOSED,
  course,
  datesOf,
  EVENING,
  laidOut,
  MONDAY,
  programExercise,
} from "./program-support.ts";
import { boutsOf, CHANGES, changed, issuedSessions, seededProgram } from "./seeded-program.ts";

const solve = await oracle();

/** The week from which on the plan is changed. */
const FROM = 3;

/** A placed week by exercise, as the week after or before it sees it. */
function seen(week: ProgramWeek | undefined, laid: LaidWeek | undefined, weeksLater: number) {
  if (week === undefined || laid === undefined) return [];
  const { problem } = week;
  const bouts = boutsOf(laid);
  const slots = (id: string) => bouts.filter((bout) => bout.id === id).map(({ slot }) => slot);
  const placement = new Map(problem.exercises.map(({ id }) => [id, slots(id)]));
  return boutsSeenFrom(problem.exercises, placement, weeksLater);
}

/** Where a bout lies as it was issued; what is done on counted dates may lie anywhere on a new one. */
function unmoved({ problem, issued }: ProgramWeek): Map<string, number[]> {
  return new Map(
    problem.exercises.flatMap(({ id, times }) => {
      const slots = issued?.placement.get(id);
      if (slots === undefined) return [];
      const days = new Set(slots.map((slot) => Math.floor(slot / 3)));
      const free = Array.from({ length: 21 }, (_, slot) => slot).filter(
        (slot) => "onDays" in times && !days.has(Math.floor(slot / 3)),
      );
      return [[id, [...slots, ...free]]];
    }),
  );
}

function movedIn(week: ProgramWeek, laid: LaidWeek | undefined): number {
  if (laid === undefined) throw new Error("a week is missing");
  const stay = unmoved(week);
  return boutsOf(laid).filter(({ id, slot }) => stay.get(id)?.includes(slot) === false).length;
}

/** The fewest bouts that have to move, as HiGHS finds it; undefined where it takes too long. */
function leastMoved(problem: WeekProblem): number | undefined {
  const { status, objective } = solve(problem, 30);
  return status === "solved" ? objective[0] : undefined;
}

const PROGRAMS = [
  [8, 4, 1],
  [19, 3, 1],
  [23, 4, 2],
  [38, 5, 3],
] as const;

describe("of a program changed from week 4 on, issued before", () => {
  const sum = { pairs: 0, anew: 0, moved: 0, least: 0, unproven: 0 };

  test.each(PROGRAMS)(
    "no week moves a bout that could stay beside its neighbours (%i, %i, %i)",
    (seed, count, phaseWeeks) => {
      const program = seededProgram(seed, count, phaseWeeks);
      const before = laidOut(layOutProgram(program));
      for (const what of CHANGES) {
        const plan = changed(program, what, FROM);
        const anew = layOutProgram(plan);
        if (anew.status !== "laid-out") continue;
        const issued = { today: MONDAY, sessions: issuedSessions(program, before) };
        const after = laidOut(layOutProgram({ ...plan, issued }));
        compare({ ...plan, issued }, anew.weeks, after);
        expect(after.slice(0, FROM - 1)).toEqual(sameBut(before.slice(0, FROM - 1), after));
      }
    },
    240_000,
  );

  function compare(plan: ProgramWeeks, anew: readonly LaidWeek[], after: readonly LaidWeek[]) {
    const weeks = programWeeks(plan, 0);
    sum.pairs += 1;
    weeks.forEach((week, index) => {
      const moved = movedIn(week, after[index]);
      sum.anew += movedIn(week, anew[index]);
      sum.moved += moved;
      if (moved > 0) checkLeast(weeks, after, index, moved);
    });
  }

  function checkLeast(
    weeks: readonly ProgramWeek[],
    after: readonly LaidWeek[],
    index: number,
    moved: number,
  ) {
    const week = weeks[index];
    if (week === undefined) return;
    const near = { ...week.problem, previous: unmoved(week), aim: "repair" as const };
    const given = seen(weeks[index - 1], after[index - 1], 1);
    const least = leastMoved({ ...near, given });
    if (least === undefined) {
      sum.unproven += 1;
      return;
    }
    sum.least += least;
    if (moved === least) return;
    // More of it moves so that less of the next week has to.
    const later = seen(weeks[index + 1], after[index + 1], -1);
    expect(moved).toBe(leastMoved({ ...near, given: [...given, ...later] }));
  }

  test("far fewer bouts move than where it is laid out anew: as many as have to, but for a few", () => {
    process.stdout.write(`bouts moved: ${JSON.stringify(sum)}\n`);
    expect(sum.pairs).toBeGreaterThan(20);
    expect(sum.unproven).toBe(0);
    expect(sum.moved).toBeLessThan(0.7 * sum.anew);
    expect(sum.moved).toBeLessThanOrEqual(1.15 * sum.least);
  });
});

/** Weeks as they were, with what is told of them beside their sessions as it now is. */
function sameBut(weeks: readonly LaidWeek[], told: readonly LaidWeek[]): LaidWeek[] {
  return weeks.map((week, index) => ({ ...(told[index] ?? week), sessions: week.sessions }));
}

const heavy = programExercise("heavy", {
  minutes: 15,
  recoveryHours: 48,
  hard: true,
  groups: ["calf"],
});
const balance = programExercise("balance", { times: { perWeek: 2 } });

/** The course, issued and then changed and made again on a day. */
function again(plan: ProgramWeeks, edit: Partial<ProgramWeeks>, today: string) {
  const before = laidOut(layOutProgram(plan));
  const issued = { today, sessions: issuedSessions(plan, before) };
  return { before, after: laidOut(layOutProgram({ ...plan, ...edit, issued })) };
}

const days = (weeks: readonly LaidWeek[]) =>
  weeks.flatMap(({ sessions }) => sessions.map(({ date, part }) => `${date} ${part}`));

describe("days that are gone", () => {
  const plan = course(4, [heavy, balance]);
  const mornings = plan.days.map(() => ({ free: { morning: 30, midday: 0, evening: 0 } }));

  test("keep their sessions, though the plan no longer has them free", () => {
    const today = "2027-01-13"; // Wednesday of week 2
    const { before, after } = again(plan, { days: mornings }, today);
    const isPast = (day: string) => day < today;
    expect(days(after).filter(isPast)).toEqual(days(before).filter(isPast));
    expect(
      days(after)
        .filter((day) => !isPast(day))
        .every((day) => day.endsWith("morning")),
    ).toBe(true);
  });

  test("count for recovery, also with an exercise that the plan no longer has", () => {
    const lone = { ...heavy, id: "lone", times: { perWeek: 3 } };
    const phases = [{ id: "one", weeks: [1, 2, 3, 4].map(() => ({ exercises: [lone] })) }];
    const only = course(4, [heavy]);
    const before = laidOut(layOutProgram(only));
    const last = datesOf(before, "heavy")[3] ?? "";
    const today = new Date(Date.parse(last) + 86_400_000).toISOString().slice(0, 10);
    const { after } = again(only, { phases, groupHours: { calf: 48 } }, today);
    const first = datesOf(after, "lone").find((date) => date >= today) ?? "";
    expect((Date.parse(first) - Date.parse(last)) / 86_400_000).toBeGreaterThanOrEqual(2);
  });

  test("are where a course of every second day is counted on from", () => {
    const second = programExercise("second", { times: { everyDays: 2 }, recoveryHours: 48 });
    const plan = course(3, [second]);
    const gone = plan.days.map((day, at) => (at === 2 ? CLOSED : day));
    const { before, after } = again(plan, { days: gone }, "2027-01-11");
    expect(datesOf(after, "second")).toEqual(datesOf(before, "second"));
  });

  test("leave what has no room in the rest of their week, named; the next weeks are whole", () => {
    const away = plan.days.map((day, at) => (at >= 9 && at < 14 ? CLOSED : day));
    const { before, after } = again(plan, { days: away }, "2027-01-13");
    expect(after[1]?.lost.map(({ exercise }) => exercise)).toContain("heavy");
    expect(days(after.slice(2))).toEqual(days(before.slice(2)));
    expect(after.filter((_, at) => at !== 1).flatMap(({ lost }) => lost)).toEqual([]);
  });
});

describe("weeks to come", () => {
  const plan = course(6, [heavy, balance]);

  test("stay where they were when only minutes grow", () => {
    const longer = { ...heavy, minutes: 18 };
    const phases = [
      {
        id: "one",
        weeks: plan.phases[0]?.weeks.map(() => ({ exercises: [longer, balance] })) ?? [],
      },
    ];
    const { before, after } = again(plan, { phases }, MONDAY);
    expect(days(after)).toEqual(days(before));
    expect(after.flatMap(({ moved }) => moved)).toEqual([]);
  });

  test("have a new exercise on the same days every week, and move none for it", () => {
    const phases = [
      {
        id: "one",
        weeks:
          plan.phases[0]?.weeks.map(() => ({
            exercises: [heavy, balance, programExercise("new", { minutes: 5 })],
          })) ?? [],
      },
    ];
    const { before, after } = again(plan, { phases }, MONDAY);
    for (const id of ["heavy", "balance"]) expect(datesOf(after, id)).toEqual(datesOf(before, id));
    const weekdays = after.map((week) =>
      datesOf([week], "new").map((date) => new Date(date).getUTCDay()),
    );
    expect(new Set(weekdays.map(String)).size).toBe(1);
  });

  test("that no booklet had yet go on as the last one", () => {
    const longer = course(8, [heavy, balance]);
    const before = laidOut(layOutProgram(plan));
    const issued = { today: MONDAY, sessions: issuedSessions(plan, before) };
    const after = laidOut(layOutProgram({ ...longer, issued, days: new Array(56).fill(EVENING) }));
    expect(days(after.slice(0, 6))).toEqual(days(before));
    expect(after.slice(6).map(({ sessions }) => sessions.length)).toEqual([3, 3]);
  });
});
