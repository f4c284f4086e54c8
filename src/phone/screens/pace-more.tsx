/** What else can be pressed in the middle of an exercise: again, on to what comes next, the steps, and undo. */
import { isWork } from "../pace/places.ts";
import type { View } from "../pace/view.ts";
import { useApp } from "./app.ts";
import type { PaceInUse } from "./use-pace.ts";

interface MoreProps {
  readonly pace: PaceInUse;
  readonly onSteps: () => void;
}

export function PaceMore({ pace, onSteps }: MoreProps) {
  const { say } = useApp();
  const on = onFrom(pace.view);
  const buttons: [string, () => void][] = [
    ["pace.back", pace.back],
    [`pace.${on}`, on === "set-done" ? pace.setDone : pace.skip],
    ["exercise.steps", onSteps],
  ];
  // last, so that the others stay where they are
  if (pace.undo) buttons.push(["undo.undo", pace.undo]);
  return (
    <div class="pace-more">
      {buttons.map(([key, act]) => (
        <button key={key} type="button" class="button" onClick={act}>
          {say(key)}
        </button>
      ))}
    </div>
  );
}

/** What leads on from here, by its word. A set that the client ends by “I have done it” can only be left out. */
function onFrom({ segment }: View): "set-done" | "set-out" | "rest-end" | "start-now" {
  if (segment === undefined || segment.kind === "ready" || segment.kind === "other-side") {
    return "start-now";
  }
  if (!isWork(segment)) return "rest-end";
  return segment.seconds === undefined && segment.rep === undefined ? "set-out" : "set-done";
}
