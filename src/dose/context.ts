/** What every step of dosing needs to know: the program, the library, and where to put what is found. */

import type { Library, LibraryCard } from "../cards/library.ts";
import type { Place } from "../faults/fault.ts";
import type { StatedDose, Statement } from "../prescription/stated.ts";
import { easierCards } from "../program/easier.ts";
import { flagsOfCard } from "../program/phase-weeks.ts";
import type { Program, ProgramExercise } from "../program/program.ts";
import { fits, usableThings } from "../program/propose.ts";
import { sayMass } from "../units/mass.ts";
import { type Makes, weightsFor } from "./equipment.ts";
import { Findings } from "./findings.ts";
import type { Bout, ProvenanceStep } from "./types.ts";

/** One exercise in one week, still to be dosed. */
export interface Work {
  readonly exercise: ProgramExercise;
  readonly stated: StatedDose;
  /** Week of the course. */
  readonly week: number;
  /** The bouts of the same card in the weeks before this one, the earliest first. */
  readonly history: readonly Bout[];
}

export class DoseContext {
  readonly program: Program;
  readonly findings = new Findings();
  readonly #library: Library | undefined;
  readonly #own = new Map<string, LibraryCard>();
  readonly #measurePlaces = new Map<number, string>();
  readonly #makes = new Map<string, readonly Makes[]>();

  constructor(program: Program, library: Library | undefined) {
    this.program = program;
    this.#library = library;
    for (const phase of program.phases) {
      for (const { card } of phase.exercises) this.#own.set(card.card.id, card);
    }
  }

  /** Whether the whole library is known, and not only the program's own cards. */
  get hasLibrary(): boolean {
    return this.#library !== undefined;
  }

  cardOf(id: string): LibraryCard | undefined {
    return this.#library?.cards.get(id) ?? this.#own.get(id);
  }

  /** Where the exercise of a bout is stated; where the protocol is named if there is none. */
  placeOf(bout: Bout | undefined): Place {
    const all = this.program.phases.flatMap((phase) => phase.exercises);
    const exercise = all.find(({ key }) => key === bout?.key);
    return exercise?.place ?? this.program.plan.source.at(["protocol"]);
  }

  /** What the client has that can load this card. */
  makesFor({ card }: LibraryCard): readonly Makes[] {
    const known = this.#makes.get(card.id);
    if (known !== undefined) return known;
    const { value: plan } = this.program.plan;
    const words = this.#library?.words;
    const things = words
      ? usableThings({ card }, plan, flagsOfCard(this.program, card.id), words)
      : card.load.with;
    const usable = { ...card, load: { ...card.load, with: [...things] } };
    const makes = weightsFor(usable, plan.equipment);
    this.#makes.set(card.id, makes);
    return makes;
  }

  /** A mass in the clinic's unit: "12.5 kg". */
  mass(kg: number): string {
    return sayMass(kg, this.program.clinic.units);
  }

  /** Where a measure stands, as file:line. */
  measurePlace(index: number): string {
    const known = this.#measurePlaces.get(index);
    if (known !== undefined) return known;
    const place = sayPlace(this.program.plan.source.at(["measures", index]));
    this.#measurePlaces.set(index, place);
    return place;
  }

  /** The lines around a place in the plan, the protocol or one of the program's cards. */
  frameOf(place: Place): string | undefined {
    const { plan, protocol } = this.program;
    const cards = [...this.#own.values()].map(({ source }) => source);
    const source = [plan.source, protocol.source, ...cards].find(({ file }) => file === place.file);
    return source?.frame(place);
  }

  /** The easier card to offer: what the booklet would name on a day when this one is too much. */
  easierThan(card: LibraryCard): LibraryCard | undefined {
    if (this.#library) return easierCards(card, this.program, this.#library)[0];
    const { id, easier } = card.card;
    return this.#rungs(id, easier).sort((a, b) => b.card.demand - a.card.demand)[0];
  }

  /** The harder card to offer: the easiest of those that the card names and that this client may do. */
  harderThan({ card }: LibraryCard): LibraryCard | undefined {
    return this.#rungs(card.id, card.harder).sort((a, b) => a.card.demand - b.card.demand)[0];
  }

  #rungs(of: string, links: readonly { readonly to: string }[]): LibraryCard[] {
    const plan = this.program.plan.value;
    const words = this.#library?.words;
    const flags = flagsOfCard(this.program, of);
    return links
      .flatMap(({ to }) => this.cardOf(to) ?? [])
      .filter(({ card: { id } }) => !plan.leave_out.some(({ card }) => card === id))
      .filter((one) => words === undefined || fits(one, plan, flags, words));
  }
}

export const sayPlace = (place: Place): string => `${place.file}:${place.line}`;

/** A card in a sentence, by its clinical name and id. */
export const sayCard = ({ card }: LibraryCard): string => `“${card.clinical}” (${card.id})`;

/** The step of a provenance that says who stated a number. */
export function statedStep(
  statement: Statement | undefined,
  says: string,
  value?: number,
  unit?: string,
): ProvenanceStep {
  return {
    step: "stated",
    says: statement ? `${says}, stated by the ${statement.by}.` : `${says}.`,
    ...(value !== undefined && { value }),
    ...(unit !== undefined && { unit }),
    ...(statement && { source: sayPlace(statement.place) }),
  };
}
