/** A session step by step: each exercise made ready, paced and written down, and then the session as a whole. */
import { useEffect } from "preact/hooks";
import type { SessionBout } from "../../compose/session-model.ts";
import { type DiaryEntry, findSession } from "../../diary/entry.ts";
import { stoppedBefore } from "../day/advice.ts";
import type { PlannedSession } from "../day/data.ts";
import { boutsOf, withExercise, withFelt } from "../day/entries.ts";
import { withPaced, withPacedSoFar } from "../day/paced.ts";
import { pacedOf, unsureOf } from "../pace/amounts.ts";
import type { SetDone } from "../pace/done.ts";
import type { SessionPlace } from "../store/settings.ts";
import { useApp } from "./app.ts";
import { AskUnseen } from "./ask-unseen.tsx";
import { CallUs } from "./call-us.tsx";
import { ExerciseForm } from "./exercise-form.tsx";
import { LeaveIt } from "./leave-it.tsx";
import { PaceScreen } from "./pace.tsx";
import { paceName, unlockPace } from "./pace-keeper.ts";
import { Dose, Fold, FromBooklet, Heading } from "./parts.tsx";
import { SessionForm } from "./session-form.tsx";

export function SessionScreen({ sessionName }: { readonly sessionName: string }) {
  const { sessions, place, go } = useApp();
  const session = findSession(sessions, sessionName);
  const begun = place?.key === sessionName && session !== undefined;
  // an address of a session that nobody has begun leads to where it can be
  useEffect(() => {
    if (!begun) go({ screen: "today" });
  }, [begun, go]);
  return begun ? <Begun session={session} place={place} /> : null;
}

interface BegunProps {
  readonly session: PlannedSession;
  readonly place: SessionPlace;
}

function Begun({ session, place }: BegunProps) {
  const app = useApp();
  const { data, diary } = app;
  const day = app.doneDay(session);
  const bouts = boutsOf(session, place.short);
  const item = bouts[place.at];
  const entry = app.entryFor(session, place.short);
  const to = (change: Partial<SessionPlace>) => app.setPlace({ ...place, ...change });
  if (place.stage === "end" || item === undefined) return <End session={session} entry={entry} />;
  const { bout, sets } = item;
  const exercise = entry.exercises.find(({ card }) => card === bout.card);
  const stopped = stoppedBefore(bout, session, day, app.sessions, diary);
  if (place.stage === "ready") {
    return (
      <Ready
        key={bout.key}
        n={place.at + 1}
        of={bouts.length}
        bout={bout}
        sets={sets}
        stopped={stopped}
        onFinish={() => to({ stage: "end" })}
        onStart={() => {
          unlockPace(data.language);
          to({ stage: "pace", pace: undefined });
        }}
        onSkip={() => app.act({ place: { ...place, stage: "after" } }, app.say("undo.skipped"))}
      />
    );
  }
  if (place.stage === "pace") {
    const pacedEntry = (done: readonly SetDone[]) => {
      const unsure = unsureOf(done, sets);
      if (unsure) return withPacedSoFar(entry, bout.card, unsure.seen, day);
      return withPaced(entry, bout.card, pacedOf(done, sets), day);
    };
    const end = (done: readonly SetDone[], before: string | undefined) => {
      const over = { stage: "after", pace: undefined, hurts: undefined } as const;
      const after = { ...place, ...over, unsure: unsureOf(done, sets)?.all };
      const said = before && app.say("undo.ended");
      const was = { place: { ...place, pace: before, hurts: undefined } };
      app.act({ entries: [pacedEntry(done)], place: after }, said, undefined, was);
    };
    return (
      <PaceScreen
        key={bout.key}
        name={paceName(place)}
        bout={bout}
        sets={sets}
        stopped={stopped}
        stored={place.pace}
        onStore={(pace) => app.keepPace({ pace })}
        felt={exercise}
        hurts={place.hurts === true}
        onHurts={(hurts) => app.keepPace({ hurts })}
        onPain={(felt) => app.write(withFelt(entry, bout.card, felt, day))}
        onSet={(done) => app.write(pacedEntry(done))}
        onEnd={end}
      />
    );
  }
  const { unsure } = place;
  const sure = { ...place, unsure: undefined };
  const answer = (did: boolean) => {
    const entries = unsure && did ? [withPaced(entry, bout.card, unsure, day)] : [];
    app.act({ entries, place: sure }, app.say("kept"));
  };
  const last = place.at === bouts.length - 1;
  return (
    exercise && (
      <After
        key={bout.key}
        last={last}
        onNext={() => {
          const next = { ...sure, at: place.at + 1 };
          app.setPlace(last ? { ...sure, stage: "end" } : { ...next, stage: "ready" });
        }}
      >
        {unsure && <AskUnseen onAnswer={answer} />}
        <ExerciseForm
          bout={bout}
          exercise={exercise}
          onChange={(change, said) => {
            // whoever says themselves what was done has answered
            const told = unsure && (change.done ?? change.real) !== undefined;
            const entries = [withExercise(entry, bout.card, change, day)];
            app.act(told ? { entries, place: sure } : { entries }, said);
          }}
        />
      </After>
    )
  );
}

interface ReadyProps {
  /** Which exercise of the session it is, from 1. */
  readonly n: number;
  readonly of: number;
  readonly bout: SessionBout;
  readonly sets: number;
  /** The exercise that was stopped for its pain, where this one is to be left out for it. */
  readonly stopped: SessionBout | undefined;
  readonly onStart: () => void;
  readonly onSkip: () => void;
  /** Goes to the end of the session. */
  readonly onFinish: () => void;
}

/** What comes now: the exercise, its dose, and how to set up for it. */
function Ready(props: ReadyProps) {
  const { n, of, bout, sets, stopped, onStart, onSkip, onFinish } = props;
  const { say, call } = useApp();
  if (call) {
    return (
      <section class="session">
        <Heading>{bout.title}</Heading>
        <CallUs call={call} />
        <button type="button" class="button" onClick={onFinish}>
          {say("session.finish")}
        </button>
      </section>
    );
  }
  if (stopped) {
    return (
      <section class="session">
        <p class="quiet">{say("exercise.n", { n, of })}</p>
        <Heading>{bout.title}</Heading>
        <LeaveIt bout={bout} stopped={stopped} />
        <button type="button" class="button main" onClick={onSkip}>
          {say("pace.leave")}
        </button>
      </section>
    );
  }
  return (
    <section class="session">
      <p class="quiet">{say("exercise.n", { n, of })}</p>
      <Heading>{bout.title}</Heading>
      <FromBooklet anchor={bout.anchor} part=".pictures" />
      <Dose bout={bout} sets={sets} />
      <FromBooklet anchor={bout.anchor} part=".care-row" />
      <button type="button" class="button main" onClick={onStart}>
        {say("pace.start")}
      </button>
      <Fold summary={say("exercise.steps")}>
        <FromBooklet anchor={bout.anchor} part=".columns" />
      </Fold>
      <p>{bout.painWords.rule}</p>
      <button type="button" class="button" onClick={onSkip}>
        {say("pace.leave")}
      </button>
    </section>
  );
}

interface AfterProps {
  readonly last: boolean;
  readonly onNext: () => void;
  readonly children: preact.ComponentChildren;
}

/** How the exercise was, before the next one. */
function After({ last, onNext, children }: AfterProps) {
  const { say } = useApp();
  return (
    <>
      <Heading>{say("session.after")}</Heading>
      {children}
      <button type="button" class="button main" onClick={onNext}>
        {say(last ? "session.go-on" : "session.next")}
      </button>
    </>
  );
}

function End({ session, entry }: { readonly session: PlannedSession; readonly entry: DiaryEntry }) {
  const app = useApp();
  const { say } = app;
  const finish = () => {
    // also a session of which nothing was done is written down: it is not open any more
    app.act({ entries: [entry], place: "none" }, say("kept"), { screen: "today" });
  };
  return (
    <>
      <Heading>{say(entry.done === "no" ? "session.end" : "session.done")}</Heading>
      <SessionForm session={session} entry={entry} />
      <button type="button" class="button main" onClick={finish}>
        {say("session.finish")}
      </button>
    </>
  );
}
