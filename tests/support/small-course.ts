/** A course of one exercise for the demo clinic's client, dosed as a test writes it. */
import { type IssuedBefore, type MadeProgram, makeProgram } from "../../src/booklet.ts";
import type { Fault } from "../../src/faults/fault.ts";
import { openWorkspace, type Workspace } from "../../src/workspace.ts";
import { memoryTree } from "./memory-tree.ts";
import { DAY, DEMO, shippedText } from "./world.ts";

export const CARD = `${DEMO}/exercises/calf-and-achilles/small-card.md`;
export const PROTOCOL = `${DEMO}/protocols/small-course.md`;
export const PLAN = `${DEMO}/small-plan.md`;

export interface SmallCourse {
  /** The card's dose, and what it trains. */
  readonly card?: string;
  readonly trains?: string;
  /** The exercise's fields in the one phase, and how many weeks that has. */
  readonly says?: string;
  readonly weeks?: number;
  /** Phases of a week each, one for each dose, in place of the one phase. */
  readonly doses?: readonly string[];
  /** More of the plan's front matter. */
  readonly plan?: string;
  /** The plan's week, in braces; every evening is free where not given. */
  readonly week?: string;
  /** More of the protocol's front matter. */
  readonly protocol?: string;
}

export interface Made {
  readonly workspace: Workspace;
  readonly made: MadeProgram | undefined;
  /** All that is wrong, with the text that each place points to. */
  readonly faults: readonly (Fault & { readonly at: string })[];
  /** Every fault of making it, as it is. */
  readonly all: readonly Fault[];
  readonly warnings: readonly Fault[];
}

/** Of the shipped files only what every clinic needs: no cards, so that reading is quick. */
const SHIPPED = Object.fromEntries(
  [`${DEMO}/clinic.yaml`, "exercises/vocabulary.yaml"].map((file) => [file, shippedText(file)]),
);

/** Everything of the course, from its files on. */
export function smallCourse(course: SmallCourse, before?: IssuedBefore): Made {
  const files = filesOf(course);
  const workspace = openWorkspace({
    tree: memoryTree({ ...SHIPPED, ...files }),
    clinicFolder: DEMO,
    shipped: ".",
    today: DAY,
  });
  const { value, faults } = makeProgram(workspace, PLAN, before);
  const own = Object.keys(files);
  const all = [...workspace.faults, ...faults].filter(
    ({ place, level }) => level === "error" && place && own.includes(place.file),
  );
  return {
    workspace,
    made: value,
    all: faults,
    warnings: faults.filter(({ level }) => level === "warning"),
    faults: all.map((fault) => {
      const { file = "", line = 1, column = 1 } = fault.place ?? {};
      const text = files[file]?.split("\n")[line - 1] ?? "";
      return Object.assign(fault, { at: text.slice(column - 1) });
    }),
  };
}

/** The course made; throws what stands in its way. */
export function madeSmall(
  course: SmallCourse,
  before?: IssuedBefore,
): Made & { readonly made: MadeProgram } {
  const { made, faults, ...rest } = smallCourse(course, before);
  if (!made) throw new Error(faults.map(({ message }) => message).join("\n") || "not made");
  return { ...rest, made, faults };
}

const SOURCES = `sources: [{ cite: common practice, for: all of it }]
reviewed: { by: Robin Ashdown, on: 2026-11-01, again: 2028-11-01 }`;

function filesOf(course: SmallCourse): Readonly<Record<string, string>> {
  const { card, trains, says, weeks = 1, doses, plan = "", protocol = "" } = course;
  const phases = doses
    ? doses.map((dose, at) => phaseOf(`phase-${at + 1}`, 1, `dose: ${dose}`))
    : [phaseOf("phase-1", weeks, says ?? "dose: {}")];
  const part = "evening: 600 min";
  const days = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];
  const week =
    course.week ?? `{ free: { ${days.map((day) => `${day}: { ${part} }`).join(", ")} } }`;
  return {
    [CARD]: `---
id: small-card
title: Move it
clinical: Small exercise
why: It helps you move.
region: calf-and-achilles
trains: ${trains ?? "strength"}
tissues: [calf]
limb: leg
side: none
demand: 2
load: { kind: none }
dose: ${card ?? "{ sets: 3, reps: 10, per_week: 1 }"}
recovery: 12 h
pain: monitored
${SOURCES}
---

## Set up

Stand up.

## Move

Move it.

## You should feel

Your calf works.

## Check yourself

You stand tall.

## Stop and call us if

It hurts.

## For the clinician

Nothing.
`,
    [PROTOCOL]: `---
id: small-course
title: A small course
clinical: Small course
condition: A stiff ankle
standing: Not tested.
pain: monitored
phases:
${phases.join("")}${protocol}${SOURCES}
---

For the clinician.
`,
    [PLAN]: `---
id: small-plan
client: { name: Ines Halloway, reference: TC-2, born: 1988-03-09, body_mass: 70 kg }
clinician: Robin Ashdown
protocol: small-course
starts: 2027-01-04
side: left
stage: Able to bear load
irritability: low
goals: [{ what: Walk to the harbour, now: 4, want: 8, on: 2026-12-28 }]
week: ${week}
${plan}
signed: { by: Robin Ashdown, on: 2026-12-28 }
---

Dear Ines, this is for you.
`,
  };
}

const phaseOf = (id: string, weeks: number, says: string) => `  - id: ${id}
    title: Move
    aim: You move.
    weeks: ${weeks}
    exercises:
      - card: small-card
        ${says.split("\n").join("\n        ")}
    move_on: [You can do it.]
`;
