/** The machine form of a program: the stable output of `plan --json`. */
import type { Bout, DosedProgram, ProvenanceStep } from "../dose/types.ts";
import type { Fault } from "../faults/fault.ts";
import { type FaultJson, faultJson } from "../faults/print.ts";
import type { Plan } from "../plan/schema.ts";
import { serialisePlan } from "../plan/serialise.ts";
import { phasesIn } from "../program/phase-weeks.ts";
import type { Program } from "../program/program.ts";
import type { Read } from "../read/source.ts";
import { weekMetres } from "../schedule/distance.ts";
import { type HowOften, howOften } from "../schedule/how-often.ts";
import type { Schedule, Session } from "../schedule/schedule.ts";
import { type TissueWork, tissueWork } from "../schedule/tissue-work.ts";
import { type WeekLoads, weekLoads } from "../schedule/week-loads.ts";
import { type DayClock, momentOf, wallText } from "../units/clock.ts";
import { inUnit, type MassUnit } from "../units/mass.ts";
import { type BoutJson, boutJson } from "./bout-json.ts";

/**
 * Grows when fields are added; a field once there keeps its name and unit.
 * 2: speed, rest between repetitions, what a change compares, loads in the clinic's unit; `trails` are
 * named by the exercise's key and no longer by its card, which can stand in two phases of one week.
 * 3: weeks away and first weeks back. 4: what could be done about a warning, as edits of the plan.
 * 5: the sign that a bout waits for. 6: how often each exercise is done in a week. 7: whether a bout
 * waits for a review. 8: what is moved in a week in the clinic's unit. 9: whether a bout is hard work, and why.
 * 10: ranges of speed, seconds for a distance, shares of the best speed.
 * 11: the distance of a week. 12: the work of each tissue in each quality.
 * 13: the pain to call from.
 */
const VERSION = 13;

/** A plan with everything computed from it. */
export interface ComputedPlan {
  readonly plan: Read<Plan>;
  readonly program: Program;
  readonly dosed: DosedProgram;
  readonly schedule: Schedule;
}

export interface PlanJson {
  readonly version: number;
  readonly plan: string;
  readonly protocol: string;
  readonly client: string;
  /** Whether a clinician has signed the plan as it is; else it is a draft. */
  readonly signed: boolean;
  readonly starts: string;
  /** The pain, 0 to 10, from which the client is to stop and call, whatever the exercise. */
  readonly pain_call: number;
  /** The plan as its author could write it, every default filled in. */
  readonly statement: Readonly<Record<string, unknown>>;
  readonly weeks: readonly WeekJson[];
  readonly warnings: readonly FaultJson[];
}

interface WeekJson {
  readonly week: number;
  readonly from: string;
  /** Whether the client is away for all of it; `sessions` is then empty. */
  readonly away: boolean;
  /** Whether it is a first week back after more than a week away, with the clinic's share of the sets. */
  readonly first_back: boolean;
  readonly phases: readonly string[];
  readonly sessions: readonly SessionJson[];
  /** How often each exercise is done in this week, by its key. */
  readonly frequency: Readonly<Record<string, FrequencyJson>>;
  readonly totals: TotalsJson;
  /** How each number of the week came about: key of the exercise, number's name, steps. */
  readonly trails: Readonly<Record<string, Readonly<Record<string, readonly ProvenanceStep[]>>>>;
}

/** What is stated, in one of three ways, and what the calendar holds. */
interface FrequencyJson {
  readonly per_week: number | null;
  readonly per_day: number | null;
  readonly every_days: number | null;
  /** Sessions of this week as laid out. */
  readonly sessions: number;
  /** Where the calendar does not hold what is stated: the least and the most sessions a week that pages say in its place. */
  readonly instead: readonly [number, number] | null;
}

interface TotalsJson {
  readonly sessions: number;
  /** Of all worked sides, at the high end of ranges. */
  readonly reps: number;
  /** Repetitions × added load, in kilograms, and in the clinic's unit. */
  readonly kg: number;
  readonly mass: number;
  readonly mass_unit: MassUnit;
  readonly minutes: number;
  /** Metres of all runs and carries, both sides; null where a run has no known length. */
  readonly distance_m: number | null;
  /** Effort × minutes (Foster 1998), with its monotony and strain where the days are not all alike. */
  readonly load: number | null;
  readonly monotony: number | null;
  readonly strain: number | null;
  /** Change from the last week before that had work, as a share: of what, and since which week. */
  readonly change: number | null;
  readonly change_of: "load" | "minutes" | null;
  readonly change_since: number | null;
  /** Of each main tissue and quality that the program has, also where this week has none of it. */
  readonly work: readonly WorkJson[];
  /** A description only, from day 28 on. */
  readonly acute_chronic: {
    readonly coupled: number;
    readonly uncoupled: number;
    readonly weighted: number;
  } | null;
}

/** Work on one side, without rests: what growth is judged by. */
interface WorkJson {
  readonly tissue: string;
  readonly trains: string;
  /** Effort × minutes; null where an exercise of the week states no effort. */
  readonly load: number | null;
  readonly minutes: number;
  /** As `change` above. */
  readonly change: number | null;
  readonly change_of: "load" | "minutes" | null;
  readonly change_since: number | null;
}

interface SessionJson {
  readonly date: string;
  readonly part: string;
  /** When it begins on the calendar and the clock, YYYY-MM-DDTHH:MM; date is the client's day. */
  readonly starts: string;
  readonly minutes: number;
  readonly bouts: readonly BoutJson[];
}

/** The whole program as plain data, with its warnings and the provenance of every number. */
export function planJson(
  made: ComputedPlan & { readonly signedOff?: unknown },
  faults: readonly Fault[],
): PlanJson {
  const { plan, program, dosed, schedule } = made;
  const loads = weekLoads(schedule, program.clinic.dosing.deviation);
  const metres = weekMetres(program, schedule);
  const work = tissueWork(program, schedule);
  const { units } = program.clinic;
  const oftenOf = howOften(dosed, schedule);
  const exercises = new Map(
    program.phases.flatMap((phase) => phase.exercises.map((one) => [one.key, one] as const)),
  );
  const boutsOf = ({ bouts }: Session) =>
    bouts.map((bout) => boutJson(bout, exercises.get(bout.key), program.flags, units));
  return {
    version: VERSION,
    plan: plan.value.id,
    protocol: program.protocol.value.id,
    client: plan.value.client.reference,
    signed: made.signedOff !== undefined,
    starts: plan.value.starts,
    pain_call: program.callLevel,
    statement: serialisePlan(plan.value),
    weeks: schedule.weeks.map((week, index) => {
      const sessions = week.days.flatMap((day) => day.sessions);
      const bouts = dosed.weeks.find((one) => one.week === week.number)?.bouts ?? [];
      return {
        week: week.number,
        from: week.days[0]?.date ?? "",
        away: week.away,
        first_back: week.eased,
        phases: phasesIn(program, week.number).map(({ id }) => id),
        sessions: sessions.map((session) => sessionJson(session, program.clock, boutsOf(session))),
        frequency: Object.fromEntries(
          bouts.map((bout) => [bout.key, frequencyJson(oftenOf(bout))]),
        ),
        totals: {
          ...totals(sessions, loads[index], units, metres[index]),
          work: work.flatMap((one) => workJson(one, index)),
        },
        trails: Object.fromEntries(
          bouts.map((bout) => [bout.key, bout.provenance]),
        ) as WeekJson["trails"],
      };
    }),
    warnings: faults.map(faultJson),
  };
}

function sessionJson(session: Session, clock: DayClock, bouts: readonly BoutJson[]): SessionJson {
  const { date, part, minutes } = session;
  return { date, part, starts: wallText(momentOf(session, clock)), minutes, bouts };
}

function frequencyJson({ frequency, sessions, instead }: HowOften): FrequencyJson {
  return {
    per_week: "perWeek" in frequency ? frequency.perWeek : null,
    per_day: "perDay" in frequency ? frequency.perDay : null,
    every_days: "everyDays" in frequency ? frequency.everyDays : null,
    sessions,
    instead: instead ? [instead.low, instead.high] : null,
  };
}

function workJson({ tissue, trains, weeks }: TissueWork, index: number): WorkJson[] {
  const week = weeks[index];
  if (!week) return [];
  const { load, minutes, change } = week;
  return [
    {
      tissue,
      trains,
      load: load === undefined ? null : round(load, 10),
      minutes: round(minutes, 100),
      change: change ? round(change.share, 1000) : null,
      change_of: change?.of ?? null,
      change_since: change?.since ?? null,
    },
  ];
}

const round = (value: number, parts: number): number => Math.round(value * parts) / parts;

/** Sums of the sessions as laid out. */
function totals(
  sessions: readonly Session[],
  loads: WeekLoads | undefined,
  unit: MassUnit,
  metres: number | undefined,
): Omit<TotalsJson, "work"> {
  const bouts = sessions.flatMap((session) => session.bouts);
  const sum = (amount: (bout: Bout) => number) =>
    bouts.reduce((all, bout) => all + amount(bout), 0);
  const kg = sum((bout) => (bout.kgTotal ?? 0) * bout.sides);
  // of loads in the unit in which they are whole, so that 10 × 25 lb are 250 lb
  const mass = sum(
    ({ load, repsTotal, sides }) => inUnit(load.kg ?? 0, unit) * (repsTotal?.high ?? 0) * sides,
  );
  return {
    sessions: sessions.length,
    reps: sum((bout) => (bout.repsTotal?.high ?? 0) * bout.sides),
    kg: Math.round(kg * 100) / 100,
    mass: Math.round(mass * 100) / 100,
    mass_unit: unit,
    minutes: sessions.reduce((all, session) => all + session.minutes, 0),
    distance_m: metres === undefined ? null : Math.round(metres),
    load: loads?.load ?? null,
    monotony: loads?.monotony ?? null,
    strain: loads?.strain ?? null,
    change: loads?.change?.share ?? null,
    change_of: loads?.change?.of ?? null,
    change_since: loads?.change?.since ?? null,
    acute_chronic: loads?.acuteChronic ?? null,
  };
}
