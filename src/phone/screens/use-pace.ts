/** The pace of one exercise as a screen uses it: what it shows, and what can be pressed. */
import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import type { SessionBout } from "../../compose/session-model.ts";
import { type PaceDevices, paceDevices } from "../device/devices.ts";
import { type Pace, type PaceJob, reopenPace, startPace, type Trouble } from "../device/driver.ts";
import { begin } from "../pace/run.ts";
import { segmentsOf } from "../pace/segments.ts";
import { type View, viewOf } from "../pace/view.ts";
import { useApp } from "./app.ts";

interface PaceOf {
  readonly bout: SessionBout;
  readonly sets: number;
  readonly stored: string | undefined;
  readonly onStore: (pace: string) => void;
}

export interface PaceInUse {
  readonly view: View;
  readonly troubles: readonly Trouble[];
  readonly pause: () => void;
  readonly goOn: () => void;
  readonly back: () => void;
  readonly skip: () => void;
  readonly partDone: () => void;
  readonly setDone: () => void;
}

let devices: PaceDevices | undefined;

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

/** Starts the exercise, or takes it up where it was left; ends with the screen. */
export function usePace({ bout, sets, stored, onStore }: PaceOf): PaceInUse {
  const { say, settings, data } = useApp();
  const { sound, voice, vibration } = settings;
  const segments = useMemo(() => segmentsOf(bout, sets), [bout, sets]);
  const [shown, setShown] = useState<{ view: View; troubles: readonly Trouble[] }>(() => ({
    view: viewOf(begin(segments, 0), 0),
    troubles: [],
  }));
  const pace = useRef<Pace | undefined>(undefined);
  const store = useRef(onStore);
  store.current = onStore;
  // what was stored matters at the start alone: later it is what this screen has stored itself
  const first = useRef(stored);

  useEffect(() => {
    const own = devicesFor(data.language);
    const moves: Partial<Record<string, string>> = {
      "pace.say.lift": bout.liftWord,
      "pace.say.lower": bout.lowerWord,
    };
    const job: PaceJob = {
      segments,
      choices: { sound, voice, vibration },
      words: (key) => (typeof key === "number" ? String(key) : (moves[key] ?? say(key))),
      show: (view, troubles) => setShown({ view, troubles }),
      store: (text) => store.current(text),
    };
    const again = first.current === undefined ? undefined : reopenPace(own, job, first.current);
    const running = again ?? startPace(own, job);
    pace.current = running;
    return () => {
      pace.current = undefined;
      running.stop();
    };
  }, [segments]);

  const chosen = useRef({ sound, voice, vibration });
  useEffect(() => {
    const before = chosen.current;
    if (before.sound === sound && before.voice === voice && before.vibration === vibration) return;
    chosen.current = { sound, voice, vibration };
    pace.current?.choose(chosen.current);
  }, [sound, voice, vibration]);

  return {
    ...shown,
    pause: () => pace.current?.pause(),
    goOn: () => pace.current?.resume(),
    back: () => pace.current?.back(),
    skip: () => pace.current?.skip(),
    partDone: () => pace.current?.partDone(),
    setDone: () => pace.current?.setDone(),
  };
}
