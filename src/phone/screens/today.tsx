/** The first screen: the session of today, what is left to ask of the last one, and what comes next. */
import { useState } from "preact/hooks";
import { type DiaryEntry, findSession, sessionKey } from "../../diary/entry.ts";
import { onTheWall } from "../../units/clock.ts";
import { adviceFromLast } from "../day/advice.ts";
import type { PlannedSession } from "../day/data.ts";
import { morningOf, type Today, todayOf } from "../day/today.ts";
import { useApp } from "./app.ts";
import { CallUs } from "./call-us.tsx";
import { Missed } from "./missed.tsx";
import { Morning } from "./morning.tsx";
import { AdviceBox, Heading, SoFar } from "./parts.tsx";
import { hashOf } from "./route.ts";
import { SessionCard } from "./session-card.tsx";
import { WhenReady } from "./when-ready.tsx";

export function TodayScreen() {
  const app = useApp();
  const { say, names, now, sessions, diary, oddClock, call } = app;
  const today = todayOf(app.known, now, oddClock);
  const [answered, setAnswered] = useState<DiaryEntry | undefined>(undefined);
  const morning = answered ?? morningOf(diary, app.waking, app.settings.passed);
  const open = today.sessions.filter((session) => app.pairs.entryOf(session) === undefined);
  const begun = app.place && findSession(sessions, app.place.key);
  const others = today.sessions.filter((session) => session !== begun);
  const fromLast =
    open.length > 0 ? adviceFromLast(diary, sessions, app.data.pain, !call) : undefined;
  const asked = morning && (
    <Morning
      key={sessionKey(morning)}
      entry={findSession(diary.entries, sessionKey(morning)) ?? morning}
      onAnswer={setAnswered}
    />
  );
  // nothing of the program is offered until the client has called
  if (call) {
    return (
      <>
        <Heading>{names.long(onTheWall(now).date)}</Heading>
        {answered && asked}
        <CallUs call={call} />
        {!answered && asked}
        <SoFar />
      </>
    );
  }
  return (
    <>
      <Heading>{names.long(onTheWall(now).date)}</Heading>
      {oddClock && <p class="notice">{say("today.odd-clock", { day: now.date })}</p>}
      {asked}
      {fromLast && !answered && <AdviceBox advice={fromLast} />}
      {begun && <SessionCard key={sessionKey(begun)} session={begun} />}
      {today.missed && today.missed.session !== begun && (
        <Missed missed={today.missed} next={today.next} />
      )}
      {others.map((session) => (
        <SessionCard key={sessionKey(session)} session={session} />
      ))}
      <WhenReady />
      {today.sessions.length === 0 && !begun && !today.missed?.mayDo && <Free today={today} />}
      {today.next && <Next session={today.next} />}
      <SoFar />
    </>
  );
}

/** A day without a session. */
function Free({ today }: { readonly today: Today }) {
  const { say, names, sessions, now } = useApp();
  const first = sessions[0];
  if (today.over) return <p class="notice">{say("today.over")}</p>;
  if (first && now.date < first.date) {
    return <p class="notice">{say("today.before", { day: names.long(first.date) })}</p>;
  }
  return <p class="notice">{say("today.free")}</p>;
}

function Next({ session }: { readonly session: PlannedSession }) {
  const { say, names, dateOf } = useApp();
  return (
    <p class="next">
      {say("today.next", {
        day: names.long(dateOf(session)),
        part: say(`part.${session.part}`),
        minutes: session.minutes,
      })}{" "}
      <a href={hashOf({ screen: "look", key: sessionKey(session) })}>{say("look.open")}</a>
    </p>
  );
}
