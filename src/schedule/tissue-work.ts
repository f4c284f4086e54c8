/** What each week asks of a tissue, one quality at a time, as laid out: what growth is judged by. */
import type { Card } from "../cards/schema.ts";
import { sessionLoad } from "../dose/load.ts";
import type { Bout } from "../dose/types.ts";
import type { Program } from "../program/program.ts";
import { type Change, changesOf, type Work } from "./growth.ts";
import type { Schedule } from "./schedule.ts";
import { boutsIn } from "./week-loads.ts";

/** The work of one tissue in one quality. */
export interface TissueWork {
  /** The vocabulary's word for the main tissue of its cards. */
  readonly tissue: string;
  /** The quality that they train. */
  readonly trains: Card["trains"];
  /** One entry for each week of the schedule. */
  readonly weeks: readonly WeekOfWork[];
}

/** Effort × minutes and minutes at work on one side, without any rest. */
export interface WeekOfWork extends Work {
  /** Undefined in the first week with any work, and in weeks of none. */
  readonly change: Change | undefined;
  /** Its bouts, as laid out. */
  readonly bouts: readonly Bout[];
}

/**
 * The work of each main tissue in each quality, in the order of the program; none where no week has any.
 * Effort × duration is the load of a session (Foster 1998, Med Sci Sports Exerc 30:1164). Rests are left
 * out, because what tires a muscle is the time under tension together with the load (Tran and Docherty 2006,
 * J Sports Sci Med 5:707), and effort follows the load (Day et al. 2004, J Strength Cond Res 18:353; from
 * memory). Nobody has shown how a minute of one quality weighs against one of another: they are never added.
 */
export function tissueWork(program: Program, schedule: Schedule): TissueWork[] {
  const exercises = program.phases.flatMap((phase) => phase.exercises);
  const kinds = new Map<string, { tissue: string; trains: Card["trains"]; keys: Set<string> }>();
  for (const { key, card } of exercises) {
    const { trains, tissues } = card.card;
    const tissue = tissues[0] ?? "";
    const kind = `${tissue} ${trains}`;
    const keys = kinds.get(kind)?.keys ?? new Set();
    kinds.set(kind, { tissue, trains, keys: keys.add(key) });
  }
  return [...kinds.values()].flatMap(({ tissue, trains, keys }) => {
    const weeks = schedule.weeks.map((week) => {
      const bouts = boutsIn(week).filter(({ key }) => keys.has(key));
      return { number: week.number, eased: week.eased, bouts, work: workOf(whole(bouts)) };
    });
    if (weeks.every(({ bouts }) => bouts.length === 0)) return [];
    const changes = changesOf(weeks.map((week) => ({ ...week, work: workOf(evenly(week.bouts)) })));
    return [
      {
        tissue,
        trains,
        weeks: weeks.map(({ work, bouts }, at) => ({ ...work, change: changes[at], bouts })),
      },
    ];
  });
}

/** A bout with the share of it that counts. */
interface Counted {
  readonly bout: Bout;
  readonly share: number;
}

/**
 * What is done every n days is done once more in one week than in the next though nothing changes: such
 * weeks count as 7/n times each. Weeks that lost more than that count as laid out.
 */
function evenly(bouts: readonly Bout[]): Counted[] {
  return bouts.map((bout) => {
    if (!("everyDays" in bout.frequency)) return { bout, share: 1 };
    const times = 7 / bout.frequency.everyDays;
    const count = bouts.filter(({ key }) => key === bout.key).length;
    return { bout, share: Math.abs(count - times) < 1 ? times / count : 1 };
  });
}

const whole = (bouts: readonly Bout[]): Counted[] => bouts.map((bout) => ({ bout, share: 1 }));

function workOf(counted: readonly Counted[]): Work {
  const sum = (of: (bout: Bout) => number) =>
    counted.reduce((all, { bout, share }) => all + share * of(bout), 0);
  return {
    load: counted.every(({ bout: { effort } }) => effort !== undefined)
      ? sum(({ effort = 0, workS }) => sessionLoad(effort, workS / 60))
      : undefined,
    minutes: sum(({ workS }) => workS) / 60,
  };
}
