/** Doses a whole program: every bout of every week with its numbers and trails, and the advice that follows. */
import type { Library } from "../cards/library.ts";
import type { WithFaults } from "../faults/fault.ts";
import type { Program } from "../program/program.ts";
import { advise } from "./advice.ts";
import { boutOf } from "./bout.ts";
import { DoseContext } from "./context.ts";
import { reportCoarse, reportShort } from "./load-faults.ts";
import { weekTotals } from "./totals.ts";
import type { Bout, BoutLoad, DosedProgram, DosedWeek } from "./types.ts";

/**
 * The program with every number computed, rounded down, and every number's provenance.
 *
 * `library` is asked for easier cards and for the cards named in capacity_from; without it only the
 * program's own cards are known. The age of a measure counts to the day the plan starts.
 * Faults: measure-missing, measure-side, measure-range, measure-old, load-not-makeable, load-coarse,
 * dose-incomplete, wrong-value, session-crowded, session-long, tissue-untrained, ramp-steep,
 * no-easier-rung; one for each cause, with the weeks it holds in.
 */
export function doseProgram(program: Program, library?: Library): WithFaults<DosedProgram> {
  const context = new DoseContext(program, library);
  const changeoverS =
    program.protocol.value.rest_between_exercises ?? program.clinic.dosing.changeover;
  const bouts = Array.from({ length: program.weeks }, (): Bout[] => []);
  for (const phase of program.phases) {
    for (const exercise of phase.exercises) {
      for (const [index, stated] of exercise.doses.entries()) {
        const week = phase.firstWeek + index;
        const inWeek = bouts[week - 1];
        if (stated === undefined || inWeek === undefined) continue;
        const before = loadBefore(bouts, exercise.card.card.id, week);
        const work = { exercise, stated, week, before };
        const bout = boutOf(context, phase, work);
        reportCoarse(context, work, bout.load);
        reportShort(context, work, bout.load);
        inWeek.push(bout);
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
  return { value: { weeks, changeoverS }, faults };
}

/** The load of a card in the last week before this one that has it. */
function loadBefore(
  bouts: readonly (readonly Bout[])[],
  card: string,
  week: number,
): BoutLoad | undefined {
  for (let index = week - 2; index >= 0; index -= 1) {
    const found = bouts[index]?.find((bout) => bout.card === card);
    if (found) return found.load;
  }
  return undefined;
}
