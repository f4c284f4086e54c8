/** Writing down a session as a whole: how hard, pain after it and the next morning, and a note. */
import type { DiaryEntry } from "../../diary/entry.ts";
import { adviceAfter } from "../day/advice.ts";
import type { PlannedSession } from "../day/data.ts";
import { useApp } from "./app.ts";
import { Note } from "./note.tsx";
import { AdviceBox, MorningQuestions, PainScale, Scale } from "./parts.tsx";

export function SessionForm({
  session,
  entry,
}: {
  /** As it is planned; undefined where the booklet no longer has it. */
  readonly session: PlannedSession | undefined;
  readonly entry: DiaryEntry;
}) {
  const app = useApp();
  const { say, waking } = app;
  const { painAfter: felt } = entry;
  const after =
    session && felt !== undefined ? adviceAfter(felt, session, app.data.pain) : undefined;
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
