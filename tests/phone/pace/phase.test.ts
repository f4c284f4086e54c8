/** The phases of an exercise, as they are told to those who listen. */
import { expect, test } from "vitest";
import { left, pause, resume, returned } from "../../../src/phone/pace/controls.ts";
import { phaseOf } from "../../../src/phone/pace/phase.ts";
import { advance, begin, type Run } from "../../../src/phone/pace/run.ts";
import { segmentsOf } from "../../../src/phone/pace/segments.ts";
import { viewOf } from "../../../src/phone/pace/view.ts";
import { bout, reps } from "./support.ts";

/** The second at which each phase begins, and what it is. */
function phases(exercise: Parameters<typeof bout>[0], to: number): string[] {
  const run = begin(segmentsOf(bout(exercise)), 0);
  const seen: string[] = [];
  let name = "";
  for (let s = 0; s <= to; s += 1) {
    const phase = phaseOf(viewOf(advance(run, s * 1000), s * 1000));
    if (phase.name !== name) seen.push(`${s} ${phase.kind}`);
    name = phase.name;
  }
  return seen;
}

const tempo = { lower: 3, bottom: 0, lift: 2, top: 1 } as const;

test.each([
  [
    "repetitions of six seconds are one phase a set",
    { sets: 2, reps: reps(2, 4), tempo, restS: 30 },
    ["0 ready", "5 set", "29 rest", "54 ready", "59 set", "83 over"],
  ],
  [
    "short holds with short rests too, and a change of sides is told once",
    { side: "each", reps: reps(1, 2), holdS: 5, restRepsS: 3 },
    ["0 ready", "5 set", "18 other-side", "28 set", "41 over"],
  ],
  [
    "long holds and long rests between them each by itself",
    { reps: reps(1, 2), holdS: 45, restRepsS: 20 },
    ["0 ready", "5 hold", "50 rest-reps", "70 hold", "115 over"],
  ],
  [
    "runs and walks each by itself",
    { running: true, sets: 2, timeS: 60, restS: 30 },
    ["0 ready", "5 run", "65 walk", "95 run", "155 over"],
  ],
] as const)("%s", (_, exercise, expected) => {
  expect(phases(exercise, 160)).toEqual(expected);
});

test("a pause is told with its reason, and what goes on after it anew", () => {
  const run = advance(begin(segmentsOf(bout({ sets: 2, reps: reps(2, 4), tempo })), 0), 6000);
  const name = (one: Run, ms: number) => phaseOf(viewOf(one, ms)).name;
  const still = pause(run, 7000);
  const away = advance(left(run, 7000), 8000);
  expect([name(run, 6000), name(still, 7000), name(away, 8000)]).toEqual([
    ...["set 1 undefined", "paused client", "paused interrupted"],
  ]);
  expect(name(resume(still, 9000), 9000)).toBe("count-in 1 undefined");
  expect(name(returned(away, 9000), 9000)).toBe("count-in 1 undefined");
});
