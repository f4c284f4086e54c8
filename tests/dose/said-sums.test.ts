/** What is said of the fields that pass through, and of the sums; worked out by hand. */
import { describe, expect, test } from "vitest";
import type { ProvenanceNumber } from "../../src/dose/types.ts";
import type { ExerciseInput } from "./fixtures.ts";
import { dosed, type Fields, free, held, kilos, press, raise, run, said, thirty } from "./said.ts";

const all = {
  sets: 3,
  reps: [12, 10, 8],
  tempo: "3-1-X-0",
  rest: "1 min",
  rest_reps: "2 s",
  effort: 6,
  per_week: undefined,
  per_day: 2,
};
const turns = dosed(
  free,
  {
    sets: 1,
    reps: undefined,
    turns: { work: "3 min", easy: "2 min", times: 6 },
    per_week: undefined,
    every: "2 days",
  },
  { side: "each" },
);
const timed = dosed(free, {
  sets: 2,
  reps: undefined,
  time: "45 s",
  rest: "30 s",
  per_week: undefined,
  every: "3 days",
});
const holds = dosed(
  free,
  { sets: 2, reps: "4-6", hold: "10 s", tempo: "1-0-1-0", per_week: undefined, per_day: 1 },
  { side: "each" },
);
const hold = dosed(held, { sets: 1, hold: "40 s", per_week: 1 });
type Row = readonly [
  name: string,
  number: ProvenanceNumber,
  exercise: ExerciseInput,
  plan: Fields,
  lines: readonly string[],
];

describe("what is stated, and the sums", () => {
  test.each<Row>([
    [
      "",
      "tempo",
      dosed(free, all),
      {},
      [
        "stated: Tempo 3-1-X-0: lowering 3, pause 1, lifting X, pause 0, stated by the protocol. (protocol.md:10)",
      ],
    ],
    [
      "",
      "rest_s",
      dosed(free, all),
      {},
      ["stated: Rest between sets of 60 s, stated by the protocol. [60 s] (protocol.md:10)"],
    ],
    [
      "",
      "rest_reps_s",
      dosed(free, all),
      {},
      ["stated: Rest between repetitions of 2 s, stated by the protocol. [2 s] (protocol.md:10)"],
    ],
    [
      "",
      "effort",
      dosed(free, all),
      {},
      ["stated: An effort of 6 out of 10, stated by the protocol. [6] (protocol.md:10)"],
    ],
    [
      "",
      "turns",
      turns,
      {},
      [
        "stated: 6 turns of 180 s of work and 120 s easy, stated by the protocol. [6] (protocol.md:10)",
      ],
    ],
    [
      "",
      "time_s",
      timed,
      {},
      ["stated: Work for 45 s, stated by the protocol. [45 s] (protocol.md:10)"],
    ],
    [
      "",
      "distance_m",
      dosed(run, { sets: undefined, per_week: undefined }),
      {},
      ["stated: A distance of 50 m, stated by the card. [50 m] (card.md:20)"],
    ],
    [
      "twice",
      "frequency",
      dosed(free, all),
      {},
      ["stated: Twice a day, every day, stated by the protocol. [2] (protocol.md:10)"],
    ],
    [
      "once",
      "frequency",
      holds,
      {},
      ["stated: Once a day, every day, stated by the protocol. [1] (protocol.md:10)"],
    ],
    [
      "second day",
      "frequency",
      turns,
      {},
      ["stated: Every second day, stated by the protocol. [2] (protocol.md:10)"],
    ],
    [
      "third day",
      "frequency",
      timed,
      {},
      ["stated: Every 3 days, stated by the protocol. [3] (protocol.md:10)"],
    ],
    [
      "one day",
      "frequency",
      hold,
      {},
      ["stated: 1 day a week, stated by the protocol. [1] (protocol.md:10)"],
    ],
    [
      "three days",
      "frequency",
      dosed(free, {}),
      {},
      ["stated: 3 days a week, stated by the protocol. [3] (protocol.md:10)"],
    ],
    [
      "a list",
      "reps_total",
      dosed(free, all),
      {},
      ["sum: 3 sets of 12, 10, 8 make 30 repetitions. [30]"],
    ],
    [
      "a range on each side",
      "reps_total",
      holds,
      {},
      ["sum: 2 sets of 4–6 make 8 to 12 repetitions on each side. [12]"],
    ],
    [
      "16 × 12 kg",
      "kg_total",
      dosed(press, { sets: 2, reps: "6-8", target: "12 kg" }),
      thirty,
      ["sum: 16 repetitions × 12 kg make 192 kg, without the body's share. [192 kg]"],
    ],
    [
      "on each side",
      "kg_total",
      dosed(raise, { reps: 8, target: "12 kg" }, { side: "each" }),
      { equipment: [kilos] },
      ["sum: 24 repetitions × 12 kg on each side make 288 kg, without the body's share. [288 kg]"],
    ],
    [
      "30 × (3 + 1 + 1)",
      "tension_s",
      dosed(free, all),
      {},
      ["sum: 30 repetitions × 5 s of tempo, X counting 1 s. [150 s]"],
    ],
    [
      "6 × 3 min on each side",
      "tension_s",
      turns,
      {},
      ["sum: 1 set of 6 turns with 180 s of work on each side. [1080 s]"],
    ],
    ["2 × 45 s", "tension_s", timed, {}, ["sum: 2 sets of 45 s. [90 s]"]],
    [
      "12 × (2 + 10)",
      "tension_s",
      holds,
      {},
      ["sum: 12 repetitions × 2 s of tempo and 10 s of hold on each side. [144 s]"],
    ],
    ["one hold", "tension_s", hold, {}, ["sum: 1 holds of 40 s. [40 s]"]],
    [
      "150 s, 27 rests of 2 s, 2 of 60 s",
      "clock_s",
      dosed(free, all),
      {},
      ["sum: 3 sets, with rests of 1 min, the last not counted: 5 min 24 s. [324 s]"],
    ],
    [
      "2 × 6 × 5 min",
      "clock_s",
      turns,
      {},
      ["sum: 1 set, both sides in turn, with no rests: 60 min. [3600 s]"],
    ],
    [
      "90 s and a rest of 30 s",
      "clock_s",
      timed,
      {},
      ["sum: 2 sets, with rests of 30 s, the last not counted: 2 min. [120 s]"],
    ],
    [
      "2 × 144 s",
      "clock_s",
      holds,
      {},
      ["sum: 2 sets, both sides in turn, with no rests: 4 min 48 s. [288 s]"],
    ],
    [
      "no tempo: 30 × 4 s",
      "clock_s",
      dosed(free, {}),
      {},
      [
        "limit: No tempo is stated: a repetition counts 4 s. [4 s] (Ratamess 2009, Med Sci Sports Exerc 41:687: 1–2 s up and 1–2 s down)",
        "sum: 3 sets, with no rests: 2 min. [120 s]",
      ],
    ],
    [
      "up to whole minutes",
      "minutes",
      dosed(free, all),
      {},
      ["rounding: 5 min 24 s, rounded up to whole minutes. [6 min]"],
    ],
    [
      "4 × 50 m at 1 m/s, as nobody says how fast",
      "clock_s",
      dosed(run, { sets: undefined, per_week: undefined }),
      {},
      ["sum: 4 sets, with no rests: 3 min 20 s. [200 s]"],
    ],
  ])("%s: %s", (_name, number, exercise, plan, lines) =>
    expect(said(exercise, plan).lines(number)).toEqual(lines),
  );

  test("the last rest, where the clinic counts it", () => {
    expect(said(timed, {}, { dosing: { last_rest: true } }).lines("clock_s")).toEqual([
      "sum: 2 sets, with rests of 30 s, the last counted: 2 min 30 s. [150 s]",
    ]);
  });
});
