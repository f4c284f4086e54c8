/** Warns of weeks in which the work of one tissue, in one quality, grows faster than the clinic's limit. */
import { DoseContext } from "../dose/context.ts";
import type { Fault } from "../faults/fault.ts";
import type { Program } from "../program/program.ts";
import { showPercent } from "../units/rounding.ts";
import type { Change } from "./growth.ts";
import type { Schedule } from "./schedule.ts";
import { type TissueWork, tissueWork } from "./tissue-work.ts";

const MEASURE = {
  load: "work (effort × minutes at work)",
  minutes: "minutes at work (not every exercise states an effort)",
} as const;

/**
 * ramp-steep, a warning, once for each main tissue and quality: like is compared with like, so that an
 * hour's walk hides no sprint. Where a kind of work begins there is nothing to compare it with.
 */
export function rampFaults(program: Program, schedule: Schedule): Fault[] {
  const context = new DoseContext(program, undefined);
  for (const work of tissueWork(program, schedule)) addFaults(context, schedule, work);
  return context.findings.faults((place) => context.frameOf(place));
}

/** Whether a change is more than the clinic's limit allows; rounding is no growth. */
export function isSteep(change: Change | undefined, { clinic }: Program): boolean {
  return change !== undefined && change.share > clinic.limits.week_growth + 1e-9;
}

function addFaults(context: DoseContext, { weeks }: Schedule, work: TissueWork): void {
  const { program } = context;
  for (const [index, { number }] of weeks.entries()) {
    const week = work.weeks[index];
    const change = week?.change;
    if (!week || !change || !isSteep(change, program)) continue;
    context.findings.add(
      {
        code: "ramp-steep",
        cause: `${work.tissue} ${work.trains}`,
        level: "warning",
        weight: change.share,
        place: () => context.placeOf(week.bouts[0]),
        say: (told) =>
          `The ${MEASURE[change.of]} of the ${work.tissue}, ${work.trains}, grows by ${grown(change, number)} (${told}); the clinic's limit is ${showPercent(program.clinic.limits.week_growth)}.`,
        hint: "Spread the growth over more weeks. This describes the work; it does not forecast an injury.",
      },
      number,
    );
  }
}

/** "up to 40 % from week 5 to week 6", or over weeks without work. */
function grown({ share, since }: Change, week: number): string {
  const gap = week - since - 1;
  const without = gap === 0 ? "" : `, over ${gap === 1 ? "a week" : `${gap} weeks`} without it`;
  return `up to ${showPercent(share)} from week ${since} to week ${week}${without}`;
}
