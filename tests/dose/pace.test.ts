/** Speeds as a client can keep them: seconds for a distance, the share of their best, and when no number follows. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { makeBooklet } from "../../src/booklet.ts";
import { planJson } from "../../src/plan-text/json.ts";
import { planTable } from "../../src/plan-text/table.ts";
import { dosePart } from "../../src/prescription/fields.ts";
import { serialiseDose } from "../../src/prescription/serialise.ts";
import { asSigned } from "../support/signed.ts";
import { madeSmall, type SmallCourse, smallCourse } from "../support/small-course.ts";
import { DAY, english } from "../support/world.ts";

const best = (fields: string) =>
  `measures: [{ test: speed, card: small-card, ${fields}, on: 2026-12-28 }]`;
const timed = best("distance: 40 m, time: 6 s");
const top = best("speed: 30 km/h");

const dose = (more: string, often = "per_week: 1") => `{ sets: 3, ${more}, ${often} }`;

function said(course: SmallCourse) {
  const { made, workspace, warnings } = madeSmall({ trains: "running", ...course });
  const booklet = makeBooklet(asSigned(made), workspace, english(), DAY);
  const line = booklet.phases[0]?.rows[0]?.doses[0];
  const bout = planJson(made, []).weeks[0]?.sessions[0]?.bouts[0];
  return {
    load: line?.load,
    work: line?.work,
    effort: line?.effort,
    diary: booklet.diary[0]?.weeks[0]?.doses[0]?.dose,
    phone: booklet.sessions[0]?.bouts[0]?.dose[1],
    calendar: booklet.sessions[0]?.exercises[0],
    terminal: planTable(made, workspace.cards.library, english()),
    bout,
    codes: warnings.map(({ code }) => code).filter((code) => !code.startsWith("measure-old")),
    booklet,
  };
}

describe("what the page says", () => {
  test.each([
    [
      "a timed run, the same distance",
      "distance: 40 m, target: 80 % of top speed, effort: 7",
      timed,
      "40 m in 7.5 to 8 seconds, about 80 % of your best speed",
    ],
    [
      "a range of shares",
      "distance: 40 m, target: 60-80 % of top speed, effort: 7",
      timed,
      "40 m in 7.5 to 10 seconds, about 60 to 80 % of your best speed",
    ],
    [
      "a top speed: from a running start",
      "distance: 20 m, target: 50 % of top speed, effort: 5",
      top,
      "20 m in 5 to 5.5 seconds, from a running start, about 50 % of your best speed",
    ],
    [
      "a speed of its own, without a measure",
      "distance: 400 m, target: 9-10 km/h",
      "",
      "400 m in 2 min 25 s to 2 min 40 s",
    ],
    ["a speed for a time", "time: 5 min, target: 9-10 km/h", "", "9 to 10 km/h"],
    ["a pace", 'time: 5 min, target: "5:30-6:00 min/km"', "", "5:30 to 6:00 minutes a km"],
  ])("%s", (_name, more, measures, load) => {
    expect(said({ card: dose(more), plan: measures }).load).toBe(load);
  });

  test.each([
    ["no measure", "distance: 40 m", "", "measure-missing"],
    ["shorter than what was timed: the start counts", "distance: 20 m", timed, "pace-unsure"],
    ["more than twice as far", "distance: 81 m", timed, "pace-unsure"],
    ["a top speed, far", "distance: 400 m", top, "pace-unsure"],
    ["a sprint's speed for minutes", "time: 3 min", timed, "pace-unsure"],
  ])("%s: the share in words, the effort, and a warning", (_name, more, measures, code) => {
    const { load, effort, codes, bout } = said({
      card: dose(`${more}, target: 80 % of top speed, effort: 7`),
      plan: measures,
    });
    expect(load).toBe("About 80 % of your best speed: fast, but not your fastest");
    expect(effort).toBe("Should feel 7 out of 10");
    expect(codes).toContain(code);
    expect(bout).toMatchObject({ speed_km_h: null, seconds_each: null, percent_of_best: [80, 80] });
  });

  test("the same facts on diary, calendar, phone, terminal and JSON", () => {
    const { diary, phone, terminal, bout, load, calendar } = said({
      card: dose("distance: 40 m, target: 80 % of top speed, effort: 7"),
      plan: timed,
    });
    expect(diary).toBe("3 × 40 m, 7.5–8 s");
    expect(phone).toBe(load);
    expect(calendar).toContain("3 × 40 m, 7.5–8 s");
    expect(terminal).toContain(load ?? "nothing");
    expect(bout).toMatchObject({
      speed_km_h: 19.2,
      seconds_each: [7.5, 8],
      percent_of_best: [80, 80],
      distance_m: 40,
    });
  });
});

test("a stated speed above the client's best stops the plan, unless it is accepted", () => {
  const card = dose("distance: 40 m, target: 25 km/h");
  const stopped = smallCourse({ trains: "running", card, plan: timed });
  expect(stopped.faults.map(({ code }) => code)).toContain("dose-beyond-measure");
  const accept = "accept: [{ code: dose-beyond-measure, card: small-card, why: Old measure }]";
  expect(smallCourse({ trains: "running", card, plan: `${timed}\n${accept}` }).made).toBeDefined();
});

test.each([
  "80-75 % of top speed",
  "0 % of top speed",
  "101 % of top speed",
  "50 km/h",
  "0 km/h",
  "10-9 km/h",
  "6:00-5:30 min/km",
  "1:00 min/km",
])("%s is no target", (target) => expect(dosePart.safeParse({ target }).success).toBe(false));

test("repetitions have no speed", () => {
  const { faults } = smallCourse({ card: dose("reps: 5, target: 9 km/h") });
  expect(faults.map(({ message }) => message).join()).toContain("says nothing of repetitions");
});

test("targets come back as they are written", () => {
  const percent = fc.tuple(fc.integer({ min: 1, max: 50 }), fc.integer({ min: 51, max: 100 }));
  const written = fc.oneof(
    percent.map(([least, most]) => `${least}-${most} % of top speed`),
    fc.integer({ min: 1, max: 45 }).map((n) => `${n} km/h`),
    fc
      .tuple(fc.integer({ min: 10, max: 100 }), fc.integer({ min: 101, max: 450 }))
      .map(([slow, fast]) => `${slow / 10}-${fast / 10} km/h`),
    fc
      .tuple(fc.integer({ min: 120, max: 300 }), fc.integer({ min: 301, max: 599 }))
      .map(([fast, slow]) => {
        const pace = (s: number) => `${Math.floor(s / 60)}:${String(s % 60).padStart(2, "0")}`;
        return `${pace(fast)}-${pace(slow)} min/km`;
      }),
  );
  fc.assert(
    fc.property(written, (target) => {
      expect(serialiseDose(dosePart.parse({ target })).target).toBe(target);
    }),
    { seed: 5, numRuns: 200 },
  );
});

test("nobody is asked to run faster than the share, and hardly slower than it", () => {
  const runs = fc.record({
    over: fc.integer({ min: 10, max: 200 }),
    time: fc.integer({ min: 2, max: 60 }),
    longer: fc.integer({ min: 0, max: 100 }),
    share: fc.integer({ min: 20, max: 100 }),
  });
  fc.assert(
    fc.property(
      runs.filter(({ over, time }) => over / time < 12 && over / time > 0.5),
      ({ over, time, longer, share }) => {
        const far = over + Math.round((over * longer) / 100);
        const { bout } = said({
          card: dose(`distance: ${far} m, target: ${share} % of top speed, effort: 5`),
          plan: best(`distance: ${over} m, time: ${time} s`),
        });
        const [low = 0, high = 0] = bout?.seconds_each ?? [];
        const exact = far / ((over / time) * (share / 100));
        expect(low).toBeGreaterThanOrEqual(exact - 1e-9);
        expect(low - exact).toBeLessThanOrEqual(exact < 20 ? 0.5 : exact < 120 ? 1 : 5);
        expect(high).toBeGreaterThanOrEqual(low);
        expect(high).toBeLessThanOrEqual(exact / 0.95 + 5);
        expect((bout?.speed_km_h ?? 99) / 3.6).toBeLessThanOrEqual(far / exact + 1e-9);
      },
    ),
    { seed: 3, numRuns: 60 },
  );
});
