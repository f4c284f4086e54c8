/** What stands in for an exercise on a day when it is too much, and how much of it: never more than of the exercise. */
import type { Library, LibraryCard } from "../cards/library.ts";
import { painLimits } from "../pain/limits.ts";
import type { DosePart } from "../prescription/fields.ts";
import type { StatedDose } from "../prescription/stated.ts";
import { easierCards } from "../program/easier.ts";
import { exercisesOf } from "../program/exercises.ts";
import { weeksOfCard } from "../program/phase-weeks.ts";
import type { Program, ProgramExercise } from "../program/program.ts";
import { workSide } from "../program/resolve.ts";
import { boutOf } from "./bout.ts";
import { DoseContext } from "./context.ts";
import { bandsFor, nextAbove } from "./equipment.ts";
import { repetitionSeconds } from "./time.ts";
import type { Bout, BoutLoad, DosedProgram } from "./types.ts";

/** An easier card: one with a page of its own in the course, or one that is done only in place of others. */
export interface Easier {
  readonly card: LibraryCard;
  /** Whether it is an exercise of an earlier part of this course. */
  readonly known: boolean;
}

/** The next rung down that this client may do and can load lightly enough; undefined where there is none. */
export function easierOf(
  { card }: ProgramExercise,
  program: Program,
  dosed: DosedProgram,
  library: Library,
): Easier | undefined {
  return easierCards(card, program, library)
    .map((one) => ({ card: one, known: weeksOfCard(program, one.card.id) !== undefined }))
    .find(
      (one) =>
        one.known || lightest(one.card, boutsOf(card, dosed), program, library) !== undefined,
    );
}

/** Easier cards that are done only in place of others, each with the exercises that it stands in for. */
export function easierInPlaceOf(
  program: Program,
  dosed: DosedProgram,
  library: Library,
): ReadonlyMap<LibraryCard, readonly ProgramExercise[]> {
  const insteadOf = new Map<LibraryCard, ProgramExercise[]>();
  for (const exercise of exercisesOf(program)) {
    const easier = easierOf(exercise, program, dosed, library);
    if (!easier || easier.known) continue;
    insteadOf.set(easier.card, [...(insteadOf.get(easier.card) ?? []), exercise]);
  }
  return insteadOf;
}

/**
 * An easier card as an exercise in place of others: its own dose, without a target, with no more sets,
 * repetitions, seconds of hold and effort than any week of theirs, at the lightest that the client makes.
 * One long hold is no number of repetitions: in its place a set takes no more seconds than it.
 */
export function easierBout(
  card: LibraryCard,
  insteadOf: readonly ProgramExercise[],
  program: Program,
  dosed: DosedProgram,
  library: Library,
): { readonly exercise: ProgramExercise; readonly bout: Bout } {
  const { plan, protocol, clinic } = program;
  const bouts = insteadOf.flatMap((one) => boutsOf(one.card, dosed));
  const stated = lessThan(card, bouts, clinic.dosing.fast_part);
  const exercise: ProgramExercise = {
    key: `easier/${card.card.id}`,
    card,
    side: workSide(card, plan.value.side),
    why: card.card.why,
    main: false,
    when: undefined,
    asksFirst: false,
    sameSessionAs: [],
    after: [],
    origin: "protocol",
    because: undefined,
    pain: painLimits(
      plan.value.pain,
      [protocol.value.pain, card.card.pain],
      clinic.pain,
      program.callLevel,
    ),
    grows: {},
    place: card.source.at(["id"]),
    doses: [stated],
  };
  const context = new DoseContext(program, library);
  const phase = { id: "easier", firstWeek: 1 };
  const bout = boutOf(context, phase, { exercise, stated, week: 1, history: [] });
  const load = lightest(card, bouts, program, library) ?? bout.load;
  return { exercise, bout: { ...bout, load: load === "own" ? bout.load : load } };
}

const boutsOf = ({ card }: LibraryCard, { weeks }: DosedProgram): Bout[] =>
  weeks.flatMap(({ bouts }) => bouts.filter((bout) => bout.card === card.id));

/** The card's own dose, cut to the least of these bouts. */
function lessThan(
  { card, source }: LibraryCard,
  bouts: readonly Bout[],
  fastPart: number,
): StatedDose {
  const least = (numbers: readonly number[], own: number) => Math.min(own, ...numbers);
  const { target: _, ...own } = card.dose;
  const sets = least(
    bouts.map((bout) => bout.sets),
    card.dose.sets,
  );
  const holds = bouts.flatMap(({ holdS }) => holdS ?? []);
  const hold = own.hold === undefined ? undefined : least(holds, own.hold);
  const each = hold ?? (own.tempo && repetitionSeconds(own.tempo, fastPart));
  const most = bouts.flatMap(({ reps, holdS }) =>
    (reps ?? []).map(({ high }) => {
      if (high > 1 || holdS === undefined) return high;
      return each === undefined ? Number.POSITIVE_INFINITY : Math.max(1, Math.floor(holdS / each));
    }),
  );
  const times = bouts.flatMap(({ timeS }) => timeS ?? []);
  const efforts = bouts.flatMap(({ effort }) => effort ?? []);
  const dose = {
    ...own,
    sets,
    ...(own.reps && {
      reps: own.reps
        .slice(0, own.reps.length === 1 ? 1 : sets)
        .map(({ low, high }) => ({ low: least(most, low), high: least(most, high) })),
    }),
    ...(hold !== undefined && { hold }),
    ...(own.time !== undefined && { time: least(times, own.time) }),
    ...(own.effort !== undefined && { effort: least(efforts, own.effort) }),
  };
  const statement = (field: string) => ({ by: "card" as const, place: source.at(["dose", field]) });
  const fields = Object.keys(dose) as (keyof DosePart)[];
  return { dose, stated: Object.fromEntries(fields.map((field) => [field, statement(field)])) };
}

/**
 * The lightest load that the client makes for the card; "own" where none has to be made; undefined where
 * there is none, or the lightest is heavier than a load of these bouts.
 */
function lightest(
  card: LibraryCard,
  bouts: readonly Bout[],
  program: Program,
  library: Library,
): BoutLoad | "own" | undefined {
  const { kind } = card.card.load;
  if (kind === "band") {
    const [level] = bandsFor(card.card, program.plan.value.equipment);
    const levels = bouts.flatMap(({ load }) => load.level ?? []);
    return level === undefined || levels.some((one) => one < level) ? undefined : { kind, level };
  }
  if (kind !== "weight") return "own";
  const least = nextAbove(new DoseContext(program, library).makesFor(card), 0);
  const loads = bouts.flatMap(({ load }) => load.kg ?? []).filter((kg) => kg > 0);
  if (least === undefined || loads.some((kg) => kg < least.kg)) return undefined;
  return { kind, kg: least.kg, equipment: least.have };
}
