/** The whole of the companion: keeps what is written, follows the address, and draws the screen it asks for. */
import { useEffect, useMemo, useState } from "preact/hooks";
import { type Diary, type DiaryEntry, findSession, sessionKey } from "../../diary/entry.ts";
import { dayEnds, momentOf, onTheWall } from "../../units/clock.ts";
import { type Act, standing, undoOf } from "../day/acts.ts";
import { type PhoneData, plannedSessions } from "../day/data.ts";
import { dayNames } from "../day/dates.ts";
import { withEntry, writtenAfter } from "../day/entries.ts";
import { openSessions } from "../day/gates.ts";
import { localTime } from "../day/local-day.ts";
import { underWay, wakingDay } from "../day/night.ts";
import { entryToWrite, pairsOf } from "../day/pairs.ts";
import { isOddClock } from "../day/today.ts";
import type { SessionPlace, Settings } from "../store/settings.ts";
import type { Store } from "../store/store.ts";
import { type App, AppProvider } from "./app.ts";
import { BringScreen } from "./bring.tsx";
import { DiaryScreen } from "./diary.tsx";
import { Nav } from "./nav.tsx";
import { hashOf, type Route, routeOf } from "./route.ts";
import { SessionScreen } from "./session.tsx";
import { TodayScreen } from "./today.tsx";
import { UndoBar } from "./undo-bar.tsx";
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
}

export function Root({ data, store }: RootProps) {
  const say = useMemo(() => sayFrom(data.words), [data]);
  const names = useMemo(() => dayNames(data.locale), [data]);
  const laidOut = useMemo(() => plannedSessions(data), [data]);
  const [known, setDiary] = useState<Diary>(store.diary);
  const diary = useMemo(() => standing(known), [known]);
  const pairs = useMemo(() => pairsOf(laidOut, diary), [laidOut, diary]);
  const [settings, setSettings] = useState<Settings>(store.settings);
  const sessions = useMemo(() => openSessions(laidOut, settings.ready), [laidOut, settings.ready]);
  const [place, setPlace] = useState<SessionPlace | undefined>(store.place);
  const [said, setSaid] = useState("");
  const [undo, setUndo] = useState<UndoOffer | undefined>(undefined);
  const route = useRoute();
  const now = useNow();
  useEffect(() => {
    setUndo((offer) => (offer?.at === hashOf(route) ? offer : undefined));
  }, [route]);

  useEffect(() => {
    const another = (event: StorageEvent) => {
      if (store.isOurs(event.key)) setDiary(store.diary());
    };
    window.addEventListener("storage", another);
    return () => window.removeEventListener("storage", another);
  }, [store]);

  const here = localTime(now, dayEnds(data.clock));
  const oddClock = isOddClock(laidOut, here, data.made);
  const change = ({ entries = [], place: next, settings: changed }: Act) => {
    if (entries.length > 0) setDiary(store.keep(entries.reduce(written, store.diary())));
    if (next) {
      const there = next === "none" ? undefined : next;
      store.keepPlace(there);
      setPlace(there);
    }
    if (changed) {
      const all = { ...settings, ...changed };
      store.keepSettings(all);
      setSettings(all);
    }
  };
  const written = (all: Diary, entry: DiaryEntry) => {
    const before = findSession(all.entries, sessionKey(entry));
    const mark = writtenAfter(new Date(), before?.written);
    return withEntry(all, { ...entry, booklet: data.booklet, written: mark });
  };
  const act = (one: Act, what?: string, to?: Route) => {
    const at = hashOf(to ?? route);
    setUndo(what === undefined ? undefined : { said: what, act: undoOf(one, kept), at });
    change(one);
    if (to) window.location.hash = at;
  };
  const kept = { diary, place, settings };
  const waking = oddClock ? here.date : wakingDay(here, data.clock);
  const begun = oddClock ? place : underWay(place, waking);
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
    entryFor: (session, short) => entryToWrite(session, diary, pairs, data.booklet, short),
    act,
    write: (entry, what) => act({ entries: [entry] }, what),
    join: (other) => setDiary(store.keep(other)),
    settings,
    set: (changed) => act({ settings: changed }),
    place: begun,
    setPlace: (next) => act({ place: next ?? "none" }),
    keepPace: (pace) =>
      setPlace((known) => {
        const next = known && { ...known, pace };
        store.keepPlace(next);
        return next;
      }),
    go: (next) => {
      window.location.hash = hashOf(next);
    },
    tell: setSaid,
  };
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
          <Screen key={hashOf(route)} route={route} />
          {undo && (
            <UndoBar
              said={undo.said}
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
      <Nav screen={route.screen} pacing={route.screen === "session" && place?.stage === "pace"} />
    </AppProvider>
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
    if (route.screen === "stop") showPart("part-stop");
    if (route.screen === "booklet") {
      if (route.anchor === undefined) window.scrollTo(0, 0);
      else showPart(route.anchor);
    }
  }, [route]);
  return route;
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
