/** Sound, voice, vibration, screen and page of devices that have them, refuse them, or lack them. */
import { describe, expect, test, vi } from "vitest";
import { makeSound, type SoundPlace } from "../../../src/phone/device/sound.ts";
import { makeSpeech, type SpeechPlace } from "../../../src/phone/device/speech.ts";
import { makeVibration } from "../../../src/phone/device/vibration.ts";
import { makeVisible } from "../../../src/phone/device/visible.ts";
import { makeWakeLock } from "../../../src/phone/device/wake-lock.ts";
import { TONES } from "../../../src/phone/pace/tones.ts";

/** An audio clock that stands still until the test moves it. */
class FakeAudio {
  static last: FakeAudio | undefined;
  state = "suspended";
  currentTime = 10;
  stamp: AudioTimestamp = { contextTime: 9.9, performanceTime: 4980 };
  readonly destination = {};
  readonly nodes: FakeNode[] = [];
  refuses = false;
  constructor() {
    FakeAudio.last = this;
  }
  getOutputTimestamp = () => this.stamp;
  resume = async () => {
    if (this.refuses) throw new Error("NotAllowedError");
    this.state = "running";
  };
  suspend = async () => {
    this.state = "suspended";
  };
  createOscillator = () => {
    const node = new FakeNode();
    this.nodes.push(node);
    return node;
  };
  createConstantSource = () => this.createOscillator();
  createGain = () => new FakeNode();
}

class FakeNode {
  type = "";
  frequency = { value: 0 };
  offset = { value: 1 };
  steps: [number, number][] = [];
  gain = {
    value: 1,
    setValueAtTime: (value: number, at: number) => this.steps.push([at, value]),
    linearRampToValueAtTime: (value: number, at: number) => this.steps.push([at, value]),
  };
  started = -1;
  stopped: number | undefined;
  cut = false;
  to: FakeNode | undefined;
  ended: (() => void)[] = [];
  connect(to: FakeNode) {
    this.to = to;
    return to;
  }
  disconnect() {
    this.cut = true;
  }
  start(at: number) {
    this.started = at;
  }
  stop(at = 0) {
    this.stopped = at;
  }
  addEventListener(_: string, act: () => void) {
    this.ended.push(act);
  }
  removeEventListener(_: string, act: () => void) {
    this.ended = this.ended.filter((each) => each !== act);
  }
}

const placeOf = (audio: unknown): SoundPlace => ({
  ...(audio !== undefined && { AudioContext: audio as typeof AudioContext }),
  performance: { now: () => 5000 },
});

async function unlocked() {
  const sound = makeSound(placeOf(FakeAudio));
  sound.unlock();
  await Promise.resolve();
  const audio = FakeAudio.last;
  if (!audio) throw new Error("no audio was made");
  return { sound, audio };
}

describe("sound", () => {
  test("is blocked until a tap, and then on", async () => {
    const sound = makeSound(placeOf(FakeAudio));
    expect(sound.state()).toBe("blocked");
    expect(sound.play(TONES.lift.notes, 6000)()).toBe(false);
    sound.wakeAt(6000, () => undefined)();
    sound.unlock();
    await Promise.resolve();
    expect(sound.state()).toBe("on");
  });

  test("is not on before the output has begun", async () => {
    const { sound, audio } = await unlocked();
    audio.currentTime = 0.1;
    audio.stamp = { contextTime: 0, performanceTime: 0 };
    expect(sound.state()).toBe("blocked");
    audio.currentTime = 0.6;
    expect(sound.state()).toBe("on");
  });

  test("that is refused stays blocked, and one that cannot be made is missing", async () => {
    class Refusing extends FakeAudio {
      override refuses = true;
    }
    class Broken {
      constructor() {
        throw new Error("no hardware");
      }
    }
    for (const [audio, state] of [
      [Refusing, "blocked"],
      [Broken, "missing"],
      [undefined, "missing"],
    ]) {
      const sound = makeSound(placeOf(audio));
      sound.unlock();
      await Promise.resolve();
      sound.play(TONES.lift.notes, 6000);
      sound.sleep();
      expect(sound.state()).toBe(state);
    }
  });

  test("is heard at its instant by the clock of the output", async () => {
    const { sound, audio } = await unlocked();
    // 9.9 s of the audio are heard at 4980 ms: 5080 ms are 100 ms later
    sound.play(TONES.turn.notes, 5080);
    expect(audio.nodes.map(({ started }) => Number(started.toFixed(3)))).toEqual([
      10, 10.13, 10.26,
    ]);
    expect(audio.nodes.map(({ stopped }) => Number(stopped?.toFixed(3)))).toEqual([
      10.13, 10.26, 10.39,
    ]);
    expect(audio.nodes.map(({ frequency }) => frequency.value)).toEqual([587, 784, 587]);
  });

  test.each<[string, AudioTimestamp]>([
    ["knows nothing yet", { contextTime: 0, performanceTime: 0 }],
    ["counts from elsewhere", { contextTime: 9.9, performanceTime: 4.98 }],
    ["stands still", { contextTime: 1, performanceTime: 4980 }],
    ["says nothing", {}],
  ])("goes by the plain audio clock where that of the output %s", async (_, stamp) => {
    const { sound, audio } = await unlocked();
    audio.stamp = stamp;
    sound.play(TONES.lift.notes, 5500);
    expect(audio.nodes[0]?.started).toBeCloseTo(10.5, 6);
  });

  test("rises and falls without a click", async () => {
    const { sound, audio } = await unlocked();
    sound.play(TONES.tick.notes, 6000);
    const volume = audio.nodes[0]?.to;
    const steps = volume?.steps ?? [];
    expect(volume?.gain.value).toBe(0);
    expect([steps[0]?.[1], steps.at(-1)?.[1]]).toEqual([0, 0]);
    expect(steps.map(([at]) => at)).toEqual(steps.map(([at]) => at).toSorted((a, b) => a - b));
  });

  test("that has passed sounds at once", async () => {
    const { sound, audio } = await unlocked();
    sound.play(TONES.lift.notes, 1000);
    expect(audio.nodes[0]?.started).toBe(10);
  });

  test("taken back is not heard, but what sounds goes on", async () => {
    const { sound, audio } = await unlocked();
    const back = [sound.play(TONES.lift.notes, 5080), sound.play(TONES.rest.notes, 7000)];
    expect(back.map((take) => take())).toEqual([false, true]);
    expect(audio.nodes.map(({ cut }) => cut)).toEqual([false, true, true, true]);
  });

  test("wakes at an instant, unless that is called off", async () => {
    const { sound, audio } = await unlocked();
    const woken: string[] = [];
    sound.wakeAt(5280, () => woken.push("one"));
    sound.wakeAt(5380, () => woken.push("other"))();
    expect(audio.nodes.map(({ stopped }) => Number(stopped?.toFixed(3)))).toEqual([10.2, 10.3]);
    expect(audio.nodes.map(({ offset }) => offset.value)).toEqual([0, 0]);
    for (const ended of audio.nodes.flatMap((node) => node.ended)) ended();
    expect(woken).toEqual(["one"]);
  });

  test("sleeps when the last of it has ended, and wakes with a tap", async () => {
    const { sound, audio } = await unlocked();
    sound.play(TONES.lift.notes, 5080);
    sound.sleep();
    expect(sound.state()).toBe("on");
    for (const ended of audio.nodes[0]?.ended ?? []) ended();
    expect(sound.state()).toBe("blocked");
    sound.unlock();
    await Promise.resolve();
    expect(sound.state()).toBe("on");
  });
});

describe("a voice", () => {
  const voice = (lang: string, localService: boolean, usual = false) => ({
    lang,
    localService,
    default: usual,
    name: `${lang} ${localService}`,
  });
  class Utterance {
    voice: { name: string } | undefined;
    lang = "";
    volume = 1;
    readonly text: string;
    constructor(text: string) {
      this.text = text;
    }
  }
  function speechWith(voices: readonly object[] | undefined, language = "de-CH") {
    const spoken: Utterance[] = [];
    const synthesis = {
      speaking: false,
      pending: false,
      cancelled: 0,
      getVoices: () => voices,
      cancel() {
        this.cancelled += 1;
      },
      speak(utterance: Utterance) {
        spoken.push(utterance);
        this.speaking = true;
      },
    };
    const place = voices && { speechSynthesis: synthesis, SpeechSynthesisUtterance: Utterance };
    const speech = makeSpeech((place ?? {}) as unknown as SpeechPlace, language);
    return { speech, spoken, synthesis };
  }

  test.each<[string, object[] | undefined, string | undefined]>([
    ["of the very region", [voice("de-DE", true), voice("de_CH", true)], "de_CH true"],
    ["that the device uses", [voice("de-AT", true), voice("de-DE", true, true)], "de-DE true"],
    ["of the language", [voice("en-US", true, true), voice("de-AT", true)], "de-AT true"],
    ["none from the net", [voice("de-CH", false), voice("en-GB", true)], undefined],
    ["none of a language that begins alike", [voice("del-US", true)], undefined],
    ["none at all", [], undefined],
    ["none known", undefined, undefined],
  ])("%s", (_, voices, expected) => {
    const { speech, spoken } = speechWith(voices);
    speech.say("Rauf");
    expect(spoken.map((each) => each.voice?.name)).toEqual(
      expected === undefined ? [] : [expected],
    );
    expect(speech.state()).toBe(expected === undefined ? "missing" : "on");
  });

  test("may come late", () => {
    const voices: object[] = [];
    const { speech } = speechWith(voices);
    expect(speech.state()).toBe("missing");
    voices.push(voice("de-DE", true));
    expect(speech.state()).toBe("on");
  });

  test("is unlocked without a word, once, and says the latest only", () => {
    const { speech, spoken, synthesis } = speechWith([voice("de-DE", true)]);
    speech.unlock();
    speech.unlock();
    expect(spoken.map(({ text, volume }) => [text, volume])).toEqual([[" ", 0]]);
    speech.say("Rauf");
    expect([synthesis.cancelled, spoken.at(-1)?.text]).toEqual([1, "Rauf"]);
    speech.stop();
    expect(synthesis.cancelled).toBe(2);
  });

  test("that fails is silence", () => {
    const fail = () => {
      throw new Error("synthesis failed");
    };
    const broken = { speaking: true, getVoices: fail, cancel: fail, speak: fail };
    const place = { speechSynthesis: broken, SpeechSynthesisUtterance: Utterance };
    const speech = makeSpeech(place as unknown as SpeechPlace, "de");
    speech.say("Rauf");
    speech.stop();
    expect(speech.state()).toBe("missing");
  });
});

describe("a touch", () => {
  test("is felt where there is one", () => {
    const vibrate = vi.fn(() => true);
    const vibration = makeVibration({ vibrate });
    vibration.vibrate([60, 80, 60]);
    vibration.stop();
    expect(vibrate.mock.calls).toEqual([[[60, 80, 60]], [[]]]);
    expect(vibration.state()).toBe("on");
  });

  test("is missing, or fails, without a word", () => {
    const fails = () => {
      throw new Error("not here");
    };
    makeVibration({ vibrate: fails }).vibrate([60]);
    makeVibration({}).vibrate([60]);
    expect(makeVibration({}).state()).toBe("missing");
  });
});

/** A page that can be hidden and seen, and tells those that listen. */
class FakePage extends EventTarget {
  readonly document = Object.assign(new EventTarget(), {
    visibilityState: "visible" as DocumentVisibilityState,
  });
  turn(state: DocumentVisibilityState): void {
    this.document.visibilityState = state;
    this.document.dispatchEvent(new Event("visibilitychange"));
  }
}

describe("a screen that is kept on", () => {
  function wakeLockOn(request: () => Promise<unknown>) {
    const page = new FakePage();
    const wakeLock = { request } as unknown as WakeLock;
    return { page, wakeLock: makeWakeLock({ navigator: { wakeLock }, document: page.document }) };
  }
  const settle = () => new Promise((resolve) => setTimeout(resolve, 0));
  const lock = () => ({
    released: false,
    async release() {
      this.released = true;
    },
  });

  test("is on until it is let go", async () => {
    const { wakeLock } = wakeLockOn(async () => lock());
    expect(wakeLock.state()).toBe("off");
    wakeLock.keep();
    await settle();
    expect(wakeLock.state()).toBe("on");
    wakeLock.letGo();
    expect(wakeLock.state()).toBe("off");
  });

  test("is asked for once, and again after the page was hidden", async () => {
    const locks: ReturnType<typeof lock>[] = [];
    const { wakeLock, page } = wakeLockOn(async () => {
      locks.push(lock());
      return locks.at(-1);
    });
    wakeLock.keep();
    wakeLock.keep();
    await settle();
    expect(locks).toHaveLength(1);
    await locks[0]?.release();
    page.turn("hidden");
    await settle();
    expect([locks.length, wakeLock.state()]).toEqual([1, "off"]);
    page.turn("visible");
    await settle();
    expect([locks.length, wakeLock.state()]).toEqual([2, "on"]);
  });

  test("that is let go before it was given does not stay on", async () => {
    const given = lock();
    const { wakeLock } = wakeLockOn(async () => given);
    wakeLock.keep();
    wakeLock.letGo();
    await settle();
    expect([given.released, wakeLock.state()]).toEqual([true, "off"]);
  });

  test("may be refused, or missing", async () => {
    const { wakeLock } = wakeLockOn(() => Promise.reject(new Error("low battery")));
    wakeLock.keep();
    await settle();
    expect(wakeLock.state()).toBe("refused");
    const page = new FakePage();
    expect(makeWakeLock({ navigator: {}, document: page.document }).state()).toBe("missing");
  });
});

describe("a page", () => {
  function watched() {
    const page = new FakePage();
    const seen: string[] = [];
    const visible = makeVisible(page);
    const stop = visible.watch({
      left: () => seen.push("left"),
      returned: () => seen.push("returned"),
    });
    return { page, seen, visible, stop };
  }

  test.each<[string, (page: FakePage) => void, string[]]>([
    [
      "hidden and seen again",
      (page) => {
        page.turn("hidden");
        page.turn("visible");
      },
      ["left", "returned"],
    ],
    [
      "put aside, whatever order it says so in",
      (page) => {
        page.dispatchEvent(new Event("pagehide"));
        page.turn("hidden");
        page.document.dispatchEvent(new Event("freeze"));
      },
      ["left"],
    ],
    [
      "taken up again",
      (page) => {
        page.turn("hidden");
        page.document.dispatchEvent(new Event("freeze"));
        page.document.dispatchEvent(new Event("resume"));
        page.turn("visible");
        page.dispatchEvent(new Event("pageshow"));
      },
      ["left", "returned"],
    ],
    [
      "shown without having been hidden",
      (page) => {
        page.dispatchEvent(new Event("pageshow"));
      },
      [],
    ],
  ])("%s", (_, act, expected) => {
    const { page, seen } = watched();
    act(page);
    expect(seen).toEqual(expected);
  });

  test("that nobody watches any more says nothing", () => {
    const { page, seen, stop, visible } = watched();
    stop();
    page.turn("hidden");
    page.dispatchEvent(new Event("pagehide"));
    expect(seen).toEqual([]);
    expect(visible.hidden()).toBe(true);
  });
});
