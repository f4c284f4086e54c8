/** Doses a whole program: every bout of every week with its numbers and their provenance, and the advice that follows. */
import type { Library } from "../cards/library.ts";
import type { WithFaults } from "../faults/fault.ts";
import type { Program } from "../program/program.ts";
import { unusedAccepts } from "./accepted.ts";
import { advise } from "./advice.ts";
import { boutOf } from "./bout.ts";
import { DoseContext } from "./context.ts";
import { weekTotals } from "./totals.ts";
import type { Bout, DosedProgram, DosedWeek } from "./types.ts";

/**
 * The program with every number computed, rounded down, and every number's provenance.
 *
 * `library` is asked for easier cards and for the cards named in capacity_from; without it only the
 * program's own cards are known. The age of a measure counts to the day the plan starts.
 * Faults: measure-missing, measure-side, measure-range, measure-old, load-not-makeable, load-held,
 * load-coarse, load-short, load-light, dose-beyond-measure, change-unused, dose-incomplete, wrong-value, tissue-untrained,
 * no-easier-rung; one for each cause, with the weeks it holds in.
 */
export function doseProgram(program: Program, library?: Library): WithFaults<DosedProgram> {
  const context = new DoseContext(program, library);
  const changeoverS =
    program.protocol.value.rest_between_exercises ?? program.clinic.dosing.changeover;
  const bouts = Array.from({ length: program.weeks }, (): Bout[] => []);
  for (const [index, inWeek] of bouts.entries()) {
    const week = index + 1;
    for (const phase of program.phases) {
      for (const exercise of phase.exercises) {
        const stated = exercise.doses[week - phase.firstWeek];
        if (stated === undefined) continue;
        const history = boutsBefore(bouts, exercise.card.card.id, week);
        inWeek.push(boutOf(context, phase, { exercise, stated, week, history }));
      }
    }
  }
  const weeks = bouts.map(
    (inWeek, index): DosedWeek => ({
      week: index + 1,
      bouts: inWeek,
      totals: weekTotals(inWeek, changeoverS),
    }),
  );
  advise(context, weeks);
  const faults = context.findings.faults((place) => context.frameOf(place));
  return { value: { weeks, changeoverS }, faults: [...faults, ...unusedAccepts(context)] };
}

/** The bouts of a card in the weeks before this one, the earliest first. */
function boutsBefore(bouts: readonly (readonly Bout[])[], card: string, week: number): Bout[] {
  return bouts.slice(0, week - 1).flatMap((inWeek) => inWeek.filter((one) => one.card === card));
}
