/** How the numbers of one exercise came about, for the clinician. */
import type { MadeProgram } from "../booklet.ts";
import type { Bout, ProvenanceNumber, ProvenanceStep } from "../dose/types.ts";

/** The numbers in the order in which a clinician asks for them, and what each is called. */
const NAMES: Readonly<Record<ProvenanceNumber, string>> = {
  load_kg: "Load",
  next_load_kg: "Next load, for a review",
  sets: "Sets",
  reps: "Repetitions",
  hold_s: "Hold",
  time_s: "Time of a set",
  distance_m: "Distance",
  turns: "Turns of a set",
  tempo: "Tempo",
  rest_s: "Rest between sets",
  rest_reps_s: "Rest between repetitions",
  effort: "Effort",
  frequency: "How often",
  reps_total: "Repetitions of a session",
  kg_total: "Weight moved in a session",
  tension_s: "Time under tension",
  clock_s: "Session clock",
  minutes: "Minutes",
};

/** The provenance of every number of a card, week by week where it changes; undefined if the card is not in the program. */
export function explainText({ program, dosed }: MadeProgram, card: string): string | undefined {
  const bouts = dosed.weeks.flatMap((week) => week.bouts.filter((bout) => bout.card === card));
  const found = program.phases
    .flatMap((phase) => phase.exercises)
    .find((exercise) => exercise.card.card.id === card);
  if (bouts.length === 0 || !found) return undefined;
  const names = Object.keys(NAMES) as ProvenanceNumber[];
  const lines = [`${found.card.card.clinical} [${card}]`];
  for (const name of names) {
    const spans = spansOf(bouts, name);
    if (spans.length === 0) continue;
    lines.push("", NAMES[name]);
    const shared = sharedSteps(spans.map(({ steps }) => steps.map(stepText)));
    for (const step of shared) lines.push(`  ${step}`);
    for (const { first, last, steps } of spans) {
      const own = steps.slice(shared.length).map(stepText);
      if (own.length === 0) continue;
      lines.push(`  ${first === last ? `Week ${first}` : `Weeks ${first} to ${last}`}`);
      for (const step of own) lines.push(`    ${step}`);
    }
  }
  return lines.join("\n");
}

/** The steps with which every week begins, said once. */
function sharedSteps(all: readonly (readonly string[])[]): readonly string[] {
  const [first = []] = all;
  const end = first.findIndex((step, index) => all.some((steps) => steps[index] !== step));
  return end < 0 ? first : first.slice(0, end);
}

function stepText({ step, says, source }: ProvenanceStep): string {
  return `${step.padEnd(9)}  ${says}${source ? `  [${source}]` : ""}`;
}

/** Runs of weeks in which a number came about in the same way. */
function spansOf(
  bouts: readonly Bout[],
  name: ProvenanceNumber,
): { first: number; last: number; steps: readonly ProvenanceStep[] }[] {
  const spans: { first: number; last: number; steps: readonly ProvenanceStep[]; key: string }[] =
    [];
  for (const { week, provenance } of bouts) {
    const steps = provenance[name];
    if (!steps) continue;
    const key = JSON.stringify(steps);
    const open = spans.at(-1);
    if (open && open.key === key && open.last === week - 1) open.last = week;
    else spans.push({ first: week, last: week, steps, key });
  }
  return spans;
}
