/** Brings a plan, its protocol, the library and the clinic together into one program with nothing left open. */

import { cardLayer } from "../cards/dose-layer.ts";
import { unknownCard } from "../cards/ladder.ts";
import type { LibraryCard } from "../cards/library.ts";
import { Fault, isError, type WithFaults } from "../faults/fault.ts";
import { callLevel, painLimits } from "../pain/limits.ts";
import type { Plan } from "../plan/schema.ts";
import type { DosePart } from "../prescription/fields.ts";
import { mergeLayers } from "../prescription/merge.ts";
import { misshapen, saysWork } from "../prescription/shape-problem.ts";
import type { StatedDose } from "../prescription/stated.ts";
import { wordsOf } from "../protocols/named-cards.ts";
import type { ProtocolPhase } from "../protocols/schema.ts";
import type { Read } from "../read/source.ts";
import { dayClock } from "../units/clock.ts";
import type { WorkSide } from "../units/side.ts";
import { ageFaults } from "./age.ts";
import { courseCalendar, weeksBack } from "./away.ts";
import { callLevelFaults } from "./call-level.ts";
import { changedExercises, type Named } from "./changes.ts";
import { type CoursePhase, coursePhases, lastPrinted } from "./course.ts";
import { fitFaults, type Placed } from "./fit.ts";
import { heldFlags } from "./flags.ts";
import { namedTwice, twiceInAWeek } from "./named-twice.ts";
import { onCalendar } from "./on-calendar.ts";
import type { ProgramParts } from "./parts.ts";
import type { Program, ProgramExercise, ProgramPhase } from "./program.ts";
import { withSigns } from "./signs.ts";
import { silentFlags } from "./silent-flags.ts";
import { unusedChanges } from "./unused-changes.ts";

/**
 * The program, or undefined where an error stands in its way.
 * Faults: unknown-card, card-twice, change-unused, not-for-client, equipment-missing,
 * dose-incomplete, weeks-left-out, sign-not-theirs, wrong-value (a dose that is no shape of a set, an end of a flag, a
 * level of pain to call from).
 */
export function resolveProgram(parts: ProgramParts): WithFaults<Program | undefined> {
  const { plan, protocol, clinic } = parts;
  const { value: course, faults: extending } = coursePhases(plan, protocol);
  const faults: Fault[] = [...extending, ...unusedChanges(plan, protocol, course, parts.library)];
  faults.push(...silentFlags(plan, parts.library));
  faults.push(...callLevelFaults(plan, clinic));
  const calendar = courseCalendar(plan.value, lastPrinted(course));
  const flags = heldFlags(plan, course, calendar);
  const phases: ProgramPhase[] = [];
  const fitting: Placed[] = [];
  for (const coursePhase of course) {
    const { phase, firstWeek, printed } = coursePhase;
    if (printed === 0) continue;
    const list = changedExercises(plan, protocol, course, coursePhase);
    faults.push(...namedTwice(list, phase.title));
    const exercises = list.flatMap((named) => {
      const resolved = resolveExercise(named, coursePhase, list, parts);
      faults.push(...resolved.faults);
      const { value } = resolved;
      if (!value) return [];
      const weeks = calendarWeeks(value, firstWeek, calendar);
      fitting.push({ named, card: value.card, phase: phase.id, weeks });
      return [value];
    });
    phases.push({
      id: phase.id,
      title: phase.title,
      aim: phase.aim,
      firstWeek,
      courseWeek: firstWeek,
      weeks: printed,
      range: phase.range,
      moveOn: phase.move_on.map(wordsOf),
      moveOnAsks: false,
      goBack: phase.go_back,
      exercises,
    });
  }
  faults.push(...twiceInAWeek(fitting, phases));
  faults.push(...flags.faults, ...fitFaults(fitting, flags.value, parts));
  if (faults.some(isError)) return { value: undefined, faults };
  const placed = onCalendar(phases, calendar);
  faults.push(...leftOut(placed, plan));
  if (faults.some(isError)) return { value: undefined, faults };
  const program: Program = {
    plan,
    protocol,
    clinic,
    clock: dayClock(plan.value.week.hours),
    callLevel: callLevel(clinic.pain.call, plan.value.pain_call),
    weeks: calendar.length,
    awayWeeks: calendar.flatMap((week, at) => (week === undefined ? [at + 1] : [])),
    courseWeeks: calendar,
    easedWeeks: weeksBack(plan.value, calendar),
    flags: flags.value,
    phases: placed.phases,
  };
  faults.push(...ageFaults(program));
  const signed = withSigns(program, parts.library);
  faults.push(...signed.faults);
  return { value: faults.some(isError) ? undefined : signed.value, faults };
}

/** By weeks of its phase in which an exercise is done, the week of the calendar. */
function calendarWeeks(
  { doses }: ProgramExercise,
  firstWeek: number,
  calendar: readonly (number | undefined)[],
): Map<number, number> {
  const weeks = doses.flatMap((dose, index): [number, number][] => {
    const at = calendar.indexOf(firstWeek + index);
    return dose === undefined || at < 0 ? [] : [[index + 1, at + 1]];
  });
  return new Map(weeks);
}

/** Exercises that nothing is left of, since the client is away in all their weeks; an error where none is. */
function leftOut({ phases, left }: ReturnType<typeof onCalendar>, plan: Read<Plan>): Fault[] {
  if (left.length === 0) return [];
  const named = left.map(({ card }) => `“${card.card.title}”`).join(", ");
  const place = plan.source.at(["week", "away"]);
  return [
    new Fault("weeks-left-out", `The weeks away leave out every week of: ${named}.`, {
      level: phases.some(({ exercises }) => exercises.length > 0) ? "warning" : "error",
      place,
      frame: plan.source.frame(place),
      hint: "Write then: shift to move the rest of the course by a week instead.",
    }),
  ];
}

function resolveExercise(
  named: Named,
  { phase, printed }: CoursePhase,
  list: readonly Named[],
  parts: ProgramParts,
): WithFaults<ProgramExercise | undefined> {
  const { plan, protocol, library, clinic } = parts;
  const card = library.cards.get(named.card);
  if (!card) {
    const fault = unknownCard(named.card, named, named.path, [...library.cards.keys()]);
    return { value: undefined, faults: [fault] };
  }
  const doses = dosesOf(named, card, printed);
  if (doses.every((dose) => dose === undefined)) return { value: undefined, faults: [] };
  const faults = [...incomplete(doses, named), ...shapeFaults(doses, card, parts)];
  const exercise: ProgramExercise = {
    key: `${phase.id}/${card.card.id}`,
    card,
    side: workSide(card, plan.value.side),
    why: named.why ?? card.card.why,
    main: named.main,
    when: named.when,
    asksFirst: false,
    ...ties(named, phase, list),
    origin: named.origin,
    because: named.because,
    pain: painLimits(
      plan.value.pain,
      [protocol.value.pain, card.card.pain],
      clinic.pain,
      callLevel(clinic.pain.call, plan.value.pain_call),
    ),
    grows: growsOf(named),
    place: named.source.at(named.path),
    doses,
  };
  return { value: exercise, faults };
}

/** What the course lets grow in place of the load: what it says, else the repetitions that its rule leads to. */
function growsOf({ origin, protocol }: Named): ProgramExercise["grows"] {
  if (origin !== "protocol" || !protocol) return {};
  const { grows, rule } = protocol.exercise;
  const goal = (rule?.to.reps ?? []).map(({ high }) => high);
  return grows ?? (goal.length > 0 ? { reps: Math.max(...goal) } : {});
}

/** Keys of the exercises it is tied to, by the cards that stand for them in this plan. */
function ties(
  { protocol }: Named,
  phase: ProtocolPhase,
  list: readonly Named[],
): Pick<ProgramExercise, "sameSessionAs" | "after"> {
  const keysOf = (card: string): string[] =>
    list
      .filter((named) => named.protocol?.exercise.card === card)
      .map((named) => `${phase.id}/${named.card}`);
  const { same_session_as: same, after = [] } = protocol?.exercise ?? {};
  return {
    sameSessionAs: same === undefined ? [] : keysOf(same),
    after: after.flatMap(keysOf),
  };
}

/** The dose of each week of the phase: card, protocol and plan brought together. */
function dosesOf(named: Named, card: LibraryCard, weeks: number): (StatedDose | undefined)[] {
  const own = cardLayer(card);
  return Array.from({ length: weeks }, (_, index) => {
    const layers = named.layers(index + 1);
    return layers && mergeLayers([own, ...layers]);
  });
}

/** What keeps a dose of the program from being one of the shapes, once for each place and cause. */
function shapeFaults(
  doses: readonly (StatedDose | undefined)[],
  card: LibraryCard,
  { plan, protocol }: ProgramParts,
): Fault[] {
  const sources = [plan.source, protocol.source, card.source];
  return misshapen(doses).map(({ place, says, hint }) => {
    const source = sources.find(({ file }) => file === place.file);
    return new Fault("wrong-value", `The dose of ${card.card.id} ${says}.`, {
      place,
      frame: source?.frame(place),
      hint,
    });
  });
}

function incomplete(doses: readonly (StatedDose | undefined)[], named: Named): Fault[] {
  const lacks = doses.some(
    (dose) => dose !== undefined && (howOften(dose.dose) === 0 || !saysWork(dose.dose)),
  );
  if (!lacks) return [];
  const place = named.source.at(named.path);
  return [
    new Fault("dose-incomplete", `The dose of ${named.card} is not complete.`, {
      place,
      frame: named.source.frame(place),
      hint: "A dose needs sets, what a set is (reps, hold, time, distance or turns), and how often.",
    }),
  ];
}

const howOften = (dose: DosePart): number =>
  [dose.per_week, dose.per_day, dose.every].filter((given) => given !== undefined).length;

/** The side that works, given the side treated. */
export function workSide({ card }: LibraryCard, side: Plan["side"]): WorkSide {
  if (card.side === "none") return "none";
  if (card.side === "both") return "both";
  return side === "both" ? "each" : side;
}
