/** Leads a client through one exercise: ties the run to the clock, the devices, the screen and the store. */
import { type Clock, clockAfterReload, clockAt, startClock } from "../pace/clock.ts";
import * as controls from "../pace/controls.ts";
import { cuesBetween } from "../pace/cues.ts";
import { advance, begin, nextChangeMs, type Run } from "../pace/run.ts";
import type { SayKey } from "../pace/say.ts";
import type { Segment } from "../pace/segments.ts";
import { readStored, type StoredRun, storedText } from "../pace/stored.ts";
import { type View, viewOf } from "../pace/view.ts";
import type { PaceDevices } from "./devices.ts";
import { SoundPlan } from "./sound-plan.ts";

/** What the client wants to hear and feel. */
export interface Choices {
  readonly sound: boolean;
  readonly voice: boolean;
  readonly vibration: boolean;
}

/** What was wanted and cannot be had just now. */
export type Trouble = "sound-blocked" | "voice-missing" | "wake-lock-refused";

export interface PaceJob {
  readonly segments: readonly Segment[];
  readonly choices: Choices;
  /** The spoken word of a key, or a number; empty where nothing is to be said. */
  readonly words: (say: SayKey | number) => string;
  /** Called at every change, and ten times a second between. */
  readonly show: (view: View, troubles: readonly Trouble[]) => void;
  /** Called at every change with what `reopenPace` takes up. */
  readonly store: (text: string) => void;
}

/** What a screen can do; call the first seven only in a tap. */
export interface Pace {
  pause(): void;
  resume(): void;
  back(): void;
  skip(): void;
  /** Repetitions without a tempo, or a distance, are done. */
  partDone(): void;
  /** The set is over on this side; `reps`: how many it really were. */
  setDone(reps?: number): void;
  /** Takes back the last tap that led elsewhere: as it was then, paused. */
  undo(): void;
  /**
   * As it was before that tap, paused, as a text for `reopenPace`. Undefined where the last tap led
   * nowhere, and where the exercise has ended by itself since.
   */
  beforeTap(): string | undefined;
  choose(choices: Choices): void;
  /** Stands still without a tap, since it is not to go on. */
  hold(): void;
  /** The client looks at something else in this page: as in a hidden one, work waits and time passes. */
  lookAway(): void;
  lookBack(): void;
  /** Ends it, when the screen is left, without another word to the screen or the store. */
  stop(): void;
}

/** Starts an exercise; call it in a tap. */
export function startPace(devices: PaceDevices, job: PaceJob): Pace {
  const clock = startClock({ ...devices.clocks(), hidden: false });
  devices.sound.unlock();
  devices.speech.unlock();
  return new Driver(devices, job, clock, begin(job.segments, clock.ms));
}

/** Takes up an exercise after a reload; undefined where what was stored is broken or of another exercise. */
export function reopenPace(devices: PaceDevices, job: PaceJob, stored: string): Pace | undefined {
  const found = readStored(stored, job.segments);
  if (!found) return undefined;
  const clock = clockAfterReload(found, { ...devices.clocks(), hidden: true });
  return new Driver(devices, job, clock, controls.reopened(found.run, found.ms, clock.ms));
}

const TICK_MS = 100;

/** Later than this a word or a touch would only mislead. */
const LATEST_MS = 1000;

/** A page that stood still for longer had nobody's eyes, whatever it says. */
const STALL_MS = 5000;

/** Time is stored this often even where nothing changes, for a page that is ended without a word. */
const STORE_MS = 5000;

/** After so long without anything going on the screen may go dark. */
const FORGOTTEN_MS = 600_000;

/** After a tap the sound needs a moment to come on. */
const UNLOCK_MS = 1500;

class Driver implements Pace {
  readonly #devices: PaceDevices;
  readonly #job: PaceJob;
  #clock: Clock;
  #run: Run;
  #choices: Choices;
  #hidden: boolean;
  /** Whether the client looks at something else in this page. */
  #elsewhere = false;
  readonly #plan: SoundPlan;
  /** Up to where cues have been given as words and touches. */
  #givenTo: number;
  #storedMs = Number.NEGATIVE_INFINITY;
  #stored: Run | undefined;
  #before: StoredRun | undefined;
  #tappedMs: number;
  #stopped = false;
  #stopTimer: () => void = () => undefined;
  readonly #stops: readonly (() => void)[];

  constructor(devices: PaceDevices, job: PaceJob, clock: Clock, run: Run) {
    this.#devices = devices;
    this.#job = job;
    this.#choices = job.choices;
    this.#clock = clock;
    this.#run = run;
    this.#hidden = devices.visible.hidden();
    this.#plan = new SoundPlan(devices.sound, clock.ms, () => this.#tick());
    this.#givenTo = clock.ms;
    this.#tappedMs = clock.ms;
    this.#stops = [
      devices.timers.every(TICK_MS, () => this.#tick()),
      devices.visible.watch({ left: () => this.#leave(), returned: () => this.#return() }),
    ];
    devices.wakeLock.keep();
    if (this.#hidden) this.#run = controls.left(run, clock.ms);
    this.#tick();
  }

  pause(): void {
    this.#act(controls.pause);
  }

  resume(): void {
    this.#act(controls.resume);
  }

  back(): void {
    this.#act(controls.back, true);
  }

  skip(): void {
    this.#act(controls.skip, true);
  }

  partDone(): void {
    this.#act(controls.partDone, true);
  }

  setDone(reps?: number): void {
    this.#act((run, nowMs) => controls.setDone(run, nowMs, reps), true);
  }

  undo(): void {
    const before = this.#before;
    if (before) this.#act(() => before.run);
  }

  beforeTap(): string | undefined {
    return this.#before && storedText(this.#before);
  }

  choose(choices: Choices): void {
    if (this.#stopped) return;
    this.#choices = choices;
    if (!choices.voice) this.#devices.speech.stop();
    if (!choices.vibration) this.#devices.vibration.stop();
    this.#tapped();
    this.#tick();
  }

  hold(): void {
    if (this.#stopped) return;
    this.#tick();
    this.#change(controls.pause);
    this.#devices.speech.stop();
    this.#tick();
  }

  lookAway(): void {
    if (this.#stopped || this.#elsewhere) return;
    this.#tick();
    this.#elsewhere = true;
    this.#change(controls.left);
    this.#quieten();
    this.#tick();
  }

  lookBack(): void {
    if (this.#stopped || !this.#elsewhere) return;
    this.#tick();
    this.#elsewhere = false;
    this.#seen();
    this.#tapped();
    this.#tick();
  }

  stop(): void {
    this.#stopped = true;
    for (const stop of this.#stops) stop();
    this.#stopTimer();
    this.#plan.drop(this.#clock.ms);
    this.#devices.sound.sleep();
    this.#devices.wakeLock.letGo();
    // its last word may still be spoken
    if (this.#run.mode.kind !== "over") this.#quieten();
  }

  /** What the client does, heard at once; what leads elsewhere can be taken back until the next tap. */
  #act(act: (run: Run, nowMs: number) => Run, leads = false): void {
    if (this.#stopped) return;
    this.#tick();
    const known = this.#run;
    const { ms, wallMs } = this.#clock;
    this.#change(act);
    const led = leads && this.#run !== known;
    this.#before = led ? { ms, wallMs, run: controls.pause(known, ms) } : undefined;
    this.#quieten();
    this.#tapped();
    this.#givenTo = this.#clock.ms;
    this.#tick();
  }

  /** A tap also brings back what a call, or long waiting, took away. */
  #tapped(): void {
    this.#devices.sound.unlock();
    this.#devices.speech.unlock();
    this.#devices.wakeLock.keep();
    this.#tappedMs = this.#clock.ms;
  }

  #leave(): void {
    this.#tick();
    this.#hidden = true;
    this.#change(controls.left);
    this.#storedMs = Number.NEGATIVE_INFINITY;
    this.#tick();
  }

  #return(): void {
    this.#tick();
    this.#hidden = false;
    this.#devices.sound.unlock();
    this.#seen();
    this.#tick();
  }

  /** Somebody sees it again, unless it is still out of sight for another reason. */
  #seen(): void {
    if (!this.#hidden && !this.#elsewhere) this.#change(controls.returned);
  }

  /** A change that time alone does not make: what has been handed on for later no longer holds. */
  #change(act: (run: Run, nowMs: number) => Run): void {
    this.#run = act(this.#run, this.#clock.ms);
    this.#plan.drop(this.#clock.ms);
  }

  #quieten(): void {
    this.#devices.speech.stop();
    this.#devices.vibration.stop();
  }

  #tick(): void {
    const { ms: lastMs, perfMs: lastPerfMs } = this.#clock;
    const clocks = this.#devices.clocks();
    const stalled = !this.#hidden && clocks.perfMs - lastPerfMs > STALL_MS;
    this.#clock = clockAt(this.#clock, { ...clocks, hidden: this.#hidden });
    const nowMs = this.#clock.ms;
    if (stalled) this.#run = controls.left(this.#run, lastMs);
    this.#give(nowMs);
    const open = this.#run.mode.kind !== "over";
    this.#run = advance(this.#run, nowMs);
    if (open && this.#run.mode.kind === "over") this.#before = undefined;
    if (stalled) this.#seen();
    this.#plan.make(this.#run, this.#clock, this.#hidden, this.#choices.sound);
    if (this.#isForgotten(nowMs)) this.#devices.wakeLock.letGo();
    this.#store(nowMs);
    this.#job.show(viewOf(this.#run, nowMs), this.#troubles(nowMs));
    this.#wakeAtChange(nowMs);
  }

  /** Words and touches that have come due; of several words the latest. */
  #give(nowMs: number): void {
    const due = cuesBetween(this.#run, this.#givenTo, nowMs + 1);
    this.#givenTo = Math.max(this.#givenTo, nowMs + 1);
    const fresh = due.filter(({ at }) => nowMs - at <= LATEST_MS);
    const said = fresh.findLast(({ say }) => say !== undefined)?.say;
    if (said !== undefined && this.#choices.voice) {
      const text = this.#job.words(said);
      if (text !== "") this.#devices.speech.say(text);
    }
    const felt = fresh.findLast(({ vibration }) => vibration.length > 0);
    if (felt && this.#choices.vibration) this.#devices.vibration.vibrate(felt.vibration);
  }

  /** Whether the screen may go dark: all is done, or for long nothing has gone on or been tapped. */
  #isForgotten(nowMs: number): boolean {
    const waits = nextChangeMs(this.#run) === undefined;
    return this.#run.mode.kind === "over" || (waits && nowMs - this.#tappedMs > FORGOTTEN_MS);
  }

  #store(nowMs: number): void {
    if (this.#run === this.#stored && nowMs - this.#storedMs < STORE_MS) return;
    this.#stored = this.#run;
    this.#storedMs = nowMs;
    this.#job.store(storedText({ ...this.#clock, run: this.#run }));
  }

  #troubles(nowMs: number): readonly Trouble[] {
    const { sound, speech, wakeLock } = this.#devices;
    const unlocking = nowMs - this.#tappedMs < UNLOCK_MS;
    const silent = this.#choices.sound && sound.state() !== "on" && !unlocking;
    const speechless = this.#choices.voice && speech.state() !== "on";
    const dark = wakeLock.state() === "refused" || wakeLock.state() === "missing";
    return [
      ...(silent ? ["sound-blocked" as const] : []),
      ...(speechless ? ["voice-missing" as const] : []),
      ...(dark ? ["wake-lock-refused" as const] : []),
    ];
  }

  /** Between two ticks the screen changes at the very instant of the sound. */
  #wakeAtChange(nowMs: number): void {
    this.#stopTimer();
    const change = nextChangeMs(this.#run);
    if (change === undefined || change - nowMs > TICK_MS) return;
    this.#stopTimer = this.#devices.timers.after(Math.max(0, change - nowMs), () => this.#tick());
  }
}
