/** Vibration, where the device has it. */

export interface Vibration {
  state(): "on" | "missing";
  /** On, off, on …, in milliseconds, in place of what is felt now. */
  vibrate(pattern: readonly number[]): void;
  stop(): void;
}

/** The vibration of a navigator; all that fails in it is stillness. */
export function makeVibration(navigator: { readonly vibrate?: Navigator["vibrate"] }): Vibration {
  const vibrate = (pattern: number[]): void => {
    try {
      navigator.vibrate?.(pattern);
    } catch {
      // not allowed here
    }
  };
  return {
    state: () => (navigator.vibrate === undefined ? "missing" : "on"),
    vibrate: (pattern) => vibrate([...pattern]),
    stop: () => vibrate([]),
  };
}
