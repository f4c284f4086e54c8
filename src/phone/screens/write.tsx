/** Writing down a session, now or later: what was done of it, what was different, effort, pain and a note. */
import { findSession } from "../../diary/entry.ts";
import { withExercise } from "../day/entries.ts";
import { useApp } from "./app.ts";
import { ExerciseForm } from "./exercise-form.tsx";
import { Kept } from "./kept.tsx";
import { Heading } from "./parts.tsx";
import { SessionForm } from "./session-form.tsx";

/** `sessionName`: of a session of the booklet, or of an entry for one that it no longer has. */
export function WriteScreen({ sessionName }: { readonly sessionName: string }) {
  const app = useApp();
  const { say, names, now, sessions, diary, pairs } = app;
  const session = findSession(sessions, sessionName);
  const kept = session ? pairs.entryOf(session) : findSession(diary.entries, sessionName);
  const entry = session ? app.entryFor(session, kept?.short ?? false) : kept;
  const planned = session ?? entry;
  if (planned === undefined || entry === undefined) return <Heading>{say("write.gone")}</Heading>;
  // of a day that has passed it is taken that the session was done when it was planned
  const done = session ? app.doneDay(session) : now.date;
  const [day = now.date] = [planned.date, done].sort();
  return (
    <>
      <Heading>
        {say("write.heading", {
          day: names.long(app.dateOf(planned)),
          part: say(`part.${planned.part}`),
        })}
      </Heading>
      {entry.exercises.map((exercise) => (
        <ExerciseForm
          key={exercise.card}
          bout={session?.bouts.find(({ card }) => card === exercise.card)}
          exercise={exercise}
          onChange={(change, said) =>
            app.write(withExercise(entry, exercise.card, change, day), said)
          }
        />
      ))}
      <SessionForm session={session} entry={entry} />
      {kept && <Kept />}
      <button type="button" class="button main" onClick={() => app.go({ screen: "today" })}>
        {say("write.end")}
      </button>
    </>
  );
}
