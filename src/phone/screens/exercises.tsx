/** The exercises of a session in order, each with its picture, its dose and its steps. */
import type { PlannedSession } from "../day/data.ts";
import { boutsOf } from "../day/entries.ts";
import { useApp } from "./app.ts";
import { Dose, Fold, FromBooklet } from "./parts.tsx";

interface ExercisesProps {
  readonly session: PlannedSession;
  readonly short: boolean;
}

export function Exercises({ session, short }: ExercisesProps) {
  const { say } = useApp();
  return (
    <ol class="exercises">
      {boutsOf(session, short).map(({ bout, sets }) => (
        <li key={bout.key}>
          <h3>{bout.title}</h3>
          <FromBooklet anchor={bout.anchor} part=".pictures" />
          <Dose bout={bout} sets={sets} />
          <Fold summary={say("exercise.steps")}>
            <FromBooklet anchor={bout.anchor} part=".columns" />
            <FromBooklet anchor={bout.anchor} part=".care-row" />
            <p>{bout.painWords.rule}</p>
            <p>
              <a href={`#${bout.anchor}`}>{say("exercise.page")}</a>
            </p>
          </Fold>
        </li>
      ))}
    </ol>
  );
}
