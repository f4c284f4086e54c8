/** Sessions as laid out against the clinic's limits: each warning once, with its weeks, its place and its source. */
import { describe, expect, test } from "vitest";
import { doseProgram } from "../../src/dose/program.ts";
import { layOut } from "../../src/schedule/lay-out.ts";
import { sessionFaults } from "../../src/schedule/session-limits.ts";
import { card, library, program } from "../dose/fixtures.ts";

const cards = [1, 2, 3, 4, 5, 6].map((number) =>
  card({ id: `card-${number}`, load: { kind: "none" }, demand: 2, recovery: "1 h" }),
);
const all = library(...cards);

/** Every evening free for so many minutes. */
const evenings = (minutes: number) => ({
  free: Object.fromEntries(
    ["mon", "tue", "wed", "thu", "fri", "sat", "sun"].map((day) => [
      day,
      { evening: `${minutes} min` },
    ]),
  ),
});

type Input = Parameters<typeof program>[0];
function only(input: Input, code: string, minutes = 90) {
  const built = program({ ...input, plan: { week: evenings(minutes), ...input.plan } });
  const dosed = doseProgram(built, all).value;
  const { value: schedule, faults } = layOut(built, dosed);
  if (!schedule) throw new Error(faults[0]?.message);
  return sessionFaults(built, dosed, schedule).filter((fault) => fault.code === code);
}

describe("session-crowded", () => {
  const phases = [
    { weeks: 4, exercises: cards.slice(0, 4).map((one) => ({ card: one })) },
    { firstWeek: 3, weeks: 2, exercises: cards.slice(4, 6).map((one) => ({ card: one })) },
  ];
  test("one warning for the weeks in which phases pile up, with its source", () => {
    const faults = only({ phases }, "session-crowded");
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatchObject({ level: "warning", place: { file: "protocol.md" } });
    expect(faults[0]?.message).toContain("up to 6 exercises (weeks 3 and 4)");
    expect(faults[0]?.message).toContain("Bachmann 2018");
  });
  test("the clinic's limit", () => {
    const clinic = { limits: { exercises_per_session: 6 } };
    expect(only({ phases, clinic }, "session-crowded")).toEqual([]);
  });
});

describe("session-long", () => {
  const says = { dose: { sets: 5, reps: 20, tempo: "3-0-3-0", rest: "2 min" } };
  const exercises = cards.slice(0, 3).map((one) => ({ card: one, says }));
  test("one warning with the longest session", () => {
    // 3 × (5 × 120 s + 4 × 120 s) and two changeovers of 1 min: 56 min.
    const faults = only({ weeks: 3, exercises }, "session-long");
    expect(faults).toHaveLength(1);
    expect(faults[0]?.message).toContain("56 min (weeks 1 to 3)");
  });
  test("the clinic's limit", () => {
    expect(only({ exercises, clinic: { limits: { session: "60 min" } } }, "session-long")).toEqual(
      [],
    );
  });
});

describe("session-long at its limit", () => {
  // 9 min of work by the clock for each of three, and two changeovers of 1 min: 29 min.
  const exercises = cards.slice(0, 3).map((one) => ({
    card: one,
    side: "none" as const,
    says: { dose: { sets: 1, reps: undefined, time: "9 min", per_week: 3 } } as never,
  }));
  test.each([
    ["29 min", []],
    ["1739 s", ["A session takes up to 29 min (week 1); the clinic's limit is 28 min 59 s."]],
    ["1741 s", []],
  ])("a session of 29 min, a limit of %s", (session, says) => {
    const faults = only({ exercises, clinic: { limits: { session } } }, "session-long");
    expect(faults.map(({ message }) => message)).toEqual(says);
  });
});

describe("exercises that lie on different days", () => {
  // 6 min each with the way to the next, three times a week: two fit into an evening of 13 min
  const says = { dose: { sets: 1, reps: undefined, time: "5 min", per_week: 3 } };
  const exercises = cards.slice(0, 4).map((one) => ({ card: one, says: says as never }));
  const clinic = { limits: { exercises_per_session: 2, session: "12 min" } };
  test.each([
    ["are no crowded session", "session-crowded", 13, 0],
    ["are no long session", "session-long", 13, 0],
    ["but together they are crowded", "session-crowded", 90, 1],
    ["and long", "session-long", 90, 1],
  ])("%s", (_name, code, minutes, count) => {
    expect(only({ exercises, clinic }, code, minutes)).toHaveLength(count);
  });
});
