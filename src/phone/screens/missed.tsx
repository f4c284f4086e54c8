/** A session that was missed, on the first screen. */
import { sessionKey } from "../../diary/entry.ts";
import type { PlannedSession } from "../day/data.ts";
import { withAll } from "../day/entries.ts";
import type { Today } from "../day/today.ts";
import { useApp } from "./app.ts";
import { HoldNotice } from "./hold-notice.tsx";
import { SessionCard } from "./session-card.tsx";

/** A session that was missed: offered where the tissue has had its rest, and let go without blame. */
export function Missed({
  missed,
  next,
}: {
  readonly missed: NonNullable<Today["missed"]>;
  readonly next: PlannedSession | undefined;
}) {
  const app = useApp();
  const { say, names } = app;
  const { session, hold, mayDo } = missed;
  const day = names.weekday(app.dateOf(session));
  const leave = () => {
    const entry = withAll(app.entryFor(session, false), "no", session.date);
    app.write(entry, say("undo.left", { day }));
  };
  return (
    <section class="missed">
      <p>
        {mayDo
          ? say("missed.may", { day })
          : next && !hold
            ? say("missed.leave", { day })
            : say("missed.last", { day })}
      </p>
      {hold && <HoldNotice hold={hold} />}
      {mayDo && <SessionCard session={session} />}
      <p class="buttons">
        <button
          type="button"
          class="button"
          onClick={() => app.go({ screen: "write", key: sessionKey(session) })}
        >
          {say("missed.was-done")}
        </button>
        <button type="button" class="button" onClick={leave}>
          {say("missed.let-go")}
        </button>
      </p>
    </section>
  );
}
