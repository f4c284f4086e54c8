/** The client's own events on their dates, and dates of the plan that the course does not reach. */
import { Fault } from "../faults/fault.ts";
import type { Plan } from "../plan/schema.ts";
import { isOn } from "../program/free-time.ts";
import type { Program } from "../program/program.ts";
import type { Path } from "../read/source.ts";
import { DAY_MINUTES, minutesBetween, momentOf } from "../units/clock.ts";
import { addDays } from "../units/dates.ts";
import type { DatedEvent } from "../week/program/program-types.ts";
import { clearAfter, type Event, eventId } from "./event-hours.ts";

const clearAfterHours = (event: Event): Pick<DatedEvent, "clearAfterHours"> => {
  const after = clearAfter(event);
  return after === undefined ? {} : { clearAfterHours: after.hours };
};

/** Events on their dates, from a week before the program to a week after it. */
export function datedEvents(program: Program): DatedEvent[] {
  const plan = program.plan.value;
  const first = addDays(plan.starts, -7);
  const days = program.weeks * 7 + 14;
  return plan.week.events.flatMap((event, at) => {
    const dates =
      event.on ??
      Array.from({ length: days }, (_, index) => addDays(first, index)).filter((date) =>
        isOn(event, date),
      );
    return dates
      .filter((date) => date >= first && date < addDays(first, days))
      .map((date) => ({
        id: eventId(at),
        name: event.what,
        date,
        part: event.part,
        hard: event.hard,
        groups: event.tissues,
        origin: program.plan.source.at(["week", "events", at]),
        ...(event.clear_before === undefined
          ? {}
          : { clearBeforeHours: event.clear_before / 3600 }),
        ...clearAfterHours(event),
        ...(event.clear_of === undefined ? {} : { statesWork: true }),
      }));
  });
}

/**
 * A warning for every date of the plan that the course does not reach: a wrong year is the usual slip.
 * An event just before or after the course counts where it keeps hours clear inside it.
 */
export function datesOutside(program: Program): Fault[] {
  const { source, value: plan } = program.plan;
  const first = plan.starts;
  const last = addDays(first, 7 * program.weeks - 1);
  const warning = (path: Path, message: string) => {
    const place = source.at(path);
    return new Fault("date-outside", `${message} The program lasts from ${first} to ${last}.`, {
      level: "warning",
      place,
      frame: source.frame(place),
      hint: "Check the year, or take the date out.",
    });
  };
  const away = plan.week.away.flatMap((one, at) => {
    const { from, to } = typeof one === "string" ? { from: one, to: one } : one;
    if (to < from || (to >= first && from <= last)) return [];
    const days = from === to ? `The day away ${from} lies` : `The days away ${from} to ${to} lie`;
    return [warning(["week", "away", at], `${days} outside the program.`)];
  });
  const begins = { date: first, minutes: 0 };
  const ends = { date: last, minutes: DAY_MINUTES };
  const events = plan.week.events.flatMap(({ what, part, on = [], ...event }, at) =>
    on.flatMap((date, index) => {
      const when = momentOf({ date, part }, program.clock);
      const clearBefore = (event.clear_before ?? 0) / 60;
      const clearAfter = (event.clear_after ?? 0) / 60;
      const reaches =
        minutesBetween(begins, when) + clearAfter > 0 && minutesBetween(ends, when) < clearBefore;
      if ((date >= first && date <= last) || reaches) return [];
      const path = ["week", "events", at, "on", index];
      return [warning(path, `${what} on ${date} lies outside the program.`)];
    }),
  );
  return [...away, ...events, ...spansOutside(plan, first, last, warning)];
}

/** Events, other weeks and a rota of which no day lies in the program. */
function spansOutside(
  { week }: Plan,
  first: string,
  last: string,
  warning: (path: Path, message: string) => Fault,
): Fault[] {
  const outside = (
    { from, until }: { readonly from?: string | undefined; readonly until?: string | undefined },
    path: Path,
    what: string,
  ): Fault[] => {
    if (from !== undefined && from > last) return [warning([...path, "from"], `${what} ${from}.`)];
    if (until === undefined || until >= first) return [];
    return [warning([...path, "until"], `${what} ${until}, its last day.`)];
  };
  return [
    ...week.events.flatMap((event, at) =>
      outside(event, ["week", "events", at], `${event.what} lies outside the program:`),
    ),
    ...week.other_weeks.flatMap((span, at) =>
      outside(span, ["week", "other_weeks", at], "These other weeks lie outside the program:"),
    ),
    ...(week.rota
      ? outside(week.rota, ["week", "rota"], "The rota lies outside the program:")
      : []),
  ];
}
