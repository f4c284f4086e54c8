/** The pace of one exercise: what to do now in large words and a shape, and everything that can be pressed. */
import { useEffect, useRef, useState } from "preact/hooks";
import type { SessionBout } from "../../compose/session-model.ts";
import type { DiaryExercise } from "../../diary/entry.ts";
import { adviceDuring } from "../day/advice.ts";
import type { PainSigns } from "../day/data.ts";
import type { FeltNow } from "../day/entries.ts";
import { pacedOf } from "../pace/amounts.ts";
import type { SetDone } from "../pace/done.ts";
import { phaseOf } from "../pace/phase.ts";
import { COUNT_IN_MS } from "../pace/run.ts";
import type { View } from "../pace/view.ts";
import type { Settings } from "../store/settings.ts";
import { useApp } from "./app.ts";
import { CallUs } from "./call-us.tsx";
import { Kept } from "./kept.tsx";
import { LeaveIt } from "./leave-it.tsx";
import { PaceBar } from "./pace-bar.tsx";
import { PaceMore } from "./pace-more.tsx";
import { PaceShape } from "./pace-shape.tsx";
import { Steps } from "./pace-steps.tsx";
import { middleOf, oneSide, placeWords, toldOf, wordOf } from "./pace-words.ts";
import { AdviceBox, Heading, PainScale, Sudden } from "./parts.tsx";
import { usePace } from "./use-pace.ts";

type FeltExercise = Pick<DiaryExercise, "pain" | "sudden">;

interface PaceProps {
  /** Tells the exercises of all sessions apart. */
  readonly name: string;
  readonly bout: SessionBout;
  readonly sets: number;
  /** The exercise that was stopped for its pain today, where this one is to be left out for it. */
  readonly stopped: SessionBout | undefined;
  /** The run as it was stored, where it was broken off. */
  readonly stored: string | undefined;
  readonly onStore: (pace: string) => void;
  /** What is written down of its pain. */
  readonly felt: FeltExercise | undefined;
  /** Whether it was being asked how much it hurts, when this screen was left. */
  readonly hurts: boolean;
  /** It is asked from now on, or not any more. */
  readonly onHurts: (hurts: boolean) => void;
  /** What is tapped of its pain. */
  readonly onPain: (felt: FeltNow) => void;
  /** A set was begun or ended: what is done so far. */
  readonly onSet: (done: readonly SetDone[]) => void;
  /** `before`: the run before a tap that ended it. */
  readonly onEnd: (done: readonly SetDone[], before: string | undefined) => void;
}

export function PaceScreen(props: PaceProps) {
  const { name, bout, sets, stopped, stored, onStore, felt, onHurts, onPain, onSet, onEnd } = props;
  const { data, say, tell, call } = useApp();
  const pace = usePace({ name, bout, sets, stored, onStore });
  const { view } = pace;
  // whoever comes back to an exercise that hurt too much is not asked to go on
  const [hurts, setHurts] = useState(props.hurts || isOver(felt, bout, data.pain));
  const [steps, setSteps] = useState(false);
  const over = view.mode === "over";
  const end = () => {
    const before = over ? pace.beforeTap() : undefined;
    pace.end();
    onEnd(view.done, before);
  };
  const begun = pacedOf(view.done, sets).sets;
  // a session that is broken off for good still has the sets that were done
  const setsBefore = useRef(begun);
  useEffect(() => {
    if (setsBefore.current !== begun && !over) onSet(view.done);
    setsBefore.current = begun;
  }, [begun, over, onSet, view.done]);
  useEffect(() => {
    if (over) end();
  }, [over]);
  // whichever way led here: what is not offered to be begun does not go on
  const waits = call !== undefined || stopped !== undefined;
  useEffect(() => {
    if (waits) pace.hold();
  }, [waits]);
  const spoken = wordOf(view.segment, bout, say);
  const place = placeWords(view.segment, say);
  const phase = phaseOf(view);
  useEffect(() => {
    // whoever reads the steps knows that they are away
    if (!steps || view.why === "waiting") tell(toldOf(view, phase, bout, say));
  }, [phase.name]);
  if (hurts) {
    return (
      <Hurts
        bout={bout}
        known={felt}
        onPain={onPain}
        onGoOn={() => {
          setHurts(false);
          onHurts(false);
          pace.goOn();
        }}
        onLeave={end}
      />
    );
  }
  if (call || stopped) {
    return (
      <section class="session">
        <Heading>{bout.title}</Heading>
        {call ? <CallUs call={call} /> : stopped && <LeaveIt bout={bout} stopped={stopped} />}
        <button type="button" class="button" onClick={end}>
          {say("pace.end")}
        </button>
      </section>
    );
  }
  const hurt = () => {
    setSteps(false);
    pace.lookBack();
    pace.pause();
    setHurts(true);
    onHurts(true);
  };
  if (steps) {
    const back = () => {
      setSteps(false);
      pace.lookBack();
    };
    return <Steps bout={bout} pace={pace} onBack={back} onHurts={hurt} />;
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
      <PaceBar pace={pace} onHurts={hurt} />
      <PaceMore
        pace={pace}
        onSteps={() => {
          pace.lookAway();
          setSteps(true);
        }}
      />
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
  readonly known: FeltExercise | undefined;
  readonly onPain: PaceProps["onPain"];
  readonly onGoOn: () => void;
  readonly onLeave: () => void;
}

const isOver = (exercise: FeltExercise | undefined, bout: SessionBout, signs: PainSigns) =>
  adviceDuring(exercise?.pain, bout, signs, exercise?.sudden) !== undefined;

/** Pain in the middle of an exercise: a number, kept the moment it is tapped, and what the plan says to it. */
function Hurts({ bout, known, onPain, onGoOn, onLeave }: HurtsProps) {
  const { say, data, call } = useApp();
  const over = isOver(known, bout, data.pain);
  const [before] = useState(over ? undefined : known?.pain);
  const [pain, setPain] = useState(over ? known?.pain : undefined);
  const [sudden, setSudden] = useState(known?.sudden);
  const tell = (now: Omit<FeltNow, "before">) => {
    setPain(now.pain);
    setSudden(now.sudden);
    onPain({ ...now, before });
  };
  const advice = adviceDuring(pain, bout, data.pain, sudden);
  return (
    <section class="session">
      <Heading>{say("pace.how-much")}</Heading>
      <PainScale
        legend={bout.title}
        value={pain}
        onChange={(number) => tell({ pain: number, sudden })}
      />
      <Sudden sudden={sudden} onChange={(now) => tell({ pain, sudden: now })} />
      {(pain !== undefined || sudden) && <Kept />}
      {advice && <AdviceBox advice={advice} />}
      {call && advice?.level !== "call" && <CallUs call={call} />}
      {pain !== undefined && !advice && (
        <p class="notice" role="status">
          {say("pace.within")} {bout.painWords.rule}
        </p>
      )}
      {/* over the limit the plan says to stop, and until a call that is due nothing goes on */}
      {!advice && !call && (
        <button type="button" class="button main" onClick={onGoOn}>
          {say("pace.go-on")}
        </button>
      )}
      <button type="button" class={`button${advice ? " main" : ""}`} onClick={onLeave}>
        {say("pace.end")}
      </button>
    </section>
  );
}

/** Those who want less motion see where each part leads, and no way there. */
const LESS_MOTION = window.matchMedia("(prefers-reduced-motion: reduce)");

function doneShare({ elapsedMs, leftMs, mode, countInMs }: View): number {
  if (LESS_MOTION.matches) return 1;
  if (mode === "count-in") return 1 - countInMs / COUNT_IN_MS;
  return leftMs === undefined ? 0 : elapsedMs / Math.max(1, elapsedMs + leftMs);
}
