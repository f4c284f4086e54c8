/** The first screen: the session of today, what is left to ask of the last one, and what comes next. */
import { useState } from "preact/hooks";
import { type DiaryEntry, findSession, sessionKey } from "../../diary/entry.ts";
import { onTheWall } from "../../units/clock.ts";
import { addDays } from "../../units/dates.ts";
import { adviceFromLast } from "../day/advice.ts";
import type { PlannedSession } from "../day/data.ts";
import { boutsOf, emptyEntry, withAll } from "../day/entries.ts";
import { morningAfter } from "../day/morning.ts";
import { morningOf, type Today, todayOf } from "../day/today.ts";
import { type App, useApp } from "./app.ts";
import { AdviceBox, Dose, Fold, FromBooklet, Heading, MorningQuestions, SoFar } from "./parts.tsx";
import { WhenReady } from "./when-ready.tsx";

export function TodayScreen() {
  const app = useApp();
  const { say, names, now, sessions, diary, oddClock } = app;
  const today = todayOf(sessions, diary, now, oddClock);
  const [answered, setAnswered] = useState<DiaryEntry | undefined>(undefined);
  const morning = answered ?? morningOf(diary, now, app.settings.passed);
  const open = today.sessions.filter(
    (session) => findSession(diary.entries, sessionKey(session)) === undefined,
  );
  const made = begunToday(app);
  const fromLast = open.length > 0 ? adviceFromLast(diary, sessions, say("settle")) : undefined;
  return (
    <>
      <Heading>{names.long(onTheWall(now).date)}</Heading>
      {oddClock && <p class="notice">{say("today.odd-clock", { day: now.date })}</p>}
      {morning && (
        <Morning
          key={sessionKey(morning)}
          entry={findSession(diary.entries, sessionKey(morning)) ?? morning}
          onAnswer={setAnswered}
        />
      )}
      {fromLast && !answered && <AdviceBox advice={fromLast} />}
      {today.missed && <Missed missed={today.missed} next={today.next} />}
      {made && !today.sessions.includes(made) && <SessionCard session={made} />}
      {today.sessions.map((session) => (
        <SessionCard key={sessionKey(session)} session={session} />
      ))}
      <WhenReady />
      {today.sessions.length === 0 && !today.missed?.mayDo && <Free today={today} />}
      {today.next && <Next session={today.next} />}
      <SoFar />
    </>
  );
}

/** A session of another day that the client is in the middle of, if part of it was done today. */
function begunToday({ sessions, diary, place, now }: App): PlannedSession | undefined {
  const entry = place && findSession(diary.entries, place.key);
  return entry?.doneOn === now.date ? findSession(sessions, sessionKey(entry)) : undefined;
}

/** A session: its exercises in order, how to start it, or that it is written down. */
function SessionCard({ session }: { readonly session: PlannedSession }) {
  const app = useApp();
  const { say, diary, place } = app;
  const key = sessionKey(session);
  const entry = findSession(diary.entries, key);
  const begun = place?.key === key;
  const [short, setShort] = useState(begun && place.short);
  const all = session.short;
  if (entry !== undefined && !begun) return <Written session={session} entry={entry} />;
  const start = () => {
    if (!begun || place.short !== short) {
      app.setPlace({ key, short, at: 0, stage: "ready", pace: undefined });
    }
    app.go({ screen: "session", key });
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
      <button type="button" class="button main" onClick={start}>
        {say(begun ? "today.go-on" : "today.start")}
      </button>
      {all && (
        <button type="button" class="button" aria-pressed={short} onClick={() => setShort(!short)}>
          {say(short ? "short.whole" : "short.offer", {
            minutes: short ? session.minutes : all.minutes,
          })}
        </button>
      )}
      {!all && session.bouts.some(({ needsGoodDay }) => needsGoodDay) && <p>{say("short.none")}</p>}
      <ol class="exercises">
        {boutsOf(session, short).map(({ bout, sets }) => (
          <li key={bout.key}>
            <h3>{bout.title}</h3>
            <FromBooklet anchor={bout.anchor} part=".figure" />
            <Dose bout={bout} sets={sets} />
            <Fold summary={say("exercise.steps")}>
              <FromBooklet anchor={bout.anchor} part=".columns" />
              <p>{bout.painWords.rule}</p>
              <p>
                <a href={`#${bout.anchor}`}>{say("exercise.page")}</a>
              </p>
            </Fold>
          </li>
        ))}
      </ol>
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
  const { say, data } = app;
  const key = sessionKey(session);
  const done = () => {
    const entry = emptyEntry(session, data.booklet, short, "");
    app.write(withAll(entry, "yes", app.doneDay(session)));
    app.go({ screen: "write", key });
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

/** A session that was missed: offered where the tissue has had its rest, and let go without blame. */
function Missed({
  missed,
  next,
}: {
  readonly missed: NonNullable<Today["missed"]>;
  readonly next: PlannedSession | undefined;
}) {
  const app = useApp();
  const { say, names, data } = app;
  const { session, mayDo } = missed;
  const day = names.weekday(app.dateOf(session));
  const leave = () => {
    app.write(withAll(emptyEntry(session, data.booklet, false, ""), "no", session.date));
  };
  return (
    <section class="missed">
      <p>
        {mayDo
          ? say("missed.may", { day })
          : next
            ? say("missed.leave", { day })
            : say("missed.last", { day })}
      </p>
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

/** The question of the next morning: pain, and whether it is back to the usual. */
function Morning({
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
      />
      {morningAfter(entry, app.diary).painMorning === undefined ? (
        <button
          type="button"
          class="button"
          onClick={() => app.set({ passed: [...settings.passed, key] })}
        >
          {say("morning.pass")}
        </button>
      ) : (
        <p role="status">{say("kept")}</p>
      )}
    </section>
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
      })}
    </p>
  );
}
