/** Writing down a session: what was done of it, what was different, effort, pain and a note. */
import { useState } from "preact/hooks";
import type { SessionBout } from "../../compose/session-model.ts";
import { type DiaryEntry, type DiaryExercise, type Done, findSession } from "../../diary/entry.ts";
import { inUnit, kilograms, toGram } from "../../units/mass.ts";
import { adviceAfter, adviceDuring } from "../day/advice.ts";
import type { PlannedSession } from "../day/data.ts";
import { emptyEntry, repsToChange, withExercise } from "../day/entries.ts";
import { useApp } from "./app.ts";
import { Note } from "./note.tsx";
import {
  AdviceBox,
  Choice,
  Count,
  Fold,
  Heading,
  MorningQuestions,
  PainScale,
  Scale,
} from "./parts.tsx";

export function WriteScreen({ sessionName }: { readonly sessionName: string }) {
  const app = useApp();
  const { say, names, now, sessions, diary, data } = app;
  const session = findSession(sessions, sessionName);
  const kept = findSession(diary.entries, sessionName);
  const [fresh] = useState(() => session && emptyEntry(session, data.booklet, false, ""));
  const entry = kept ?? fresh;
  if (session === undefined || entry === undefined) {
    return <Heading>{say("write.gone")}</Heading>;
  }
  // of a day that has passed it is taken that the session was done when it was planned
  const [day = now.date] = [session.date, app.doneDay(session)].sort();
  return (
    <>
      <Heading>
        {say("write.heading", {
          day: names.long(app.dateOf(session)),
          part: say(`part.${session.part}`),
        })}
      </Heading>
      {session.bouts.map((bout) => {
        const exercise = entry.exercises.find(({ card }) => card === bout.card);
        return (
          exercise && (
            <ExerciseForm
              key={bout.key}
              bout={bout}
              exercise={exercise}
              onChange={(change, said) =>
                app.write(withExercise(entry, bout.card, change, day), said)
              }
            />
          )
        );
      })}
      <SessionForm session={session} entry={entry} />
      {kept && <p role="status">{say("kept")}</p>}
      <button type="button" class="button main" onClick={() => app.go({ screen: "today" })}>
        {say("write.end")}
      </button>
    </>
  );
}

type Change = Partial<Pick<DiaryExercise, "done" | "real" | "pain">>;

interface ExerciseFormProps {
  readonly bout: SessionBout;
  readonly exercise: DiaryExercise;
  /** `said`: what was done in one tap, which can be taken back. */
  readonly onChange: (change: Change, said?: string) => void;
}

/** One exercise: done or not, how much where it was different, and the pain. */
export function ExerciseForm({ bout, exercise, onChange }: ExerciseFormProps) {
  const { say, data } = useApp();
  const advice =
    exercise.pain === undefined ? undefined : adviceDuring(exercise.pain, bout, data.pain);
  const options: readonly Done[] = ["yes", "part", "no"];
  return (
    <section class="write-exercise">
      <h2>{bout.title}</h2>
      <p class="quiet">{bout.dose.slice(0, 2).join(" · ")}</p>
      <Choice
        legend={say("write.done", { exercise: bout.title })}
        legendHidden
        options={options.map((value) => ({ value, label: say(`done.${value}`) }))}
        value={exercise.done}
        onChange={(done) => onChange({ done }, say("kept"))}
      />
      {exercise.done !== "no" && <Different bout={bout} exercise={exercise} onChange={onChange} />}
      {(exercise.done !== "no" || exercise.pain !== undefined) && (
        <PainScale
          legend={say("write.during")}
          value={exercise.pain}
          onChange={(pain) => onChange({ pain }, say("kept"))}
        />
      )}
      {advice && <AdviceBox advice={advice} />}
    </section>
  );
}

/** Sets, repetitions and load where they were not as planned. */
function Different({ bout, exercise, onChange }: ExerciseFormProps) {
  const { say, data } = useApp();
  const { planned, real } = exercise;
  const { units } = data;
  const kg = real.kg ?? planned.kg;
  /** What is typed in the clinic's unit; the planned load where it reads the same. */
  const inKilograms = (value: number) =>
    planned.kg !== undefined && inUnit(planned.kg, units) === value
      ? planned.kg
      : toGram(kilograms(value, units));
  const now = { sets: real.sets ?? planned.sets, reps: repsToChange(bout, exercise) };
  const amount = (name: "sets" | "reps", step: number, most: number) =>
    now[name] === undefined ? null : (
      <Count
        label={say(`write.${name}`)}
        value={now[name]}
        step={step}
        most={most}
        onChange={(value) => onChange({ real: { ...real, [name]: value } })}
      />
    );
  return (
    <Fold summary={say("write.different")}>
      {amount("sets", 1, 50)}
      {amount("reps", 1, 500)}
      {planned.kg !== undefined && kg !== undefined && (
        <Count
          label={say(`write.${units}`)}
          value={inUnit(kg, units)}
          step={units === "lb" ? 1 : 0.5}
          most={inUnit(500, units)}
          onChange={(value) => onChange({ real: { ...real, kg: inKilograms(value) } })}
        />
      )}
    </Fold>
  );
}

/** The session as a whole: how hard, pain after it and the next morning, and a note. */
export function SessionForm({
  session,
  entry,
}: {
  readonly session: PlannedSession;
  readonly entry: DiaryEntry;
}) {
  const app = useApp();
  const { say, waking } = app;
  const after =
    entry.painAfter === undefined
      ? undefined
      : adviceAfter(entry.painAfter, session, app.data.pain);
  const later = entry.doneOn !== undefined && entry.doneOn < waking;
  return (
    <section class="write-session">
      <h2>{say("write.session")}</h2>
      {entry.done !== "no" && (
        <>
          <Scale
            legend={say("write.effort")}
            low={say("scale.rest")}
            high={say("scale.most")}
            value={entry.effort}
            onChange={(effort) => app.write({ ...entry, effort }, say("kept"))}
          />
          <PainScale
            legend={say("write.after")}
            value={entry.painAfter}
            onChange={(painAfter) => app.write({ ...entry, painAfter }, say("kept"))}
          />
          {after && <AdviceBox advice={after} />}
        </>
      )}
      {later && <MorningQuestions legend={say("write.morning")} entry={entry} />}
      <Note entry={entry} />
    </section>
  );
}
