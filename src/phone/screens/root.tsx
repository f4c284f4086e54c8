/** The whole of the companion: keeps what is written, follows the address, and draws the screen it asks for. */
import { useEffect, useMemo, useState } from "preact/hooks";
import { findSession, sessionKey } from "../../diary/entry.ts";
import { dayEnds, momentOf, onTheWall } from "../../units/clock.ts";
import { type Act, undoOf } from "../day/acts.ts";
import { begunTimes } from "../day/begun.ts";
import { callOf } from "../day/call.ts";
import { type PhoneData, plannedSessions } from "../day/data.ts";
import { dayNames } from "../day/dates.ts";
import { openSessions } from "../day/gates.ts";
import { localTime } from "../day/local-day.ts";
import { underWay, wakingDay } from "../day/night.ts";
import { entryToWrite, pairsOf } from "../day/pairs.ts";
import { isOddClock } from "../day/today.ts";
import type { OtherDiary } from "../store/others.ts";
import type { Store } from "../store/store.ts";
import { type App, AppProvider, useApp } from "./app.ts";
import { BringScreen } from "./bring.tsx";
import { DiaryScreen } from "./diary.tsx";
import { LookScreen } from "./look.tsx";
import { Nav } from "./nav.tsx";
import { endPace, holdPace, paceName } from "./pace-keeper.ts";
import { Heading } from "./parts.tsx";
import { hashOf, type Route, routeOf } from "./route.ts";
import { SamePerson } from "./same-person.tsx";
import { SessionScreen } from "./session.tsx";
import { TodayScreen } from "./today.tsx";
import { UndoBar } from "./undo-bar.tsx";
import { useKept } from "./use-kept.ts";
import { sayFrom } from "./words.ts";
import { WriteScreen } from "./write.tsx";

/** What was done in the last tap, and the act that takes it back. */
interface UndoOffer {
  readonly said: string;
  readonly act: Act;
  /** The screen on which it is offered. */
  readonly at: string;
}

interface RootProps {
  readonly data: PhoneData;
  readonly store: Store;
  /** Diaries of the same plan that were kept for another reference. */
  readonly others: readonly OtherDiary[];
}

export function Root({ data, store, others }: RootProps) {
  const say = useMemo(() => sayFrom(data.words), [data]);
  const names = useMemo(() => dayNames(data.locale), [data]);
  const laidOut = useMemo(() => plannedSessions(data), [data]);
  const { kept, change, keepPace, asideTaken, forget } = useKept(store, data.booklet);
  const { diary, place, settings } = kept;
  const pairs = useMemo(() => pairsOf(laidOut, diary), [laidOut, diary]);
  const sessions = useMemo(() => openSessions(laidOut, settings.ready), [laidOut, settings.ready]);
  const call = useMemo(
    () => callOf(diary, settings.calls, data, laidOut),
    [diary, settings.calls, data, laidOut],
  );
  const times = useMemo(() => begunTimes(settings.begun), [settings.begun]);
  const [said, setSaid] = useState("");
  const [waiting, setWaiting] = useState(false);
  const [undo, setUndo] = useState<UndoOffer | undefined>(undefined);
  const route = useRoute();
  const now = useNow();
  useEffect(() => {
    setUndo((offer) => (offer?.at === hashOf(route) ? offer : undefined));
  }, [route]);

  const here = localTime(now, dayEnds(data.clock));
  const oddClock = isOddClock(laidOut, here, data.made);
  const act: App["act"] = (one, what, to, was) => {
    const at = hashOf(to ?? route);
    setUndo(
      what === undefined ? undefined : { said: what, act: undoOf(one, { ...kept, ...was }), at },
    );
    change(one);
    if (to) window.location.hash = at;
  };
  const waking = oddClock ? here.date : wakingDay(here, data.clock);
  const begun = oddClock ? place : underWay(place, waking);
  const pacing = begun?.stage === "pace" ? begun : undefined;
  const paced = pacing && paceName(pacing);
  useEffect(() => endPace(paced), [paced]);
  useEffect(() => {
    if (call) holdPace();
  }, [call]);
  const app: App = {
    data,
    sessions,
    laidOut,
    say,
    names,
    now: here,
    oddClock,
    waking,
    doneDay: (session) => {
      if (oddClock) return session.date;
      return begun?.key === sessionKey(session) ? begun.day : here.date;
    },
    dateOf: (session) => onTheWall(momentOf(session, data.clock)).date,
    diary,
    pairs,
    known: {
      sessions,
      diary,
      pairs,
      underWay: begun && findSession(laidOut, begun.key),
      clock: data.clock,
      spacing: data.spacing,
      begun: times,
    },
    entryFor: (session, short) => entryToWrite(session, diary, pairs, data.booklet, short),
    act,
    write: (entry, what) => act({ entries: [entry] }, what),
    isKept: waiting ? "waits" : store.isKept() ? "yes" : "no",
    waits: setWaiting,
    aside: store.aside,
    asideTaken,
    forget: () => {
      setUndo(undefined);
      return forget();
    },
    settings,
    set: (changed) => act({ settings: changed }),
    call,
    place: begun,
    setPlace: (next) => act({ place: next ?? "none" }),
    keepPace,
    go: (next) => {
      window.location.hash = hashOf(next);
    },
    tell: setSaid,
  };
  const asked = others.find(({ diary: { client } }) => !settings.asked.includes(client));
  const trouble = store.trouble();
  const own = route.screen !== "booklet" && route.screen !== "stop";
  return (
    <AppProvider value={app}>
      {trouble && (
        <p class="trouble" role="alert">
          {say(`trouble.${trouble}`)} <a href="#/bring">{say("trouble.save")}</a>
        </p>
      )}
      {own && (
        <main class="phone-main">
          {asked ? <AskedOnce other={asked} /> : <Screen key={hashOf(route)} route={route} />}
          {undo && (
            <UndoBar
              said={store.isKept() ? undo.said : say("kept-not")}
              onUndo={() => {
                setUndo(undefined);
                change(undo.act);
                setSaid(say("undo.done"));
              }}
            />
          )}
        </main>
      )}
      <p class="visually-hidden" role="status">
        {said}
      </p>
      <Nav screen={route.screen} pacing={pacing} />
    </AppProvider>
  );
}

/** Before anything else: whether a diary that was kept for another reference is this client's. */
function AskedOnce({ other }: { readonly other: OtherDiary }) {
  const { say, settings, act } = useApp();
  const { client, entries } = other.diary;
  const asked = [...settings.asked, client];
  const ready = [...new Set([...settings.ready, ...other.settings.ready])];
  const same = [...settings.same, client];
  // a diary knows days alone: without the hours, what was begun late would count as begun early
  const begun = [...other.settings.begun, ...settings.begun];
  // nor does it say which call was made, or which morning is forgotten: both would be asked for again
  const calls = [...other.settings.calls, ...settings.calls];
  const passed = [...new Set([...other.settings.passed, ...settings.passed])];
  const yes = { asked, ready, same, begun, calls, passed };
  return (
    <>
      <Heading>{say("same.heading")}</Heading>
      <SamePerson
        other={client}
        onYes={() => act({ joined: entries, settings: yes }, say("same.joined"))}
        onNo={() => act({ settings: { asked } }, say("same.own"))}
      />
    </>
  );
}

function Screen({ route }: { readonly route: Route }) {
  switch (route.screen) {
    case "today":
      return <TodayScreen />;
    case "session":
      return <SessionScreen sessionName={route.key} />;
    case "write":
      return <WriteScreen sessionName={route.key} />;
    case "look":
      return <LookScreen sessionName={route.key} />;
    case "diary":
      return <DiaryScreen />;
    case "bring":
      return <BringScreen />;
    default:
      return null;
  }
}

/** The route of the address, and the booklet's own pages shown or hidden by it. */
function useRoute(): Route {
  const [route, setRoute] = useState<Route>(() => routeOf(window.location.hash));
  useEffect(() => {
    const follow = () => setRoute(routeOf(window.location.hash));
    window.addEventListener("hashchange", follow);
    return () => window.removeEventListener("hashchange", follow);
  }, []);
  useEffect(() => {
    document.documentElement.dataset.screen = route.screen;
    levelStopPage(route.screen === "stop");
    if (route.screen === "stop") showPart("part-stop");
    if (route.screen === "booklet") {
      if (route.anchor === undefined) window.scrollTo(0, 0);
      else showPart(route.anchor);
    }
  }, [route]);
  return route;
}

/** When to stop is a page of the booklet; alone on a screen its headings are one level higher. */
function levelStopPage(alone: boolean): void {
  for (const heading of document.querySelectorAll(".stop-page :is(h2, h3)")) {
    if (alone) heading.ariaLevel = heading.tagName === "H2" ? "1" : "2";
    else heading.removeAttribute("aria-level");
  }
}

/** A part of the booklet that was hidden when the address changed: now there is something to go to. */
function showPart(anchor: string): void {
  const part = document.getElementById(anchor);
  if (part === null) return;
  part.tabIndex = -1;
  part.focus({ preventScroll: true });
  part.scrollIntoView();
}

/** The instant, anew each minute and whenever the client comes back to the page. */
function useNow(): Date {
  const [now, setNow] = useState(() => new Date());
  useEffect(() => {
    const look = () => setNow(new Date());
    const each = setInterval(look, 60_000);
    document.addEventListener("visibilitychange", look);
    window.addEventListener("pageshow", look);
    return () => {
      clearInterval(each);
      document.removeEventListener("visibilitychange", look);
      window.removeEventListener("pageshow", look);
    };
  }, []);
  return now;
}
