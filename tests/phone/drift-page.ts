/** Runs in a browser: leads through an exercise and writes down what is heard and shown, and when. */
import type { SessionBout } from "../../src/compose/session-model.ts";
import { paceDevices } from "../../src/phone/device/devices.ts";
import { startPace } from "../../src/phone/device/driver.ts";
import { segmentsOf } from "../../src/phone/pace/segments.ts";

/** Instants of performance.now(), in milliseconds. */
export interface Watched {
  readonly startMs: number;
  /** When each note was heard. */
  readonly notesMs: number[];
  /** When each segment was shown first, when it had begun by what was shown, and what kind it is. */
  readonly changes: { readonly atMs: number; readonly beganMs: number; readonly kind: string }[];
  /** The longest time between two drawings, and how many were in a hidden page. */
  longestMs: number;
  hidden: number;
}

declare global {
  interface Window {
    lead: (bout: SessionBout) => void;
    watched: Watched | undefined;
  }
}

// from outside: the program does not know that it is watched. Where the audio clock stands against
// performance.now() is read when a note has ended, and so not as it was when the note was planned
const { start, stop } = OscillatorNode.prototype;
const takenBack = new WeakSet<OscillatorNode>();
OscillatorNode.prototype.start = function watchedStart(this: OscillatorNode, when = 0) {
  const context = this.context as AudioContext;
  this.addEventListener("ended", () => {
    if (takenBack.has(this)) return;
    const { contextTime = 0, performanceTime = 0 } = context.getOutputTimestamp();
    window.watched?.notesMs.push(performanceTime + (when - contextTime) * 1000);
  });
  start.call(this, when);
};
OscillatorNode.prototype.stop = function watchedStop(this: OscillatorNode, when?: number) {
  if (when === undefined) takenBack.add(this);
  stop.call(this, when);
};

window.lead = (bout) => {
  const devices = paceDevices(window, "en");
  const watched: Watched = {
    startMs: performance.now(),
    notesMs: [],
    changes: [],
    longestMs: 0,
    hidden: 0,
  };
  window.watched = watched;
  let lastMs = watched.startMs;
  let shown: unknown;
  startPace(devices, {
    segments: segmentsOf(bout, bout.sets, { readyS: 2 }),
    choices: { sound: true, voice: false, vibration: true },
    words: String,
    store: (text) => localStorageOrNot(text),
    show: ({ segment, mode, elapsedMs }) => {
      const nowMs = performance.now();
      watched.longestMs = Math.max(watched.longestMs, nowMs - lastMs);
      watched.hidden += document.hidden ? 1 : 0;
      lastMs = nowMs;
      if (segment === shown) return;
      shown = segment;
      watched.changes.push({
        atMs: nowMs,
        beganMs: nowMs - elapsedMs,
        kind: segment?.kind ?? mode,
      });
    },
  });
};

/** As the booklet does; a page without an address of its own has no storage. */
function localStorageOrNot(text: string): void {
  try {
    localStorage.setItem("pace", text);
  } catch {
    // none here
  }
}
