/** What is heard, felt and said of an exercise. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { left, pause, resume, skip } from "../../../src/phone/pace/controls.ts";
import { type Cue, cuesBetween } from "../../../src/phone/pace/cues.ts";
import { advance, begin, type Run } from "../../../src/phone/pace/run.ts";
import { type Segment, segmentsOf } from "../../../src/phone/pace/segments.ts";
import { TONES } from "../../../src/phone/pace/tones.ts";
import { anyBout, bout, lengthMs, reps } from "./support.ts";

const show = (cues: readonly Cue[]) =>
  cues.map(({ at, tone, say }) =>
    [at / 1000, tone, String(say ?? "").replace("pace.say.", "")].join(" ").trim(),
  );

const tempo = { lower: 3, bottom: 0, lift: 2, top: 1 } as const;
const raises = segmentsOf(bout({ reps: reps(1, 4, 4), tempo }));

describe("an exercise with a tempo", () => {
  test("is counted in, named twice, then counted, and the last one said", () => {
    expect(show(cuesBetween(begin(raises, 0), 0, 60_000))).toEqual([
      ...["0 ready ready", "2 count 3", "3 count 2", "4 count 1"],
      ...["5 lift lift", "6 tick", "7 pause", "8 lower lower", "9 tick", "10 tick"],
      ...["11 lift lift", "12 tick", "13 pause", "14 lower lower", "15 tick", "16 tick"],
      ...["17 lift 3", "18 tick", "19 pause", "20 lower", "21 tick", "22 tick"],
      ...["23 lift last-one", "24 tick", "25 pause", "26 lower", "27 tick", "28 tick"],
      "29 finish finished",
    ]);
  });

  test("says when a range has been reached", () => {
    const range = segmentsOf(bout({ reps: reps(1, 5, 3), tempo }), 1, { readyS: 0 });
    const said = cuesBetween(begin(range, 0), 12_000, 60_000).map(({ say }) => say);
    expect(said.filter((say) => say !== undefined)).toEqual([
      ...[3, "pace.say.enough", "pace.say.last-one", "pace.say.finished"],
    ]);
  });

  test("does not speak over what is faster than words", () => {
    const fast = { lower: "X", bottom: 0, lift: "X", top: 0 } as const;
    const hops = segmentsOf(bout({ reps: reps(1, 6), tempo: fast, fastS: 0.5 }), 1, { readyS: 0 });
    const said = cuesBetween(begin(hops, 0), 0, 60_000).map(({ say }) => say);
    expect(said.filter((say) => say !== undefined)).toEqual([
      ...["pace.say.last-one", "pace.say.finished"],
    ]);
  });
});

describe("a hold", () => {
  const holds = segmentsOf(bout({ sets: 2, side: "each", holdS: 40, restS: 100 }));
  test("on each side, with a rest between", () => {
    expect(show(cuesBetween(begin(holds, 0), 5000, 205_000))).toEqual([
      ...["5 hold hold", "25 soon halfway", "42 count", "43 count", "44 count"],
      ...["45 turn right", "50 ready", "52 count 3", "53 count 2", "54 count 1"],
      ...["55 hold hold", "75 soon halfway", "92 count", "93 count", "94 count"],
      ...["95 rest rest", "142.5 soon halfway", "185 soon soon"],
      ...["190 ready last-set-left", "192 count 3", "193 count 2", "194 count 1", "195 hold hold"],
    ]);
  });

  test("names the side at every beginning, the left before the right", () => {
    const three = segmentsOf(bout({ sets: 3, side: "each", holdS: 10, restS: 30 }));
    const said = cuesBetween(begin(three, 0), 0, 999_000).map(({ say }) => String(say ?? ""));
    expect(said.filter((say) => /left|right/.test(say))).toEqual([
      ...["pace.say.left", "pace.say.right", "pace.say.left", "pace.say.right"],
      ...["pace.say.last-set-left", "pace.say.right"],
    ]);
  });

  test("of a few seconds ticks, and its rests are short of words", () => {
    const short = segmentsOf(bout({ reps: reps(1, 3), holdS: 5, restRepsS: 6 }));
    expect(show(cuesBetween(begin(short, 0), 5000, 60_000))).toEqual([
      ...["5 hold hold", "6 tick", "7 tick", "8 tick", "9 tick"],
      ...["10 pause", "13 count", "14 count", "15 count"],
      ...["16 hold hold", "17 tick", "18 tick", "19 tick", "20 tick"],
      ...["21 pause", "24 count", "25 count", "26 count"],
      ...["27 hold last-one", "28 tick", "29 tick", "30 tick", "31 tick", "32 finish finished"],
    ]);
  });
});

describe("runs and walks", () => {
  const running = segmentsOf(bout({ sets: 2, running: true, timeS: 60, restS: 30 }));
  const expected = [
    ...["5 go run", "62 count", "63 count", "64 count"],
    ...["65 ease walk", "85 soon soon", "92 count", "93 count", "94 count"],
    ...["95 go run", "152 count", "153 count", "154 count", "155 finish finished"],
  ];
  test("change strongly", () => {
    const cues = cuesBetween(begin(running, 0), 5000, 200_000);
    expect(show(cues)).toEqual(expected);
    const changes = cues.filter(({ tone }) => tone === "go" || tone === "ease");
    expect(changes.every(({ vibration }) => Math.max(...vibration) >= 400)).toBe(true);
  });

  test("and just so while nobody sees the page", () => {
    const run = left(advance(begin(running, 0), 6000), 6000);
    expect(show(cuesBetween(run, 6000, 200_000))).toEqual(expected.slice(1));
  });
});

describe("what the client does", () => {
  const sets = segmentsOf(bout({ sets: 2, reps: reps(2, 12), restS: 60 }));
  test("silences a pause, and counts in what goes on", () => {
    const still = pause(begin(raises, 0), 13_500);
    expect(cuesBetween(still, 13_500, 99_000)).toEqual([]);
    expect(show(cuesBetween(resume(still, 20_000), 20_000, 25_500))).toEqual([
      ...["20 count 3", "21 count 2", "22 count 1", "23 lift lift", "24 tick", "25 pause"],
    ]);
  });

  test("ends what has no length of its own", () => {
    expect(show(cuesBetween(begin(sets, 0), 5000, 999_000))).toEqual(["5 go go"]);
  });

  test("is heard at once", () => {
    expect(show(cuesBetween(skip(begin(raises, 0), 7000), 7000, 7001))).toEqual([
      "7 finish finished",
    ]);
  });

  test("is asked for when a rest has ended unseen", () => {
    const away = left(skip(begin(sets, 0), 6000), 8000);
    expect(show(cuesBetween(away, 8000, 999_000))).toEqual(["56 soon soon", "61 call your-turn"]);
  });
});

/** What words are counted for: a late repetition, or a rest; undefined for all else. */
function countedFor({ kind, set, side, rep = 0 }: Segment): string | undefined {
  if (kind === "rest") return `rest ${set}`;
  return rep > 2 && kind !== "walk" ? `${set} ${side} ${rep}` : undefined;
}

describe("for every exercise", () => {
  test("windows that follow each other give every cue once and in order", () => {
    const windows = fc.array(fc.integer({ min: 1, max: 20_000 }), { maxLength: 60 });
    fc.assert(
      fc.property(anyBout, windows, (each, steps) => {
        const segments = segmentsOf(each);
        let run: Run = begin(segments, 0);
        const heard: Cue[] = [];
        let now = 0;
        for (const step of steps) {
          heard.push(...cuesBetween(run, now, now + step));
          now += step;
          run = advance(run, now);
        }
        expect(heard).toEqual(cuesBetween(begin(segments, 0), 0, now));
        expect(heard.map(({ at }) => at)).toEqual(
          heard.map(({ at }) => at).toSorted((a, b) => a - b),
        );
      }),
    );
  });

  test("every part begins with a sound, and no two sounds fall together", () => {
    fc.assert(
      fc.property(anyBout, (each) => {
        const segments = segmentsOf(each).filter(({ seconds }) => seconds !== undefined);
        const cues = cuesBetween(begin(segments, 0), 0, lengthMs(segments) + 1);
        const times = new Set(cues.map(({ at }) => at));
        expect(times.size).toBe(cues.length);
        let start = 0;
        for (const { seconds = 0 } of segments) {
          expect(times).toContain(start);
          start += seconds * 1000;
        }
      }),
    );
  });

  test("after its first two repetitions a set has at most a word for each, and a rest two, but for its middle", () => {
    fc.assert(
      fc.property(anyBout, (each) => {
        const segments = segmentsOf(each).filter(({ seconds }) => seconds !== undefined);
        const cues = cuesBetween(begin(segments, 0), 0, lengthMs(segments) + 1).filter(
          ({ say }) => say !== undefined && say !== "pace.say.halfway",
        );
        const words = new Map<string, number>();
        let start = 0;
        for (const segment of segments) {
          const end = start + (segment.seconds ?? 0) * 1000;
          const said = cues.filter(({ at }) => at >= start && at < end);
          const of = countedFor(segment);
          if (of) words.set(of, (words.get(of) ?? 0) + said.length);
          start = end;
        }
        for (const [of, count] of words)
          expect(count).toBeLessThanOrEqual(of.startsWith("rest") ? 2 : 1);
      }),
    );
  });
});

test("every sound lies where small loudspeakers and older ears are good", () => {
  for (const { notes, vibration } of Object.values(TONES)) {
    expect(notes.length).toBeGreaterThan(0);
    for (const { hz, level, ms } of notes) {
      expect(hz).toBeGreaterThanOrEqual(500);
      expect(hz).toBeLessThanOrEqual(1100);
      expect(level).toBeLessThanOrEqual(1);
      expect(ms).toBeGreaterThan(20);
    }
    expect(vibration.reduce((sum, each) => sum + each, 0)).toBeLessThan(1500);
  }
});
