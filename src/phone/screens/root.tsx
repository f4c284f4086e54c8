/** The whole of the companion: keeps what is written, follows the address, and draws the screen it asks for. */
import { useEffect, useMemo, useState } from "preact/hooks";
import { type Diary, findSession, sessionKey } from "../../diary/entry.ts";
import { dayEnds, momentOf, onTheWall } from "../../units/clock.ts";
import { type PhoneData, plannedSessions } from "../day/data.ts";
import { dayNames } from "../day/dates.ts";
import { withEntry, writtenAfter } from "../day/entries.ts";
import { openSessions } from "../day/gates.ts";
import { localTime } from "../day/local-day.ts";
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
import { sayFrom } from "./words.ts";
import { WriteScreen } from "./write.tsx";

interface RootProps {
  readonly data: PhoneData;
  readonly store: Store;
}

export function Root({ data, store }: RootProps) {
  const say = useMemo(() => sayFrom(data.words), [data]);
  const names = useMemo(() => dayNames(data.locale), [data]);
  const laidOut = useMemo(() => plannedSessions(data), [data]);
  const [diary, setDiary] = useState<Diary>(store.diary);
  const [settings, setSettings] = useState<Settings>(store.settings);
  const sessions = useMemo(() => openSessions(laidOut, settings.ready), [laidOut, settings.ready]);
  const [place, setPlace] = useState<SessionPlace | undefined>(store.place);
  const [said, setSaid] = useState("");
  const route = useRoute();
  const now = useNow();

  useEffect(() => {
    const another = (event: StorageEvent) => {
      if (store.isOurs(event.key)) setDiary(store.diary());
    };
    window.addEventListener("storage", another);
    return () => window.removeEventListener("storage", another);
  }, [store]);

  const here = localTime(now, dayEnds(data.clock));
  const oddClock = isOddClock(laidOut, here, data.made);
  const app: App = {
    data,
    sessions,
    laidOut,
    say,
    names,
    now: here,
    oddClock,
    doneDay: (session) => (oddClock ? session.date : here.date),
    dateOf: (session) => onTheWall(momentOf(session, data.clock)).date,
    diary,
    write: (entry) => {
      const known = store.diary();
      const before = findSession(known.entries, sessionKey(entry));
      const written = writtenAfter(new Date(), before?.written);
      setDiary(store.keep(withEntry(known, { ...entry, booklet: data.booklet, written })));
    },
    join: (other) => setDiary(store.keep(other)),
    settings,
    set: (changed) => {
      const next = { ...settings, ...changed };
      store.keepSettings(next);
      setSettings(next);
    },
    place,
    setPlace: (next) => {
      store.keepPlace(next);
      setPlace(next);
    },
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
        </main>
      )}
      <p class="visually-hidden" role="status">
        {said}
      </p>
      <Nav screen={route.screen} />
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
