/** The bar at the foot of every screen: today, the diary, the booklet, and when to stop and call. */

import { useEffect, useRef } from "preact/hooks";
import { useApp } from "./app.ts";
import type { Route } from "./route.ts";

interface NavProps {
  readonly screen: Route["screen"];
  /** Whether an exercise is paced on this screen, whose own bar needs the room. */
  readonly pacing: boolean;
}

/** Screens by the entry of the bar that they belong to. */
const BELONGS: Readonly<Record<Route["screen"], string>> = {
  today: "today",
  session: "today",
  write: "diary",
  diary: "diary",
  bring: "diary",
  booklet: "booklet",
  stop: "stop",
};

export function Nav({ screen, pacing }: NavProps) {
  const { say } = useApp();
  const bar = useFoot(pacing);
  return (
    <nav ref={bar} class="phone-nav" aria-label={say("nav.label")}>
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
