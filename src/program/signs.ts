/** The signs of a course as this client has them: naming only exercises that are theirs, else the clinician's word. */
import type { Library } from "../cards/library.ts";
import { Fault, type WithFaults } from "../faults/fault.ts";
import { cardsNamed, withNames, wordsOf } from "../protocols/named-cards.ts";
import type { Sign } from "../protocols/schema.ts";
import type { Path } from "../read/source.ts";
import { type Language, quoted } from "../words/languages.ts";
import { type NamedExercises, namedExercises } from "./named.ts";
import type { Program, ProgramPhase } from "./program.ts";

/** The signs without which an exercise is not begun, and whether the clinician's word stands in place of one. */
export interface SignsToBegin {
  readonly signs: readonly string[];
  readonly asks: boolean;
}

/** What the booklet of a made program says of beginning a card, over all phases that have it. */
export function signsToBegin({ phases }: Program, id: string): SignsToBegin {
  const own = phases.flatMap(({ exercises }) =>
    exercises.filter(({ card }) => card.card.id === id),
  );
  return {
    signs: [...new Set(own.flatMap(({ when }) => when ?? []))],
    asks: own.some(({ asksFirst }) => asksFirst),
  };
}

/** A sign as the course states it, whoever the client is: with the titles of the cards that it names. */
export function statedSign(sign: Sign, library: Library, language: Language): string {
  const titleOf = (id: string) => library.cards.get(id)?.card.title ?? id;
  return withNames(wordsOf(sign), (id) => quoted(titleOf(id), language));
}

/** A sign in this client's words, or why it is none of theirs. */
type ClientSign = { readonly says: string } | { readonly not: string };

/**
 * The program with the signs to move on and to begin an exercise that are this client's. Fault (a warning):
 * sign-not-theirs, for each sign in whose place the clinician's word stands.
 */
export function withSigns(program: Program, library: Library): WithFaults<Program> {
  const faults = new Map<string, Fault>();
  const phases = program.phases.map((phase) => phaseSigns(phase, program, library, faults));
  return { value: { ...program, phases }, faults: [...faults.values()] };
}

function phaseSigns(
  phase: ProgramPhase,
  program: Program,
  library: Library,
  faults: Map<string, Fault>,
): ProgramPhase {
  const { value: protocol } = program.protocol;
  const at = protocol.phases.findIndex(({ id }) => id === phase.id);
  const stated = protocol.phases[at];
  const named = namedExercises(phase, program, library);
  if (!stated || !named) return phase;

  const moveOn = stated.move_on.map((sign, which) => read(sign, ["move_on", which]));
  return {
    ...phase,
    moveOn: moveOn.filter((sign) => sign !== undefined),
    moveOnAsks: moveOn.includes(undefined),
    exercises: phase.exercises.map((exercise) => {
      if (exercise.when === undefined) return exercise;
      const field = stated.exercises.findIndex(({ when }) => when === exercise.when);
      const when = read(exercise.when, ["exercises", field, "when"]);
      return { ...exercise, when, asksFirst: when === undefined };
    }),
  };

  /** The sign in the client's words; undefined, with a warning, where it is none of theirs. */
  function read(sign: Sign, path: Path): string | undefined {
    const found = clientSign(sign, named as NamedExercises, program);
    if ("says" in found) return found.says;
    const words = wordsOf(sign);
    // exercises that begin together share their sign
    const key = `${at} ${words}`;
    if (!faults.has(key)) faults.set(key, notTheirs(words, found.not, ["phases", at, ...path]));
    return undefined;
  }

  function notTheirs(words: string, reason: string, path: Path): Fault {
    const { plan, protocol } = program;
    const place = protocol.source.at(path);
    return new Fault(
      "sign-not-theirs",
      `The sign “${words}” of the phase ${phase.id} is not for ${plan.value.client.name}: ${reason}. The booklet asks for your word in its place.`,
      {
        level: "warning",
        place,
        frame: protocol.source.frame(place),
        hint: "Agree with the client what to look for instead, or when to ask you; the note can say it.",
      },
    );
  }
}

function clientSign(sign: Sign, named: NamedExercises, { protocol }: Program): ClientSign {
  const words = wordsOf(sign);
  const { of = undefined, not_for = [] } = typeof sign === "string" ? {} : sign;
  const flag = not_for.find((one) => named.flags.includes(one));
  if (flag !== undefined) return { not: `the flag ${flag} stands against it` };
  const missing = [...new Set(cardsNamed(words))].filter((id) => !named.inPlaceOf(id));
  if (of !== undefined && !named.isTheirs(of)) missing.push(of);
  if (missing.length > 0) return { not: `their program does not have ${missing.join(" and ")}` };
  const titleOf = (id: string) => named.inPlaceOf(id)?.card.title ?? "";
  return { says: withNames(words, (id) => quoted(titleOf(id), protocol.value.language)) };
}
