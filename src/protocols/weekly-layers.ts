/** What a protocol states of an exercise, week by week, as a layer of its dose over the card's own. */
import type { DoseLayer } from "../prescription/merge.ts";
import { expandWeeks } from "../prescription/week-table.ts";
import type { Path, Source } from "../read/source.ts";
import type { ProtocolExercise } from "./schema.ts";

/**
 * One entry a week of the phase; undefined in weeks without the exercise. `path`: where the exercise
 * stands in the protocol. A field of the week's row stands there, another in the dose for all weeks.
 */
export function weeklyLayers(
  exercise: ProtocolExercise,
  phaseWeeks: number,
  source: Source,
  path: Path,
): readonly (DoseLayer | undefined)[] {
  const { doses, rows } = expandWeeks(exercise, phaseWeeks);
  return doses.map((part, index): DoseLayer | undefined => {
    if (part === undefined) return undefined;
    const key = rows[index];
    const row = key === undefined ? undefined : exercise.weeks?.[key];
    return {
      by: "protocol",
      part,
      placeOf: (field) => {
        if (key !== undefined && row !== undefined && row !== "none" && row[field] !== undefined) {
          return source.at([...path, "weeks", key, field]);
        }
        if (exercise.dose[field] !== undefined) return source.at([...path, "dose", field]);
        return source.at([...path, exercise.rule ? "rule" : "card"]);
      },
    };
  });
}
