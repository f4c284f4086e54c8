/** The bar at the foot of every screen: today, the diary, the booklet, and when to stop and call. */

import { useEffect, useRef, useState } from "preact/hooks";
import type { SessionPlace } from "../store/settings.ts";
import { useApp } from "./app.ts";
import { watchPace } from "./pace-keeper.ts";
import { hashOf, type Route } from "./route.ts";

interface NavProps {
  readonly screen: Route["screen"];
  /** The exercise that is paced: on its own screen, whose bar needs the room, or meanwhile out of sight. */
  readonly pacing: SessionPlace | undefined;
}

/** Screens by the entry of the bar that they belong to. */
const BELONGS: Readonly<Record<Route["screen"], string>> = {
  today: "today",
  session: "today",
  write: "diary",
  look: "diary",
  diary: "diary",
  bring: "diary",
  booklet: "booklet",
  stop: "stop",
};

export function Nav({ screen, pacing }: NavProps) {
  const { say, call } = useApp();
  const here = screen === "session";
  const bar = useFoot(here && pacing !== undefined);
  return (
    <nav ref={bar} class="phone-nav" aria-label={say("nav.label")}>
      {/* nothing is gone on with until the client has called */}
      {pacing && !here && !call && <BackToPace session={pacing.key} />}
      <ul>
        {["today", "diary", "booklet", "stop"].map((name) => (
          <li key={name}>
            <a
              class={`nav-${name}`}
              href={`#/${name}`}
              aria-current={BELONGS[screen] === name ? "page" : undefined}
            >
              {say(`nav.${name}`)}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}

/** The way back to an exercise that goes on, or waits, out of sight; the end of its rest is said here. */
function BackToPace({ session }: { readonly session: string }) {
  const { say, tell } = useApp();
  const [waits, setWaits] = useState(false);
  useEffect(() => watchPace(({ view }) => setWaits(view.why === "waiting")), []);
  const over = waits ? say("pace.rest-over") : "";
  useEffect(() => {
    if (over) tell(over);
  }, [over]);
  return (
    <a class="button main to-pace" href={hashOf({ screen: "session", key: session })}>
      {over} {say("pace.to-pace")}
    </a>
  );
}

/** The bar may cover so much of the screen's height, of a pace's less; where it is higher it stands after all else. */
const MOST = 1 / 3;
const MOST_PACING = 1 / 8;

/**
 * Tells the styles how much of the screen's foot the bar covers. It is measured, since its height follows
 * the size of the client's text, which no media query knows.
 */
function useFoot(pacing: boolean) {
  const bar = useRef<HTMLElement>(null);
  useEffect(() => {
    const nav = bar.current;
    if (!nav) return undefined;
    const measure = () => {
      const { classList, style } = document.documentElement;
      const high = Math.ceil(nav.getBoundingClientRect().height);
      const flows = high > window.innerHeight * (pacing ? MOST_PACING : MOST);
      classList.toggle("nav-flows", flows);
      style.setProperty("--foot", flows ? "0px" : `${high}px`);
    };
    measure();
    const watcher = new ResizeObserver(measure);
    watcher.observe(nav);
    window.addEventListener("resize", measure);
    return () => {
      watcher.disconnect();
      window.removeEventListener("resize", measure);
    };
  }, [pacing]);
  return bar;
}
