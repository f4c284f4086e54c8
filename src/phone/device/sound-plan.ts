/** Hands the sounds of a run to the audio clock ahead of time, each once, and takes back what no longer holds. */
import type { Clock } from "../pace/clock.ts";
import { cuesBetween } from "../pace/cues.ts";
import type { Run } from "../pace/run.ts";
import { TONES } from "../pace/tones.ts";
import type { Sound } from "./sound.ts";

/**
 * How far ahead. The timers of a hidden page may wake it once a minute only: so more is planned
 * there, and the audio clock wakes the page shortly before each sound, to plan it anew, as the
 * audio clock itself slips where a machine is busy.
 */
const AHEAD_MS = 1500;
const AHEAD_HIDDEN_MS = 90_000;
const WAKE_BEFORE_MS = 800;

/** A hidden page plans anew no more often than this. */
const ANEW_MS = 500;

/** Later than this a sound would only mislead. */
const LATEST_MS = 300;

interface Planned {
  readonly at: number;
  /** False where it has begun. */
  readonly takeBack: () => boolean;
}

/** Times are in milliseconds of the run's clock. */
export class SoundPlan {
  readonly #sound: Sound;
  readonly #wake: () => void;
  /** Up to where sounds have been planned, and when that was done last. */
  #to: number;
  #doneMs = Number.NEGATIVE_INFINITY;
  #planned: readonly Planned[] = [];
  #stopWaking: () => void = () => undefined;

  /** `wake`: called in a hidden page when the plan should be made anew. */
  constructor(sound: Sound, nowMs: number, wake: () => void) {
    this.#sound = sound;
    this.#to = nowMs;
    this.#wake = wake;
  }

  /** Plans what is to come; call it often. Where sound is off, or not `wanted`, nothing is planned. */
  make(run: Run, clock: Clock, hidden: boolean, wanted: boolean): void {
    if (!wanted || this.#sound.state() !== "on") {
      // what was planned before the sound went off, as in a call, must not come when it is on again
      this.#takeBack();
      this.#to = clock.ms - LATEST_MS;
      return;
    }
    if (hidden && clock.ms - this.#doneMs < ANEW_MS) return;
    if (hidden) this.#to = this.#takeBack() ?? this.#to;
    const to = Math.max(this.#to, clock.ms + (hidden ? AHEAD_HIDDEN_MS : AHEAD_MS));
    const cues = cuesBetween(run, this.#to, to).filter(({ at }) => clock.ms - at <= LATEST_MS);
    const planned = cues.map(({ at, tone }) => ({
      at,
      takeBack: this.#sound.play(TONES[tone].notes, perfMs(clock, at)),
    }));
    this.#planned = [...this.#planned.filter(({ at }) => at > clock.ms - AHEAD_MS), ...planned];
    this.#to = to;
    this.#doneMs = clock.ms;
    this.#stopWaking();
    if (hidden) this.#wakeBeforeNext(clock);
  }

  /** The run has changed: nothing that was planned for later holds, from `nowMs` on. */
  drop(nowMs: number): void {
    this.#stopWaking();
    this.#takeBack();
    this.#to = nowMs;
    this.#doneMs = Number.NEGATIVE_INFINITY;
  }

  /** Takes back every sound that has not begun; the time of the first of them. */
  #takeBack(): number | undefined {
    const taken = this.#planned.filter(({ takeBack }) => takeBack());
    this.#planned = [];
    return taken[0]?.at;
  }

  #wakeBeforeNext(clock: Clock): void {
    const next = this.#planned.find(({ at }) => at - WAKE_BEFORE_MS > clock.ms);
    if (!next) return;
    this.#stopWaking = this.#sound.wakeAt(perfMs(clock, next.at - WAKE_BEFORE_MS), () => {
      this.#doneMs = Number.NEGATIVE_INFINITY;
      this.#wake();
    });
  }
}

/** An instant of the run's clock as one of performance.now(). */
function perfMs(clock: Clock, ms: number): number {
  return clock.perfMs + (ms - clock.ms);
}
