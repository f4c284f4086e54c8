/** A phone for tests: its clocks, timers, sound, voice and page go as the test says. */
import type { PaceDevices } from "../../../src/phone/device/devices.ts";
import type { Note } from "../../../src/phone/pace/tones.ts";

interface Timer {
  at: number;
  readonly every: number | undefined;
  readonly act: () => void;
  /** Of the audio clock: on time in a hidden page as well. */
  readonly exact?: boolean;
}

const LATENCY_MS = 40;

export class World {
  perfMs = 5000;
  wallMs = 1_790_000_000_000;
  hidden = false;
  throttleMs = 1000;
  sound: "on" | "blocked" | "missing" = "on";
  speech: "on" | "missing" = "on";
  wakeLock: "on" | "off" | "refused" | "missing" = "off";
  /** What has been handed to the audio clock and not been taken back: for when, when, and its first pitch. */
  planned: { at: number; by: number; hz: number }[] = [];
  readonly said: { at: number; text: string }[] = [];
  readonly felt: { at: number; pattern: readonly number[] }[] = [];
  stops = 0;
  unlocks = 0;
  sleeps = 0;
  #timers: Timer[] = [];
  #watchers: { left: () => void; returned: () => void }[] = [];

  readonly devices: PaceDevices = {
    sound: {
      unlock: () => {
        this.unlocks += 1;
      },
      state: () => this.sound,
      play: (notes: readonly Note[], at) => {
        const sound = { at, by: this.perfMs, hz: notes[0]?.hz ?? 0 };
        this.planned.push(sound);
        return () => {
          // on its way to the ear it has begun some time before it is heard
          if (at <= this.perfMs + LATENCY_MS) return false;
          this.planned = this.planned.filter((each) => each !== sound);
          return true;
        };
      },
      wakeAt: (at, act) => this.#start({ at, every: undefined, act, exact: true }),
      sleep: () => {
        this.sleeps += 1;
      },
    },
    speech: {
      unlock: () => undefined,
      state: () => this.speech,
      say: (text) => this.said.push({ at: this.perfMs, text }),
      stop: () => {
        this.stops += 1;
      },
    },
    vibration: {
      state: () => "on",
      vibrate: (pattern) => this.felt.push({ at: this.perfMs, pattern }),
      stop: () => undefined,
    },
    wakeLock: {
      state: () => this.wakeLock,
      keep: () => {
        if (this.wakeLock === "off") this.wakeLock = "on";
      },
      letGo: () => {
        if (this.wakeLock === "on") this.wakeLock = "off";
      },
    },
    visible: {
      hidden: () => this.hidden,
      watch: (watcher) => {
        this.#watchers.push(watcher);
        return () => {
          this.#watchers = this.#watchers.filter((each) => each !== watcher);
        };
      },
    },
    timers: {
      every: (ms, act) => this.#start({ at: this.perfMs + ms, every: ms, act }),
      after: (ms, act) => this.#start({ at: this.perfMs + ms, every: undefined, act }),
    },
    clocks: () => ({ perfMs: this.perfMs, wallMs: this.wallMs }),
  };

  /** Lets time pass; timers act in their order, in a hidden page only once in `throttleMs`. */
  pass(ms: number): void {
    const end = this.perfMs + ms;
    for (;;) {
      const next = this.#timers.toSorted((one, other) => this.#due(one) - this.#due(other))[0];
      if (!next || this.#due(next) > end) break;
      this.#move(Math.max(this.perfMs, this.#due(next)));
      if (next.every === undefined) this.#timers = this.#timers.filter((each) => each !== next);
      else next.at = this.perfMs + next.every;
      next.act();
    }
    this.#move(end);
  }

  /** Lets time pass in which nothing of the page runs; `perf`: whether performance.now() goes on. */
  sleep(ms: number, { perf }: { readonly perf: boolean }): void {
    this.wallMs += ms;
    if (!perf) return;
    this.perfMs += ms;
  }

  hide(): void {
    this.hidden = true;
    for (const { left } of this.#watchers) left();
  }

  show(): void {
    this.hidden = false;
    for (const { returned } of this.#watchers) returned();
  }

  /** Timers and watchers that are still there. */
  left(): number {
    return this.#timers.length + this.#watchers.length;
  }

  #due({ at, exact }: Timer): number {
    return this.hidden && !exact ? Math.ceil(at / this.throttleMs) * this.throttleMs : at;
  }

  #move(to: number): void {
    this.wallMs += to - this.perfMs;
    this.perfMs = to;
  }

  #start(timer: Timer): () => void {
    this.#timers.push(timer);
    return () => {
      this.#timers = this.#timers.filter((each) => each !== timer);
    };
  }
}
