/** Whether a plan lays out the sums that the source of its protocol prints. */
import { isWithin } from "../dose/course.ts";
import type { Bout } from "../dose/types.ts";
import { Fault } from "../faults/fault.ts";
import type { Program } from "../program/program.ts";
import type { Schedule } from "./schedule.ts";
import { boutsIn } from "./week-loads.ts";

/**
 * A warning, sum-not-laid, for every printed sum that the sessions on their dates do not come to: days
 * away, events and the way back in take from it. Not of cards that the plan itself changes, with its
 * reason, nor where it prints fewer weeks of the course or extends it.
 */
export function laidSumFaults(program: Program, schedule: Schedule): Fault[] {
  const { value: plan, source } = program.plan;
  if (plan.weeks !== undefined || plan.extend.length > 0) return [];
  const all = schedule.weeks.flatMap(boutsIn);
  const place = source.at(["protocol"]);
  return Object.entries(program.protocol.value.expect).flatMap(([card, printed]) => {
    if (isChanged(program, card)) return [];
    const bouts = all.filter((bout) => bout.card === card);
    const tension = bouts.at(-1)?.tensionS ?? 0;
    const sums = [
      { printed: printed.sessions, laid: one(bouts.length), unit: "sessions" },
      { printed: printed.reps, laid: repsOf(bouts), unit: "repetitions" },
      { printed: printed.tension, laid: one(tension), unit: "seconds under tension" },
    ];
    return sums.flatMap(({ printed, laid, unit }) => {
      if (printed === undefined || isWithin(printed, laid)) return [];
      const range = laid.low === laid.high ? `${laid.low}` : `${laid.low} to ${laid.high}`;
      const message = `${card}: the source prints ${printed} ${unit}, this plan lays out ${range}.`;
      const hint =
        "Days away, events and an easier week after a break take from the course. Should it be whole, give those days another part of the day, or let the course go on later (away: then: shift).";
      return [
        new Fault("sum-not-laid", message, {
          level: "warning",
          place,
          frame: source.frame(place),
          hint,
        }),
      ];
    });
  });
}

const one = (n: number) => ({ low: n, high: n });

function repsOf(bouts: readonly Bout[]) {
  const sum = (amount: (bout: Bout) => number) =>
    bouts.reduce((all, bout) => all + amount(bout), 0);
  return {
    low: sum(({ repsTotal }) => repsTotal?.low ?? 0),
    high: sum(({ repsTotal }) => repsTotal?.high ?? 0),
  };
}

function isChanged({ plan: { value: plan } }: Program, card: string): boolean {
  const { leave_out, swap, add, redose } = plan;
  return (
    swap.some(({ to }) => to === card) ||
    [...leave_out, ...swap, ...add, ...redose].some((change) => change.card === card)
  );
}
