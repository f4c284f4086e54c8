/** What the last tap has done, with a button that takes it back; it goes with the next tap, or with the screen. */
import { useApp } from "./app.ts";

interface UndoBarProps {
  readonly said: string;
  readonly onUndo: () => void;
}

export function UndoBar({ said, onUndo }: UndoBarProps) {
  const { say } = useApp();
  const undo = () => {
    onUndo();
    // the button goes: whoever uses a keyboard goes on from the top of the screen
    document.querySelector<HTMLElement>(".phone-main h1")?.focus({ preventScroll: true });
  };
  return (
    <div class="undo">
      <p role="status">{said}</p>
      <button type="button" class="button" onClick={undo}>
        {say("undo.undo")}
      </button>
    </div>
  );
}
