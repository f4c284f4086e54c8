/** What has to be in reach at every moment of a pace, at the foot of its screen: pause, and it hurts. */
import { useApp } from "./app.ts";
import type { PaceInUse } from "./use-pace.ts";

interface BarProps {
  readonly pace: Pick<PaceInUse, "view" | "pause" | "goOn" | "partDone">;
  readonly onHurts: () => void;
}

export function PaceBar({ pace, onHurts }: BarProps) {
  const { say } = useApp();
  const { mode, segment } = pace.view;
  const still = mode === "paused";
  const open = !still && segment !== undefined && segment.seconds === undefined;
  return (
    <div class="pace-bar">
      {open && (
        <button type="button" class="button main wide" onClick={pace.partDone}>
          {say("pace.done")}
        </button>
      )}
      <button
        type="button"
        class={open ? "button" : "button main"}
        onClick={still ? pace.goOn : pace.pause}
      >
        {say(still ? "pace.go-on" : "pace.pause")}
      </button>
      <button type="button" class="button hurts" onClick={onHurts}>
        {say("pace.hurts")}
      </button>
    </div>
  );
}
