/** One exercise in one session: every number of it, and the provenance of each. */

import type { DosePart } from "../prescription/fields.ts";
import type { ProgramPhase } from "../program/program.ts";
import { counted } from "../units/counted.ts";
import { type Tempo, tempoText } from "../units/quantities.ts";
import { show } from "../units/rounding.ts";
import { amountsOf } from "./amounts.ts";
import { loadOf } from "./bout-load.ts";
import { type DoseContext, sayCard, statedStep, type Work } from "./context.ts";
import { frequencyOf, sessionsInWeek } from "./frequency.ts";
import { checkHeavyEnough } from "./heavy-enough.ts";
import { checkServed } from "./served.ts";
import { boutSums } from "./sums.ts";
import { metresPerSecond, repetitionSeconds } from "./time.ts";
import type { Bout, Provenance, ProvenanceStep } from "./types.ts";

/** The bout of an exercise in a week of the course; `phase` is the phase it stands in. */
export function boutOf(
  context: DoseContext,
  phase: Pick<ProgramPhase, "id" | "firstWeek">,
  work: Work,
): Bout {
  const { exercise, stated, week } = work;
  const { dose } = stated;
  const amounts = amountsOf(context, work);
  const { load, provenance: loadProvenance, next } = loadOf(context, work, amounts.mostReps);
  const leasts = (amounts.reps ?? []).map(({ low }) => low);
  checkServed(context, work, load, {
    leastReps: leasts.length > 0 ? Math.max(...leasts) : undefined,
    holdS: amounts.holdS,
  });
  checkHeavyEnough(context, work, load, amounts.mostReps);
  const { frequency, provenance: frequencyProvenance } = frequencyOf(context, work);
  const sides = exercise.side === "each" ? 2 : 1;
  checkTempo(context, work);
  const numbers = {
    sets: amounts.sets,
    reps: amounts.reps,
    holdS: amounts.holdS,
    timeS: dose.time,
    distanceM: dose.distance,
    turns: dose.turns,
    tempo: dose.tempo,
    restS: dose.rest,
    restRepsS: dose.rest_reps,
  };
  const speed = metresPerSecond(load.slowKmH ?? load.kmH);
  const { dosing, units } = context.program.clinic;
  const sums = boutSums({ ...numbers, sides, kg: load.kg, speed }, dosing, units);
  const provenance: Provenance = {
    ...amounts.provenance,
    ...statedProvenance(work),
    frequency: frequencyProvenance,
    ...(loadProvenance.length > 0 && { load_kg: loadProvenance }),
    ...(next && { next_load_kg: next }),
    ...sums.provenance,
  };
  return {
    week,
    weekOfPhase: week - phase.firstWeek + 1,
    phase: phase.id,
    key: exercise.key,
    card: exercise.card.card.id,
    side: exercise.side,
    sides,
    main: exercise.main,
    ...numbers,
    ...(amounts.usualSets !== undefined && { usualSets: amounts.usualSets }),
    effort: dose.effort,
    frequency,
    sessions: sessionsInWeek(frequency, weekSinceAway(context, week)),
    load,
    repsTotal: sums.repsTotal,
    kgTotal: sums.kgTotal,
    tensionS: sums.tensionS,
    workS: sums.workS,
    clockS: sums.clockS,
    minutes: sums.minutes,
    provenance,
  };
}

/** The week counted from the last week away, after which what is done every so many days begins anew. */
function weekSinceAway({ program }: DoseContext, week: number): number {
  return week - Math.max(0, ...program.awayWeeks.filter((away) => away < week));
}

/** The fields that pass through as stated: field of the dose, name in the provenance, words, unit. */
const PLAIN = [
  ["time", "time_s", "Work for", "s"],
  ["distance", "distance_m", "A distance of", "m"],
  ["rest", "rest_s", "Rest between sets of", "s"],
  ["rest_reps", "rest_reps_s", "Rest between repetitions of", "s"],
] as const;

function statedProvenance({ stated: { dose, stated } }: Work): Provenance {
  const provenance: { -readonly [K in keyof Provenance]: Provenance[K] } = {};
  for (const [field, name, words, unit] of PLAIN) {
    const value = dose[field];
    if (value !== undefined) {
      provenance[name] = [
        statedStep(stated[field], `${words} ${show(value)} ${unit}`, value, unit),
      ];
    }
  }
  if (dose.turns) {
    const { work, easy, times } = dose.turns;
    const says = `${counted(times, "turn")} of ${show(work)} s of work and ${show(easy)} s easy`;
    provenance.turns = [statedStep(stated.turns, says, times)];
  }
  if (dose.tempo) provenance.tempo = [tempoStep(dose.tempo, stated.tempo)];
  if (dose.effort !== undefined) {
    const says = `An effort of ${show(dose.effort)} out of 10`;
    provenance.effort = [statedStep(stated.effort, says, dose.effort)];
  }
  return provenance;
}

type Stated = Work["stated"]["stated"][keyof DosePart];

function tempoStep(tempo: Tempo, statement: Stated): ProvenanceStep {
  const { lower, bottom, lift, top } = tempo;
  const says = `Tempo ${tempoText(tempo)}: lowering ${lower}, pause ${bottom}, lifting ${lift}, pause ${top}`;
  return statedStep(statement, says);
}

/** Fault: wrong-value for a tempo in which nothing takes any time. */
function checkTempo(context: DoseContext, work: Work): void {
  const { tempo } = work.stated.dose;
  if (!tempo || repetitionSeconds(tempo, 1) > 0) return;
  context.findings.add(
    {
      code: "wrong-value",
      cause: `${work.exercise.card.card.id} tempo`,
      level: "error",
      place: () => work.stated.stated.tempo?.place ?? work.exercise.place,
      say: (weeks) =>
        `The tempo ${tempoText(tempo)} of ${sayCard(work.exercise.card)} takes no time (${weeks}).`,
      hint: "Give seconds for lowering, pause, lifting and pause, such as 3-0-3-0; X for as fast as is safe.",
    },
    work.week,
  );
}
