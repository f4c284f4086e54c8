/** The bar at the foot of every screen: today, the diary, the booklet, and when to stop and call. */

import { useApp } from "./app.ts";
import type { Route } from "./route.ts";

interface NavProps {
  readonly screen: Route["screen"];
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

export function Nav({ screen }: NavProps) {
  const { say } = useApp();
  return (
    <nav class="phone-nav" aria-label={say("nav.label")}>
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
