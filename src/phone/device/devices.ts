/** All that a pace needs of the device, from a window. */

import { makeSound, type Sound } from "./sound.ts";
import { makeSpeech, type Speech } from "./speech.ts";
import { makeVibration, type Vibration } from "./vibration.ts";
import { makeVisible, type Visible } from "./visible.ts";
import { makeWakeLock, type ScreenLock } from "./wake-lock.ts";

export interface PaceDevices {
  readonly sound: Sound;
  readonly speech: Speech;
  readonly vibration: Vibration;
  readonly wakeLock: ScreenLock;
  readonly visible: Visible;
  readonly timers: Timers;
  /** performance.now() and Date.now() at one instant. */
  readonly clocks: () => { readonly perfMs: number; readonly wallMs: number };
}

/** Each gives a function that ends it. */
export interface Timers {
  readonly every: (ms: number, act: () => void) => () => void;
  readonly after: (ms: number, act: () => void) => () => void;
}

/** One set of devices serves a page for as long as it is open. `language`: BCP 47, of the spoken words. */
export function paceDevices(window: Window & typeof globalThis, language: string): PaceDevices {
  return {
    sound: makeSound(window),
    speech: makeSpeech(window, language),
    vibration: makeVibration(window.navigator),
    wakeLock: makeWakeLock(window),
    visible: makeVisible(window),
    timers: {
      every: (ms, act) => {
        const timer = window.setInterval(act, ms);
        return () => window.clearInterval(timer);
      },
      after: (ms, act) => {
        const timer = window.setTimeout(act, ms);
        return () => window.clearTimeout(timer);
      },
    },
    clocks: () => ({ perfMs: window.performance.now(), wallMs: Date.now() }),
  };
}
