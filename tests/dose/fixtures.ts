/** Small builders of cards, plans and programs for the tests of doses. */

import { stringify } from "yaml";
import type { z } from "zod";
import type { Library, LibraryCard } from "../../src/cards/library.ts";
import { type Card, cardSchema } from "../../src/cards/schema.ts";
import type { Vocabulary } from "../../src/cards/vocabulary.ts";
import { type Clinic, clinicSchema } from "../../src/clinic/schema.ts";
import { planSchema } from "../../src/plan/schema.ts";
import type { DosePart } from "../../src/prescription/fields.ts";
import { mergeLayers } from "../../src/prescription/merge.ts";
import type { StatedDose } from "../../src/prescription/stated.ts";
import { expandWeeks } from "../../src/prescription/week-table.ts";
import type { Program, ProgramExercise } from "../../src/program/program.ts";
import { type Protocol, protocolExercise, protocolSchema } from "../../src/protocols/schema.ts";
import { splitMarkdown } from "../../src/read/front-matter.ts";
import { Source } from "../../src/read/source.ts";
import type { WorkSide } from "../../src/units/side.ts";

type Fields = Readonly<Record<string, unknown>>;

const WORDS: Vocabulary = {
  regions: { leg: "Leg" },
  tissues: { calf: "calf", achilles: "Achilles tendon", hamstrings: "hamstrings", thigh: "thigh" },
  equipment: {
    backpack: { say: "a backpack", makes: "weight" },
    dumbbell: { say: "a dumbbell", makes: "weight" },
    barbell: { say: "a barbell", makes: "weight" },
    machine: { say: "a machine", makes: "weight" },
    band: { say: "a band", makes: "band" },
    step: { say: "a step" },
  },
  flags: { pregnancy: "Pregnancy" },
};

export function card(fields: Fields & { readonly id: string }): LibraryCard {
  const parsed: Card = cardSchema(WORDS).parse({
    title: `Title of ${fields.id}`,
    clinical: `Clinical ${fields.id}`,
    why: "It helps.",
    region: "leg",
    trains: "strength",
    tissues: ["calf"],
    limb: "leg",
    side: "each",
    demand: 2,
    load: { kind: "weight", with: ["backpack"] },
    dose: { sets: 3, reps: 10, per_week: 3 },
    recovery: "48 h",
    pain: "monitored",
    sources: [{ cite: "common practice", for: "all" }],
    reviewed: { by: "Test", on: "2026-01-01", again: "2028-01-01" },
    ...fields,
  });
  const source = new Source(`exercises/leg/${fields.id}.md`, "");
  return { card: parsed, source, sections: [] as unknown as LibraryCard["sections"] };
}

export function library(...cards: readonly LibraryCard[]): Library {
  return { words: WORDS, cards: new Map(cards.map((one) => [one.card.id, one])) };
}

function clinic(fields: Fields = {}): Clinic {
  return clinicSchema.parse({
    name: "Clinic",
    phone: "020 7946 0000",
    hours: "Mon to Fri",
    out_of_hours: "the duty doctor",
    emergency: "112",
    ...fields,
  });
}

export interface ExerciseInput {
  readonly card: LibraryCard;
  readonly side?: WorkSide;
  readonly main?: boolean;
  /** As a protocol writes it: dose, weeks, rule. */
  readonly says?: z.input<typeof protocolExercise> extends infer T ? Partial<T> : never;
  /** What the plan states over it. */
  readonly redose?: DosePart;
}

export interface ProgramInput {
  readonly weeks?: number;
  readonly phases?: readonly {
    readonly id?: string;
    readonly firstWeek?: number;
    readonly weeks: number;
    readonly exercises: readonly ExerciseInput[];
  }[];
  /** One phase of `weeks` weeks with these. */
  readonly exercises?: readonly ExerciseInput[];
  readonly plan?: Fields;
  readonly clinic?: Fields;
  readonly restBetween?: string;
}

const PROTOCOL_PLACE = { file: "protocol.md", line: 10, column: 3 };
const CARD_PLACE = { file: "card.md", line: 20, column: 3 };
const PLAN_PLACE = { file: "plan.md", line: 30, column: 3 };

export function program(input: ProgramInput): Program {
  const phases = (
    input.phases ?? [{ weeks: input.weeks ?? 1, exercises: input.exercises ?? [] }]
  ).map((phase, index) => ({ id: `phase-${index + 1}`, firstWeek: 1, ...phase }));
  const protocol = protocolOf(phases, input.restBetween);
  const last = Math.max(...phases.map(({ firstWeek, weeks }) => firstWeek + weeks - 1));
  return {
    plan: plan(input.plan),
    protocol: { value: protocol, source: new Source("protocol.md", "") },
    clinic: clinic(input.clinic),
    clock: { morning: 420, midday: 780, evening: 1140 },
    weeks: input.weeks ?? last,
    awayWeeks: [],
    courseWeeks: [],
    flags: [],
    easedWeeks: [],
    callLevel: 8,
    phases: phases.map((phase) => ({
      id: phase.id,
      title: `Title of ${phase.id}`,
      aim: "Aim",
      firstWeek: phase.firstWeek,
      courseWeek: phase.firstWeek,
      weeks: phase.weeks,
      range: undefined,
      moveOn: ["ready"],
      moveOnAsks: false,
      goBack: [],
      exercises: phase.exercises.map((one) => exerciseOf(phase, one)),
    })),
  };
}

export function plan(fields: Fields = {}) {
  const { client, ...others } = fields;
  const text = stringify({
    id: "plan-1",
    client: { name: "Client", reference: "1", body_mass: "75 kg", ...(client as Fields) },
    clinician: "Clinician",
    protocol: "course",
    starts: "2026-11-30",
    side: "left",
    stage: "late",
    irritability: "low",
    goals: [{ what: "walk", now: 2, want: 8, on: "2026-11-20" }],
    week: { free: { mon: { evening: "30 min" } } },
    ...others,
  });
  const { split, faults } = splitMarkdown("plan.md", `---\n${text}---\n`);
  if (!split) throw new Error(faults[0]?.message);
  return { value: planSchema(WORDS).parse(split.data), source: split.source };
}

function protocolOf(
  phases: readonly { id: string; weeks: number; exercises: readonly ExerciseInput[] }[],
  rest: string | undefined,
): Protocol {
  return protocolSchema.parse({
    id: "course",
    title: "Course",
    clinical: "Course",
    condition: "A condition",
    standing: "Tested.",
    pain: "monitored",
    ...(rest && { rest_between_exercises: rest }),
    phases: phases.map((phase) => ({
      id: phase.id,
      title: "Phase",
      aim: "Aim",
      weeks: phase.weeks,
      exercises: phase.exercises.map(({ card: { card: one }, says, main = true }) => ({
        card: one.id,
        main,
        ...says,
      })),
      move_on: ["ready"],
    })),
    sources: [{ cite: "common practice", for: "all" }],
    reviewed: { by: "Test", on: "2026-01-01", again: "2028-01-01" },
  });
}

function exerciseOf(
  phase: { readonly id: string; readonly weeks: number },
  { card: one, side = "left", main = true, says = {}, redose = {} }: ExerciseInput,
): ProgramExercise {
  const parsed = protocolExercise.parse({ card: one.card.id, ...says });
  return {
    key: `${phase.id}/${one.card.id}`,
    card: one,
    side,
    why: "It helps.",
    main,
    when: undefined,
    asksFirst: false,
    sameSessionAs: [],
    after: [],
    origin: "protocol",
    because: undefined,
    pain: { kind: "monitored", comfortable: 2, during: 5, after: 5 },
    grows: {},
    place: PROTOCOL_PLACE,
    doses: expandWeeks(parsed, phase.weeks).doses.map(
      (dose) => dose && stated(one.card.dose, dose, redose),
    ),
  };
}

function stated(ofCard: Card["dose"], ofProtocol: DosePart, ofPlan: DosePart): StatedDose {
  const merged = mergeLayers([
    { by: "card", part: ofCard, placeOf: () => CARD_PLACE },
    { by: "protocol", part: ofProtocol, placeOf: () => PROTOCOL_PLACE },
    { by: "plan", part: ofPlan, placeOf: () => PLAN_PLACE },
  ]);
  if (!merged) throw new Error("no sets");
  return merged;
}
