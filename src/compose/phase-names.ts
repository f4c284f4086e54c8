/** What the booklet calls a phase, wherever it names one: "Phase 1 of 2: Twice a day". */
import { phasesIn, weeksOfPhase } from "../program/phase-weeks.ts";
import type { Program, ProgramPhase } from "../program/program.ts";
import type { Words } from "../words/words.ts";

/** "Phase 1 of 2", counting the phases in which this client has exercises; undefined where there is only one. */
export function phaseLabel(
  { phases }: Pick<Program, "phases">,
  phase: ProgramPhase,
  words: Words,
): string | undefined {
  const all = phases.filter((one) => weeksOfPhase(one));
  if (all.length < 2) return undefined;
  return words.say("phase.label", { n: all.indexOf(phase) + 1, total: all.length });
}

/** The phases of a week of the course in full, in their order. */
export function phaseNames(program: Program, week: number, words: Words): string[] {
  return phasesIn(program, week).map((phase) => {
    const label = phaseLabel(program, phase, words);
    return label === undefined
      ? phase.title
      : words.say("phase.named", { label, title: phase.title });
  });
}
