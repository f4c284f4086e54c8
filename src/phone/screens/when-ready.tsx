/** Exercises that wait for a sign, offered until the client has seen it; a tick can be taken back. */
import { gatesOn } from "../day/gates.ts";
import { todayOf } from "../day/today.ts";
import { useApp } from "./app.ts";

export function WhenReady() {
  const app = useApp();
  const { say, laidOut, diary, now, oddClock, settings } = app;
  const [first] = oddClock ? todayOf(laidOut, diary, now, oddClock).sessions : [];
  const gates = gatesOn(laidOut, first?.date ?? now.date);
  if (gates.length === 0) return null;
  const set = (sign: string, there: boolean) => {
    const others = settings.ready.filter((one) => one !== sign);
    // a session that is under way begins anew: its exercises are counted from the first
    app.setPlace(undefined);
    app.set({ ready: there ? [...others, sign] : others });
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
