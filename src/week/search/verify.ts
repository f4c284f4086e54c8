/** Checks a placement against every rule of its problem, without any part of the search. */
import {
  DAYS,
  dayOf,
  minutesAt,
  minutesBetween,
  minutesOf,
  movementOf,
  type Placement,
  SLOTS,
  type Slot,
  slotOf,
  WEEK_MINUTES,
  type WeekExercise,
  type WeekProblem,
} from "./problem.ts";

export interface Violation {
  readonly rule:
    | "slots"
    | "times"
    | "minutes"
    | "recovery"
    | "group-hours"
    | "clear"
    | "same-session"
    | "order"
    | "hard-days";
  readonly exercise?: string;
  readonly sentence: string;
}

/** Every rule that a placement breaks; empty for one that keeps to the problem. */
export function verifyPlacement(problem: WeekProblem, placement: Placement): Violation[] {
  return [
    ...problem.exercises.flatMap((one) => [
      ...timesBroken(one, slotsOf(one.id, placement), problem),
      ...clearBroken(one, slotsOf(one.id, placement), problem),
      ...orderBroken(one, problem, placement),
    ]),
    ...hoursBroken(problem, placement),
    ...minutesBroken(problem, placement),
    ...hardDaysBroken(problem, placement),
  ];
}

function slotsOf(id: string, placement: Placement): readonly Slot[] {
  return placement.get(id) ?? [];
}

function timesBroken(one: WeekExercise, slots: readonly Slot[], problem: WeekProblem): Violation[] {
  const broken: Violation[] = [];
  const bad = slots.some(
    (t, i) => !Number.isInteger(t) || t < 0 || t >= SLOTS || slots.indexOf(t) !== i,
  );
  if (bad) broken.push(violation("slots", one, "lies twice in a slot or outside the week"));
  const perDay = Array.from({ length: DAYS }, (_, d) => slots.filter((t) => dayOf(t) === d).length);
  const { times } = one;
  const right = perDay.every((bouts, day) => {
    const parts = problem.freeMinutes.slice(3 * day, 3 * day + 3);
    const isOpen = parts.some((free) => free > 0);
    if ("perWeek" in times) return bouts <= 1;
    if ("perDay" in times) {
      const isDue = times.days === undefined ? isOpen : times.days.includes(day);
      return bouts === (isDue ? times.perDay : 0);
    }
    if ("onDays" in times) return bouts === (times.onDays.includes(day) ? 1 : 0);
    const falls = day >= times.firstDay && (day - times.firstDay) % times.everyDays === 0;
    return bouts === (falls ? 1 : 0);
  });
  const total = "perWeek" in times ? slots.length === times.perWeek : true;
  if (!right || !total)
    broken.push(violation("times", one, "is not done as often as it should be"));
  return broken;
}

function clearBroken(one: WeekExercise, slots: readonly Slot[], problem: WeekProblem): Violation[] {
  return slots.flatMap((t) =>
    problem.events.flatMap((event) => {
      const turns = problem.wraps ? [-WEEK_MINUTES, 0, WEEK_MINUTES] : [0];
      const at = minutesAt(slotOf(event.day, event.part), problem.clock);
      const shares = one.groups.filter((group) => event.groups.includes(group)).length > 0;
      const asked = (one.clearBefore ?? []).filter(
        ({ events }) =>
          events === "any" ||
          (events === "touching" && shares) ||
          (Array.isArray(events) && events.includes(event.id)),
      );
      const hours = asked.map((clearance) => clearance.hours);
      const kept = (side: "before" | "after") =>
        one.keptClearOf?.[side].includes(event.id) ??
        (one.hard && (shares || event.groups.length === 0));
      if (kept("before")) hours.push(event.clearBeforeHours ?? 0);
      const after = kept("after") ? event.clearAfterHours : 0;
      const near = turns.some((turn) => {
        const ahead = at + turn - minutesAt(t, problem.clock);
        return (
          (ahead >= 0 && ahead < minutesOf(Math.max(0, ...hours))) ||
          (ahead <= 0 && -ahead < minutesOf(after ?? 0))
        );
      });
      return near ? [violation("clear", one, `is not clear of the ${event.name}`)] : [];
    }),
  );
}

function orderBroken(one: WeekExercise, problem: WeekProblem, placement: Placement): Violation[] {
  const broken: Violation[] = [];
  const mine = slotsOf(one.id, placement);
  if (one.sameSessionAs !== undefined) {
    const host = slotsOf(one.sameSessionAs, placement);
    if (mine.some((t) => !host.includes(t)))
      broken.push(violation("same-session", one, "lies outside the session it shares"));
  }
  for (const id of one.after ?? []) {
    const other = problem.exercises.find((each) => each.id === id);
    const often = [one, other].some(
      (each) => each && "perDay" in each.times && each.times.perDay > 1,
    );
    if (often) continue;
    const late = slotsOf(id, placement).some((u) =>
      mine.some((t) => t < u && dayOf(t) === dayOf(u)),
    );
    if (late) broken.push(violation("order", one, `comes before ${other?.name ?? id}`));
  }
  return broken;
}

function hoursBroken(problem: WeekProblem, placement: Placement): Violation[] {
  const dated = (one: WeekExercise) => "everyDays" in one.times || "onDays" in one.times;
  const bouts = problem.exercises.flatMap((one) =>
    slotsOf(one.id, placement).map((slot) => ({
      exercise: one.id,
      movement: movementOf(one),
      name: one.name,
      slot,
      hard: one.hard,
      groups: one.groups,
      recoveryHours: one.recoveryHours,
      dated: dated(one),
    })),
  );
  const given = (problem.given ?? []).map((bout) => ({
    ...bout,
    movement: movementOf({ ...bout, id: bout.exercise }),
    name: undefined,
    dated: true,
  }));
  const all = [...bouts, ...given];
  return bouts.flatMap((a, i) =>
    all.slice(i + 1).flatMap((b): Violation[] => {
      const sameMovement = a.movement === b.movement;
      if (a.slot === b.slot && !sameMovement) return [];
      const wraps = problem.wraps && !a.dated && !b.dated;
      const minutes = minutesBetween(a.slot, b.slot, problem.clock, wraps);
      const hours = Math.round((minutes / 60) * 100) / 100;
      const earlier = a.slot < b.slot ? a : b;
      if (sameMovement && (a.slot === b.slot || minutes < minutesOf(earlier.recoveryHours)))
        return [
          {
            rule: "recovery",
            exercise: a.exercise,
            sentence: `${a.name ?? a.exercise} has only ${hours} h of recovery.`,
          },
        ];
      const shared = a.hard && b.hard ? a.groups.filter((group) => b.groups.includes(group)) : [];
      const close = shared.find((group) => minutes < minutesOf(problem.groupHours[group] ?? 0));
      if (close === undefined) return [];
      return [
        {
          rule: "group-hours",
          exercise: a.exercise,
          sentence: `Hard work for the ${close} is only ${hours} h apart.`,
        },
      ];
    }),
  );
}

function minutesBroken(problem: WeekProblem, placement: Placement): Violation[] {
  return problem.freeMinutes.flatMap((free, t) => {
    const minutes = problem.exercises
      .filter((one) => slotsOf(one.id, placement).includes(t))
      .reduce((sum, one) => sum + one.minutes, 0);
    if (minutes <= free + 1e-6) return [];
    return [
      { rule: "minutes" as const, sentence: `A session takes ${minutes} of ${free} minutes.` },
    ];
  });
}

function hardDaysBroken(problem: WeekProblem, placement: Placement): Violation[] {
  const most = problem.maxHardDaysInRow;
  if (most === undefined) return [];
  const hard = problem.exercises.filter((one) => one.hard);
  const linear = hard.some((one) => "everyDays" in one.times || "onDays" in one.times);
  const turns = problem.wraps && !linear ? [-DAYS, 0, DAYS] : [0];
  const days = new Set<number>();
  for (const event of problem.events)
    if (event.hard) for (const n of turns) days.add(event.day + n);
  for (const bout of problem.given ?? []) if (bout.hard) days.add(dayOf(bout.slot));
  for (const one of hard)
    for (const t of slotsOf(one.id, placement)) for (const n of turns) days.add(dayOf(t) + n);
  for (let first = -most; first < DAYS; first++) {
    const window = Array.from({ length: most + 1 }, (_, i) => first + i);
    if (window.every((day) => days.has(day)))
      return [{ rule: "hard-days", sentence: `More than ${most} hard days are in a row.` }];
  }
  return [];
}

function violation(rule: Violation["rule"], one: WeekExercise, what: string): Violation {
  return { rule, exercise: one.id, sentence: `${one.name ?? one.id} ${what}.` };
}
