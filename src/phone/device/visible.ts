/** Whether anybody can see the page: calls, other apps, a locked screen, a page put aside. */

export interface Watcher {
  /** From now on nobody sees it. */
  readonly left: () => void;
  /** It is seen again. */
  readonly returned: () => void;
}

export interface Visible {
  hidden(): boolean;
  /** Tells of every change, once, until the returned function is called. */
  watch(watcher: Watcher): () => void;
}

export interface VisiblePlace {
  readonly document: Pick<Document, "visibilityState" | "addEventListener" | "removeEventListener">;
  readonly addEventListener: (type: string, listener: () => void) => void;
  readonly removeEventListener: (type: string, listener: () => void) => void;
}

/** Devices differ in which of these they send, and in what order. */
const ON_DOCUMENT = ["visibilitychange", "freeze", "resume"];
const ON_WINDOW = ["pagehide", "pageshow"];
const LEAVING = new Set(["freeze", "pagehide"]);

export function makeVisible(place: VisiblePlace): Visible {
  const hidden = (): boolean => place.document.visibilityState === "hidden";
  return {
    hidden,
    watch({ left, returned }) {
      let away = hidden();
      const listeners = [...ON_DOCUMENT, ...ON_WINDOW].map((type) => {
        const target = ON_WINDOW.includes(type) ? place : place.document;
        const listener = (): void => {
          const now = LEAVING.has(type) || hidden();
          if (now === away) return;
          away = now;
          if (away) left();
          else returned();
        };
        target.addEventListener(type, listener);
        return () => target.removeEventListener(type, listener);
      });
      return () => {
        for (const stop of listeners) stop();
      };
    },
  };
}
