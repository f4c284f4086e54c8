/** What to do first: the client's next session, as the first page of the booklet has it. */
import type { ProgramExercise } from "../program/program.ts";
import { exerciseAnchor } from "./anchors.ts";
import type { Composing } from "./composing.ts";
import { doseWords } from "./dose-words.ts";
import { startSign } from "./flag-words.ts";
import type { StartHere } from "./model.ts";
import { overSentences } from "./pain-words.ts";
import { partInDay } from "./part-words.ts";
import { sideName } from "./side-words.ts";

/**
 * The first of the sessions from the day of the sign-off on, and the sign to stop it; of a draft, and where
 * all are over, the very first. Undefined where there is no session.
 */
export function startHere(composing: Composing): StartHere | undefined {
  const { program, schedule, write, signedOff } = composing;
  const { words } = write;
  const sessions = schedule.weeks.flatMap(({ days }) => days.flatMap((one) => one.sessions));
  const [first] = sessions;
  const session = sessions.find(({ date }) => date >= (signedOff?.on ?? "")) ?? first;
  if (first === undefined || session === undefined) return undefined;
  const exercises = new Map<string, ProgramExercise>(
    program.phases.flatMap((phase) => phase.exercises.map((one) => [one.key, one])),
  );
  const done = session.bouts.flatMap((bout) => {
    const exercise = exercises.get(bout.key);
    return exercise === undefined ? [] : [{ bout, exercise }];
  });
  return {
    heading: session === first ? words.say("start.first") : words.say("start.next"),
    when: words.say("start.when", {
      date: write.longDate(session.date),
      part: partInDay(session, program.clock, write),
      minutes: session.minutes,
    }),
    exercises: done.map(({ bout, exercise }) => {
      const { card } = exercise.card;
      const { work, load } = doseWords(bout, exercise.card, undefined, write);
      return {
        anchor: exerciseAnchor(exercise.card),
        title: card.title,
        side: sideName(exercise, write),
        dose: [work, load].filter((part) => part !== undefined),
        when: startSign(exercise, program, write),
      };
    }),
    stop: overSentences(
      done.map(({ exercise }) => exercise),
      write,
    ),
  };
}
