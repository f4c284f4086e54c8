/**
 * Random plans: an error, or each exercise is done as often as it is asked for, less what days away and
 * events take, and what a page says of how often holds in the weeks of which it says it.
 * FREQUENCY_PLANS says how many.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type MadeProgram, makeBooklet } from "../../src/booklet.ts";
import { planJson } from "../../src/plan-text/json.ts";
import { type Made, smallCourse } from "../support/small-course.ts";
import { DAY, english } from "../support/world.ts";
import { addDays, daysBetween, WEEKDAY_IDS, weekdayOf } from "../surfaces/calendar-days.ts";
import { readHow } from "../surfaces/read/how-words.ts";

const PLANS = Number(process.env.FREQUENCY_PLANS ?? 60);
const START = "2027-01-04";
/** What a bout takes: three sets of ten at six seconds, and two rests. */
const BOUT_MINUTES = 7;

type Part = "morning" | "evening";
type Often = { readonly every: number } | { readonly week: number } | { readonly day: number };

interface Event {
  readonly part: Part;
  /** A weekday, or a day of the course. */
  readonly day: number;
  readonly weekly: boolean;
}

interface Client {
  readonly weeks: number;
  readonly often: Often;
  /** Minutes of each weekday's morning and evening; 0 is not free. */
  readonly free: readonly (readonly [number, number])[];
  /** First day and length of each time away. */
  readonly away: readonly (readonly [number, number])[];
  readonly events: readonly Event[];
}

const minutes = fc.oneof(
  { weight: 5, arbitrary: fc.constant(45) },
  { weight: 1, arbitrary: fc.constantFrom(0, 5) },
);
const clients: fc.Arbitrary<Client> = fc.record({
  weeks: fc.integer({ min: 1, max: 4 }),
  often: fc.oneof(
    fc.record({ every: fc.integer({ min: 2, max: 7 }) }),
    fc.record({ week: fc.integer({ min: 1, max: 5 }) }),
    fc.record({ day: fc.integer({ min: 1, max: 2 }) }),
  ),
  free: fc.array(fc.tuple(minutes, minutes), { minLength: 7, maxLength: 7 }),
  away: fc.array(fc.tuple(fc.nat(27), fc.integer({ min: 1, max: 9 })), { maxLength: 2 }),
  events: fc.array(
    fc.record({
      part: fc.constantFrom<Part>("morning", "evening"),
      day: fc.nat(27),
      weekly: fc.boolean(),
    }),
    { maxLength: 3 },
  ),
});

/** The plan as its author would write it. */
function courseOf({ weeks, often, free, away, events }: Client) {
  const says =
    "every" in often
      ? `every: ${often.every} days`
      : "week" in often
        ? `per_week: ${often.week}`
        : `per_day: ${often.day}`;
  const parts = free.map(([morning, evening], day) => {
    const named = [
      ...(morning > 0 ? [`morning: ${morning} min`] : []),
      ...(evening > 0 ? [`evening: ${evening} min`] : []),
    ];
    return named.length === 0 ? [] : [`${WEEKDAY_IDS[day]}: { ${named.join(", ")} }`];
  });
  const gone = away.map(
    ([from, days]) => `{ from: ${addDays(START, from)}, to: ${addDays(START, from + days - 1)} }`,
  );
  const taken = events.map(({ part, day, weekly }) => {
    const when = weekly ? `day: ${WEEKDAY_IDS[day % 7]}` : `on: [${addDays(START, day)}]`;
    return `{ what: Choir, ${when}, part: ${part}, blocks: true }`;
  });
  return {
    weeks,
    says: `dose: { sets: 3, reps: 10, tempo: 3-0-3-0, rest: 2 min, ${says} }`,
    week: `{ free: { ${parts.flat().join(", ")} }, away: [${gone.join(", ")}], events: [${taken.join(", ")}] }`,
  };
}

/** The client's days as the plan's text has them. */
function daysOf({ free, away, events }: Client) {
  const usual = (date: string) => free[weekdayOf(date)] ?? [0, 0];
  const isAway = (date: string) => {
    const day = daysBetween(START, date);
    return away.some(([from, length]) => day >= from && day < from + length);
  };
  const left = (date: string) =>
    usual(date).map((all, at) => {
      const part = at === 0 ? "morning" : "evening";
      const isTaken = events.some(
        (event) =>
          event.part === part &&
          (event.weekly ? event.day % 7 === weekdayOf(date) : addDays(START, event.day) === date),
      );
      return isAway(date) || isTaken ? 0 : all;
    });
  const most = (all: readonly number[]) => Math.max(...all);
  return {
    isOpen: (date: string) => most(left(date)) >= BOUT_MINUTES,
    /** Whether the usual week has time for a bout on it, and this date has not. */
    isTaken: (date: string, atLeast: number) =>
      most(usual(date)) >= atLeast && most(left(date)) < atLeast,
  };
}

interface Week {
  readonly from: string;
  /** Of each session. */
  readonly dates: readonly string[];
}

/** What is wrong with the sessions of weeks one after the other, by what the plan asks and takes. */
function wrongIn(weeks: readonly Week[], client: Client): string[] {
  const { often } = client;
  const { isOpen, isTaken } = daysOf(client);
  const days = weeks.flatMap(({ from }) =>
    Array.from({ length: 7 }, (_, day) => addDays(from, day)),
  );
  const dates = weeks.flatMap((week) => week.dates);
  if ("week" in often) {
    return weeks.flatMap(({ from, dates: { length } }) =>
      length === often.week ? [] : [`${length} in the week from ${from}`],
    );
  }
  if ("day" in often) {
    return days.flatMap((day) => {
      const count = dates.filter((date) => date === day).length;
      const wanted = isTaken(day, 1) ? 0 : often.day;
      return count === wanted ? [] : [`${count} on ${day}`];
    });
  }
  // it may begin on any of the first days, and waits for an open day where the one it is due on is taken
  const begins = Array.from({ length: often.every }, (_, offset) => {
    const wanted: string[] = [];
    let due = offset;
    let waits = false;
    days.forEach((day, at) => {
      if (at < due) return;
      if (waits ? !isOpen(day) : isTaken(day, BOUT_MINUTES)) waits = true;
      else {
        wanted.push(day);
        waits = false;
        due = at + often.every;
      }
    });
    return wanted.join();
  });
  return begins.includes(dates.join()) ? [] : [`${dates.join()} is none of ${begins.join(" / ")}`];
}

/** What is wrong with what a page says of a week. */
function unheld(says: string, { from, dates }: Week, before: string | undefined): boolean {
  if (says === "none") return dates.length > 0;
  const free = /, (\d+)(?: to (\d+))? when free$/.exec(says);
  if (free) {
    const [, low, high = low] = free;
    return dates.length < Number(low) || dates.length > Number(high);
  }
  const [n = "", , unit] = says.split(" ");
  if (unit === "week") return dates.length !== Number(n);
  if (unit === "day") return dates.length !== 7 * Number(n);
  const every = Number(says.replace("every ", ""));
  const known = [...(before === undefined ? [] : [before]), ...dates];
  const end = addDays(from, 6);
  return known.some((date, at) => {
    const due = addDays(date, every);
    return due >= from && due <= end && known[at + 1] !== due;
  });
}

/** By week, what the phase page says of how often. */
function saidByWeek({ made, workspace }: Pick<Made, "workspace"> & { made: MadeProgram }) {
  const booklet = makeBooklet(made, workspace, english(), DAY);
  const rows = booklet.phases.flatMap((phase) => phase.rows.flatMap(({ doses }) => doses));
  return new Map(
    rows.flatMap(({ weeks, often }) => {
      const [first = 0, last = first] = (weeks.match(/\d+/g) ?? []).map(Number);
      const says = readHow(often, "en", { lift: "up", lower: "down" }).often ?? "";
      return Array.from({ length: last - first + 1 }, (_, at) => [first + at, says] as const);
    }),
  );
}

/** Weeks of which the page says what the calendar does not hold, or says nothing. */
function wrongPages(
  weeks: readonly (Week & { readonly week: number; readonly away: boolean })[],
  said: ReadonlyMap<number, string>,
): unknown[] {
  return weeks.flatMap((week, at) => {
    const says = said.get(week.week);
    const isTrue =
      says === undefined
        ? week.away && week.dates.length === 0
        : !week.away && !unheld(says, week, weeks[at - 1]?.dates.at(-1));
    return isTrue ? [] : [{ says, ...week }];
  });
}

describe("how often, over random plans", () => {
  const seen = { made: 0, instead: 0, stopped: 0 };

  test(`${PLANS} of them`, { timeout: 3_600_000 }, () => {
    fc.assert(
      fc.property(clients, (client) => {
        const { made, workspace, all } = smallCourse(courseOf(client));
        if (!made) {
          seen.stopped += 1;
          const codes = all.filter(({ level }) => level === "error").map(({ code }) => code);
          expect(["week-impossible", "week-unknown", "weeks-left-out"]).toContain(codes[0]);
          return;
        }
        seen.made += 1;
        const weeks = planJson(made, []).weeks.map(({ week, from, away, sessions }) => {
          const dates = sessions.flatMap(({ date, bouts }) => bouts.map(() => date));
          return { week, from, away, dates };
        });
        const runs: Week[][] = [[]];
        for (const week of weeks) {
          if (week.away) runs.push([]);
          else runs.at(-1)?.push(week);
        }
        for (const run of runs) expect(wrongIn(run, client)).toEqual([]);

        const said = saidByWeek({ made, workspace });
        if ([...said.values()].some((one) => /none|free/.test(one))) seen.instead += 1;
        expect(wrongPages(weeks, said)).toEqual([]);
      }),
      { numRuns: PLANS, seed: 31 },
    );
    // the test looked at all three kinds
    expect(seen.made).toBeGreaterThan(PLANS / 5);
    expect(seen.instead).toBeGreaterThan(PLANS / 20);
    expect(seen.stopped).toBeGreaterThan(PLANS / 20);
  });
});
