/** What has to be in reach at every moment of a pace, at the foot of its screen: pause, and it hurts. */
import { useApp } from "./app.ts";
import type { PaceInUse } from "./use-pace.ts";

interface BarProps {
  readonly pace: Pick<PaceInUse, "view" | "pause" | "goOn" | "partDone">;
  readonly onHurts: () => void;
  /** Leads back to the pace, where something else is looked at. */
  readonly onBack?: () => void;
}

export function PaceBar({ pace, onHurts, onBack }: BarProps) {
  const { say } = useApp();
  const { mode, segment } = pace.view;
  const still = mode === "paused";
  const open = !still && segment !== undefined && segment.seconds === undefined;
  const first = onBack ?? (open ? pace.partDone : undefined);
  return (
    <div class="pace-bar">
      {first && (
        <button type="button" class="button main wide" onClick={first}>
          {say(onBack ? "pace.to-pace" : "pace.done")}
        </button>
      )}
      {!(onBack && still) && (
        <button
          type="button"
          class={first ? "button" : "button main"}
          onClick={still ? pace.goOn : pace.pause}
        >
          {say(still ? "pace.go-on" : "pace.pause")}
        </button>
      )}
      <button type="button" class="button hurts" onClick={onHurts}>
        {say("pace.hurts")}
      </button>
    </div>
  );
}
