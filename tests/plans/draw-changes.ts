/** Draws what an invented client does differently: left out, swapped, added, dosed anew, for all weeks or for some. */
import { otherDose } from "../surfaces/client-changes.ts";
import type { Random } from "../surfaces/random.ts";
import type { DoseText } from "../surfaces/shipped.ts";
import { askedWeeks, type Course, phasesOf } from "./asked.ts";
import { heldFlags, ruledOut, rulingIn } from "./fits.ts";
import { ALL_CARDS, secondsOf, type WholeCard, wholeCard } from "./library.ts";
import type { PlanText, SpanText } from "./plan-text.ts";

const WHY = "Agreed with the client.";

/** Some weeks of a phase that has the card, the phase, or everything. */
function spanOf(card: string, plan: PlanText, course: Course, random: Random): SpanText {
  const phases = phasesOf(plan, course).filter(({ phase }) =>
    phase.exercises.some((one) => one.card === card),
  );
  const { phase, follows } = random.one(phases);
  if (random.chance(0.45)) return {};
  if (random.chance(0.4)) return { phase: phase.id };
  return { ...(phases.length > 1 && { phase: phase.id }), weeks: weeksIn(follows.length, random) };
}

function weeksIn(length: number, random: Random): string {
  const first = random.whole(1, length);
  const last = random.whole(first, length);
  return first === last ? String(first) : `${first}-${last}`;
}

/** Cards that could stand in the place of one: those it names, else of its region. */
function others(
  card: WholeCard,
  taken: ReadonlySet<string>,
  flags: readonly string[],
): WholeCard[] {
  const { alternatives = [], easier = [], harder = [], region } = card;
  const linked = [...alternatives, ...[...easier, ...harder].map(({ to }) => to)].map(wholeCard);
  const near = [...ALL_CARDS.values()].filter((one) => one.region === region);
  const fitting = (list: readonly WholeCard[]) =>
    list.filter((one) => !taken.has(one.id) && ruledOut(one, flags) === undefined);
  const first = fitting(linked);
  return first.length > 0 ? first : fitting(near);
}

const namedIn = (course: Course): Set<string> =>
  new Set(course.phases.flatMap(({ exercises }) => exercises.map(({ card }) => card)));

/** Leaves out or swaps what a flag rules out, in the phases in which it does; at times it is overlooked. */
export function answered(plan: PlanText, course: Course, random: Random): PlanText {
  const flags = heldFlags(plan, course);
  const found = new Map(
    askedWeeks(plan, course).flatMap(({ number, entries }) =>
      entries
        .filter(({ card }) => ruledOut(wholeCard(card), rulingIn(flags, number)) !== undefined)
        .map(({ key, card, phase }) => [key, { card, phase, why: WHY }] as const),
    ),
  );
  const answers = [...found.values()].filter(() => random.chance(0.96));
  let now = plan;
  for (const one of answers) {
    const could = others(wholeCard(one.card), takenIn(now, course), flagsOf(plan));
    now =
      could.length > 0 && random.chance(0.5)
        ? { ...now, swap: [...now.swap, { ...one, to: random.one(could).id }] }
        : { ...now, leave_out: [...now.leave_out, one] };
  }
  const empty = askedWeeks(now, course).every(({ entries }) => entries.length === 0);
  return empty ? { ...plan, flags: [] } : now;
}

/** What the client does differently by choice. */
export function changed(plan: PlanText, course: Course, random: Random): PlanText {
  const steps = [leftOut, swapped, added, dosedAnew];
  return steps.reduce((now, step) => step(now, course, random), plan);
}

/** Cards of the course that no change of the plan is about yet. */
const untouched = ({ leave_out, swap }: PlanText, course: Course): string[] =>
  [...namedIn(course)].filter((card) => ![...leave_out, ...swap].some((one) => one.card === card));

const flagsOf = ({ flags }: PlanText): string[] =>
  flags.map((one) => (typeof one === "string" ? one : one.flag));

function leftOut(plan: PlanText, course: Course, random: Random): PlanText {
  const open = untouched(plan, course);
  if (!random.chance(0.25) || open.length < 2) return plan;
  const card = random.one(open);
  const more = { card, ...spanOf(card, plan, course, random), why: WHY };
  return { ...plan, leave_out: [...plan.leave_out, more] };
}

function swapped(plan: PlanText, course: Course, random: Random): PlanText {
  const open = untouched(plan, course);
  if (!random.chance(0.3) || open.length === 0) return plan;
  const card = random.one(open);
  const could = others(wholeCard(card), takenIn(plan, course), flagsOf(plan));
  if (could.length === 0) return plan;
  const dose = random.chance(0.3) ? { dose: { rest: "90 s" } } : {};
  const span = spanOf(card, plan, course, random);
  const more = { card, to: random.one(could).id, ...span, why: WHY, ...dose };
  return { ...plan, swap: [...plan.swap, more] };
}

/** Cards that the plan has already. */
const takenIn = ({ swap, add }: PlanText, course: Course): Set<string> =>
  new Set([...namedIn(course), ...swap.map(({ to }) => to), ...add.map(({ card }) => card)]);

function added(plan: PlanText, course: Course, random: Random): PlanText {
  if (!random.chance(0.4)) return plan;
  const taken = takenIn(plan, course);
  const near = others(wholeCard(random.one([...namedIn(course)])), taken, flagsOf(plan));
  const all = [...ALL_CARDS.values()].filter(({ id }) => !taken.has(id));
  const card = random.one(near.length > 0 && random.chance(0.8) ? near : all);
  const { phase, follows } = random.one(phasesOf(plan, course));
  const more = {
    card: card.id,
    ...(random.chance(0.6) && { phase: phase.id }),
    ...(random.chance(0.3) && { phase: phase.id, weeks: weeksIn(follows.length, random) }),
    why: WHY,
    dose: random.chance(0.7) ? howOften(card, random) : {},
  };
  const now = { ...plan, add: [...plan.add, more] };
  return random.chance(0.3) ? added(now, course, random) : now;
}

function dosedAnew(plan: PlanText, course: Course, random: Random): PlanText {
  const open = untouched(plan, course);
  const cards = random.some(open, random.chance(0.4) ? random.whole(1, 2) : 0);
  const redose = cards.map((card) => {
    const dose = random.chance(0.6)
      ? howOften(wholeCard(card), random)
      : otherDose(card, course, random);
    return { card, ...spanOf(card, plan, course, random), why: WHY, dose };
  });
  return { ...plan, redose: [...plan.redose, ...redose] };
}

/** How often, as the card's tissue bears it; at times more. */
function howOften({ recovery }: WholeCard, random: Random): DoseText {
  const days = Math.ceil(secondsOf(recovery) / 86_400);
  const rested = random.chance(0.05) ? 1 : days;
  const often: DoseText[] = [
    { per_week: random.whole(1, rested > 1 ? 2 : 3) },
    { every: `${random.whole(Math.max(2, rested), 5)} days` },
    { every: `${Math.max(2, rested)} days` },
    { effort: random.whole(2, 9), per_week: random.whole(1, 2) },
    ...(rested > 1 ? [] : [{ per_day: 1 }]),
  ];
  return random.one(often);
}

/** A phase that takes longer. */
export function extended(course: Course, random: Random): PlanText["extend"] {
  if (!random.chance(0.12)) return [];
  const { id, weeks } = random.one(course.phases);
  return [
    {
      phase: id,
      weeks: random.whole(1, 3),
      ...(random.chance(0.4) && { repeat_week: random.whole(1, weeks) }),
      why: WHY,
    },
  ];
}
