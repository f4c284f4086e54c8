/** Changes of a plan that touch nothing, or that another of its changes takes the place of: none is passed over. */

import type { Library } from "../cards/library.ts";
import { Fault } from "../faults/fault.ts";
import type { ChangeKind, Plan } from "../plan/schema.ts";
import { expandWeeks } from "../prescription/week-table.ts";
import type { Protocol, ProtocolPhase } from "../protocols/schema.ts";
import type { Path, Read } from "../read/source.ts";
import { nearest } from "../read/validate.ts";
import { counted } from "../units/counted.ts";
import { spansOf, weekSpanText } from "../units/week-span.ts";
import { changedExercises, changes } from "./changes.ts";
import type { CoursePhase } from "./course.ts";

type Change = Plan[ChangeKind][number];

/** Weeks of a phase, from 1, in which a card is done. */
interface PhaseOfCard {
  readonly phase: ProtocolPhase;
  /** How many weeks the phase has. */
  readonly length: number;
  readonly weeks: readonly number[];
}

/** A fault (change-unused, card-twice) for every change of the plan that does not do what it says. */
export function unusedChanges(
  plan: Read<Plan>,
  protocol: Read<Protocol>,
  course: readonly CoursePhase[],
  { cards: library }: Pick<Library, "cards">,
): Fault[] {
  const { leave_out, swap, add, redose } = plan.value;
  const { id, phases } = protocol.value;
  const inPhases = (weeks: (one: CoursePhase) => readonly number[]): PhaseOfCard[] =>
    course.map((one) => ({ phase: one.phase, length: one.follows.length, weeks: weeks(one) }));
  const stated = (card: string) => inPhases((one) => statedIn(one, card));
  const done = (card: string) => inPhases((one) => doneIn(plan, protocol, course, one, card));
  const whole = inPhases(weeksOf);
  const cards = phases.flatMap((phase) => phase.exercises.map(({ card }) => card));
  const after = [...cards, ...swap.map(({ to }) => to), ...add.map(({ card }) => card)];

  return [
    ...leave_out.flatMap((change, at) =>
      touching(["leave_out", at], change, cards, stated(change.card)),
    ),
    ...swap.flatMap((change, at) => [
      ...touching(["swap", at], change, cards, stated(change.card)),
      ...outdone(change, at),
    ]),
    ...add.flatMap((change, at) => reached(["add", at], change, whole)),
    ...redose.flatMap((change, at) => touching(["redose", at], change, after, done(change.card))),
  ];

  /** Whether the change's card is there at all, and in the weeks that it names. */
  function touching(
    path: Path,
    change: Change,
    known: readonly string[],
    where: readonly PhaseOfCard[],
  ): Fault[] {
    if (!known.includes(change.card)) {
      return [unknown([...path, "card"], "exercise", change.card, known)];
    }
    const faults = reached(path, change, where);
    if (faults.length > 0) return faults;
    const touched = where.some(({ phase, weeks }) =>
      weeks.some((week) => changes(change, phase.id, week)),
    );
    if (touched) return [];
    const at = change.weeks === undefined && change.phase !== undefined ? "phase" : "weeks";
    return [
      fault(
        [...path, change.phase === undefined && change.weeks === undefined ? "card" : at],
        `There is no ${change.card} ${spanWords(change)}.`,
        whereWords(where),
      ),
    ];
  }

  /** Whether the phase is there and has the weeks that the change names. */
  function reached(path: Path, change: Change, where: readonly PhaseOfCard[]): Fault[] {
    const { phase: wanted, weeks } = change;
    const ids = phases.map((phase) => phase.id);
    if (wanted !== undefined && !ids.includes(wanted)) {
      return [unknown([...path, "phase"], "phase", wanted, ids)];
    }
    const asked = where.filter(
      ({ phase, weeks: here }) => (wanted ?? phase.id) === phase.id && here.length > 0,
    );
    const longest = Math.max(0, ...asked.map(({ length }) => length));
    if (weeks === undefined || longest === 0 || weeks.last <= longest) return [];
    return [
      fault(
        [...path, "weeks"],
        `Weeks ${weekSpanText(weeks)} run past the ${counted(longest, "week")} of ${asked.length === 1 ? asked[0]?.phase.id : "the longest phase"}.`,
        "weeks counts from the first week of each phase; name another phase with phase: ….",
      ),
    ];
  }

  /** A swap that an earlier one, or leaving the exercise out, takes the place of in some week. */
  function outdone(change: Plan["swap"][number], at: number): Fault[] {
    const meets = (other: Change) =>
      stated(change.card).some(({ phase, weeks }) =>
        weeks.some((week) => changes(change, phase.id, week) && changes(other, phase.id, week)),
      );
    const clash = (list: readonly Change[]) =>
      list.some((other) => other.card === change.card && meets(other));
    if (clash(swap.slice(0, at))) {
      return [
        fault(
          ["swap", at, "card"],
          `${change.card} is swapped twice in the same weeks.`,
          "Keep one of the two, or give each its own phase or weeks.",
          "card-twice",
        ),
      ];
    }
    if (!clash(leave_out)) return [];
    return [
      fault(
        ["swap", at, "card"],
        `${change.card} is both left out and swapped in the same weeks.`,
        "Keep one of the two, or give each its own phase or weeks.",
      ),
    ];
  }

  function unknown(path: Path, what: string, name: string, known: readonly string[]): Fault {
    // a card that the library has is not another one, misspelt
    const near = library.has(name) ? undefined : nearest(name, known);
    return fault(
      path,
      `There is no ${what} ${name} in ${id}.`,
      near ? `Did you mean ${near}?` : `There are: ${[...new Set(known)].join(", ")}.`,
    );
  }

  function fault(
    path: Path,
    message: string,
    hint: string,
    code: "change-unused" | "card-twice" = "change-unused",
  ): Fault {
    const place = plan.source.at(path);
    return new Fault(code, message, { place, frame: plan.source.frame(place), hint });
  }
}

/** Weeks of a phase, in this plan's course, in which the protocol has a card. */
export function statedIn(one: CoursePhase, card: string): number[] {
  const stated = one.phase.exercises
    .filter((exercise) => exercise.card === card)
    .map((exercise) => expandWeeks(exercise, one.phase.weeks).doses);
  return weeksOf(one).filter((week) =>
    stated.some((doses) => doses[(one.follows[week - 1] ?? 0) - 1] !== undefined),
  );
}

/** Weeks of a phase in which this client does a card, with all that the plan changes. */
export function doneIn(
  plan: Read<Plan>,
  protocol: Read<Protocol>,
  course: readonly CoursePhase[],
  one: CoursePhase,
  card: string,
): number[] {
  const named = changedExercises(plan, protocol, course, one).filter(
    (other) => other.card === card,
  );
  return weeksOf(one).filter((week) => named.some(({ layers }) => layers(week) !== undefined));
}

const weeksOf = ({ follows }: CoursePhase): number[] => follows.map((_, index) => index + 1);

/** "in weeks 2-3 of PHASE". */
export function spanWords({ phase, weeks }: Pick<Change, "phase" | "weeks">): string {
  const parts = [
    ...(weeks === undefined ? [] : [`in weeks ${weekSpanText(weeks)}`]),
    ...(phase === undefined ? [] : [weeks === undefined ? `in ${phase}` : `of ${phase}`]),
  ];
  return parts.length === 0 ? "in any week" : parts.join(" ");
}

function whereWords(where: readonly PhaseOfCard[]): string {
  const spans = where
    .filter(({ weeks }) => weeks.length > 0)
    .map(
      ({ phase, weeks }) => `${phase.id} (weeks ${spansOf(weeks).map(weekSpanText).join(", ")})`,
    );
  return spans.length === 0
    ? "This plan’s course has none of it."
    : `It is in: ${spans.join("; ")}.`;
}
