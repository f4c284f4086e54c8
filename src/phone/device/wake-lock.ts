/** Keeps the screen on while an exercise runs. */

/** off: not asked for, or the page is hidden, which always lets go; refused: by the device, as to save its battery. */
export type WakeLockState = "on" | "off" | "refused" | "missing";

export interface ScreenLock {
  state(): WakeLockState;
  /** Keeps the screen on until `letGo`, also when the page is seen again after it was hidden. */
  keep(): void;
  letGo(): void;
}

export interface WakeLockPlace {
  readonly navigator: { readonly wakeLock?: Pick<WakeLock, "request"> };
  readonly document: Pick<Document, "visibilityState" | "addEventListener">;
}

/** The screen of a window; a refusal is a state, never an exception. */
export function makeWakeLock({ navigator, document }: WakeLockPlace): ScreenLock {
  const { wakeLock } = navigator;
  let wanted = false;
  let asking = false;
  let refused = false;
  let lock: WakeLockSentinel | undefined;

  const ask = async (): Promise<void> => {
    if (!wanted || !wakeLock || asking || (lock && !lock.released)) return;
    if (document.visibilityState !== "visible") return;
    asking = true;
    try {
      lock = await wakeLock.request("screen");
      refused = false;
    } catch {
      refused = true;
    }
    asking = false;
    if (!wanted) release();
  };
  const release = (): void => {
    lock?.release().catch(() => undefined);
    lock = undefined;
  };
  document.addEventListener("visibilitychange", ask);
  return {
    state() {
      if (!wakeLock) return "missing";
      if (lock && !lock.released) return "on";
      return refused ? "refused" : "off";
    },
    keep() {
      wanted = true;
      void ask();
    },
    letGo() {
      wanted = false;
      refused = false;
      release();
    },
  };
}
