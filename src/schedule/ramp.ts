/** Warns of weeks whose work grows faster than the clinic's limit, on the whole and tissue by tissue. */
import { DoseContext } from "../dose/context.ts";
import type { Bout } from "../dose/types.ts";
import type { Fault } from "../faults/fault.ts";
import type { Program } from "../program/program.ts";
import { showPercent } from "../units/rounding.ts";
import type { Schedule } from "./schedule.ts";
import { boutsIn, type Change, changesOf } from "./week-loads.ts";

const MEASURE = {
  load: "planned load (effort × minutes, rests included)",
  minutes: "time (minutes, rests included; not every exercise states an effort)",
} as const;

/**
 * ramp-steep, a warning, once for all exercises together and once for each tissue that an exercise
 * loads first. A tissue is told of only in weeks in which it grows by more than the limit above what
 * was told of the whole: a week with one more day is one warning, not one for each tissue.
 */
export function rampFaults(program: Program, schedule: Schedule): Fault[] {
  const context = new DoseContext(program, undefined);
  const limit = program.clinic.limits.week_growth;
  const tissueOf = ({ card }: Bout) => context.cardOf(card)?.card.tissues[0];
  const bouts = schedule.weeks.flatMap(boutsIn);
  const tissues = [...new Set(bouts.flatMap((bout) => tissueOf(bout) ?? []))];
  const ramp = { context, schedule, limit };
  const whole = changesOf(schedule, () => true).map((change) => change?.share ?? 0);
  const one = tissues.length === 1 && bouts.every((bout) => tissueOf(bout) !== undefined);
  if (!one) add(ramp, "all exercises together", () => true, []);
  for (const tissue of tissues) {
    add(ramp, `the ${tissue}`, (bout) => tissueOf(bout) === tissue, one ? [] : whole);
  }
  return context.findings.faults((place) => context.frameOf(place));
}

interface Ramp {
  readonly context: DoseContext;
  readonly schedule: Schedule;
  readonly limit: number;
}

/** `told`: the growth of the whole, week by week, that is told already where it is over the limit. */
function add(
  { context, schedule, limit }: Ramp,
  what: string,
  counts: (bout: Bout) => boolean,
  told: readonly number[],
): void {
  const over = (share: number, than: number) => share > than + limit + 1e-9;
  for (const [index, change] of changesOf(schedule, counts).entries()) {
    const week = schedule.weeks[index];
    const known = told[index] ?? 0;
    if (!week || !change || !over(change.share, over(known, 0) ? known : 0)) continue;
    context.findings.add(
      {
        code: "ramp-steep",
        cause: what,
        level: "warning",
        weight: change.share,
        place: () => placeOf(context, boutsIn(week).find(counts)),
        say: (weeks) =>
          `The ${MEASURE[change.of]} of ${what} grows by ${grown(change, week.number)} (${weeks}); the clinic's limit is ${showPercent(limit)}.`,
        hint: "Spread the growth over more weeks. This describes the work; it does not forecast an injury.",
      },
      week.number,
    );
  }
}

/** "up to 40 % from week 5 to week 6", or over weeks without work. */
function grown({ share, since }: Change, week: number): string {
  const gap = week - since - 1;
  const without = gap === 0 ? "" : `, over ${gap === 1 ? "a week" : `${gap} weeks`} without it`;
  return `up to ${showPercent(share)} from week ${since} to week ${week}${without}`;
}

function placeOf({ program }: DoseContext, bout: Bout | undefined) {
  const all = program.phases.flatMap((phase) => phase.exercises);
  return all.find(({ key }) => key === bout?.key)?.place ?? program.plan.source.at(["protocol"]);
}
