/** A plan that is printed and read back is the same plan, whatever stands in it. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { stringify } from "yaml";
import { readPlan } from "../../src/plan/read-plan.ts";
import type { Plan } from "../../src/plan/schema.ts";
import { serialisePlan } from "../../src/plan/serialise.ts";
import { type DosePart, dosePart } from "../../src/prescription/fields.ts";
import { serialiseDose } from "../../src/prescription/serialise.ts";
import { PARTS, WEEKDAYS } from "../../src/units/day-parts.ts";
import { DEMO, demoClinic, worldWith } from "../support/world.ts";

const { words } = demoClinic().cards.library;
const FILE = `${DEMO}/printed.md`;

function read(form: unknown, note = "Dear all,"): Plan | undefined {
  const text = `---\n${stringify(form, { aliasDuplicateObjects: false })}---\n\n${note}\n`;
  const { plan, faults } = readPlan(worldWith({ [FILE]: text }), FILE, words);
  const errors = faults.filter(({ level }) => level === "error");
  if (errors.length > 0) throw new Error(errors.map(({ message }) => message).join("\n"));
  return plan?.value;
}

const seconds = fc.integer({ min: 1, max: 200_000 });
const kg = fc.integer({ min: 0, max: 4000 }).map((quarters) => quarters / 8);
const tempoPart = fc.oneof(fc.integer({ min: 0, max: 20 }), fc.constant("X" as const));
const share = fc.integer({ min: 1, max: 100 }).map((percent) => percent / 100);
const reps = fc
  .tuple(fc.integer({ min: 1, max: 100 }), fc.integer({ min: 0, max: 100 }))
  .map(([low, more]) => ({ low, high: low + more }));

const dose: fc.Arbitrary<DosePart> = fc.record(
  {
    sets: fc.integer({ min: 1, max: 20 }),
    reps: fc.oneof(
      reps.map((one) => [one]),
      fc.array(reps, { minLength: 2, maxLength: 6 }),
    ),
    hold: seconds,
    time: seconds,
    distance: fc.integer({ min: 1, max: 5000 }),
    tempo: fc.record({ lower: tempoPart, bottom: tempoPart, lift: tempoPart, top: tempoPart }),
    rest: seconds,
    rest_reps: seconds,
    effort: fc.integer({ min: 0, max: 20 }).map((half) => half / 2),
    target: fc.oneof(
      fc.integer({ min: 1, max: 30 }).map((n) => ({ kind: "rm" as const, reps: n })),
      fc.integer({ min: 0, max: 9 }).map((n) => ({ kind: "reserve" as const, reps: n })),
      share.map((part) => ({ kind: "percent-1rm" as const, share: part })),
      share.map((part) => ({ kind: "percent-hold" as const, share: part })),
      share.map((part) => ({ kind: "percent-reps" as const, share: part })),
      share.map((part) => ({ kind: "percent-speed" as const, share: part })),
      kg.map((load) => ({ kind: "load" as const, kg: load })),
      fc.integer({ min: 1, max: 8 }).map((level) => ({ kind: "band" as const, level })),
    ),
    every: fc.integer({ min: 2, max: 7 }),
  },
  { requiredKeys: [] },
);

const line = fc
  .string({ minLength: 1, maxLength: 60, unit: "grapheme" })
  .map((text) => text.replace(/[\r\n\u0085\u2028\u2029]/g, " ").trim())
  .filter((text) => text !== "");
const day = fc.constantFrom(...WEEKDAYS);
const date = fc.integer({ min: 1, max: 28 }).map((n) => `2026-10-${String(n).padStart(2, "0")}`);

const freeParts = fc.dictionary(fc.constantFrom(...PARTS), seconds, {
  minKeys: 1,
  noNullPrototype: true,
});
const free = fc.dictionary(day, freeParts, { minKeys: 1, noNullPrototype: true });

const moment = fc.oneof(
  date,
  fc.record({ week: fc.integer({ min: 1, max: 104 }) }),
  fc.record({ phase: fc.constant("heavy-slow") }),
);
const ending = (flag: string) =>
  fc.record({
    flag: fc.constant(flag),
    until: fc.oneof(fc.constant("review" as const), moment, fc.record({ review: moment })),
  });

const plan: fc.Arbitrary<Plan> = fc.record({
  id: fc.constant("printed"),
  client: fc.record(
    { name: line, reference: line, born: fc.constant("1980-02-29"), body_mass: kg },
    { requiredKeys: ["name", "reference"] },
  ),
  clinician: line,
  protocol: fc.constant("achilles-heavy-slow-resistance"),
  starts: fc.constant("2026-11-30"),
  side: fc.constantFrom("left", "right", "both"),
  stage: line,
  irritability: fc.constantFrom("low", "moderate", "high"),
  findings: fc.array(line, { maxLength: 3 }),
  accept: fc.array(
    fc.record({
      code: fc.constantFrom(
        "load-short" as const,
        "load-light" as const,
        "dose-beyond-measure" as const,
      ),
      card: fc.constant("calf-stretch"),
      why: line,
    }),
    { maxLength: 2 },
  ),
  extend: fc.array(
    fc.record(
      {
        phase: fc.constant("heavy-slow"),
        weeks: fc.integer({ min: 1, max: 26 }),
        repeat_week: fc.integer({ min: 1, max: 52 }),
        why: line,
      },
      { requiredKeys: ["phase", "weeks", "why"] },
    ),
    { maxLength: 2 },
  ),
  flags: fc
    .subarray(Object.keys(words.flags).slice(0, 6))
    .chain((flags) => fc.tuple(...flags.map((flag) => fc.oneof(fc.constant(flag), ending(flag))))),
  goals: fc.array(
    fc.record({
      what: line,
      now: fc.integer({ min: 0, max: 4 }),
      want: fc.integer({ min: 5, max: 10 }),
      on: date,
    }),
    { minLength: 1, maxLength: 3 },
  ),
  measures: fc.array(
    fc.oneof(
      fc.record({
        test: fc.constant("repetitions" as const),
        card: fc.constant("calf-stretch"),
        side: fc.constantFrom("left" as const, "both" as const),
        load: kg,
        reps: fc.integer({ min: 1, max: 100 }),
        on: date,
      }),
      fc.record({
        test: fc.constant("hold" as const),
        card: fc.constant("calf-stretch"),
        side: fc.constant("right" as const),
        load: kg,
        time: seconds,
        on: date,
      }),
      fc.record({
        test: fc.constant("speed" as const),
        card: fc.constant("calf-stretch"),
        speed: fc.integer({ min: 1, max: 80 }).map((n) => n / 8),
        on: date,
      }),
    ),
    { maxLength: 4 },
  ),
  equipment: fc.array(
    fc.oneof(
      fc.constantFrom("step", "wall"),
      fc.record({
        have: fc.constant("dumbbells"),
        loads: fc.array(kg, { minLength: 1, maxLength: 5 }),
      }),
      fc.record({ have: fc.constant("barbell"), bar: kg, plates: fc.array(kg, { maxLength: 4 }) }),
      fc.record({
        have: fc.constant("band"),
        levels: fc.array(fc.integer({ min: 1, max: 8 }), { maxLength: 4 }),
      }),
    ),
    { maxLength: 5 },
  ),
  week: fc.record({
    free,
    away: fc.array(
      fc.oneof(
        date,
        fc.record({
          from: fc.constant("2026-12-24"),
          to: fc.constant("2026-12-26"),
          // biome-ignore lint/suspicious/noThenProperty: the field of the plan
          then: fc.constantFrom("shift" as const, "skip" as const),
        }),
      ),
      { maxLength: 3 },
    ),
    events: fc.array(
      fc.record(
        {
          what: line,
          day,
          part: fc.constantFrom(...PARTS),
          hard: fc.boolean(),
          tissues: fc.constant(["calf"]),
          from: fc.constant("2026-10-01"),
          until: date,
          clear_before: seconds,
          clear_after: seconds,
          blocks: fc.boolean(),
        },
        { requiredKeys: ["what", "day", "part", "hard", "tissues", "blocks"] },
      ),
      { maxLength: 3 },
    ),
    other_weeks: fc.array(
      fc.record(
        { from: date, until: fc.constant("2026-11-20"), free },
        { requiredKeys: ["from", "free"] },
      ),
      { maxLength: 2 },
    ),
    rota: fc.option(
      fc.record(
        {
          on: fc.integer({ min: 1, max: 28 }),
          off: fc.integer({ min: 1, max: 28 }),
          from: date,
          until: fc.constant("2026-11-20"),
          free_on: freeParts,
          free_off: freeParts,
          hard_on_days_off: fc.boolean(),
        },
        { requiredKeys: ["on", "off", "from", "free_on", "free_off", "hard_on_days_off"] },
      ),
      { nil: undefined },
    ),
    prefer: fc.uniqueArray(day),
    hours: fc.constant({ morning: "06:30", midday: "12:00", evening: "20:15" }),
  }),
  my_plan: fc.record({
    when: line,
    where: line,
    if_then: fc.array(fc.record({ if: line, do: line }), { maxLength: 2 }),
  }),
  leave_out: fc.array(fc.record({ card: fc.constant("calf-stretch"), why: line }), {
    maxLength: 2,
  }),
  swap: fc.array(
    fc.record(
      { card: fc.constant("a"), to: fc.constant("b"), why: line, dose },
      { requiredKeys: ["card", "to", "why"] },
    ),
    { maxLength: 2 },
  ),
  add: fc.array(
    fc.record(
      { card: fc.constant("a"), weeks: fc.constant({ first: 2, last: 5 }), why: line, dose },
      { requiredKeys: ["card", "why", "dose"] },
    ),
    { maxLength: 2 },
  ),
  redose: fc.array(
    fc.record({ card: fc.constant("a"), phase: fc.constant("p"), why: line, dose }),
    { maxLength: 2 },
  ),
});

describe("reading back what was printed", () => {
  test("any part of a dose", () => {
    fc.assert(
      fc.property(dose, (part) => {
        expect(dosePart.parse(serialiseDose(part))).toEqual(part);
      }),
      { numRuns: 300 },
    );
  });

  test("any plan, through YAML and the plan reader", () => {
    fc.assert(
      fc.property(plan, (value) => {
        expect(read(serialisePlan(value))).toEqual(value);
      }),
      { numRuns: 100 },
    );
  });
});
