/** A plan written back as its author writes it: every default filled in, and readable again. */
import { serialiseDose } from "../prescription/serialise.ts";
import { tidy } from "../units/rounding.ts";
import { defined, distanceText, massText, speedText, timeText } from "../units/serialise.ts";
import { weekSpanText } from "../units/week-span.ts";
import type { ChangeKind, Measure, Plan, PlanEquipment } from "./schema.ts";

/** The front matter of a plan as plain data; the plan's schema reads it as the same plan. */
export function serialisePlan(plan: Plan): Record<string, unknown> {
  const {
    client,
    measures,
    equipment,
    week,
    leave_out,
    swap,
    add,
    redose,
    distance_growth,
    ...plain
  } = plan;
  return defined({
    ...plain,
    client: defined({ ...client, body_mass: mass(client.body_mass) }),
    measures: measures.map(measureForm),
    equipment: equipment.map(equipmentForm),
    week: defined({
      ...week,
      few_minutes: week.few_minutes === undefined ? undefined : timeText(week.few_minutes),
      free: weekForm(week.free),
      other_weeks: week.other_weeks.map((span) => defined({ ...span, free: weekForm(span.free) })),
      rota:
        week.rota &&
        defined({
          ...week.rota,
          free_on: dayForm(week.rota.free_on),
          free_off: dayForm(week.rota.free_off),
        }),
      events: week.events.map((event) =>
        defined({
          ...event,
          clear_before: event.clear_before === undefined ? undefined : timeText(event.clear_before),
          clear_after: event.clear_after === undefined ? undefined : timeText(event.clear_after),
        }),
      ),
    }),
    distance_growth: distance_growth === undefined ? undefined : `${tidy(distance_growth * 100)} %`,
    leave_out: leave_out.map(changeForm),
    swap: swap.map(changeForm),
    add: add.map(changeForm),
    redose: redose.map(changeForm),
  });
}

type FreeParts = NonNullable<Plan["week"]["free"]["mon"]>;

const weekForm = (free: Plan["week"]["free"]): Record<string, unknown> =>
  Object.fromEntries(Object.entries(free).map(([day, parts]) => [day, dayForm(parts ?? {})]));

const dayForm = (parts: FreeParts): Record<string, string> =>
  Object.fromEntries(
    Object.entries(parts).map(([part, seconds]) => [part, timeText(seconds ?? 0)]),
  );

function changeForm(change: Plan[ChangeKind][number]): Record<string, unknown> {
  const { weeks } = change;
  const dose = "dose" in change ? change.dose : undefined;
  return defined({
    ...change,
    weeks: weeks && weekSpanText(weeks),
    dose: dose && serialiseDose(dose),
  });
}

function measureForm(measure: Measure): Record<string, unknown> {
  switch (measure.test) {
    case "repetitions":
      return { ...measure, load: massText(measure.load) };
    case "hold":
      return { ...measure, load: massText(measure.load), time: timeText(measure.time) };
    case "speed": {
      const { speed, distance, time } = measure;
      return defined({
        ...measure,
        speed: speed === undefined ? undefined : speedText(speed),
        distance: distance === undefined ? undefined : distanceText(distance),
        time: time === undefined ? undefined : timeText(time),
      });
    }
  }
}

function equipmentForm(item: PlanEquipment): unknown {
  if (typeof item === "string") return item;
  const { loads, from, up_to, steps, bar, plates, ...plain } = item;
  return defined({
    ...plain,
    loads: loads?.map(massText),
    from: mass(from),
    up_to: mass(up_to),
    steps: mass(steps),
    bar: mass(bar),
    plates: plates?.map(massText),
  });
}

const mass = (kg: number | undefined): string | undefined =>
  kg === undefined ? undefined : massText(kg);
