/** Seeded weeks of every kind, some possible and some not, the same on every machine. */
import type { DayClock } from "../../../src/units/clock.ts";
import { PARTS } from "../../../src/units/day-parts.ts";
import type {
  Clearance,
  Times,
  WeekEvent,
  WeekExercise,
  WeekProblem,
} from "../../../src/week/search/problem.ts";

type Draw = <T>(from: readonly [T, ...T[]]) => T;

/** Marsaglia's xorshift with 32 bits of state. */
function drawing(seed: number): Draw {
  let state = (seed * 2654435761 + 1) >>> 0 || 1;
  return (from) => {
    for (let i = 0; i < 3; i++) {
      state ^= state << 13;
      state ^= state >>> 17;
      state ^= state << 5;
      state >>>= 0;
    }
    return from[state % from.length] ?? from[0];
  };
}

/** Hours that plans state: the usual ones, to the minute, close together, and work at night. */
const CLOCKS = [
  { morning: 420, midday: 780, evening: 1140 },
  { morning: 450, midday: 720, evening: 1020 },
  { morning: 405, midday: 765, evening: 1330 },
  { morning: 1320, midday: 1560, evening: 1800 },
] as const;

const GROUPS = ["calf", "knee", "hip"] as const;

/** A week of `count` exercises; with `tight` the free minutes and the rules leave little room. */
export function seededWeek(seed: number, count: number, tight: boolean): WeekProblem {
  const draw = drawing(seed);
  const wraps = draw([true, true, false]);
  const events = Array.from({ length: draw([0, 0, 1, 2]) }, (_, i) => event(i, draw));
  const exercises = Array.from({ length: count }, (_, i) => one(i, draw, wraps, events));
  const rides = draw([0, 0, 1]);
  return {
    freeMinutes: freeMinutes(draw, tight, exercises),
    exercises: exercises.map((each, i) => {
      const host = exercises[0];
      if (i !== 1 || rides === 0 || host === undefined || !("perWeek" in host.times)) return each;
      return { ...each, sameSessionAs: host.id, times: host.times, after: [host.id] };
    }),
    events,
    groupHours: { calf: draw([24, 36, 48]), knee: draw([20, 36]), hip: 24 },
    ...(draw([true, tight, false]) ? { maxHardDaysInRow: draw([1, 2, 2, 3]) } : {}),
    wraps,
    ...(draw([true, false]) ? { previous: previous(draw, exercises) } : {}),
    ...(draw([true, false, false]) ? { aim: "repair" as const } : {}),
    ...(wraps ? {} : { given: exercises.slice(0, 2).map((each) => given(each, draw)) }),
    clock: draw<DayClock>(CLOCKS),
  };
}

function one(i: number, draw: Draw, wraps: boolean, events: readonly WeekEvent[]): WeekExercise {
  const hard = draw([true, false, false]);
  const times = draw<Times>([
    { perWeek: 2 },
    { perWeek: 3 },
    { perWeek: 3 },
    { perWeek: draw([1, 4, 5]) },
    i === 0 || hard ? { perWeek: 2 } : { perDay: 1 },
    hard || i > 3 ? { perWeek: 2 } : { perDay: draw([1, 2]) },
    wraps || hard ? { perWeek: 3 } : { everyDays: 2, firstDay: draw([0, 1]) },
  ]);
  const often = "perDay" in times;
  const clearBefore: Clearance[] =
    hard && events.length > 0 && draw([true, false])
      ? [
          {
            hours: draw([18, 24, 36]),
            events: draw<Clearance["events"]>(["any", "touching", ["event-0"]]),
          },
        ]
      : [];
  return {
    id: `exercise-${String.fromCharCode(97 + ((i * 7) % 26))}`,
    minutes: draw([4, 5, 6, 8, 10, 12]),
    times,
    recoveryHours: often ? draw([0, 6]) : draw(hard ? [36, 48] : [0, 20, 24]),
    hard,
    groups: [draw(GROUPS)],
    clearBefore,
    ...(draw([true, false, false, false]) ? { preferredSlots: [0, 2, 6, 8, 12, 14, 18] } : {}),
  };
}

function event(i: number, draw: Draw): WeekEvent {
  return {
    id: `event-${i}`,
    name: "run",
    day: draw([1, 2, 3, 5, 6]),
    part: draw(PARTS),
    hard: draw([true, false]),
    groups: draw<readonly string[]>([["calf"], ["knee"], []]),
    ...(draw([true, false]) ? { clearBeforeHours: 24 } : {}),
    ...(draw([true, false, false]) ? { clearAfterHours: 13 } : {}),
  };
}

function freeMinutes(draw: Draw, tight: boolean, exercises: readonly WeekExercise[]): number[] {
  const longest = Math.max(...exercises.map((each) => each.minutes));
  const all = exercises.reduce((sum, each) => sum + each.minutes, 0);
  const some = Math.ceil(all * (tight ? 0.5 : 0.8));
  const evening = Math.max(longest, some);
  return Array.from({ length: 21 }, (_, t) => {
    if (t % 3 === 2) return draw([evening, evening, evening, tight ? 0 : evening]);
    return draw([0, 0, Math.ceil(longest), t % 3 === 0 ? Math.ceil(evening / 2) : 0]);
  });
}

function previous(draw: Draw, exercises: readonly WeekExercise[]): Map<string, number[]> {
  return new Map(
    exercises
      .filter((each) => "perWeek" in each.times)
      .map((each) => [
        each.id,
        draw([
          [2, 8, 14],
          [5, 11, 17],
          [0, 8, 12],
          [2, 14],
        ]),
      ]),
  );
}

function given(each: WeekExercise, draw: Draw) {
  const slot = draw([-1, -3, -4, 21, 23]);
  return {
    exercise: each.id,
    slot,
    hard: each.hard,
    groups: each.groups,
    recoveryHours: draw([0, 24, each.recoveryHours]),
  };
}
