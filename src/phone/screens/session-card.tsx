/** A session on the first screen: how to start it, its exercises, or what is written down of it. */
import { useState } from "preact/hooks";
import { type DiaryEntry, sessionKey } from "../../diary/entry.ts";
import { withBegun } from "../day/begun.ts";
import type { PlannedSession } from "../day/data.ts";
import { boutsOf, isUnplanned, leftOut, placeIn, withAll } from "../day/entries.ts";
import { holdOf } from "../day/hold.ts";
import { useApp } from "./app.ts";
import { Exercises } from "./exercises.tsx";
import { HoldNotice } from "./hold-notice.tsx";

/** A session: its exercises in order, how to start it, or that it is written down. */
export function SessionCard({ session }: { readonly session: PlannedSession }) {
  const app = useApp();
  const { say, pairs, place } = app;
  const key = sessionKey(session);
  const entry = pairs.entryOf(session);
  const begun = place?.key === key;
  const [short, setShort] = useState(begun && place.short);
  const all = session.short;
  if (entry !== undefined && !begun) return <Written session={session} entry={entry} />;
  const hold = begun || app.oddClock ? undefined : holdOf(session, app.now, app.known);
  const boutsNow = (is: boolean) => boutsOf(session, is).map(({ bout }) => bout);
  const start = () => {
    const to = { screen: "session", key } as const;
    if (begun) {
      const there = placeIn(place, boutsNow(place.short), boutsNow(short));
      return app.act(place.short === short ? {} : { place: { ...there, short } }, undefined, to);
    }
    const fresh = { key, day: app.doneDay(session), short, at: 0 } as const;
    const times = withBegun(app.settings.begun, key, app.now);
    const settings = app.oddClock ? {} : { begun: times };
    app.act({ place: { ...fresh, stage: "ready", pace: undefined }, settings }, undefined, to);
  };
  return (
    <section class="session" aria-labelledby={`session-${session.part}`}>
      <h2 id={`session-${session.part}`}>
        {app.oddClock && `${app.names.long(app.dateOf(session))}. `}
        {say("today.session", {
          part: say(`part.${session.part}`),
          minutes: short && all ? all.minutes : session.minutes,
        })}
      </h2>
      {hold ? (
        <HoldNotice hold={hold} />
      ) : (
        <button type="button" class="button main" onClick={start}>
          {say(begun ? "today.go-on" : "today.start")}
        </button>
      )}
      {all && !hold && (
        <button type="button" class="button" aria-pressed={short} onClick={() => setShort(!short)}>
          {say(short ? "short.whole" : "short.offer", {
            minutes: short ? session.minutes : all.minutes,
          })}
        </button>
      )}
      {!all && session.bouts.some(({ needsGoodDay }) => needsGoodDay) && <p>{say("short.none")}</p>}
      <Exercises session={session} short={short} />
      <WithoutPace session={session} short={short} />
    </section>
  );
}

/** For those who do it without the phone's help: written down with one tap. */
function WithoutPace({
  session,
  short,
}: {
  readonly session: PlannedSession;
  readonly short: boolean;
}) {
  const app = useApp();
  const { say, place } = app;
  const key = sessionKey(session);
  const done = () => {
    const known = app.entryFor(session, short);
    const entry = withAll(known, "yes", app.doneDay(session), leftOut(session, place));
    const others = entry.exercises.filter(isUnplanned).map(({ title }) => title);
    const said = others.length > 0 ? say("undo.told", { what: others.join(", ") }) : say("kept");
    const over = place?.key === key && { place: "none" as const };
    app.act({ entries: [entry], ...over }, said, { screen: "write", key });
  };
  return (
    <div class="without">
      <h3>{say("today.without")}</h3>
      <button type="button" class="button" onClick={done}>
        {say("write.all")}
      </button>
      <button type="button" class="button" onClick={() => app.go({ screen: "write", key })}>
        {say("write.some")}
      </button>
    </div>
  );
}

/** A session that is written down, and that its next morning will be asked for. */
function Written({
  session,
  entry,
}: {
  readonly session: PlannedSession;
  readonly entry: DiaryEntry;
}) {
  const { say, go } = useApp();
  return (
    <section class="session written">
      <h2>
        {say("today.written", {
          part: say(`part.${session.part}`),
          done: say(`done.${entry.done}`),
        })}
      </h2>
      {entry.done !== "no" && entry.painMorning === undefined && <p>{say("today.tomorrow")}</p>}
      <button
        type="button"
        class="button"
        onClick={() => go({ screen: "write", key: sessionKey(session) })}
      >
        {say("write.change")}
      </button>
    </section>
  );
}
