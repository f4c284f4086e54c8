/** Tones, played at exact instants by the audio clock, which no busy or hidden page holds up. */
import type { Note } from "../pace/tones.ts";

/** blocked: the browser waits for a tap, or something else has the sound, such as a call. */
export type SoundState = "on" | "blocked" | "missing";

export interface Sound {
  /** Call it in a tap: without one, browsers keep pages silent. */
  unlock(): void;
  state(): SoundState;
  /**
   * Plays notes from an instant of performance.now(), or at once where it has passed; nothing
   * unless "on". What is returned takes them back; it gives false where they have begun.
   */
  play(notes: readonly Note[], atMs: number): () => boolean;
  /**
   * Calls at an instant of performance.now(), unless what is returned has been called before. The
   * audio clock wakes a hidden page in time, which its timers no longer do. Never unless "on".
   */
  wakeAt(atMs: number, act: () => void): () => void;
  /** Lets the device rest when the last sound has ended, until the next `unlock`. */
  sleep(): void;
}

export interface SoundPlace {
  readonly AudioContext?: typeof AudioContext;
  readonly performance: Pick<Performance, "now">;
}

/** Rise and fall of a note, in seconds: quick to the ear, and no click. */
const ATTACK_S = 0.008;
const RELEASE_S = 0.03;

/** Seconds by which a reading of the output clock may be off the plain one before it is disbelieved. */
const BELIEVED_S = 2;

/** After so long the output has begun, also where its clock says nothing. */
const BEGUN_S = 0.5;

/** The sound of a window; all that fails in it is silence. */
export function makeSound(place: SoundPlace): Sound {
  let context: AudioContext | undefined;
  let missing = place.AudioContext === undefined;
  let sleeping = false;
  /** The last note of each that has not ended. */
  const playing = new Set<OscillatorNode>();

  const suspend = (): void => {
    if (sleeping && playing.size === 0) context?.suspend().catch(() => undefined);
  };

  return {
    unlock() {
      sleeping = false;
      try {
        context ??= place.AudioContext && new place.AudioContext();
        if (context?.state !== "running") context?.resume().catch(() => undefined);
      } catch {
        missing = true;
      }
    },
    state() {
      if (missing) return "missing";
      return context?.state === "running" && hasBegun(context) ? "on" : "blocked";
    },
    play(notes, atMs) {
      const to = context;
      if (to?.state !== "running") return () => false;
      const startS = Math.max(to.currentTime, contextSeconds(to, atMs, place));
      const nodes = notes.map((note) => playNote(to, note, startS));
      const last = nodes.at(-1);
      if (last) playing.add(last);
      const ended = (): void => {
        if (last) playing.delete(last);
        suspend();
      };
      last?.addEventListener("ended", ended);
      return () => {
        if (startS <= to.currentTime) return false;
        for (const node of nodes) {
          node.stop();
          node.disconnect();
        }
        ended();
        return true;
      };
    },
    wakeAt(atMs, act) {
      if (context?.state !== "running") return () => undefined;
      const source = context.createConstantSource();
      source.offset.value = 0;
      source.connect(context.destination);
      source.addEventListener("ended", act);
      source.start();
      source.stop(Math.max(context.currentTime, contextSeconds(context, atMs, place)));
      return () => {
        source.removeEventListener("ended", act);
        source.disconnect();
      };
    },
    sleep() {
      sleeping = true;
      suspend();
    },
  };
}

/** Whether the output has begun: before that nobody knows when a sound would be heard. */
function hasBegun(context: AudioContext): boolean {
  const { contextTime = 0 } = context.getOutputTimestamp?.() ?? {};
  return contextTime > 0 || context.currentTime > BEGUN_S;
}

/** An instant of performance.now() on the clock of the audio, so that it is heard then. */
function contextSeconds(context: AudioContext, atMs: number, { performance }: SoundPlace): number {
  const nowMs = performance.now();
  const { contextTime = 0, performanceTime = 0 } = context.getOutputTimestamp?.() ?? {};
  const steady =
    contextTime > 0 &&
    Math.abs(nowMs - performanceTime) < BELIEVED_S * 1000 &&
    Math.abs(context.currentTime - contextTime) < BELIEVED_S;
  return steady
    ? contextTime + (atMs - performanceTime) / 1000
    : context.currentTime + (atMs - nowMs) / 1000;
}

function playNote(context: AudioContext, note: Note, startS: number): OscillatorNode {
  const from = startS + note.afterMs / 1000;
  const length = note.ms / 1000;
  const oscillator = context.createOscillator();
  const volume = context.createGain();
  // a triangle has overtones, which small loudspeakers need
  oscillator.type = "triangle";
  oscillator.frequency.value = note.hz;
  volume.gain.value = 0;
  volume.gain.setValueAtTime(0, from);
  volume.gain.linearRampToValueAtTime(note.level, from + ATTACK_S);
  volume.gain.setValueAtTime(note.level, from + length - Math.min(RELEASE_S, length / 2));
  volume.gain.linearRampToValueAtTime(0, from + length);
  oscillator.connect(volume).connect(context.destination);
  oscillator.start(from);
  oscillator.stop(from + length);
  return oscillator;
}
