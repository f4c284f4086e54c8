/** The pace of one exercise as a screen uses it: what it shows, and what can be pressed. */
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from "preact/hooks";
import type { SessionBout } from "../../compose/session-model.ts";
import type { Pace } from "../device/driver.ts";
import { begin } from "../pace/run.ts";
import { segmentsOf } from "../pace/segments.ts";
import { viewOf } from "../pace/view.ts";
import { useApp } from "./app.ts";
import { endPace, openPace, type Shown, shownOf, watchPace } from "./pace-keeper.ts";

interface PaceOf {
  /** Tells the exercises of all sessions apart. */
  readonly name: string;
  readonly bout: SessionBout;
  readonly sets: number;
  readonly stored: string | undefined;
  readonly onStore: (pace: string) => void;
}

export interface PaceInUse extends Shown {
  readonly pause: () => void;
  readonly goOn: () => void;
  readonly back: () => void;
  readonly skip: () => void;
  readonly partDone: () => void;
  readonly setDone: () => void;
  /** Takes back the last tap that led elsewhere; undefined where it did not. */
  readonly undo: (() => void) | undefined;
  /** As it was before that tap, to be taken up again. */
  readonly beforeTap: () => string | undefined;
  readonly hold: () => void;
  readonly lookAway: () => void;
  readonly lookBack: () => void;
  readonly end: () => void;
}

/** Starts the exercise, or takes it up where it was left. When the screen is left it goes on out of sight. */
export function usePace({ name, bout, sets, stored, onStore }: PaceOf): PaceInUse {
  const { say, settings, data } = useApp();
  const { sound, voice, vibration } = settings;
  const segments = useMemo(() => segmentsOf(bout, sets), [bout, sets]);
  const [shown, setShown] = useState<Shown>(
    () => shownOf(name) ?? { view: viewOf(begin(segments, 0), 0), troubles: [] },
  );
  const pace = useRef<Pace | undefined>(undefined);

  // at once, not after the next frame: what can be seen can be pressed
  useLayoutEffect(() => {
    const moves: Partial<Record<string, string>> = {
      "pace.say.lift": bout.liftWord,
      "pace.say.lower": bout.lowerWord,
    };
    const job = {
      segments,
      choices: { sound, voice, vibration },
      words: (key: string | number) =>
        typeof key === "number" ? String(key) : (moves[key] ?? say(key)),
      store: onStore,
    };
    const own = openPace(name, data.language, job, stored);
    pace.current = own;
    const unwatch = watchPace(setShown);
    return () => {
      unwatch();
      pace.current = undefined;
      own.lookAway();
    };
  }, [name]);

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
    undo: pace.current?.beforeTap() === undefined ? undefined : () => pace.current?.undo(),
    beforeTap: () => pace.current?.beforeTap(),
    hold: () => pace.current?.hold(),
    lookAway: () => pace.current?.lookAway(),
    lookBack: () => pace.current?.lookBack(),
    end: () => endPace(),
  };
}
