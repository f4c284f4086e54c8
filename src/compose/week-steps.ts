/** How what is planned changes from week to week, for the steps on the cover. */
import type { Composing } from "./composing.ts";
import type { WeekSteps } from "./model.ts";

/**
 * The weights where they change, each week by the heaviest of their weeks, as a mean over exercises;
 * else the minutes of each week's sessions. Undefined where neither changes: a level course has no steps.
 */
export function weekSteps({
  dosed,
  schedule,
}: Pick<Composing, "dosed" | "schedule">): WeekSteps | undefined {
  const most = heaviest(dosed.weeks.flatMap(({ bouts }) => bouts));
  const loads = dosed.weeks.map(({ bouts }) => {
    const shares = bouts.flatMap(({ card, load: { kg } }) => {
      const top = most.get(card);
      return kg === undefined || top === undefined ? [] : [kg / top];
    });
    return shares.length === 0 ? 0 : shares.reduce((sum, share) => sum + share, 0) / shares.length;
  });
  if (most.size > 0) return { of: "weights", heights: loads };
  const minutes = schedule.weeks.map(({ days }) =>
    days.flatMap(({ sessions }) => sessions).reduce((sum, session) => sum + session.minutes, 0),
  );
  const longest = Math.max(...minutes);
  if (new Set(minutes).size < 2) return undefined;
  return { of: "minutes", heights: minutes.map((one) => one / longest) };
}

/** The most kilograms of each card whose weight changes over the weeks. */
function heaviest(
  bouts: readonly { readonly card: string; readonly load: { readonly kg?: number | undefined } }[],
): ReadonlyMap<string, number> {
  const loads = new Map<string, Set<number>>();
  for (const { card, load } of bouts) {
    if (load.kg === undefined) continue;
    loads.set(card, (loads.get(card) ?? new Set()).add(load.kg));
  }
  return new Map(
    [...loads].flatMap(([card, kilos]) =>
      kilos.size < 2 ? [] : [[card, Math.max(...kilos)] as const],
    ),
  );
}
