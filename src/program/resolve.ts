/** Brings a plan, its protocol, the library and the clinic together into one program with nothing left open. */

import { cardLayer } from "../cards/dose-layer.ts";
import { unknownCard } from "../cards/ladder.ts";
import type { Library, LibraryCard } from "../cards/library.ts";
import type { Clinic } from "../clinic/schema.ts";
import { Fault, isError, type WithFaults } from "../faults/fault.ts";
import { painLimits } from "../pain/limits.ts";
import type { Plan } from "../plan/schema.ts";
import type { DosePart } from "../prescription/fields.ts";
import { mergeLayers } from "../prescription/merge.ts";
import { misshapen, saysWork } from "../prescription/shape-problem.ts";
import type { StatedDose } from "../prescription/stated.ts";
import type { Protocol, ProtocolPhase } from "../protocols/schema.ts";
import type { Read } from "../read/source.ts";
import { dayClock } from "../units/clock.ts";
import type { WorkSide } from "../units/side.ts";
import { courseCalendar, weeksBack } from "./away.ts";
import { changedExercises, type Named } from "./changes.ts";
import { namedTwice } from "./named-twice.ts";
import { onCalendar } from "./on-calendar.ts";
import type { Program, ProgramExercise, ProgramPhase } from "./program.ts";
import { missing, proposals, rulingOut } from "./propose.ts";
import { standInRemedies } from "./stand-ins.ts";
import { unusedChanges } from "./unused-changes.ts";

export interface ProgramParts {
  readonly plan: Read<Plan>;
  readonly protocol: Read<Protocol>;
  readonly library: Library;
  readonly clinic: Clinic;
}

/**
 * The program, or undefined where an error stands in its way.
 * Faults: unknown-card, card-twice, change-unused, not-for-client, equipment-missing, swap-proposed,
 * dose-incomplete, weeks-left-out, wrong-value (a dose that is no shape of a set).
 */
export function resolveProgram(parts: ProgramParts): WithFaults<Program | undefined> {
  const { plan, protocol, clinic } = parts;
  const faults: Fault[] = unusedChanges(plan, protocol);
  const phases: ProgramPhase[] = [];
  let nextWeek = 1;
  protocol.value.phases.forEach((phase, phaseAt) => {
    const firstWeek = phase.from_week ?? nextWeek;
    const weeks = printedWeeks(firstWeek, phase.weeks, plan.value.weeks);
    nextWeek = firstWeek + phase.weeks;
    if (weeks <= 0) return;
    const list = changedExercises(plan, protocol, phaseAt);
    faults.push(...namedTwice(list, phase.title));
    const exercises = list.flatMap((named) => {
      const resolved = resolveExercise(named, phase, weeks, list, parts);
      faults.push(...resolved.faults);
      return resolved.value ? [resolved.value] : [];
    });
    phases.push({
      id: phase.id,
      title: phase.title,
      aim: phase.aim,
      firstWeek,
      courseWeek: firstWeek,
      weeks,
      range: phase.range,
      moveOn: phase.move_on,
      goBack: phase.go_back,
      exercises,
    });
  });
  if (faults.some(isError)) return { value: undefined, faults };
  const last = Math.max(0, ...phases.map((phase) => phase.firstWeek + phase.weeks - 1));
  const calendar = courseCalendar(plan.value, last);
  const placed = onCalendar(phases, calendar);
  faults.push(...leftOut(placed, plan));
  if (faults.some(isError)) return { value: undefined, faults };
  const program: Program = {
    plan,
    protocol,
    clinic,
    clock: dayClock(plan.value.week.hours),
    weeks: calendar.length,
    awayWeeks: calendar.flatMap((week, at) => (week === undefined ? [at + 1] : [])),
    courseWeeks: calendar,
    easedWeeks: weeksBack(plan.value, calendar),
    phases: placed.phases,
  };
  return { value: program, faults };
}

/** Exercises that nothing is left of, since the client is away in all their weeks; an error where none is. */
function leftOut({ phases, left }: ReturnType<typeof onCalendar>, plan: Read<Plan>): Fault[] {
  if (left.length === 0) return [];
  const named = left.map(({ card }) => card.card.title).join(", ");
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

function printedWeeks(firstWeek: number, weeks: number, limit: number | undefined): number {
  return limit === undefined ? weeks : Math.min(weeks, limit - firstWeek + 1);
}

function resolveExercise(
  named: Named,
  phase: ProtocolPhase,
  weeks: number,
  list: readonly Named[],
  parts: ProgramParts,
): WithFaults<ProgramExercise | undefined> {
  const { plan, protocol, library, clinic } = parts;
  const card = library.cards.get(named.card);
  if (!card) {
    const fault = unknownCard(named.card, named, named.path, [...library.cards.keys()]);
    return { value: undefined, faults: [fault] };
  }
  const faults = fitFaults(card, named, parts);
  const doses = dosesOf(named, card, phase.weeks).slice(0, weeks);
  if (doses.every((dose) => dose === undefined)) return { value: undefined, faults };
  faults.push(...incomplete(doses, named), ...shapeFaults(doses, card, parts));
  const exercise: ProgramExercise = {
    key: `${phase.id}/${card.card.id}`,
    card,
    side: workSide(card, plan.value.side),
    why: named.why ?? card.card.why,
    main: named.main,
    when: named.when,
    ...ties(named, phase, list),
    origin: named.origin,
    because: named.because,
    pain: painLimits(plan.value.pain, [protocol.value.pain, card.card.pain], clinic.pain),
    place: named.source.at(named.path),
    doses,
  };
  return { value: exercise, faults };
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

/** What a plan can do about an exercise that does not fit, by where it comes from. */
const MOVES = {
  protocol: { other: "Write it under swap", none: "leave it out (leave_out)" },
  swap: { other: "Write it as to of this swap", none: "leave the exercise out (leave_out)" },
  add: { other: "Add it instead", none: "take it out of add" },
} as const;

/** What stands against giving this card to this client. */
function fitFaults(card: LibraryCard, named: Named, { plan, library }: ProgramParts): Fault[] {
  const faults: Fault[] = [];
  const place = named.source.at(named.path);
  const frame = named.source.frame(place);
  const standIns = proposals(card, library, plan.value);
  const [instead] = standIns;
  const remedies = standInRemedies(card, standIns, named, plan);
  const hint = instead
    ? `Could be done instead: ${instead.card.id} (${instead.card.clinical}). ${MOVES[named.origin].other} if it is right for this client.`
    : `No card of the library could stand in; ${MOVES[named.origin].none}, or write one.`;
  const ruledOut = rulingOut(card, plan.value);
  if (ruledOut) {
    const message = `${card.card.id} is not for a client with the flag ${ruledOut.flag}: ${ruledOut.why}`;
    const flagAt = plan.source.at(["flags", plan.value.flags.indexOf(ruledOut.flag)]);
    faults.push(
      new Fault("not-for-client", message, {
        place: flagAt,
        frame: plan.source.frame(flagAt),
        hint,
        remedies,
      }),
    );
  }
  const lacking = missing(card, plan.value, library.words);
  if (lacking.length > 0) {
    const things = lacking.map((item) => item.split("|").join(" or ")).join(", ");
    faults.push(
      new Fault(
        "equipment-missing",
        `${plan.value.client.name} has no ${things}, which ${card.card.id} needs.`,
        {
          place: plan.source.at(["equipment"]),
          frame:
            named.source === plan.source ? frame : plan.source.frame(plan.source.at(["equipment"])),
          hint,
          remedies,
        },
      ),
    );
  }
  return faults;
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
