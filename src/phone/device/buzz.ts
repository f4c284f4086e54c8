/** Vibration, where the device has it. */

export interface Buzz {
  state(): "on" | "missing";
  /** On, off, on …, in milliseconds, in place of what is felt now. */
  buzz(pattern: readonly number[]): void;
  stop(): void;
}

/** The vibration of a navigator; all that fails in it is stillness. */
export function makeBuzz(navigator: { readonly vibrate?: Navigator["vibrate"] }): Buzz {
  const vibrate = (pattern: number[]): void => {
    try {
      navigator.vibrate?.(pattern);
    } catch {
      // not allowed here
    }
  };
  return {
    state: () => (navigator.vibrate === undefined ? "missing" : "on"),
    buzz: (pattern) => vibrate([...pattern]),
    stop: () => vibrate([]),
  };
}
