/** Draws who an invented client is: age, health flags with their ends, things at home, measures. */
import { addDays } from "../surfaces/calendar-days.ts";
import { equipmentFor, measuresFor } from "../surfaces/client-kit.ts";
import type { Random } from "../surfaces/random.ts";
import { askedWeeks, type Course, courseWeeks } from "./asked.ts";
import { ALL_CARDS, FLAGS, THINGS, wholeCard } from "./library.ts";
import type { FlagText, PlanText } from "./plan-text.ts";

/** Day of birth: unknown, grown up, or still growing. */
export function bornOf(starts: string, random: Random): string | undefined {
  if (random.chance(0.3)) return undefined;
  const years = random.chance(0.1) ? random.whole(13, 17) : random.whole(18, 85);
  return `${Number(starts.slice(0, 4)) - years}-0${random.whole(1, 9)}-1${random.whole(0, 9)}`;
}

/** Flags, most of them such as matter near the course: on its cards, or on their ladders. */
export function flagsOf(plan: PlanText, course: Course, random: Random): FlagText[] {
  if (random.chance(0.4)) return [];
  const named = new Set(
    course.phases.flatMap(({ exercises }) => exercises.map(({ card }) => card)),
  );
  const near = [...ALL_CARDS.values()].filter(
    ({ id, easier = [], harder = [] }) =>
      named.has(id) || [...easier, ...harder].some(({ to }) => named.has(to)),
  );
  const own = new Set(
    near.flatMap(({ id, not_for = [], care = [] }) => [
      ...care.map(({ flag }) => flag),
      // what rules the ladder out beside the course more often than the course itself
      ...(named.has(id) && !random.chance(0.3) ? [] : not_for.map(({ flag }) => flag)),
    ]),
  );
  const wanted = random.whole(1, 3);
  const flags =
    random.chance(0.8) && own.size > 0 ? random.some([...own], wanted) : random.some(FLAGS, wanted);
  return flags.map((flag) => {
    if (!random.chance(0.45)) return flag;
    const moment = momentOf(plan, course, random);
    const review = random.chance(0.4);
    return { flag, until: review ? (random.chance(0.2) ? "review" : { review: moment }) : moment };
  });
}

function momentOf(plan: PlanText, course: Course, random: Random) {
  const weeks = courseWeeks(plan, course);
  return random.one([
    { week: random.whole(1, weeks) },
    { phase: random.one(course.phases).id },
    addDays(plan.starts, random.whole(-7, 7 * weeks)),
  ]);
}

/** What the plan's exercises need, at times with one thing less, and things that only others need. */
export function thingsOf(plan: PlanText, course: Course, random: Random): PlanText["equipment"] {
  const needed = equipmentFor(cardsOf(plan, course), "kg", random) as PlanText["equipment"];
  const kept = random.chance(0.06) ? random.some(needed, needed.length - 1) : needed;
  const have = new Set(needed.map((one) => (typeof one === "string" ? one : one.have)));
  const others = THINGS.filter((thing) => !have.has(thing));
  return [...kept, ...(random.chance(0.35) ? random.some(others, random.whole(1, 3)) : [])];
}

/** What was measured: clients strong enough for the loads that there are. */
export function measuresOf(plan: PlanText, course: Course, random: Random): unknown[] {
  const before = addDays(plan.starts, -3);
  const measures = measuresFor(cardsOf(plan, course), plan.side, before, "kg", random);
  return (measures as Readonly<Record<string, unknown>>[]).map((one) => {
    const kg = /^(\d+) kg$/.exec(String(one.load ?? ""))?.[1];
    const leg = kg !== undefined && wholeCard(String(one.card)).region !== "shoulder";
    return leg ? { ...one, load: `${Number(kg) + 25} kg` } : one;
  });
}

/** Every card that the plan asks for. */
export const cardsOf = (plan: PlanText, course: Course) =>
  [
    ...new Set(askedWeeks(plan, course).flatMap(({ entries }) => entries.map(({ card }) => card))),
  ].map(wholeCard);
