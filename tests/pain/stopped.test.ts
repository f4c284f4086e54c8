/** After a stop, what loads the same tissue is left out for the day, and nothing else is. */
import { describe, expect, test } from "vitest";
import type { Felt, FeltSession } from "../../src/pain/felt.ts";
import { type Loading, stoppedBefore } from "../../src/pain/stopped.ts";

const loading = (card: string, tissues: string[], during = 5): Loading => ({
  card,
  tissues,
  pain: {
    kind: during === 0 ? "pain-free" : "monitored",
    comfortable: 0,
    during,
    after: during,
  },
});
const RISE = loading("rise", ["calf", "achilles"]);
const SQUAT = loading("squat", ["quadriceps", "calf"]);
const BRIDGE = loading("bridge", ["glutes"]);
const CIRCLE = loading("circle", ["achilles"], 0);
const ALL = [RISE, SQUAT, BRIDGE, CIRCLE];

type Did = Felt["exercises"][number];
const session = (exercises: readonly Did[], bouts = ALL): FeltSession<Loading> => ({
  day: "2026-12-02",
  felt: {
    done: "part",
    exercises,
    painAfter: undefined,
    painMorning: undefined,
    worseMorning: undefined,
  },
  bouts,
});
const left = (...day: FeltSession<Loading>[]) =>
  Object.fromEntries(
    ALL.flatMap((one) => {
      const by = stoppedBefore(one, day)?.card;
      return by === undefined ? [] : [[one.card, by]];
    }),
  );
const rise = (pain: number | undefined, done: Did["done"] = "part"): Did => ({
  card: "rise",
  pain,
  done,
});

describe("left out, and for which exercise", () => {
  test.each<[string, FeltSession<Loading>[], Record<string, string>]>([
    ["nothing done yet", [], {}],
    ["no number given", [session([rise(undefined)])], {}],
    ["at its limit", [session([rise(5)])], {}],
    [
      "over its limit: itself, and all that shares a tissue",
      [session([rise(5.5)])],
      { rise: "rise", squat: "rise", circle: "rise" },
    ],
    [
      "over its limit but done as planned: it should have been stopped",
      [session([rise(6, "yes")])],
      { rise: "rise", squat: "rise", circle: "rise" },
    ],
    ["the worst", [session([rise(10, "no")])], { rise: "rise", squat: "rise", circle: "rise" }],
    [
      "sudden, within its limit and done as planned",
      [session([{ ...rise(2, "yes"), sudden: true }])],
      { rise: "rise", squat: "rise", circle: "rise" },
    ],
    [
      "one that shares none with the others",
      [session([{ card: "bridge", pain: 7, done: "part" }])],
      { bridge: "bridge" },
    ],
    [
      "no pain allowed, and given up",
      [session([{ card: "circle", pain: 1, done: "part" }])],
      { circle: "circle", rise: "circle" },
    ],
    [
      "no pain allowed, made smaller and then done",
      [session([{ card: "circle", pain: 1, done: "yes" }])],
      {},
    ],
    [
      "in an earlier session of the day",
      [session([rise(6)]), session([rise(undefined, "no")])],
      { rise: "rise", squat: "rise", circle: "rise" },
    ],
    ["an exercise whose limits nobody knows", [session([rise(9)], [SQUAT])], {}],
  ])("%s", (_, day, cards) => {
    expect(left(...day)).toEqual(cards);
  });
});
