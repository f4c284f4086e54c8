/** Charts of the planned loads, for the client to mark what was really done. */
import { inUnit } from "../units/mass.ts";
import type { Composing } from "./composing.ts";
import type { ProgressChart } from "./model.ts";

/** One chart for each exercise whose load changes over the weeks. */
export function progressCharts({ program, dosed, library, write }: Composing): ProgressChart[] {
  const { words } = write;
  const cards = new Set(
    program.phases.flatMap((phase) => phase.exercises.map(({ card }) => card.card.id)),
  );
  return [...cards].flatMap((id) => {
    const planned = dosed.weeks.map(({ bouts }) => bouts.find(({ card }) => card === id)?.load.kg);
    const loads = planned.filter((kg) => kg !== undefined);
    const [first, last] = [loads[0], loads.at(-1)];
    if (first === undefined || last === undefined || new Set(loads).size < 2) return [];
    const exercise = library.cards.get(id)?.card.title ?? id;
    const values = {
      exercise,
      first: write.mass(first),
      last: write.mass(last),
      weeks: planned.findLastIndex((kg) => kg !== undefined) + 1,
    };
    const { units } = program.clinic;
    const shown = planned.map((kg) => (kg === undefined ? undefined : inUnit(kg, units)));
    return [{ exercise, unit: units, planned: shown, words: words.say("progress.words", values) }];
  });
}
