/** The pace of one exercise: what to do now in large words and a shape, and everything that can be pressed. */
import { useEffect, useRef, useState } from "preact/hooks";
import type { SessionBout } from "../../compose/session-model.ts";
import { adviceDuring } from "../day/advice.ts";
import type { PainSigns } from "../day/data.ts";
import { pacedOf } from "../day/paced.ts";
import type { SetDone } from "../pace/done.ts";
import { type Phase, phaseOf } from "../pace/phase.ts";
import { COUNT_IN_MS } from "../pace/run.ts";
import type { Segment } from "../pace/segments.ts";
import type { View } from "../pace/view.ts";
import type { Settings } from "../store/settings.ts";
import { useApp } from "./app.ts";
import { Kept } from "./kept.tsx";
import { PaceBar } from "./pace-bar.tsx";
import { PaceShape } from "./pace-shape.tsx";
import { AdviceBox, Heading, PainScale } from "./parts.tsx";
import { usePace } from "./use-pace.ts";
import type { Say } from "./words.ts";

interface PaceProps {
  readonly bout: SessionBout;
  readonly sets: number;
  /** The run as it was stored, where it was broken off. */
  readonly stored: string | undefined;
  readonly onStore: (pace: string) => void;
  /** The pain that is written down of it. */
  readonly pain: number | undefined;
  /** A number that is tapped; `before`: what was felt earlier in the exercise. */
  readonly onPain: (felt: { readonly pain: number; readonly before: number | undefined }) => void;
  /** A set was begun or ended: what is done so far. */
  readonly onSet: (done: readonly SetDone[]) => void;
  readonly onEnd: (done: readonly SetDone[]) => void;
}

export function PaceScreen(props: PaceProps) {
  const { bout, sets, stored, onStore, pain, onPain, onSet, onEnd } = props;
  const { data, say, tell } = useApp();
  const pace = usePace({ bout, sets, stored, onStore });
  const { view } = pace;
  // whoever comes back to an exercise that hurt too much is not asked to go on
  const [hurts, setHurts] = useState(isOver(pain, bout, data.pain));
  const over = view.mode === "over";
  const begun = pacedOf(view.done, sets).sets;
  // a session that is broken off for good still has the sets that were done
  const setsBefore = useRef(begun);
  useEffect(() => {
    if (setsBefore.current !== begun && !over) onSet(view.done);
    setsBefore.current = begun;
  }, [begun, over, onSet, view.done]);
  useEffect(() => {
    if (over) onEnd(view.done);
  }, [over, onEnd, view.done]);
  const spoken = wordOf(view.segment, bout, say);
  const place = placeWords(view.segment, say);
  const phase = phaseOf(view);
  useEffect(() => tell(toldOf(view, phase, bout, say)), [phase.name]);
  if (hurts) {
    return (
      <Hurts
        bout={bout}
        known={pain}
        onPain={onPain}
        onGoOn={() => {
          setHurts(false);
          pace.goOn();
        }}
        onLeave={() => onEnd(view.done)}
      />
    );
  }
  return (
    <section class="pace">
      <div class="pace-show">
        <Heading>{bout.title}</Heading>
        <p class="pace-what">{view.mode === "count-in" ? say("pace.part.ready") : spoken}</p>
        <PaceShape
          kind={view.mode === "count-in" ? "count-in" : (view.segment?.kind ?? "rest")}
          done={doneShare(view)}
          middle={middleOf(view)}
        />
        <p class="pace-rep">{place}</p>
        <p class="quiet">{[...oneSide(bout), ...bout.dose.slice(0, 2)].join(" · ")}</p>
        {view.why === "interrupted" && <p class="notice">{say("pace.away")}</p>}
        {view.why === "waiting" && <p class="notice">{say("pace.rest-over")}</p>}
      </div>
      <PaceBar
        pace={pace}
        onHurts={() => {
          pace.pause();
          setHurts(true);
        }}
      />
      <div class="pace-more">
        <button type="button" class="button" onClick={pace.back}>
          {say("pace.back")}
        </button>
        <button type="button" class="button" onClick={pace.skip}>
          {say("pace.skip")}
        </button>
        <button type="button" class="button" onClick={pace.setDone}>
          {say("pace.set-done")}
        </button>
      </div>
      <Toggles />
      {pace.troubles.map((trouble) => (
        <p key={trouble} class="quiet">
          {say(`pace.${trouble}`)}
        </p>
      ))}
    </section>
  );
}

/** Sound, voice and vibration, on or off. */
function Toggles() {
  const { say, settings, set } = useApp();
  const names: readonly (keyof Settings & ("sound" | "voice" | "vibration"))[] = [
    "sound",
    "voice",
    "vibration",
  ];
  return (
    <p class="toggles">
      {names.map((name) => (
        <button
          key={name}
          type="button"
          class="button"
          aria-pressed={settings[name]}
          onClick={() => set({ [name]: !settings[name] })}
        >
          {say(`pace.${name}`)}
        </button>
      ))}
    </p>
  );
}

interface HurtsProps {
  readonly bout: SessionBout;
  readonly known: number | undefined;
  readonly onPain: PaceProps["onPain"];
  readonly onGoOn: () => void;
  readonly onLeave: () => void;
}

const isOver = (pain: number | undefined, bout: SessionBout, signs: PainSigns): boolean =>
  pain !== undefined && adviceDuring(pain, bout, signs) !== undefined;

/** Pain in the middle of an exercise: a number, kept the moment it is tapped, and what the plan says to it. */
function Hurts({ bout, known, onPain, onGoOn, onLeave }: HurtsProps) {
  const { say, data } = useApp();
  const over = isOver(known, bout, data.pain);
  const [before] = useState(over ? undefined : known);
  const [pain, setPain] = useState(over ? known : undefined);
  const tap = (number: number) => {
    setPain(number);
    onPain({ pain: number, before });
  };
  const advice = pain === undefined ? undefined : adviceDuring(pain, bout, data.pain);
  return (
    <section class="session">
      <Heading>{say("pace.how-much")}</Heading>
      <PainScale legend={bout.title} value={pain} onChange={tap} />
      {pain !== undefined && <Kept />}
      {advice && <AdviceBox advice={advice} />}
      {pain !== undefined && !advice && (
        <p class="notice" role="status">
          {say("pace.within")} {bout.painWords.rule}
        </p>
      )}
      {/* over the limit the plan says to stop: going on is not offered */}
      {!advice && (
        <button type="button" class="button main" onClick={onGoOn}>
          {say("pace.go-on")}
        </button>
      )}
      <button type="button" class={`button${advice ? " main" : ""}`} onClick={onLeave}>
        {say("pace.leave")}
      </button>
    </section>
  );
}

/** What to do now, in a word or two: the exercise's own words for its movement. */
function wordOf(segment: Segment | undefined, bout: SessionBout, say: Say): string {
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
const oneSide = ({ side, sideWords }: SessionBout): string[] =>
  side !== "each" && sideWords !== undefined ? [sideWords] : [];

/** "Set 1 of 3 · Left side · 5 of 15". */
function placeWords(segment: Segment | undefined, say: Say): string {
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
function toldOf({ segment, why }: View, { kind }: Phase, bout: SessionBout, say: Say): string {
  if (segment === undefined || kind === "over") return "";
  if (kind === "paused") return say(WHY[why ?? "client"]);
  if (kind !== "set")
    return `${wordOf({ ...segment, kind }, bout, say)}. ${placeWords(segment, say)}`;
  return `${say("pace.say.go")}. ${placeWords({ ...segment, rep: undefined }, say)}`;
}

const WHY = { client: "pace.paused", interrupted: "pace.away", waiting: "pace.rest-over" } as const;

/** Those who want less motion see where each part leads, and no way there. */
const LESS_MOTION = window.matchMedia("(prefers-reduced-motion: reduce)");

function doneShare({ elapsedMs, leftMs, mode, countInMs }: View): number {
  if (LESS_MOTION.matches) return 1;
  if (mode === "count-in") return 1 - countInMs / COUNT_IN_MS;
  return leftMs === undefined ? 0 : elapsedMs / Math.max(1, elapsedMs + leftMs);
}

/** Seconds left, as they are counted down aloud: 3, 2, 1. */
function middleOf({ mode, countInMs, leftMs, segment }: View): string {
  if (mode === "count-in") return String(Math.ceil(countInMs / 1000));
  if (leftMs !== undefined) return clockOf(Math.ceil(leftMs / 1000));
  return segment?.reps === undefined ? "" : `× ${segment.reps}`;
}

function clockOf(seconds: number): string {
  if (seconds < 60) return String(seconds);
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
}
