/** More than two changes, where no single one and no pair lets a program be laid out. */

import { minutesInPart } from "../../units/clock.ts";
import { usualMinutes, weeklyParts } from "./apply.ts";
import { smallestCollision } from "./collision.ts";
import { asksForTime, COSTS, STEP_MINUTES } from "./costs.ts";
import type { Change } from "./explain-types.ts";
import { type Found, shortOpenings } from "./least.ts";
import type { Lever, Priced } from "./levers.ts";
import { weekWithOnly } from "./requirements.ts";
import type { Trial } from "./trial.ts";

const MOST_CHANGES = 12;
/** Minutes by which every session is made longer at most. */
const MOST_LONGER = 90;
const COLLISION_LIMIT = 10_000;

/** The cheaper of two larger sets of changes, each shown to help; undefined where neither does. */
export function largerRemedy(trial: Trial, levers: readonly Lever[]): Found | undefined {
  const mended = collisionByCollision(trial, levers) ?? fromEverything(trial, levers);
  const sets = [mended, longerEverywhere(trial)];
  return sets
    .filter((one) => one !== undefined)
    .sort((a, b) => a.cost - b.cost)
    .at(0);
}

/**
 * Mends one collision after the other, each by the cheapest step that mends it, and at the end
 * takes back every step that was not needed after all. Not always the least.
 */
function collisionByCollision(trial: Trial, levers: readonly Lever[]): Found | undefined {
  /** How far each lever is pulled: the number of its step, −1 for not at all. */
  const pulled = levers.map(() => -1);
  const stepsOf = (at: readonly number[]): Priced[] =>
    levers.flatMap((lever, i) => lever[at[i] ?? -1] ?? []);
  const changesOf = (at: readonly number[]) => stepsOf(at).map(({ change }) => change);
  while (pulled.filter((step) => step >= 0).length < MOST_CHANGES && !trial.isSpent) {
    const result = trial.layOut(changesOf(pulled));
    if (result.status === "laid-out") return asFound(trial, levers, pulled);
    if (result.status === "malformed") return undefined;
    const core = smallestCollision(result.problem, COLLISION_LIMIT);
    const further = levers
      .flatMap((lever, i) =>
        lever.slice((pulled[i] ?? -1) + 1).map((step, more) => ({
          lever: i,
          step: (pulled[i] ?? -1) + 1 + more,
          cost: step.cost - (lever[pulled[i] ?? -1]?.cost ?? 0),
        })),
      )
      .sort((a, b) => a.cost - b.cost);
    const next = further.find(({ lever, step }) => {
      const changes = changesOf(pulled.with(lever, step));
      return trial
        .weekAlone(changes, result.week)
        .some((problem) =>
          trial.mayFit(weekWithOnly({ ...problem, given: result.problem.given ?? [] }, core)),
        );
    });
    if (next === undefined) return undefined;
    pulled[next.lever] = next.step;
  }
  return undefined;
}

/** What is left of all levers for time, or of all levers, when each that is not needed is taken back. */
function fromEverything(trial: Trial, levers: readonly Lever[]): Found | undefined {
  const far = levers.map((lever) => lever.length - 1);
  const time = far.map((step, i) =>
    levers[i]?.[0] && asksForTime(levers[i][0].change) ? step : -1,
  );
  for (const pulled of [time, far]) {
    const changes = levers.flatMap((lever, i) => lever[pulled[i] ?? -1]?.change ?? []);
    if (!trial.isSpent && trial.fits(changes)) return asFound(trial, levers, pulled);
  }
  return undefined;
}

/** The changes at their least: each step taken back, or not taken so far, where that helps as well. */
function asFound(
  trial: Trial,
  levers: readonly Lever[],
  pulled: readonly number[],
): Found | undefined {
  let least = pulled;
  const changesOf = (at: readonly number[]) =>
    levers.flatMap((lever, i) => lever[at[i] ?? -1]?.change ?? []);
  pulled.forEach((from, lever) => {
    for (let step = -1; step < from; step++) {
      const fewer = least.with(lever, step);
      if (!trial.fits(changesOf(fewer))) continue;
      least = fewer;
      break;
    }
  });
  const helping = trial.helps(changesOf(least));
  if (helping === undefined) return undefined;
  const cost = levers.reduce((sum, lever, i) => sum + (lever[least[i] ?? -1]?.cost ?? 0), 0);
  return { changes: shortOpenings(trial, helping), cost };
}

/** The same more minutes in every part of the week with free time, the least that help. */
export function longerEverywhere(trial: Trial): Found | undefined {
  const open = weeklyParts(trial.program).filter(({ part, days }) =>
    days.some((day) => usualMinutes(day)[part] > 0),
  );
  const spare = trial.program.changeoverMinutes ?? 0;
  for (
    let minutes = STEP_MINUTES;
    minutes <= MOST_LONGER && !trial.isSpent;
    minutes += STEP_MINUTES
  ) {
    const tooLong = open.some(({ part, days }) =>
      days.some(
        (day) =>
          usualMinutes(day)[part] - spare + minutes > minutesInPart(trial.program.clock, part),
      ),
    );
    if (tooLong) return undefined;
    const changes = open.map(
      ({ weekday, part }): Change => ({ kind: "more-minutes", weekday, part, minutes }),
    );
    if (!trial.canHelp(changes) || !trial.fits(changes)) continue;
    return { changes, cost: (COSTS.fiveMinutes * minutes * open.length) / STEP_MINUTES };
  }
  return undefined;
}
