/** Any shipped protocol made into a whole program for an invented client who owns all it needs. */

import { type MadeProgram, makeProgram } from "../../src/booklet.ts";
import type { Fault } from "../../src/faults/fault.ts";
import { addDays } from "../../src/units/dates.ts";
import { WEEKDAYS } from "../../src/units/day-parts.ts";
import type { Workspace } from "../../src/workspace.ts";
import { DEMO, demoClinic, shippedText } from "../support/world.ts";

/** A repetition test of one card, a week before the plan starts. */
export interface RepetitionTest {
  readonly card: string;
  readonly side: "left" | "both";
  readonly kg: number;
  readonly reps: number;
}

/** What a client of a course differs in. */
export interface Client {
  readonly protocol: string;
  readonly side?: "left" | "right" | "both";
  /** The first day. */
  readonly starts?: string;
  readonly measures?: readonly RepetitionTest[];
  /** The same free time on every day. */
  readonly free?: string;
  /** What the client has; all that courses ask for if not given. */
  readonly things?: readonly string[];
  /** More of the plan's front matter. */
  readonly more?: string;
  /** How this clinic computes doses. */
  readonly dosing?: string;
  /** The clinic's file; the demo's if not given. */
  readonly clinic?: string;
}

/** A Monday. */
const STARTS = "2027-01-04";

const THINGS = [
  "step, handrail, wall, chair, sturdy-table, mat, towel, pillow, ball, balance-board, doorway",
  "clear-floor, door-anchor, strap, low-box, high-bench, helper, ankle-hold",
  "{ have: backpack, from: 1 kg, up_to: 60 kg, steps: 1 kg }",
  "{ have: barbell, bar: 20 kg, plates: [1.25 kg, 2.5 kg, 5 kg, 10 kg, 15 kg, 20 kg] }",
  "{ have: dumbbells, loads: [1 kg, 2 kg, 3 kg, 4 kg] }",
  "{ have: leg-press-machine, from: 20 kg, up_to: 400 kg, steps: 5 kg }",
  "{ have: hack-squat-machine, from: 20 kg, up_to: 300 kg, steps: 5 kg }",
  "{ have: calf-raise-machine, from: 10 kg, up_to: 300 kg, steps: 2.5 kg }",
  "{ have: ankle-weights, from: 1 kg, up_to: 10 kg, steps: 0.5 kg }",
  "{ have: band, levels: [1, 2, 3, 4, 5] }",
];

/** The body mass of the client, in kilograms. */
export const BODY_KG = 70;

function planText(client: Client): string {
  const { protocol, side = "left", starts = STARTS, measures = [] } = client;
  const before = addDays(starts, -7);
  const tests = measures.map(
    ({ card, side: tested, kg, reps }) =>
      `{ test: repetitions, card: ${card}, side: ${tested}, load: ${kg} kg, reps: ${reps}, on: ${before} }`,
  );
  return `---
id: course
client: { name: Ines Halloway, reference: TC-1, born: 1988-03-09, body_mass: ${BODY_KG} kg }
clinician: Robin Ashdown
protocol: ${protocol}
starts: ${starts}
side: ${side}
stage: Able to bear load
irritability: low
goals:
  - { what: Walk to the harbour and back, now: 4, want: 8, on: ${before} }
measures: [${tests.join(", ")}]
equipment: [${(client.things ?? THINGS).join(", ")}]
week:
  free:
${WEEKDAYS.map((day) => `    ${day}: { ${client.free ?? "evening: 180 min"} }`).join("\n")}
${client.more ?? ""}
signed: { by: Robin Ashdown, on: ${before} }
---

Dear Ines,

this is your course.
`;
}

/** The course on real dates; throws what stands in its way. */
export const course = (client: Client): MadeProgram => courseIn(client).made;

/** The course together with the clinic that gives it. */
export function courseIn(client: Client): {
  made: MadeProgram;
  workspace: Workspace;
  faults: readonly Fault[];
} {
  const plan = `${DEMO}/course.md`;
  const clinic = `${DEMO}/clinic.yaml`;
  const dosing = client.dosing ? `\ndosing: ${client.dosing}\n` : "";
  const files = {
    [plan]: planText(client),
    [clinic]: `${client.clinic ?? shippedText(clinic)}${dosing}`,
  };
  const workspace = demoClinic(files);
  const { value, faults } = makeProgram(workspace, plan);
  if (!value) throw new Error(faults.map(({ code, message }) => `${code}: ${message}`).join("\n"));
  return { made: value, workspace, faults };
}

/** Whole numbers from the first to the last. */
export const span = (first: number, last: number): number[] =>
  Array.from({ length: last - first + 1 }, (_, index) => first + index);
