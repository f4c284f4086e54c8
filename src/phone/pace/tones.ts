/** The sounds of the pace, and how each feels in the hand. */

export interface Note {
  readonly hz: number;
  /** From the sound's beginning, and how long it sounds. */
  readonly afterMs: number;
  readonly ms: number;
  /** 0 to 1. */
  readonly level: number;
}

export type ToneName =
  | "lift"
  | "lower"
  | "pause"
  | "hold"
  | "tick"
  | "count"
  | "go"
  | "ease"
  | "rest"
  | "ready"
  | "turn"
  | "soon"
  | "call"
  | "finish";

interface Tone {
  readonly notes: readonly Note[];
  /** On, off, on …, in milliseconds; empty where it is not felt. */
  readonly vibration: readonly number[];
}

/** Notes one after the other, each beginning when the one before it ends. */
function row(hz: readonly number[], ms: number, level: number): readonly Note[] {
  return hz.map((each, index) => ({ hz: each, afterMs: index * ms, ms, level }));
}

/**
 * Between 500 and 1100 Hz: small loudspeakers give little below, and many older ears hear less
 * above 2000 Hz (ISO 7029, from memory). Movements are told apart by pitch, changes by the number of notes.
 */
export const TONES: Readonly<Record<ToneName, Tone>> = {
  lift: { notes: row([784], 140, 0.8), vibration: [60] },
  lower: { notes: row([523], 140, 0.8), vibration: [60, 80, 60] },
  pause: { notes: row([659], 80, 0.4), vibration: [] },
  hold: { notes: row([659], 200, 0.8), vibration: [120] },
  tick: { notes: row([988], 25, 0.2), vibration: [] },
  count: { notes: row([880], 70, 0.6), vibration: [30] },
  go: { notes: row([659, 988], 180, 1), vibration: [400] },
  ease: { notes: row([988, 587], 180, 1), vibration: [400, 150, 400] },
  rest: { notes: row([784, 659, 523], 150, 0.8), vibration: [200] },
  ready: { notes: row([587], 150, 0.6), vibration: [60] },
  turn: { notes: row([587, 784, 587], 130, 0.8), vibration: [100, 80, 100] },
  soon: { notes: row([784, 784], 110, 0.4), vibration: [80] },
  call: { notes: row([988, 784, 988, 784], 200, 1), vibration: [400, 150, 400] },
  finish: { notes: row([523, 659, 784, 1047], 170, 0.9), vibration: [200, 120, 200, 120, 400] },
};
