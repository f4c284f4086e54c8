/** Exercises that wait for a sign, offered until the client has seen it; a tick can be taken back. */
import { findSession } from "../../diary/entry.ts";
import type { PlannedSession } from "../day/data.ts";
import { boutsOf, placeIn } from "../day/entries.ts";
import { gatesOn, openSessions } from "../day/gates.ts";
import { todayOf } from "../day/today.ts";
import { useApp } from "./app.ts";

export function WhenReady() {
  const app = useApp();
  const { say, laidOut, sessions, place, known, now, oddClock, settings } = app;
  const [first] = oddClock ? todayOf({ ...known, sessions: laidOut }, now, oddClock).sessions : [];
  const gates = gatesOn(laidOut, first?.date ?? now.date);
  if (gates.length === 0) return null;
  const set = (sign: string, there: boolean) => {
    const others = settings.ready.filter((one) => one !== sign);
    const ready = there ? [...others, sign] : others;
    // a session that is under way goes on with the exercises that it then has
    const bouts = (all: readonly PlannedSession[]) => {
      const session = place && findSession(all, place.key);
      return session ? boutsOf(session, place.short).map(({ bout }) => bout) : [];
    };
    const moved = place && placeIn(place, bouts(sessions), bouts(openSessions(laidOut, ready)));
    app.act({ settings: { ready }, ...(moved && { place: moved }) });
  };
  return (
    <section class="when-ready" aria-labelledby="when-ready">
      <h2 id="when-ready">{say("ready.heading")}</h2>
      <p>{say("ready.how")}</p>
      {gates.map(({ sign, titles }) => (
        <div key={sign}>
          <label class="tick">
            <input
              type="checkbox"
              checked={settings.ready.includes(sign)}
              onChange={(event) => set(sign, event.currentTarget.checked)}
            />
            <span>{sign}</span>
          </label>
          <ul>
            {titles.map((title) => (
              <li key={title}>{title}</li>
            ))}
          </ul>
        </div>
      ))}
    </section>
  );
}
