/** The question of the next morning, on the first screen. */
import { type DiaryEntry, sessionKey } from "../../diary/entry.ts";
import { addDays } from "../../units/dates.ts";
import { morningAfter } from "../day/morning.ts";
import { useApp } from "./app.ts";
import { Kept } from "./kept.tsx";
import { MorningQuestions } from "./parts.tsx";

/** The question of the next morning: pain, and whether it is back to the usual. */
export function Morning({
  entry,
  onAnswer,
}: {
  readonly entry: DiaryEntry;
  readonly onAnswer: (entry: DiaryEntry) => void;
}) {
  const app = useApp();
  const { say, names, now, settings } = app;
  const key = sessionKey(entry);
  const doneOn = entry.doneOn ?? entry.date;
  const yesterday = names.weekday(doneOn);
  return (
    <section class="morning">
      <h2>{say("morning.heading", { day: yesterday })}</h2>
      <MorningQuestions
        legend={say(entry.doneOn === addDays(now.date, -1) ? "morning.pain" : "morning.pain-then", {
          day: yesterday,
        })}
        entry={entry}
        onAnswer={() => onAnswer(entry)}
        callShown
      />
      {morningAfter(entry, app.diary).painMorning === undefined ? (
        <button
          type="button"
          class="button"
          onClick={() =>
            app.act(
              { settings: { passed: [...settings.passed, key] } },
              say("undo.passed", { day: yesterday }),
            )
          }
        >
          {say("morning.pass")}
        </button>
      ) : (
        <Kept />
      )}
    </section>
  );
}
