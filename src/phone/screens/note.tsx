/** The note of a session: kept when the typing pauses, and at the latest when the client goes on. */
import { useCallback, useEffect, useRef, useState } from "preact/hooks";
import type { DiaryEntry } from "../../diary/entry.ts";
import { useApp } from "./app.ts";

/** How long the typing has to pause, in milliseconds: longer than between two keys, shorter than a tap away. */
const PAUSE = 400;

export function Note({ entry }: { readonly entry: DiaryEntry }) {
  const { say, write, waits } = useApp();
  const [typed, setTyped] = useState<string | undefined>(undefined);
  const open = useRef<{ readonly note: string; readonly timer: number } | undefined>(undefined);
  const into = useRef({ entry, write, waits });
  into.current = { entry, write, waits };
  const keep = useCallback(() => {
    if (open.current === undefined) return;
    const { note, timer } = open.current;
    open.current = undefined;
    clearTimeout(timer);
    into.current.write({ ...into.current.entry, note });
    into.current.waits(false);
    setTyped(undefined);
  }, []);
  useEffect(() => {
    // the last events of which a phone tells before it ends a page
    document.addEventListener("visibilitychange", keep);
    window.addEventListener("pagehide", keep);
    return () => {
      document.removeEventListener("visibilitychange", keep);
      window.removeEventListener("pagehide", keep);
      keep();
    };
  }, [keep]);
  return (
    <label class="note-field">
      {say("write.note")}
      <textarea
        rows={3}
        maxLength={1000}
        value={typed ?? entry.note}
        onInput={(event) => {
          const note = event.currentTarget.value;
          clearTimeout(open.current?.timer);
          open.current = { note, timer: window.setTimeout(keep, PAUSE) };
          setTyped(note);
          waits(true);
        }}
        onBlur={keep}
      />
    </label>
  );
}
