/** The diary: every session of the program week by week, with what is written down of it. */
import { sessionKey } from "../../diary/entry.ts";
import type { PlannedSession } from "../day/data.ts";
import { useApp } from "./app.ts";
import { Heading, SoFar } from "./parts.tsx";
import { hashOf } from "./route.ts";

export function DiaryScreen() {
  const { say, go, sessions, now } = useApp();
  const weeks = [...new Set(sessions.map(({ week }) => week))];
  const current = sessions.filter(({ date }) => date <= now.date).at(-1)?.week ?? weeks[0];
  return (
    <>
      <Heading>{say("diary.heading")}</Heading>
      <SoFar />
      <button type="button" class="button main" onClick={() => go({ screen: "bring" })}>
        {say("diary.bring")}
      </button>
      {weeks.map((week) => (
        <details key={week} class="fold week" open={week === current}>
          <summary>{say("diary.week", { n: week })}</summary>
          <ul>
            {sessions
              .filter((session) => session.week === week)
              .map((session) => (
                <li key={sessionKey(session)}>
                  <Line session={session} />
                </li>
              ))}
          </ul>
        </details>
      ))}
      <Earlier />
    </>
  );
}

function Line({ session }: { readonly session: PlannedSession }) {
  const { say, names, now, oddClock, pairs, dateOf } = useApp();
  const key = sessionKey(session);
  const later = session.date > now.date && !oddClock;
  const entry = pairs.entryOf(session);
  const state = entry === undefined ? (later ? "later" : "open") : `is-${entry.done}`;
  const label = entry === undefined ? say(`diary.${state}`) : say(`done.${entry.done}`);
  const pains = [...(entry?.exercises.map(({ pain }) => pain) ?? []), entry?.painAfter].filter(
    (pain) => pain !== undefined,
  );
  const text = (
    <>
      <span class="line-day">
        {names.short(dateOf(session))}, {say(`part.${session.part}`)}
      </span>{" "}
      <span class={`line-state ${state}`}>{label}</span>{" "}
      {pains.length > 0 && (
        <span class="line-pain">{say("diary.pain", { n: Math.max(...pains) })}</span>
      )}
    </>
  );
  // what is still to come can be looked at, but not be written down
  const screen = later && entry === undefined ? "look" : "write";
  return (
    <a class="line" href={hashOf({ screen, key })}>
      {text}
    </a>
  );
}

/** What was written in an earlier booklet, for sessions that this one no longer has. */
function Earlier() {
  const { say, names, pairs, diary, dateOf } = useApp();
  const others = diary.entries.filter((entry) => pairs.sessionOf(entry) === undefined);
  if (others.length === 0) return null;
  return (
    <details class="fold week">
      <summary>{say("diary.earlier")}</summary>
      <ul>
        {others.map((entry) => (
          <li key={sessionKey(entry)}>
            <a class="line" href={`#/write/${sessionKey(entry).replace(" ", "-")}`}>
              <span class="line-day">
                {names.short(dateOf(entry))}, {say(`part.${entry.part}`)}
              </span>{" "}
              <span class={`line-state is-${entry.done}`}>{say(`done.${entry.done}`)}</span>
            </a>
          </li>
        ))}
      </ul>
    </details>
  );
}
