/** What there is to say of a layout that was found: what is not proven, what waits, and sessions that days taken cost. */

import type { DosedProgram } from "../dose/types.ts";
import { Fault } from "../faults/fault.ts";
import { freeDay, isWithin } from "../program/free-time.ts";
import { hardness } from "../program/hardness.ts";
import type { Program } from "../program/program.ts";
import type { LaidWeek } from "../week/program/program-types.ts";

/**
 * Weeks that are not proven best, exercises that wait for a later day, those that lose sessions, and hard
 * exercises on days of work where the client likes days off.
 */
export function layoutWarnings(
  weeks: readonly LaidWeek[],
  program: Program,
  dosed: DosedProgram,
): Fault[] {
  const place = program.plan.source.at(["week", "free"]);
  const open = weeks.filter(({ proven }) => !proven).map(({ week }) => week + 1);
  const unproven =
    open.length === 0
      ? []
      : [
          new Fault(
            "week-not-proven",
            `The layout of ${open.length === 1 ? "week" : "weeks"} ${open.join(", ")} keeps every rule, but the search ended at its limit before it was shown to be the best there is.`,
            {
              level: "warning",
              place,
              hint: "It can be used as it is. If another day would suit the client better, open it in week.free or name it in week.prefer.",
            },
          ),
        ];
  return [
    ...unproven,
    ...daysWait(weeks, program),
    ...sessionsTaken(weeks, program),
    ...hardOnWork(weeks, program, dosed),
  ];
}

/** Hard exercises that lie on days of work of a rota, where the plan says that the client likes days off for them. */
function hardOnWork(
  weeks: readonly LaidWeek[],
  { plan, phases }: Program,
  dosed: DosedProgram,
): Fault[] {
  const { rota } = plan.value.week;
  if (rota?.hard_on_days_off !== true) return [];
  const exercises = phases.flatMap((phase) => phase.exercises);
  const hard = weeks.flatMap(({ week, sessions }) => {
    const bouts = dosed.weeks.find((one) => one.week === week + 1)?.bouts ?? [];
    return sessions.flatMap((session) =>
      session.bouts.flatMap(({ exercise }) => {
        const card = exercises.find(({ key }) => key === exercise)?.card.card;
        const effort = bouts.find(({ key }) => key === exercise)?.effort;
        const counts = card && isWithin(session.date, rota) && hardness(card, effort).hard;
        return counts ? [{ title: card.title, date: session.date }] : [];
      }),
    );
  });
  const onWork = hard.filter(({ date }) => !freeDay(plan.value, date).off);
  const [first] = onWork;
  if (first === undefined) return [];
  const place = plan.source.at(["week", "rota", "hard_on_days_off"]);
  const message = `${onWork.length} of ${hard.length} hard exercises of the rota's time lie on days of work, first “${first.title}” on ${first.date}, though the client likes days off for them.`;
  return [
    new Fault("days-off-missed", message, {
      level: "warning",
      place,
      frame: plan.source.frame(place),
      hint: "Rest between them, few sessions and an even week come first. Give days off more time under free_off, or tell the client why.",
    }),
  ];
}

/** Exercises done every n days of which some bouts wait for a later day. */
function daysWait(weeks: readonly LaidWeek[], program: Program): Fault[] {
  const waits = weeks.flatMap(({ slipped }) => slipped);
  return program.phases
    .flatMap((phase) => phase.exercises)
    .flatMap(({ key, card, place }) => {
      const own = waits.flatMap(({ exercise, date, to }) =>
        exercise === key && to !== undefined ? [{ date, to }] : [],
      );
      const [first] = own;
      if (first === undefined) return [];
      const times = own.length === 1 ? "once" : `${own.length} times`;
      const message = `“${card.card.title}” waits ${times} for a day that is free, first from ${first.date} to ${first.to}; the days after are counted from there.`;
      const hint =
        "Pages say of these weeks how many times it is done in them. Should it not wait, give those days another part of the day, or state per_week.";
      return [new Fault("days-wait", message, { level: "warning", place, hint })];
    });
}

/** Cards that have fewer sessions, over the whole course and all its phases, than their frequency comes to. */
function sessionsTaken(weeks: readonly LaidWeek[], program: Program): Fault[] {
  const sum = (bouts: readonly { exercise: string; bouts: number }[], keys: ReadonlySet<string>) =>
    bouts.reduce((all, one) => all + (keys.has(one.exercise) ? one.bouts : 0), 0);
  const laid = weeks.flatMap(({ sessions }) => sessions.flatMap(({ bouts }) => bouts));
  const takes = weeks.flatMap((week) => week.taken);
  const exercises = program.phases.flatMap((phase) => phase.exercises);
  const cards = new Set(exercises.map(({ card }) => card));
  return [...cards].flatMap((card) => {
    const own = exercises.filter((one) => one.card === card);
    const keys = new Set(own.map(({ key }) => key));
    const first = own.find(({ key }) => takes.some(({ exercise }) => exercise === key));
    const taken = sum(takes, keys);
    if (first === undefined || taken <= 0) return [];
    const got = laid.filter(({ exercise }) => keys.has(exercise)).length;
    // What a week that has begun has no room for is told by itself.
    const lost = sum(
      weeks.flatMap((week) => week.lost),
      keys,
    );
    const wanted = got + lost + taken;
    const message = `“${card.card.title}” would be done ${wanted} times in this course and is laid out ${got + lost} times: days away and events take the rest.`;
    const hint =
      "Pages say so of the weeks in which it is less. Nothing is moved to make up for it: if that is too little, give those days another part of the day, or make the phase longer.";
    return [new Fault("sessions-taken", message, { level: "warning", place: first.place, hint })];
  });
}
