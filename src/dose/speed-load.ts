/** How fast: the speed of a bout, the seconds it leaves for a distance, and the share of the client's best that is. */
import type { Target } from "../prescription/fields.ts";
import { targetText } from "../prescription/serialise.ts";
import { atMost, ceilTo, floorTo, show, showPercent, tidy } from "../units/rounding.ts";
import { unlessAccepted } from "./accepted.ts";
import { type BestSpeed, topSpeed } from "./capacity.ts";
import { type DoseContext, sayCard, type Work } from "./context.ts";
import { doseRemedies } from "./dose-remedies.ts";
import { feltLoad } from "./felt-load.ts";
import { isMeasured } from "./measures.ts";
import { targetStep } from "./target.ts";
import type { BoutLoad, Loaded, ProvenanceStep, Range } from "./types.ts";

type Aim = Extract<Target, { kind: "speed" | "percent-speed" }>;

/** The slow end of a speed stated as one number: a client by feel and a watch by hand are no closer. Common practice. */
const SLOW_END = 0.95;

/** A top speed is held over no more metres than these. Common practice. */
const HELD_M = 100;

/** A timed run says how fast a run up to so many times as far is. Common practice. */
const AS_FAR = 2;

/**
 * The speed of one bout. A share of the best speed gives a number only where the measure is one of a run
 * like this: timed over the same distance or over half of it at least (from standing a shorter run is slower
 * for the same effort), or a top speed over at most 100 m, then from a running start. Else the share stands
 * in words. Nothing is rounded to the faster side.
 *
 * Faults: those of measures, measure-missing as a warning; pace-unsure, a warning; dose-beyond-measure for
 * a speed above the client's best.
 */
export function speedLoad(context: DoseContext, work: Work): Loaded {
  const { target } = work.stated.dose;
  if (target?.kind === "percent-speed") return ofBest(context, work, target);
  if (target?.kind === "speed") return asStated(context, work, target);
  const words = feltLoad("a speed", work);
  return {
    load: { kind: "speed", words },
    provenance: [{ step: "stated", says: `Left to feel: ${words}.` }],
  };
}

function ofBest(
  context: DoseContext,
  work: Work,
  target: Extract<Aim, { kind: "percent-speed" }>,
): Loaded {
  const share = { low: target.least ?? target.share, high: target.share };
  const says = targetText(target);
  const best = topSpeed(context, work, { what: says, level: "warning" });
  const inWords: Loaded = {
    load: { kind: "speed", share },
    provenance: [targetStep(work, `${says} is asked for, in words`, target.share, "")],
  };
  if (best === undefined) return inWords;
  const fast = floorTo(best.value * target.share * 3.6, 0.1) / 3.6;
  if (fast <= 0) return inWords;
  const far = farOf(work, fast);
  if (far !== undefined && !isLike(best, far)) {
    reportUnlike(context, work, best, far);
    return inWords;
  }
  const exact = best.value * target.share * 3.6;
  const provenance: ProvenanceStep[] = [
    ...best.provenance,
    targetStep(work, `${says} is ${show(exact)} km/h`, exact, "km/h"),
  ];
  if (fast * 3.6 < exact - 1e-9) {
    const value = tidy(fast * 3.6);
    const rounded = `Rounded down to ${show(value)} km/h.`;
    provenance.push({ step: "rounding", says: rounded, value, unit: "km/h" });
  }
  const slow = target.least === undefined ? undefined : best.value * target.least;
  const each = eachOf(work, { fast: best.value * target.share, slow });
  return {
    load: {
      kind: "speed",
      kmH: tidy(fast * 3.6),
      ...(slow !== undefined && { slowKmH: floorTo(slow * 3.6, 0.1) }),
      share,
      ...(each && { eachS: each }),
      ...(each && best.overM === undefined && { runningStart: true }),
    },
    provenance: each ? [...provenance, secondsStep(work, each)] : provenance,
  };
}

function asStated(
  context: DoseContext,
  work: Work,
  target: Extract<Aim, { kind: "speed" }>,
): Loaded {
  const { fast, slow, as } = target;
  // a pace is printed as it is stated, and has no tenths
  const inKmH = (speed: number) =>
    as === "min/km" ? tidy(speed * 3.6) : floorTo(speed * 3.6, 0.1);
  const kmH = inKmH(fast);
  const slowKmH = inKmH(slow);
  const says = targetText(target);
  const best = isMeasured(context, work.exercise, "speed")
    ? topSpeed(context, work, { what: says, level: "warning" })
    : undefined;
  const far = farOf(work, fast);
  const like = best !== undefined && (far === undefined || isLike(best, far));
  if (best && !atMost(fast, best.value)) reportTooFast(context, work, says, best);
  const each = eachOf(work, { fast, slow: slow < fast ? slow : undefined });
  const load: BoutLoad = {
    kind: "speed",
    kmH,
    ...(slow < fast && { slowKmH }),
    ...(like && atMost(fast, best.value) && { share: shareOf(slow, fast, best.value) }),
    ...(each && { eachS: each }),
    ...(as === "min/km" && { asPace: true }),
  };
  const stated = targetStep(work, `${says} is asked for`, kmH, "km/h");
  return { load, provenance: each ? [stated, secondsStep(work, each)] : [stated] };
}

/** Whole percents, up: no client is told that a run is easier than it is. */
const shareOf = (slow: number, fast: number, best: number): Range => ({
  low: ceilTo(slow / best, 0.01),
  high: Math.min(1, ceilTo(fast / best, 0.01)),
});

/** How far one run goes: the distance, or what is covered in the time at this speed. */
function farOf({ stated: { dose } }: Work, speed: number): number | undefined {
  const seconds = dose.time ?? dose.turns?.work;
  return dose.distance ?? (seconds === undefined ? undefined : seconds * speed);
}

function isLike({ overM }: BestSpeed, far: number): boolean {
  if (overM === undefined) return atMost(far, HELD_M);
  return atMost(overM, far) && atMost(far, AS_FAR * overM);
}

/** Seconds for the distance once, the slow end no further off than a watch by hand can tell. */
function eachOf(
  { stated: { dose } }: Work,
  { fast, slow = fast * SLOW_END }: { readonly fast: number; readonly slow: number | undefined },
): Range | undefined {
  if (dose.distance === undefined) return undefined;
  return { low: upwards(dose.distance / fast), high: upwards(dose.distance / slow) };
}

/** Seconds rounded up to what can be read off a watch while running: halves, from 20 s on whole, from 2 min on fives. */
function upwards(seconds: number): number {
  return ceilTo(seconds, seconds < 20 ? 0.5 : seconds < 120 ? 1 : 5);
}

function secondsStep({ stated: { dose } }: Work, { low, high }: Range): ProvenanceStep {
  const span = low === high ? show(low) : `${show(low)} to ${show(high)}`;
  const says = `${show(dose.distance ?? 0)} m in ${span} s, rounded up.`;
  return { step: "rounding", says, value: low, unit: "s" };
}

function reportUnlike(context: DoseContext, work: Work, best: BestSpeed, far: number): void {
  const { card } = work.exercise;
  const measured =
    best.overM === undefined
      ? "a top speed, which nobody holds that long"
      : `a run of ${show(best.overM)} m`;
  context.findings.add(
    {
      code: "pace-unsure",
      cause: card.card.id,
      level: "warning",
      place: () => work.stated.stated.target?.place ?? work.exercise.place,
      say: (weeks) =>
        `${sayCard(card)} is a run of ${show(Math.round(far))} m, and what was measured is ${measured}: no seconds follow from it, and pages say the share in words (${weeks}).`,
      hint: `Time a run of ${show(Math.round(far))} m and add it as a measure (distance, time), or state the speed itself: target: 9-10 km/h.${sayEffort(work)}`,
    },
    work.week,
  );
}

const sayEffort = ({ stated: { dose } }: Work): string =>
  dose.effort === undefined
    ? " State an effort too, so that the client has something to go by."
    : "";

function reportTooFast(context: DoseContext, work: Work, says: string, best: BestSpeed): void {
  const { card } = work.exercise;
  const { level, because } = unlessAccepted(context, "dose-beyond-measure", card.card.id);
  const percent = showPercent(1);
  context.findings.add(
    {
      code: "dose-beyond-measure",
      cause: card.card.id,
      level,
      place: () => work.stated.stated.target?.place ?? work.exercise.place,
      say: (weeks) =>
        `${sayCard(card)} asks for ${says}, faster than the client's best, ${show(best.value * 3.6)} km/h (${weeks}).${because}`,
      hint: `State a slower speed, or a share: at most ${percent} of top speed.`,
      remedies: doseRemedies(context, work, {
        instead: context.easierThan(card),
        accept: "dose-beyond-measure",
      }),
    },
    work.week,
  );
}
