/** The short version of a session for a bad day: the fewest exercises that keep what the phase is for. */
import type { Clinic } from "../clinic/schema.ts";
import { boutClock, metresPerSecond, workOfSets } from "./time.ts";
import type { Bout } from "./types.ts";

export interface ShortItem {
  readonly bout: Bout;
  /** What the exercise keeps up, such as its quality and main tissue; equal texts can stand in for each other. */
  readonly stimulus: string;
}

export interface ShortSession {
  /** In the order of the session; sets never more than planned. */
  readonly bouts: readonly { readonly key: string; readonly sets: number }[];
  /** Whole minutes with rests and changeovers, rounded up. */
  readonly minutes: number;
}

/** More exercises than this are not all tried: the first ones of a session are. */
const MOST_TRIED = 10;

/**
 * The fewest exercises with the most sets that keep as many stimuli as fit into `limitS` seconds.
 * Every dose stays as planned but for its number of sets, which only ever falls. Undefined where
 * not one set fits, or where the whole session fits already. `partOnly`: the items are not the whole
 * session, so that all of them are a shorter one.
 */
export function shortSession(
  items: readonly ShortItem[],
  limitS: number,
  changeoverS: number,
  dosing: Pick<Clinic["dosing"], "fast_part" | "last_rest">,
  partOnly = false,
): ShortSession | undefined {
  const tried = items.slice(0, MOST_TRIED);
  const whole = fitted(items, Number.POSITIVE_INFINITY, changeoverS, dosing);
  if (whole && whole.seconds <= limitS && !partOnly) return undefined;
  let best: { kept: number; size: number; sets: number; session: Fitted } | undefined;
  for (let mask = 1; mask < 2 ** tried.length; mask += 1) {
    const chosen = tried.filter((_, index) => (mask >> index) & 1);
    const session = fitted(chosen, limitS, changeoverS, dosing);
    if (!session) continue;
    const kept = new Set(chosen.map(({ stimulus }) => stimulus)).size;
    const sets = session.bouts.reduce((sum, bout) => sum + bout.sets, 0);
    const better =
      best === undefined ||
      kept > best.kept ||
      (kept === best.kept && chosen.length < best.size) ||
      (kept === best.kept && chosen.length === best.size && sets > best.sets);
    if (better) best = { kept, size: chosen.length, sets, session };
  }
  return best && { bouts: best.session.bouts, minutes: Math.ceil(best.session.seconds / 60) };
}

interface Fitted {
  readonly bouts: readonly { readonly key: string; readonly sets: number }[];
  readonly seconds: number;
}

/** The exercises with as many sets as fit, taken evenly; undefined where one set of each is too long. */
function fitted(
  items: readonly ShortItem[],
  limitS: number,
  changeoverS: number,
  dosing: Pick<Clinic["dosing"], "fast_part" | "last_rest">,
): Fitted | undefined {
  const sets = items.map(({ bout }) => bout.sets);
  for (;;) {
    const clocks = items.map(({ bout }, index) => clockOf(bout, sets[index] ?? 1, dosing));
    const seconds =
      clocks.reduce((sum, clock) => sum + clock, 0) + Math.max(0, items.length - 1) * changeoverS;
    if (seconds <= limitS) {
      const bouts = items.map(({ bout }, index) => ({ key: bout.key, sets: sets[index] ?? 1 }));
      return { bouts, seconds };
    }
    const most = Math.max(...sets);
    if (most <= 1) return undefined;
    const last = sets.lastIndexOf(most);
    sets[last] = most - 1;
  }
}

/** Seconds of a bout with only its first sets. */
export function clockOf(
  bout: Bout,
  sets: number,
  dosing: Pick<Clinic["dosing"], "fast_part" | "last_rest">,
): number {
  const { sides, restS, restRepsS } = bout;
  const work = workOfSets(bout, sets, metresPerSecond(bout.load.kmH));
  return boutClock({ sets: work, sides, restS: restS ?? 0, restRepsS: restRepsS ?? 0 }, dosing);
}
