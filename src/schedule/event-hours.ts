/** How long hard work waits after an event of the client's week: stated, or from what its tissues need. */
import type { Plan } from "../plan/schema.ts";

export type Event = Plan["week"]["events"][number];

/**
 * A hard event whose plan does not say how long it is kept clear afterwards is followed by so many hours
 * without hard work that loads its tissues and needs at least as long itself. Common practice.
 */
const HOURS_AFTER = 24;

/** What the layout calls an event of the plan. */
export const eventId = (at: number): string => `event-${at}`;

export interface ClearAfter {
  readonly hours: number;
  /** Whether the plan does not state it. */
  readonly assumed: boolean;
}

/** How long hard work waits after an event; undefined where it does not. */
export function clearAfter(event: Event): ClearAfter | undefined {
  if (event.clear_after !== undefined) return { hours: event.clear_after / 3600, assumed: false };
  return event.hard && event.tissues.length > 0 ? { hours: HOURS_AFTER, assumed: true } : undefined;
}
