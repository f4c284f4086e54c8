/** An exercise led on a phone: what is heard, said, felt, shown and stored, whatever comes between. */
import { describe, expect, test } from "vitest";
import { type PaceJob, reopenPace, startPace } from "../../../src/phone/device/driver.ts";
import { type Segment, segmentsOf } from "../../../src/phone/pace/segments.ts";
import type { View } from "../../../src/phone/pace/view.ts";
import { bout, reps } from "../pace/support.ts";
import { World } from "./world.ts";

const tempo = { lower: 3, bottom: 0, lift: 2, top: 0 } as const;
/** ready 5, then 2 sets of 3 × (lift 2, lower 3) = 15 s, with 60 s from set to set: 95 s. */
const raises = segmentsOf(bout({ sets: 2, reps: reps(2, 3), tempo, restS: 60 }));
const running = segmentsOf(bout({ sets: 3, running: true, timeS: 60, restS: 90 }));

function lead(segments: readonly Segment[], world = new World(), stored?: string) {
  const shown: { view: View; troubles: readonly string[] }[] = [];
  const texts: string[] = [];
  const job: PaceJob = {
    segments,
    choices: { sound: true, voice: true, vibration: true },
    words: (say) => String(say).replace("pace.say.", ""),
    show: (view, troubles) => shown.push({ view, troubles }),
    store: (text) => texts.push(text),
  };
  const start = world.perfMs;
  const pace =
    stored === undefined ? startPace(world.devices, job) : reopenPace(world.devices, job, stored);
  const seconds = (rows: readonly { readonly at: number }[]) =>
    rows.map(({ at }) => Math.round(at - start) / 1000);
  return {
    world,
    pace,
    texts,
    /** Seconds after the start. */
    sounds: () => seconds(world.planned),
    words: () => world.said.map(({ at, text }) => `${Math.round(at - start) / 1000} ${text}`),
    view: () => {
      const { segment, mode, why } = shown.at(-1)?.view ?? {};
      return [segment?.kind, segment?.set, segment?.rep, mode, why].filter(Boolean).join(" ");
    },
    troubles: () => shown.at(-1)?.troubles,
    shown,
  };
}

describe("an exercise", () => {
  test("is heard ahead on the audio clock, each sound once and on time", () => {
    const { world, sounds } = lead(raises);
    expect(sounds()).toEqual([0]);
    world.pass(4000);
    expect(sounds()).toEqual([0, 2, 3, 4, 5]);
    world.pass(100_000);
    expect(sounds().slice(0, 10)).toEqual([0, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
    expect(sounds().at(-1)).toBe(95);
    expect(new Set(sounds()).size).toBe(sounds().length);
  });

  test("is said and felt when it is due", () => {
    const { world, words } = lead(raises);
    world.pass(16_000);
    expect(words()).toEqual([
      ...["0 ready", "2 3", "3 2", "4 1", "5 lift", "7 lower"],
      ...["10 lift", "12 lower", "15 last-one"],
    ]);
    expect(world.felt[0]).toEqual({ at: 5000, pattern: [60] });
    expect(world.felt.length).toBeGreaterThan(5);
  });

  test("is shown at the very instant of its changes", () => {
    const { world, shown } = lead(
      segmentsOf(bout({ reps: reps(1, 3), tempo: { ...tempo, lower: "X" }, fastS: 0.77 })),
    );
    world.pass(20_000);
    const changes = shown.filter(
      ({ view }, index) => view.segment !== shown[index - 1]?.view.segment,
    );
    expect(changes.every(({ view }) => view.elapsedMs < 0.001)).toBe(true);
    expect(changes).toHaveLength(8);
  });

  test("keeps the screen on until it is over, and leaves nothing behind", () => {
    const { world, pace, view, shown } = lead(raises);
    expect(world.wakeLock).toBe("on");
    world.pass(94_000);
    expect([world.wakeLock, view()]).toEqual(["on", "lower 2 3 going"]);
    world.pass(1000);
    expect([world.wakeLock, view()]).toEqual(["off", "over"]);
    const count = shown.length;
    pace?.stop();
    pace?.back();
    expect([world.left(), world.sleeps, shown.length]).toEqual([0, 1, count]);
  });

  test("lets the screen go dark where it has long been forgotten", () => {
    const { world, pace } = lead(raises);
    world.pass(6000);
    pace?.pause();
    world.pass(599_000);
    expect(world.wakeLock).toBe("on");
    world.pass(2000);
    expect(world.wakeLock).toBe("off");
    pace?.resume();
    expect(world.wakeLock).toBe("on");
  });
});

describe("what the client presses", () => {
  test("silences at once what was to come", () => {
    const { world, pace, sounds, view } = lead(raises);
    world.pass(13_000);
    pace?.pause();
    expect(sounds().at(-1)).toBe(13);
    expect(world.stops).toBeGreaterThan(0);
    world.pass(10_000);
    expect(view()).toBe("lift 1 2 paused client");
    pace?.resume();
    world.pass(5000);
    expect(sounds().slice(-7)).toEqual([23, 24, 25, 26, 27, 28, 29]);
  });

  test("is heard at once", () => {
    const { world, pace, sounds, words, view } = lead(raises);
    world.pass(13_040);
    pace?.skip();
    expect(view()).toBe("rest 1 going");
    expect(sounds().at(-1)).toBe(13.04);
    expect(words().at(-1)).toBe("13.04 rest");
  });

  test("every one of them does what it says", () => {
    const { world, pace, view, shown } = lead(
      segmentsOf(bout({ sets: 3, reps: reps(3, 12), restS: 60 })),
    );
    world.pass(6000);
    pace?.partDone();
    expect(view()).toBe("rest 1 going");
    pace?.back();
    expect(view()).toBe("ready 1 going");
    pace?.skip();
    pace?.setDone(9);
    expect(view()).toBe("rest 1 going");
    expect(shown.at(-1)?.view.done).toMatchObject([{ set: 1, reps: 9, whole: false }]);
  });

  test("sound, voice and vibration, each only as wanted", () => {
    const { world, pace, sounds } = lead(raises);
    pace?.choose({ sound: false, voice: false, vibration: false });
    world.pass(10_000);
    expect([sounds(), world.said.length, world.felt.length]).toEqual([[0], 1, 1]);
    pace?.choose({ sound: true, voice: false, vibration: false });
    world.pass(1000);
    expect(sounds().slice(1)).toEqual([10, 11, 12]);
  });
});

describe("what the phone does", () => {
  test("a sound that comes on a moment after the tap loses nothing", () => {
    const world = new World();
    world.sound = "blocked";
    const { sounds, troubles } = lead(raises, world);
    world.pass(200);
    expect([sounds(), troubles()]).toEqual([[], []]);
    world.sound = "on";
    world.pass(100);
    expect(sounds()).toEqual([0]);
  });

  test("a sound that stays off is said, and comes on again on time", () => {
    const world = new World();
    world.sound = "blocked";
    const { sounds, troubles } = lead(raises, world);
    world.pass(10_050);
    expect(troubles()).toEqual(["sound-blocked"]);
    world.sound = "on";
    world.pass(1000);
    expect(sounds()).toEqual([10, 11, 12]);
    expect(troubles()).toEqual([]);
  });

  test("no voice, and no way to keep the screen on", () => {
    const world = new World();
    world.speech = "missing";
    world.wakeLock = "missing";
    expect(lead(raises, world).troubles()).toEqual(["voice-missing", "wake-lock-refused"]);
  });

  test("a call stops the work, and after it there is a count", () => {
    const { world, view, sounds } = lead(raises);
    world.pass(13_000);
    world.hide();
    world.pass(40_000);
    expect([view(), sounds().at(-1)]).toEqual(["lift 1 2 paused interrupted", 13]);
    world.show();
    expect(view()).toBe("lift 1 2 count-in");
    world.pass(3000);
    expect(view()).toBe("lift 1 2 going");
    expect(sounds().filter((at) => at > 13)).toEqual([53, 54, 55, 56, 57]);
  });

  test("a rest goes on in a hidden page and ends with a call to the client", () => {
    const { world, view, sounds } = lead(raises);
    world.pass(30_000);
    world.hide();
    expect(sounds().slice(-2)).toEqual([70, 75]);
    world.pass(120_000);
    expect(sounds().at(-1)).toBe(75);
    world.show();
    expect(view()).toBe("ready 2 paused waiting");
  });

  test("work waits and a rest goes on while the client looks elsewhere in the page, and its end is heard there", () => {
    const { world, pace, view, sounds, words } = lead(raises);
    world.pass(13_000);
    pace?.lookAway();
    world.pass(40_000);
    expect([view(), sounds().at(-1)]).toEqual(["lift 1 2 paused interrupted", 13]);
    pace?.lookBack();
    world.pass(3000);
    expect(view()).toBe("lift 1 2 going");
    world.pass(20_000);
    expect(view()).toBe("rest 1 going");
    pace?.lookAway();
    world.pass(60_000);
    expect(view()).toBe("ready 2 paused waiting");
    // the second repetition again from 56 s, the third, 55 s of rest
    expect([sounds().at(-1), words().at(-1)]).toEqual([121, "121 your-turn"]);
    pace?.lookBack();
    expect(view()).toBe("ready 2 paused waiting");
    pace?.resume();
    world.pass(5000);
    expect(view()).toBe("lift 2 1 going");
  });

  test("a call while the client looks elsewhere brings nobody back", () => {
    const { world, pace, view } = lead(raises);
    world.pass(13_000);
    pace?.lookAway();
    world.hide();
    world.pass(1000);
    world.show();
    expect(view()).toBe("lift 1 2 paused interrupted");
    world.hide();
    pace?.lookBack();
    expect(view()).toBe("lift 1 2 paused interrupted");
    world.show();
    expect(view()).toBe("lift 1 2 count-in");
    pace?.stop();
    pace?.lookAway();
    expect(view()).toBe("lift 1 2 count-in");
  });

  test.each([
    ["work", 13_000, "lift 1 2 paused client", "lift 1 2 count-in"],
    ["a rest", 30_000, "rest 1 paused client", "rest 1 going"],
  ])(
    "held without a tap, %s stands still and is silent until it is gone on with",
    (_, ms, held, on) => {
      const { world, pace, view, sounds } = lead(raises);
      world.pass(ms);
      pace?.hold();
      const heard = sounds();
      world.pass(60_000);
      expect([view(), sounds()]).toEqual([held, heard.filter((at) => at <= ms / 1000)]);
      pace?.resume();
      expect(view()).toBe(on);
      pace?.stop();
      pace?.hold();
      expect(view()).toBe(on);
    },
  );

  test("runs and walks are heard in a hidden page, on time, a minute and a half ahead", () => {
    const { world, sounds, view } = lead(running);
    world.pass(30_000);
    world.hide();
    expect(sounds().at(-1)).toBe(110);
    world.pass(400_000);
    expect(new Set(sounds()).size).toBe(sounds().length);
    expect(sounds()).toEqual(expect.arrayContaining([5, 65, 155, 215, 305, 365]));
    expect(view()).toBe("over");
  });

  test("a hidden page that is woken once a minute plans every sound anew shortly before it", () => {
    const { world, sounds, view } = lead(running);
    world.pass(30_000);
    world.throttleMs = 60_000;
    world.hide();
    world.pass(340_000);
    // however the audio clock has slipped meanwhile
    const ahead = world.planned.map(({ at, by }) => at - by);
    expect(Math.max(...ahead)).toBeLessThanOrEqual(1500);
    const heard = sounds();
    expect(heard).toEqual([...new Set(heard)].toSorted((a, b) => a - b));
    expect(heard).toEqual(expect.arrayContaining([5, 62, 63, 64, 65, 155, 215, 305, 365]));
    world.pass(60_000);
    expect(view()).toBe("over");
  });

  test("a wall clock set back or forward moves nothing", () => {
    const { world, view } = lead(raises);
    world.pass(10_000);
    world.wallMs -= 365 * 86_400_000;
    world.pass(5000);
    world.wallMs += 800 * 86_400_000;
    world.pass(1000);
    expect(view()).toBe("lift 1 3 going");
  });

  test.each([true, false])(
    "sleep in a rest lets it pass (performance.now() goes on: %s)",
    (perf) => {
      const { world, view } = lead(raises);
      world.pass(30_000);
      world.hide();
      world.sleep(40_000, { perf });
      world.show();
      expect(view()).toBe("rest 1 going");
      world.pass(5000);
      expect(view()).toBe("ready 2 going");
    },
  );

  test("a page that stood still without a word was not seen", () => {
    const { world, view } = lead(raises);
    world.pass(13_000);
    world.sleep(20_000, { perf: true });
    world.pass(100);
    expect(view()).toBe("lift 1 2 count-in");
  });

  test("sounds meant for before a call do not come after it", () => {
    const { world, sounds } = lead(running);
    world.pass(30_000);
    world.hide();
    world.pass(1000);
    world.sound = "blocked";
    world.pass(60_000);
    world.sound = "on";
    world.pass(1000);
    expect(sounds().filter((at) => at > 31 && at < 91)).toEqual([]);
    expect(sounds()).toContain(155);
  });
});

describe("a page loaded anew", () => {
  function stored(seconds: number, segments = raises): string {
    const { world, texts } = lead(segments);
    world.pass(seconds * 1000);
    return texts.at(-1) ?? "";
  }
  function later(seconds: number): World {
    const world = new World();
    world.wallMs += seconds * 1000;
    world.perfMs = 77;
    return world;
  }

  test.each<[string, number, number, string]>([
    ["waits in the middle of work", 13, 40, "lift 1 2 paused interrupted"],
    ["goes on in a rest", 30, 60, "rest 1 going"],
    ["waits after a rest", 30, 100, "ready 2 paused waiting"],
    ["is still over", 96, 200, "over"],
  ])("%s", (_, at, again, expected) => {
    expect(lead(raises, later(again), stored(at)).view()).toBe(expected);
  });

  test("goes on with runs in the right place, and is heard after a tap", () => {
    const world = later(70);
    world.sound = "blocked";
    const { view, pace, sounds, troubles } = lead(running, world, stored(33, running));
    world.pass(2000);
    expect([view(), troubles()]).toEqual(["walk 1 going", ["sound-blocked"]]);
    world.sound = "on";
    pace?.choose({ sound: true, voice: false, vibration: false });
    world.pass(90_000);
    // 70 s were over when it was loaded: the next run is at 155
    expect(sounds()).toContain(85);
  });

  test("has its place within seconds, also where nothing changed since", () => {
    const { view, shown } = lead(running, later(64), stored(64, running));
    expect(view()).toBe("run 1 going");
    expect(shown.at(-1)?.view.elapsedMs).toBe(59_000);
  });

  test.each(["", "{", "null", "{}", '{"ms":1,"wallMs":1,"run":{}}', stored(5, running)])(
    "begins anew where what is stored is of no use: %s",
    (text) => {
      expect(lead(raises, new World(), text).pace).toBeUndefined();
    },
  );
});

describe("a tap that led elsewhere", () => {
  /** In the middle of the second repetition of the first set. */
  const inSet = () => {
    const led = lead(raises);
    led.world.pass(11_000);
    expect(led.view()).toBe("lift 1 2 going");
    return led;
  };
  test.each([
    ["skip", "rest 1 going"],
    ["setDone", "rest 1 going"],
    ["back", "lift 1 1 count-in"],
  ] as const)("%s is taken back, paused where it was", (tap, there) => {
    const { pace, view, world } = inSet();
    pace?.[tap]();
    expect(view()).toBe(there);
    world.pass(2000);
    expect(pace?.beforeTap()).toBeDefined();
    pace?.undo();
    expect(view()).toBe("lift 1 2 paused client");
    expect(pace?.beforeTap()).toBeUndefined();
    pace?.resume();
    world.pass(3100);
    expect(view()).toBe("lift 1 2 going");
  });

  test("it can be taken back until the next tap", () => {
    const { pace, view } = inSet();
    pace?.undo();
    expect(view()).toBe("lift 1 2 going");
    pace?.skip();
    pace?.pause();
    expect(pace?.beforeTap()).toBeUndefined();
    pace?.undo();
    expect(view()).toBe("rest 1 paused client");
  });

  test("one that ended the exercise is taken up again from its text; an end by itself is not", () => {
    const { pace, view, world } = inSet();
    for (let n = 0; n < 4; n += 1) pace?.skip();
    expect(view()).toBe("over");
    const again = lead(raises, world, pace?.beforeTap());
    expect(again.view()).toBe("lift 2 1 paused client");
    const led = lead(raises);
    led.world.pass(85_000);
    led.pace?.back();
    led.world.pass(60_000);
    expect(led.view()).toBe("over");
    expect(led.pace?.beforeTap()).toBeUndefined();
  });
});
