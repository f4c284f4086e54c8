/** The load of a bout as a value: what is taken, aimed at, moved, and made next. */
import { describe, expect, test } from "vitest";
import type { ExerciseInput } from "./fixtures.ts";
import {
  bands,
  bodyOnly,
  carried,
  dosed,
  type Fields,
  free,
  held,
  holdOf,
  kilos,
  press,
  pull,
  raise,
  repsOf,
  run,
  said,
  stretchy,
  thirty,
} from "./said.ts";

const pulled = (target: string) => dosed(pull, { target, reps: 8 });
const stretched = (target: string) => dosed(stretchy, { target, reps: 8 });
const speed = (fields: Fields) => ({
  measures: [{ test: "speed", card: "run", on: "2026-11-20", ...fields }],
});
const sprint = dosed(run, { sets: undefined, per_week: undefined, target: "70 % of top speed" });

describe("the load itself", () => {
  test.each<readonly [string, ExerciseInput, Fields, Fields]>([
    [
      "of a weight",
      dosed(press, { target: "8 RM" }),
      thirty,
      {
        kind: "weight",
        kg: 31,
        targetKg: 31.5,
        equipment: "backpack",
        systemKg: 31,
        nextKg: 32,
        nextStep: 0.032,
      },
    ],
    [
      "in reserve, by the most repetitions of a set: 40 / (1 + 14/30)",
      dosed(press, { target: "2 in reserve", reps: [12, 8, 8] }),
      thirty,
      {
        kind: "weight",
        kg: 27,
        targetKg: 27.2,
        equipment: "backpack",
        systemKg: 27,
        nextKg: 28,
        nextStep: 0.037,
      },
    ],
    [
      "nothing carried yet, and the next step no share of it",
      dosed(carried, { target: "3 kg", reps: 8 }),
      { equipment: [{ ...kilos, from: "5 kg" }] },
      { kind: "weight", addedTo: "body", kg: 0, targetKg: 3, systemKg: 0, nextKg: 5 },
    ],
    [
      "on top of the body",
      dosed(raise, { target: "10.5 kg", reps: 8 }),
      { equipment: [kilos] },
      {
        kind: "weight",
        addedTo: "body",
        kg: 10,
        targetKg: 10.5,
        equipment: "backpack",
        systemKg: 77.5,
        nextKg: 11,
        nextStep: 0.013,
      },
    ],
    [
      "the body alone, under the lightest",
      dosed(raise, { target: "3 kg", reps: 8 }),
      { equipment: [{ ...kilos, from: "5 kg" }] },
      {
        kind: "weight",
        addedTo: "body",
        kg: 0,
        targetKg: 3,
        systemKg: 67.5,
        nextKg: 5,
        nextStep: 0.074,
      },
    ],
    [
      "the body alone, too heavy",
      dosed(raise, { target: "15 RM" }),
      { measures: [repsOf("raise", "left", "0 kg", 5)], equipment: [kilos] },
      {
        kind: "weight",
        addedTo: "body",
        targetKg: 0,
        words: "a weight with which 15 repetitions are the most you can do well",
      },
    ],
    [
      "the lightest too heavy",
      dosed(press, { target: "10 RM" }),
      { ...thirty, equipment: [{ have: "dumbbell", loads: ["40 kg"] }] },
      {
        kind: "weight",
        targetKg: 30,
        words: "a weight with which 10 repetitions are the most you can do well",
      },
    ],
    [
      "the equipment ends",
      dosed(press, { target: "10 RM" }),
      { ...thirty, equipment: [{ have: "dumbbell", loads: ["20 kg"] }] },
      { kind: "weight", kg: 20, targetKg: 30, equipment: "dumbbell", systemKg: 20 },
    ],
    [
      "a band for a weight on the body",
      dosed(raise, { target: "band 3", reps: 8 }),
      { equipment: [kilos] },
      {
        kind: "weight",
        addedTo: "body",
        words: "a weight with which you do every repetition well",
      },
    ],
    [
      "a weight on the body, not measured",
      dosed(raise, { target: "8 RM" }),
      { equipment: [kilos] },
      {
        kind: "weight",
        addedTo: "body",
        words: "a weight with which 8 repetitions are the most you can do well",
      },
    ],
    [
      "kilograms on a body of unknown mass",
      dosed(raise, { target: "10.5 kg", reps: 8 }),
      { equipment: [kilos], client: { body_mass: undefined } },
      {
        kind: "weight",
        addedTo: "body",
        kg: 10,
        targetKg: 10.5,
        equipment: "backpack",
        nextKg: 11,
        nextStep: 0.1,
      },
    ],
    [
      "the body alone in the test of most repetitions",
      dosed(raise, { target: "50 % of most reps" }),
      { measures: [repsOf("raise", "left", "0 kg", 11)], equipment: [kilos] },
      { kind: "body", systemKg: 67.5 },
    ],
    [
      "a share of the best hold",
      dosed(held, { target: "70 % of best hold" }),
      { measures: [holdOf("left", "65 s", "12 kg")], equipment: [kilos] },
      {
        kind: "weight",
        addedTo: "body",
        kg: 12,
        targetKg: 12,
        equipment: "backpack",
        systemKg: 49.5,
        nextKg: 13,
        nextStep: 0.02,
      },
    ],
    ["no target", dosed(held, {}), {}, { kind: "body", systemKg: 37.5 }],
    ["nothing that can be chosen", dosed(free, { target: "12 RM" }), {}, { kind: "none" }],
    [
      "the body alone",
      dosed(bodyOnly, { target: "12 RM" }),
      { measures: [repsOf("body-only", "left", "0 kg", 20)] },
      { kind: "body", systemKg: 67.5 },
    ],
    [
      "a band by its force",
      pulled("2.5 kg"),
      bands(3, 4, 5),
      { kind: "band", level: 4, targetKg: 2.5 },
    ],
    [
      "a band lighter than there is, by force",
      pulled("1 kg"),
      bands(4),
      { kind: "band", words: "a band with which you do every repetition well", targetKg: 1 },
    ],
    [
      "a band of most repetitions",
      dosed(pull, { target: "70 % of most reps" }),
      { ...bands(4), measures: [repsOf("pull", "both", "0 kg", 20)] },
      { kind: "band", words: "a band with which you do every repetition well" },
    ],
    [
      "a band on the body",
      stretched("band 4"),
      bands(2),
      { kind: "band", level: 2, addedTo: "body" },
    ],
    [
      "a band on the body, and there is none",
      stretched("band 4"),
      {},
      { kind: "body", systemKg: 15 },
    ],
    [
      "a band on the body, not measured",
      stretched("8 RM"),
      bands(4),
      {
        kind: "band",
        addedTo: "body",
        words: "a band with which 8 repetitions are the most you can do well",
      },
    ],
    [
      "a band on the body, no target",
      dosed(stretchy, { reps: 8 }),
      bands(4),
      { kind: "body", systemKg: 15 },
    ],
    [
      "a speed",
      sprint,
      speed({ speed: "19.9 km/h" }),
      {
        kind: "speed",
        kmH: 13.9,
        share: { low: 0.7, high: 0.7 },
        eachS: { low: 13, high: 14 },
        runningStart: true,
      },
    ],
  ])("%s", (_name, exercise, plan, load) => {
    expect(said(exercise, plan).load).toEqual(load);
  });
});
