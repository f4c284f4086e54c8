/** A steady clock for the pace, from the two that a page has, of which each can fail. */

/** What both clocks say at one instant, in milliseconds. */
export interface Reading {
  /** performance.now(): steady, but may stand still while the machine sleeps; starts anew with the page. */
  readonly perfMs: number;
  /** Date.now(): goes on through sleep and reloads, but can be set forward and back. */
  readonly wallMs: number;
  /** Whether the page was hidden at any time since the reading before. */
  readonly hidden: boolean;
}

/** A clock value with the readings that it belongs to. */
export interface Clock {
  /** Milliseconds since the clock was started; never falls. */
  readonly ms: number;
  readonly perfMs: number;
  readonly wallMs: number;
}

/** Less than this by which the wall clock leads is an adjustment or rounding; more is sleep. */
const SLEEP_MS = 1500;

/** An absence longer than this is taken for a clock that was set. Nobody rests or runs as long. */
const LONGEST_ABSENCE_MS = 4 * 3_600_000;

export function startClock({ perfMs, wallMs }: Reading): Clock {
  return { ms: 0, perfMs, wallMs };
}

/**
 * The clock at a reading. In a page that was seen all the time only performance.now() counts, so
 * that no setting of the wall clock moves the pace. In a page that was hidden the wall clock counts
 * where it leads by more than small adjustments and by no more than an absence may last: the
 * machine has slept. A wall clock set forward by less in just that time cannot be told from sleep.
 */
export function clockAt(clock: Clock, { perfMs, wallMs, hidden }: Reading): Clock {
  const perf = Math.max(0, perfMs - clock.perfMs);
  const wall = wallMs - clock.wallMs;
  const slept = hidden && wall > perf + SLEEP_MS && wall <= LONGEST_ABSENCE_MS;
  return { ms: clock.ms + (slept ? wall : perf), perfMs, wallMs };
}

/**
 * The clock of a page that was loaded anew: only the wall clock tells how long it was gone. Where
 * that cannot be (set back, or gone for hours) no time has passed.
 */
export function clockAfterReload(
  stored: Pick<Clock, "ms" | "wallMs">,
  { perfMs, wallMs }: Reading,
): Clock {
  const wall = wallMs - stored.wallMs;
  const gone = wall >= 0 && wall <= LONGEST_ABSENCE_MS ? wall : 0;
  return { ms: stored.ms + gone, perfMs, wallMs };
}
