/** Which work is kept clear of the events of the client's week, and which events are near each other. */
import { Fault } from "../faults/fault.ts";
import { hardness } from "../program/hardness.ts";
import type { Program, ProgramExercise } from "../program/program.ts";
import { minutesBetween } from "../units/clock.ts";
import { addDays } from "../units/dates.ts";
import { datedEvents } from "./client-days.ts";
import { clearAfter, type Event, eventId } from "./event-hours.ts";

/** Ids of the events that a bout of this effort is kept clear of, before them and after them. */
export function keptClearOf(
  { card: { card } }: ProgramExercise,
  effort: number | undefined,
  { plan }: Program,
): { readonly before: readonly string[]; readonly after: readonly string[] } {
  const { hard } = hardness(card, effort);
  const ids = (isMeant: (event: Event) => boolean) =>
    plan.value.week.events.flatMap((event, at) => (isMeant(event) ? [eventId(at)] : []));
  const meant = ({ tissues, clear_of: of }: Event) => {
    const loads = tissues.length === 0 || tissues.some((tissue) => card.tissues.includes(tissue));
    const kind = of === undefined ? hard : of.includes(card.trains);
    return (kind && loads) || of?.includes(card.id) === true;
  };
  return {
    before: ids(meant),
    after: ids((event) => {
      const after = clearAfter(event);
      const rests = after?.assumed !== true || card.recovery >= after.hours * 3600;
      return meant(event) && rests;
    }),
  };
}

/**
 * A warning for each two hard events on one tissue of which the later lies in the course, where nothing hard
 * should: advice only.
 */
export function eventsNear(program: Program): Fault[] {
  const { source, value: plan } = program.plan;
  const hard = datedEvents(program).filter((one) => one.hard && one.groups.length > 0);
  const end = addDays(plan.starts, 7 * program.weeks);
  const told = new Map<string, Fault>();
  for (const one of hard) {
    for (const next of hard.filter(({ date }) => date >= plan.starts && date < end)) {
      const shared = one.groups.filter((group) => next.groups.includes(group));
      const minutes = minutesBetween(momentOfEvent(one), momentOfEvent(next));
      const hours = Math.max(one.clearAfterHours ?? 0, next.clearBeforeHours ?? 0);
      const pair = `${one.id} ${next.id}`;
      if (shared.length === 0 || minutes <= 0 || minutes >= 60 * hours || told.has(pair)) continue;
      const at = plan.week.events.findIndex((_, index) => eventId(index) === next.id);
      const place = source.at(["week", "events", at]);
      told.set(
        pair,
        new Fault(
          "events-near",
          `${next.name} on ${next.date} comes ${Math.round(minutes / 60)} hours after ${one.name}; ${hours} are to be kept clear of hard work on the same tissue.`,
          {
            level: "warning",
            place,
            frame: source.frame(place),
            hint: "Talk it over with the client: the program cannot move their own events.",
          },
        ),
      );
    }
  }
  return [...told.values()];

  function momentOfEvent({ date, part }: (typeof hard)[number]) {
    return { date, minutes: program.clock[part] };
  }
}

/** An error for each name under clear_of that is no quality and no card of this client: wrong-value. */
export function unknownClearOf(program: Program, qualities: readonly string[]): Fault[] {
  const { source, value: plan } = program.plan;
  const cards = program.phases.flatMap((phase) => phase.exercises.map(({ card }) => card.card.id));
  return plan.week.events.flatMap(({ clear_of: of = [] }, at) =>
    of.flatMap((name, index) => {
      if (qualities.includes(name) || cards.includes(name)) return [];
      const place = source.at(["week", "events", at, "clear_of", index]);
      return [
        new Fault("wrong-value", `${name} is no quality, and no card of this program.`, {
          place,
          frame: source.frame(place),
          hint: `Qualities: ${qualities.join(", ")}.`,
        }),
      ];
    }),
  );
}
