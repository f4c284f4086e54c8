/** What may grow in place of the load, where a client's heaviest is too light and the course allows it. */
import type { Edit, Value } from "../edits/edit.ts";
import type { DosePart } from "../prescription/fields.ts";
import { serialiseDose } from "../prescription/serialise.ts";
import type { Program } from "../program/program.ts";
import { atMost } from "../units/rounding.ts";
import { spansOf, weekSpanText } from "../units/week-span.ts";
import { bodyPart, oneRm } from "./capacity.ts";
import type { DoseContext, Work } from "./context.ts";
import { isMeasured } from "./measures.ts";
import { oneRmFactor } from "./one-rm.ts";
import { repetitionSeconds } from "./time.ts";

/** A change of the dose in words, with the edits that state it in the weeks that need it. */
export interface Growth {
  readonly sentence: string;
  readonly edits: readonly Edit[];
}

/** In reserve where neither target nor effort says how many: near to the last, and still in good form. Common practice. */
const RESERVE = 2;

/**
 * More repetitions with the heaviest, as near to the last as is asked and no more than the course allows;
 * a slower tempo with it. None for what the course does not let grow.
 */
export function growth(
  context: DoseContext,
  work: Work,
  heaviestKg: number,
  weeks: readonly number[],
): Growth[] {
  const { grows, card } = work.exercise;
  const { tempo, reps } = work.stated.dose;
  const { id } = card.card;
  const load = { target: { kind: "load", kg: heaviestKg } } as const;
  const kg = context.mass(heaviestKg);
  const most = Math.max(...(reps ?? []).map(({ high }) => high), 0);
  const more = reps?.length === 1 ? moreReps(context, work, heaviestKg) : undefined;
  const fast = context.program.clinic.dosing.fast_part;
  const slower =
    grows.tempo !== undefined &&
    (tempo === undefined || repetitionSeconds(tempo, fast) < repetitionSeconds(grows.tempo, fast));
  return [
    ...(more !== undefined && more > most
      ? [
          {
            sentence: `Sets of ${more} with ${kg} for ${id}; the course lets repetitions grow to ${grows.reps}.`,
            edits: redoses(context.program, id, weeks, {
              ...load,
              reps: [{ low: more, high: more }],
            }),
          },
        ]
      : []),
    ...(slower
      ? [
          {
            sentence: `A slower tempo with ${kg} for ${id}, as the course allows.`,
            edits: redoses(context.program, id, weeks, { ...load, tempo: grows.tempo }),
          },
        ]
      : []),
  ];
}

/**
 * So many repetitions as leave what is asked in reserve, by the measured 1RM; where the client cannot be
 * known to do fewer, as many as the course allows.
 */
function moreReps(context: DoseContext, work: Work, heaviestKg: number): number | undefined {
  const { reps: limit } = work.exercise.grows;
  const body = bodyPart(context, work.exercise.card);
  if (limit === undefined || body === undefined) return undefined;
  if (!isMeasured(context, work.exercise, "repetitions")) return limit;
  const max = oneRm(context, work, { what: "what the client can do", level: "warning" });
  if (max === undefined) return limit;
  const { target, effort } = work.stated.dose;
  const inReserve =
    target?.kind === "rm"
      ? 0
      : target?.kind === "reserve"
        ? target.reps
        : effort === undefined
          ? RESERVE
          : 10 - effort;
  const formula = context.program.clinic.dosing.one_rm;
  let reps = 0;
  while (reps < limit) {
    const factor = oneRmFactor(formula, reps + 1 + inReserve);
    if (factor === undefined || !atMost(heaviestKg + body, max.value / factor)) break;
    reps += 1;
  }
  return reps;
}

/** The dose in these weeks of the calendar, an entry for each run of weeks of a phase. */
function redoses(
  { courseWeeks, phases }: Program,
  card: string,
  weeks: readonly number[],
  dose: DosePart,
): Edit[] {
  return phases.flatMap((phase) => {
    const own = phase.exercises.filter((one) => one.card.card.id === card);
    const meant = weeks.flatMap((week) => {
      const course = courseWeeks[week - 1];
      const isHere = own.some(({ doses }) => doses[week - phase.firstWeek] !== undefined);
      return isHere && course !== undefined ? [course - phase.courseWeek + 1] : [];
    });
    return spansOf(meant).map((span) => ({
      kind: "append" as const,
      path: ["redose"],
      value: {
        card,
        phase: phase.id,
        weeks: weekSpanText(span),
        why: null,
        dose: serialiseDose(dose) as Record<string, Value>,
      },
    }));
  });
}
