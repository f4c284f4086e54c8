/** The page of each phase: its aim, its table of doses, and the signs to move on or go back. */

import { isInPhase, weeksOfPhase } from "../program/phase-weeks.ts";
import type { ProgramExercise, ProgramPhase } from "../program/program.ts";
import type { Session } from "../schedule/schedule.ts";
import type { DayClock } from "../units/clock.ts";
import type { PartOfDay } from "../units/day-parts.ts";
import { exerciseAnchor, phaseAnchor } from "./anchors.ts";
import { badDay, leaveOutWords } from "./bad-day.ts";
import { minutesWords } from "./calendar.ts";
import type { Composing } from "./composing.ts";
import { explainedOn } from "./dose-example.ts";
import { doseLines, doseWords, oftenWords, weekWords } from "./dose-words.ts";
import type { DoseLine, PhasePage } from "./exercise-model.ts";
import { moveOnWords, startSign } from "./flag-words.ts";
import { goBackWords } from "./go-back.ts";
import type { Writer } from "./numbers.ts";
import { partWithin, wallDate } from "./part-words.ts";
import { phaseLabel } from "./phase-names.ts";
import { sideName } from "./side-words.ts";

/** One page for each phase in which this client has exercises, in their order. */
export function phasePages(composing: Composing): PhasePage[] {
  const { program, schedule, write } = composing;
  const { words } = write;
  const phases = program.phases.flatMap((phase) => {
    const weeks = weeksOfPhase(phase);
    return weeks ? [{ phase, weeks }] : [];
  });
  const versions = phases.map(({ phase }) => badDay(phase, composing));
  const explained = explainedOn(
    phases.map(({ phase }) => phase),
    composing,
  );
  return phases.map(({ phase, weeks: { first, last } }, at): PhasePage => {
    const from = schedule.weeks[first - 1]?.days[0]?.date ?? program.plan.value.starts;
    const to = schedule.weeks[last - 1]?.days.at(-1)?.date ?? from;
    const weeks = weekWords(first, last, write);
    return {
      anchor: phaseAnchor(phase),
      label: phaseLabel(program, phase, words),
      title: phase.title,
      aim: phase.aim,
      weeks,
      when: words.say("weeks.when", {
        weeks,
        from: write.longDate(from),
        to: write.longDate(to),
      }),
      rows: phase.exercises.map((exercise) => ({
        exercise: exercise.card.card.title,
        anchor: exerciseAnchor(exercise.card),
        side: sideName(exercise, write),
        when: startSign(exercise, program, write),
        doses: dosesIn(phase, exercise, composing),
      })),
      explained: explained[at] ?? { work: undefined, effort: undefined },
      sessions: sessionWords(phase, composing),
      days: usualDays(phase, composing),
      moveOn: moveOnWords(phase, phases[at + 1]?.phase, program, write),
      goBack: goBackWords(phase, composing),
      badDay: versions[at],
      leaveOut: leaveOutWords(phase, versions, composing),
    };
  });
}

/**
 * The doses of an exercise in one phase, weeks of the same dose brought together.
 * `named`: whether a load says what makes it.
 */
export function dosesIn(
  phase: ProgramPhase,
  exercise: ProgramExercise,
  { dosed, library, often, write }: Composing,
  named = true,
): DoseLine[] {
  const things = named ? library.words : undefined;
  const weeks = dosed.weeks
    .filter(({ week }) => isInPhase(phase, week))
    .flatMap(({ week, bouts }) => {
      const bout = bouts.find(({ key }) => key === exercise.key);
      if (!bout) return [];
      const dose = doseWords(bout, exercise.card, things, write);
      return [{ week, dose: { ...dose, often: oftenWords(often(bout), write) } }];
    });
  return doseLines(weeks, write);
}

/** How long the sessions of a phase take as they are laid out. */
function sessionWords(phase: ProgramPhase, composing: Composing): string {
  const { write } = composing;
  const minutes = minutesWords(weeksOf(phase, composing).flat(), write);
  return write.words.say("phase.sessions", { minutes });
}

/**
 * The days and parts of the day on which a phase has its sessions: of all weeks, of most where some
 * differ, or of the two kinds of weeks that there are, as of what is done every second day.
 */
function usualDays(phase: ProgramPhase, composing: Composing): string {
  const { program, write } = composing;
  const patterns = weeksOf(phase, composing)
    .filter((sessions) => sessions.length > 0)
    .map((sessions) => dayWords(sessions, program.clock, write));
  const counts = new Map<string, number>();
  for (const pattern of patterns) counts.set(pattern, (counts.get(pattern) ?? 0) + 1);
  const [first, second] = [...counts].sort((a, b) => b[1] - a[1]);
  if (first === undefined) return "";
  const [days, times] = first;
  if (second === undefined) return days;
  if (times > patterns.length / 2) return write.words.say("days.most", { days });
  return counts.size === 2
    ? write.words.say("days.two", { days, others: second[0] })
    : write.words.say("days.vary");
}

/**
 * "Monday, Wednesday and Friday, evening", "Every day, morning and evening"; parts of the day whose
 * days differ one after the other.
 */
function dayWords(sessions: readonly Session[], clock: DayClock, write: Writer): string {
  const byDays = new Map<string, PartOfDay[]>();
  for (const part of new Set(sessions.map((session) => session.part))) {
    const here = sessions.filter((session) => session.part === part);
    const days =
      here.length === 7
        ? write.words.say("days.every")
        : write.list(here.map((session) => write.weekday(wallDate(session, clock), "long")));
    byDays.set(days, [...(byDays.get(days) ?? []), part]);
  }
  return [...byDays]
    .map(([days, parts]) => {
      const names = parts.map((part) => partWithin(part, clock, write.words));
      return write.words.say("days.at", { days, parts: write.list(names) });
    })
    .join("; ");
}

/** The sessions of each week of a phase that hold one of its exercises. */
function weeksOf(phase: ProgramPhase, { schedule }: Composing): Session[][] {
  return schedule.weeks
    .filter(({ number }) => isInPhase(phase, number))
    .map((week) =>
      week.days.flatMap(({ sessions }) =>
        sessions.filter(({ bouts }) => bouts.some((bout) => bout.phase === phase.id)),
      ),
    );
}
