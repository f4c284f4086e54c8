/** Where a client is in an exercise, whatever time does, they do, or the phone does. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  back,
  left,
  partDone,
  pause,
  reopened,
  resume,
  returned,
  setDone,
  skip,
} from "../../../src/phone/pace/controls.ts";
import { doneSoFar } from "../../../src/phone/pace/done.ts";
import { frozen, thawed } from "../../../src/phone/pace/frozen.ts";
import { needsClient } from "../../../src/phone/pace/places.ts";
import { advance, begin, nextChangeMs, type Run } from "../../../src/phone/pace/run.ts";
import { segmentsOf } from "../../../src/phone/pace/segments.ts";
import { viewOf } from "../../../src/phone/pace/view.ts";
import { anyBout, bout, lengthMs, reps, where } from "./support.ts";

/** ready 5, then 2 sets of 3 × (lift 2, lower 3) = 15 s, with 60 s from set to set. */
const raises = segmentsOf(
  bout({
    sets: 2,
    reps: reps(2, 3, 2),
    tempo: { lower: 3, bottom: 0, lift: 2, top: 0 },
    restS: 60,
  }),
);
const holds = segmentsOf(bout({ sets: 2, side: "each", holdS: 45, restS: 60 }));
const plain = segmentsOf(bout({ sets: 2, reps: reps(2, 12, 8), restS: 60 }));
const running = segmentsOf(bout({ sets: 3, running: true, timeS: 60, restS: 90 }));
const cycling = segmentsOf(bout({ sets: 1, timeS: 600 }));

type Act = (run: Run, nowMs: number) => Run;

/** What comes of a row of seconds with what happens then; after the last it is `s` seconds on. */
function lead(
  segments: Run["segments"],
  acts: readonly (readonly [number, Act])[],
  s: number,
): Run {
  let run = begin(segments, 0);
  for (const [at, act] of acts) run = act(advance(run, at * 1000), at * 1000);
  return advance(run, s * 1000);
}

const ROWS: [string, Run["segments"], [number, Act][], number, string][] = [
  ["begins with getting ready", raises, [], 0, "ready 1 going"],
  ["lifts after the count", raises, [], 5, "lift 1.1 going"],
  ["lowers after the lift", raises, [], 7, "lower 1.1 going"],
  ["rests after the set", raises, [], 20, "rest 1 going"],
  ["gets ready at the end of the rest", raises, [], 75, "ready 2 going"],
  ["lifts again when the rest is over", raises, [], 80, "lift 2.1 going"],
  ["is over at the end", raises, [], 95, "over"],
  [
    "a pause goes to the beginning of the repetition",
    raises,
    [[13.9, pause]],
    99,
    "lift 1.2 paused client",
  ],
  [
    "after a pause it counts in",
    raises,
    [
      [13, pause],
      [30, resume],
    ],
    32.9,
    "lift 1.2 count-in",
  ],
  [
    "and goes on after three seconds",
    raises,
    [
      [13, pause],
      [30, resume],
    ],
    33,
    "lift 1.2 going",
  ],
  [
    "and then as planned",
    raises,
    [
      [13, pause],
      [30, resume],
    ],
    35,
    "lower 1.2 going",
  ],
  [
    "a pause in a rest goes on at once where it was",
    raises,
    [
      [50, pause],
      [100, resume],
    ],
    124.9,
    "rest 1 going",
  ],
  [
    "and the rest is as long as planned",
    raises,
    [
      [50, pause],
      [100, resume],
    ],
    125,
    "ready 2 going",
  ],
  ["back goes to the beginning of the repetition", raises, [[13, back]], 13, "lift 1.2 count-in"],
  ["back at once goes to the repetition before", raises, [[11.5, back]], 14.5, "lift 1.1 going"],
  [
    "back twice goes to the repetition before",
    raises,
    [
      [13, back],
      [14, back],
    ],
    14,
    "lift 1.1 count-in",
  ],
  ["back from a rest goes to the set before", raises, [[40, back]], 40, "ready 1 going"],
  ["back from the first work goes to the getting ready", raises, [[6, back]], 6, "ready 1 going"],
  ["back from the first count stays there", raises, [[1, back]], 1, "ready 1 going"],
  ["back from a count goes to the rest before it", raises, [[76, back]], 76, "rest 1 going"],
  ["back late in a count begins the count again", raises, [[78, back]], 82.9, "ready 2 going"],
  ["back from the end goes to the last set", raises, [[100, back]], 100, "ready 2 going"],
  [
    "back in a pause stays in the pause",
    raises,
    [
      [13, pause],
      [14, back],
    ],
    99,
    "lift 1.1 paused client",
  ],
  ["skip in a set ends it", raises, [[13, skip]], 13, "rest 1 going"],
  ["skip in a rest goes to the next set", raises, [[30, skip]], 30, "ready 2 going"],
  ["skip in the count begins", raises, [[2, skip]], 2, "lift 1.1 going"],
  ["skip in the last set ends the exercise", raises, [[81, skip]], 81, "over"],
  [
    "skip in a pause stays in the pause",
    raises,
    [
      [13, pause],
      [14, skip],
    ],
    99,
    "rest 1 paused client",
  ],
  ["skip on one side goes to the other", holds, [[20, skip]], 20, "other-side 1 going"],
  ["back from a change of sides goes to the first side", holds, [[51, back]], 51, "ready 1 going"],
  ["the set done early leads to the rest", raises, [[13, setDone]], 13, "rest 1 going"],
  ["done in a rest changes nothing", raises, [[30, setDone]], 30, "rest 1 going"],
  ["repetitions without a tempo wait", plain, [], 9999, "reps 1 going"],
  ["until they are done", plain, [[50, partDone]], 50, "rest 1 going"],
  [
    "where the clock counts nothing can be said to be done",
    raises,
    [[13, partDone]],
    13,
    "lower 1.2 going",
  ],
  ["a call in mid-work stops it", raises, [[13, left]], 999, "lift 1.2 paused interrupted"],
  [
    "back from a short call it counts in by itself",
    raises,
    [
      [13, left],
      [60, returned],
    ],
    60,
    "lift 1.2 count-in",
  ],
  [
    "back from a long call it waits",
    raises,
    [
      [13, left],
      [300, returned],
    ],
    999,
    "lift 1.2 paused interrupted",
  ],
  [
    "until the client goes on",
    raises,
    [
      [13, left],
      [300, returned],
      [310, resume],
    ],
    313,
    "lift 1.2 going",
  ],
  ["a call in the count stops the count", raises, [[3, left]], 99, "ready 1 paused interrupted"],
  [
    "after which it is counted anew",
    raises,
    [
      [3, left],
      [20, returned],
    ],
    24.9,
    "ready 1 going",
  ],
  ["a rest goes on while nobody looks", raises, [[30, left]], 74, "rest 1 going"],
  ["and work does not begin", raises, [[30, left]], 999, "ready 2 paused waiting"],
  [
    "nor when the client comes back",
    raises,
    [
      [30, left],
      [90, returned],
    ],
    999,
    "ready 2 paused waiting",
  ],
  [
    "but in time for the set nothing is lost",
    raises,
    [
      [30, left],
      [70, returned],
    ],
    80,
    "lift 2.1 going",
  ],
  [
    "runs and walks go on in a pocket",
    running,
    [
      [30, left],
      [220, returned],
    ],
    220,
    "walk 2 going",
  ],
  ["to the end", running, [[30, left]], 365, "over"],
  [
    "a hold begins again",
    holds,
    [
      [40, left],
      [50, returned],
    ],
    97.9,
    "hold 1 going",
  ],
  [
    "and is held in full",
    holds,
    [
      [40, left],
      [50, returned],
    ],
    98,
    "other-side 1 going",
  ],
  [
    "long work goes on where it was left",
    cycling,
    [
      [305, left],
      [310, returned],
    ],
    612.9,
    "work 1 going",
  ],
  [
    "to its end",
    cycling,
    [
      [305, left],
      [310, returned],
    ],
    613,
    "over",
  ],
  [
    "a pause stays one, whoever leaves",
    raises,
    [
      [13, pause],
      [14, left],
      [15, returned],
    ],
    99,
    "lift 1.2 paused client",
  ],
];

describe("a client", () => {
  test.each(ROWS)("%s", (_, segments, acts, s, expected) => {
    expect(where(lead(segments, acts, s))).toBe(expected);
  });

  test("finds long work with as much done as there was", () => {
    const run = lead(cycling, [[305, pause]], 400);
    expect(viewOf(run, 400_000)).toMatchObject({
      mode: "paused",
      elapsedMs: 300_000,
      leftMs: 300_000,
    });
  });

  test("is told what is next, and how long the count is", () => {
    const run = lead(
      raises,
      [
        [13, pause],
        [30, resume],
      ],
      31,
    );
    expect(viewOf(run, 31_000)).toMatchObject({
      mode: "count-in",
      why: undefined,
      segment: { kind: "lift", rep: 2 },
      next: { kind: "lower", rep: 2 },
      countInMs: 2000,
      leftMs: 2000,
    });
  });
});

describe("a page loaded anew", () => {
  // stored at one second, open again at another, looked at at a third
  test.each<[string, Run["segments"], number, number, number, string]>([
    ["has all work wait", raises, 13, 14, 99, "lift 1.2 paused interrupted"],
    ["has the rest go on", raises, 30, 60, 74, "rest 1 going"],
    ["has no work begin after a rest", raises, 30, 90, 999, "ready 2 paused waiting"],
    ["has a set begin after a rest that was not over", raises, 30, 60, 80, "lift 2.1 going"],
    ["has a run go on", running, 30, 70, 70, "walk 1 going"],
    ["is still over", raises, 96, 99, 100, "over"],
  ])("%s", (_, segments, stored, open, look, expected) => {
    const run = reopened(lead(segments, [], stored), stored * 1000, open * 1000);
    expect(where(advance(run, look * 1000))).toBe(expected);
  });
});

describe("what was done", () => {
  test.each<[string, Run["segments"], [number, Act][], number, unknown[]]>([
    ["nothing before the first part is done", raises, [], 6, []],
    ["whole repetitions only", raises, [], 14, [{ set: 1, reps: 1, seconds: 7, whole: false }]],
    [
      "enough repetitions make a set",
      raises,
      [[16, setDone]],
      17,
      [{ set: 1, reps: 2, seconds: 11, whole: true }],
    ],
    [
      "all of it",
      raises,
      [],
      95,
      [
        { reps: 3, seconds: 15, whole: true },
        { set: 2, reps: 3, whole: true },
      ],
    ],
    ["a set skipped", raises, [[5, skip]], 6, [{ reps: 0, seconds: 0, whole: false }]],
    ["not what is done again", raises, [[21, back]], 21, []],
    [
      "repetitions without a tempo: all",
      plain,
      [[35, setDone]],
      36,
      [{ reps: 12, seconds: 30, whole: true }],
    ],
    [
      "as many as the client says",
      plain,
      [[35, (run, now) => setDone(run, now, 7)]],
      36,
      [{ reps: 7, whole: false }],
    ],
    [
      "more than planned",
      plain,
      [[35, (run, now) => setDone(run, now, 14)]],
      36,
      [{ reps: 14, whole: true }],
    ],
    ["a set skipped that is not paced", plain, [[35, skip]], 36, [{ reps: 0, whole: false }]],
    [
      "a run that nobody saw, once it is over, and not those that were seen",
      running,
      [
        [100, left],
        [250, returned],
      ],
      365,
      [{ unseen: false }, { set: 2, whole: true, unseen: true }, { set: 3, unseen: false }],
    ],
    ["a rest that nobody saw is no work", raises, [[30, left]], 90, [{ unseen: false }]],
    [
      "sides apart",
      holds,
      [[70, setDone]],
      71,
      [
        { side: "left", reps: undefined, seconds: 45, whole: true },
        { side: "right", seconds: 10, whole: false },
      ],
    ],
  ])("%s", (_, segments, acts, s, expected) => {
    expect(doneSoFar(lead(segments, acts, s))).toMatchObject(expected);
    expect(doneSoFar(lead(segments, acts, s))).toHaveLength(expected.length);
  });
});

const ACTS: Record<string, Act> = {
  advance,
  pause,
  resume,
  back,
  skip,
  setDone,
  partDone,
  left,
  returned,
  saidReps: (run, now) => setDone(run, now, 4),
  reload: (run, now) => reopened(run, now, now),
};

/** Things that happen, with milliseconds between them. */
const history = fc.array(
  fc.tuple(
    fc.oneof(fc.integer({ min: 0, max: 4000 }), fc.integer({ min: 0, max: 200_000 })),
    fc.constantFrom(...Object.keys(ACTS)),
  ),
  { maxLength: 40 },
);

/** Every state that a history leads through, with its instant. */
function lived(segments: Run["segments"], acts: readonly (readonly [number, string])[]) {
  let now = 1000;
  let run = begin(segments, now);
  const states = [{ run, now, by: "begin" }];
  for (const [pass, by] of acts) {
    now += pass;
    run = (ACTS[by] ?? advance)(run, now);
    states.push({ run, now, by });
  }
  return states;
}

const anySegments = anyBout.map((each) => segmentsOf(each));
/** Exercises in which nothing waits for the client. */
const timed = anySegments.map((all) => all.filter(({ seconds }) => seconds !== undefined));

describe("whatever happens", () => {
  test("every segment passes in its order, with an entry each, and time never runs out of it", () => {
    fc.assert(
      fc.property(anySegments, history, (segments, acts) => {
        for (const { run, now } of lived(segments, acts)) {
          expect(run.passed).toHaveLength(run.at);
          expect(run.mode.kind === "over").toBe(run.at === segments.length);
          expect(nextChangeMs(advance(run, now)) ?? now + 1).toBeGreaterThan(now);
          const { elapsedMs, leftMs = 0, countInMs } = viewOf(run, now);
          expect(Math.min(elapsedMs, leftMs, countInMs)).toBeGreaterThanOrEqual(0);
          expect(countInMs).toBeLessThanOrEqual(3000);
        }
      }),
    );
  });

  test("timed work never begins unseen", () => {
    fc.assert(
      fc.property(anySegments, history, fc.array(fc.nat(60_000)), (segments, acts, steps) => {
        let { run, now } = lived(segments, acts).at(-1) ?? { run: begin(segments, 0), now: 0 };
        run = left(returned(run, now), now);
        for (const step of steps) {
          now += step;
          run = advance(run, now);
          const segment = segments[run.at];
          if (segment && needsClient(segment)) expect(run.mode.kind).toBe("paused");
        }
      }),
    );
  });

  test("stored and taken up at any instant it goes on the same", () => {
    fc.assert(
      fc.property(anySegments, history, history, (segments, before, next) => {
        const { run, now } = lived(segments, before).at(-1) ?? { run: begin(segments, 0), now: 0 };
        const again = thawed(JSON.parse(JSON.stringify(frozen(run))), segments);
        expect(again).toEqual(run);
        let [one, other, at] = [run, again ?? run, now];
        for (const [pass, by] of next) {
          at += pass;
          one = (ACTS[by] ?? advance)(one, at);
          other = (ACTS[by] ?? advance)(other, at);
          expect(other).toEqual(one);
        }
      }),
    );
  });
});

describe("time alone", () => {
  test("leads through every segment, each beginning where the one before it ended", () => {
    fc.assert(
      fc.property(timed, (segments) => {
        let run = begin(segments, 500);
        let at = 500;
        for (const [index, { seconds = 0 }] of segments.entries()) {
          expect(run).toMatchObject({ at: index, mode: { kind: "going", sinceMs: at } });
          at += seconds * 1000;
          run = advance(run, at);
        }
        expect(run.mode).toEqual({ kind: "over", atMs: 500 + lengthMs(segments) });
        expect(run.passed.every(({ whole }) => whole)).toBe(true);
      }),
    );
  });

  test("leads to the same whether it is asked often or seldom", () => {
    fc.assert(
      fc.property(timed, fc.array(fc.integer({ min: 0, max: 30_000 })), (segments, steps) => {
        let often = begin(segments, 0);
        let now = 0;
        for (const step of steps) {
          now += step;
          often = advance(often, now);
        }
        expect(often).toEqual(advance(begin(segments, 0), now));
      }),
    );
  });

  test("a pause in a rest lengthens it by just as much", () => {
    fc.assert(
      fc.property(fc.integer({ min: 20_000, max: 74_999 }), fc.nat(1e6), (at, long) => {
        const run = resume(pause(begin(raises, 0), at), at + long);
        expect(advance(run, 1e9).mode).toEqual({ kind: "over", atMs: 95_000 + long });
      }),
    );
  });

  test("a pause in work costs it, the count, and what is done again", () => {
    fc.assert(
      fc.property(fc.integer({ min: 5000, max: 19_999 }), fc.nat(1e6), (at, long) => {
        const run = resume(pause(begin(raises, 0), at), at + long);
        const again = (at - 5000) % 5000;
        expect(advance(run, 1e9).mode).toEqual({ kind: "over", atMs: 98_000 + long + again });
      }),
    );
  });
});

describe("back and skip", () => {
  const place = fc.tuple(timed, history);

  test("back never goes forward, and often enough comes to the beginning", () => {
    fc.assert(
      fc.property(place, ([segments, acts]) => {
        const { run, now } = lived(segments, acts).at(-1) ?? { run: begin(segments, 0), now: 0 };
        let current = advance(run, now);
        for (const _ of segments) {
          const earlier = back(current, now);
          expect(earlier.at).toBeLessThanOrEqual(current.at);
          current = earlier;
        }
        expect(current.at).toBe(0);
      }),
    );
  });

  test("skip always goes forward, and often enough comes to the end", () => {
    fc.assert(
      fc.property(place, ([segments, acts]) => {
        const { run, now } = lived(segments, acts).at(-1) ?? { run: begin(segments, 0), now: 0 };
        let current = advance(run, now);
        while (current.at < segments.length) {
          const later = skip(current, now);
          expect(later.at).toBeGreaterThan(current.at);
          current = later;
        }
        expect(current.mode.kind).toBe("over");
      }),
    );
  });

  test("back after a skip comes to the same set again, or to what was skipped", () => {
    fc.assert(
      fc.property(anySegments, history, (segments, acts) => {
        fc.pre(segments.length > 0);
        const { run, now } = lived(segments, acts).at(-1) ?? { run: begin(segments, 0), now: 0 };
        const before = { ...advance(run, now), awayMs: undefined };
        const pressed = segments[before.at];
        if (!pressed) return;
        const again = back(skip(before, now), now);
        const landed = segments[again.at];
        expect(again.at).toBeLessThanOrEqual(before.at);
        expect(`${landed?.set} ${landed?.side}`).toBe(
          pressed.kind === "other-side" ? `${pressed.set} right` : `${pressed.set} ${pressed.side}`,
        );
      }),
    );
  });
});

describe("what was stored", () => {
  const run = lead(raises, [[13, setDone]], 14);
  const good = JSON.parse(JSON.stringify(frozen(run)));
  test.each<[string, unknown]>([
    ["nothing", undefined],
    ["a text", "run"],
    ["another exercise", { ...good, of: "9-abc" }],
    ["a place beyond the end", { ...good, at: 99 }],
    ["half a place", { ...good, at: 1.5 }],
    ["too few parts passed", { ...good, passed: [] }],
    ["no list", { ...good, passed: {} }],
    ["a part without a length", { ...good, passed: good.passed.map(() => ({ whole: true })) }],
    ["no mode", { ...good, mode: null }],
    ["an unknown mode", { ...good, mode: { kind: "asleep", elapsedMs: 1 } }],
    ["a mode without its time", { ...good, mode: { kind: "going" } }],
    ["an unknown reason", { ...good, mode: { kind: "paused", elapsedMs: 1, why: "tired" } }],
    ["over in the middle", { ...good, mode: { kind: "over", atMs: 1 } }],
    ["away since nobody knows", { ...good, awayMs: "long" }],
  ])("is refused: %s", (_, stored) => {
    expect(thawed(good, raises)).toEqual(run);
    expect(thawed(stored, raises)).toBeUndefined();
  });
});
