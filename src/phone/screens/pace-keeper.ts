/** Keeps the one exercise that is paced while the client looks at other screens: its rest still ends with a sound. */
import { type PaceDevices, paceDevices } from "../device/devices.ts";
import { type Pace, type PaceJob, reopenPace, startPace, type Trouble } from "../device/driver.ts";
import type { View } from "../pace/view.ts";
import type { SessionPlace } from "../store/settings.ts";

export interface Shown {
  readonly view: View;
  readonly troubles: readonly Trouble[];
}

interface Kept {
  readonly name: string;
  readonly pace: Pace;
}

let devices: PaceDevices | undefined;
let kept: Kept | undefined;
let shown: Shown | undefined;
const watchers = new Set<(shown: Shown) => void>();

/** One set of devices serves the page for as long as it is open. */
function devicesFor(language: string): PaceDevices {
  devices ??= paceDevices(window, language);
  return devices;
}

/** Call it in the tap that leads to a pace: some browsers let a page be heard only from then on. */
export function unlockPace(language: string): void {
  const { sound, speech } = devicesFor(language);
  sound.unlock();
  speech.unlock();
}

/** Tells the exercises of all sessions apart. */
export const paceName = ({ key, at }: Pick<SessionPlace, "key" | "at">): string => `${key} ${at}`;

/** The pace of this name as it goes on, or as it was stored, or from its beginning; any other ends. */
export function openPace(
  name: string,
  language: string,
  job: Omit<PaceJob, "show">,
  stored: string | undefined,
): Pace {
  if (kept?.name === name) {
    kept.pace.lookBack();
    return kept.pace;
  }
  endPace();
  const own = devicesFor(language);
  const whole: PaceJob = {
    ...job,
    show: (view, troubles) => {
      shown = { view, troubles };
      for (const watcher of watchers) watcher(shown);
    },
  };
  const pace =
    (stored === undefined ? undefined : reopenPace(own, whole, stored)) ?? startPace(own, whole);
  kept = { name, pace };
  return pace;
}

/** Ends the pace, unless it has this name. */
export function endPace(name?: string): void {
  if (kept === undefined || kept.name === name) return;
  kept.pace.stop();
  kept = undefined;
  shown = undefined;
}

/** The pace that is kept stands still, on its screen or out of sight, until the client goes on with it. */
export function holdPace(): void {
  kept?.pace.hold();
}

/** What is shown of the pace of this name, where it is kept. */
export const shownOf = (name: string): Shown | undefined =>
  kept?.name === name ? shown : undefined;

/** Calls at every change of what is shown, until the returned function is called. */
export function watchPace(watcher: (shown: Shown) => void): () => void {
  watchers.add(watcher);
  if (shown) watcher(shown);
  return () => {
    watchers.delete(watcher);
  };
}
