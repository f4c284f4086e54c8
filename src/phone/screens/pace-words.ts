/** The words of a pace: what to do now, where in the exercise that is, and how long it lasts. */
import type { SessionBout } from "../../compose/session-model.ts";
import type { Phase } from "../pace/phase.ts";
import type { Segment } from "../pace/segments.ts";
import type { View } from "../pace/view.ts";
import type { Say } from "./words.ts";

/** What to do now, in a word or two: the exercise's own words for its movement. */
export function wordOf(segment: Segment | undefined, bout: SessionBout, say: Say): string {
  if (segment === undefined) return "";
  switch (segment.kind) {
    case "lift":
      return capital(bout.liftWord);
    case "lower":
      return capital(bout.lowerWord);
    default:
      return say(`pace.part.${segment.kind}`);
  }
}

const capital = (text: string): string => text.charAt(0).toLocaleUpperCase() + text.slice(1);

/** The side that works, where it is one. */
export const oneSide = ({ side, sideWords }: SessionBout): string[] =>
  side !== "each" && sideWords !== undefined ? [sideWords] : [];

/** "Set 1 of 3 · Left side · 5 of 15". */
export function placeWords(segment: Segment | undefined, say: Say): string {
  if (segment === undefined) return "";
  const { set, sets, side, rep, reps } = segment;
  return [
    sets > 1 ? [say("pace.set", { n: set, of: sets })] : [],
    side === undefined ? [] : [say(`pace.${side}`)],
    rep !== undefined && reps !== undefined ? [say("pace.rep", { n: rep, of: reps })] : [],
  ]
    .flat()
    .join(" · ");
}

/** A phase for those who listen: "Rest. Set 1 of 3 · Left side". */
export function toldOf(
  { segment, why }: View,
  { kind }: Phase,
  bout: SessionBout,
  say: Say,
): string {
  if (segment === undefined || kind === "over") return "";
  if (kind === "paused") return say(WHY[why ?? "client"]);
  if (kind !== "set")
    return `${wordOf({ ...segment, kind }, bout, say)}. ${placeWords(segment, say)}`;
  return `${say("pace.say.go")}. ${placeWords({ ...segment, rep: undefined }, say)}`;
}

const WHY = { client: "pace.paused", interrupted: "pace.away", waiting: "pace.rest-over" } as const;

/** Seconds left, as they are counted down aloud: 3, 2, 1. */
export function middleOf({ mode, countInMs, leftMs, segment }: View): string {
  if (mode === "count-in") return String(Math.ceil(countInMs / 1000));
  if (leftMs !== undefined) return clockOf(Math.ceil(leftMs / 1000));
  return segment?.reps === undefined ? "" : `× ${segment.reps}`;
}

function clockOf(seconds: number): string {
  if (seconds < 60) return String(seconds);
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
}
