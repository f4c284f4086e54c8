/** A card may stand once in a phase: two doses of it would share one diary, one page and one recovery. */
import { Fault } from "../faults/fault.ts";
import type { Source } from "../read/source.ts";
import { weekSpanText } from "../units/week-span.ts";
import type { Named } from "./changes.ts";
import type { Placed } from "./fit.ts";

/** A fault for each exercise of a phase whose card the phase has already; the protocol's own comes first. */
export function namedTwice(list: readonly Named[], phase: string): Fault[] {
  const own = list.filter(({ origin }) => origin === "protocol");
  const first = (card: string) => [...own, ...list].find((named) => named.card === card);
  return list
    .filter((named) => first(named.card) !== named)
    .map(({ card, source, path, origin }) =>
      twice(source, path, `“${phase}” has ${card} already.`, HINTS[origin]),
    );
}

const HINTS = {
  protocol: "Give its doses in one entry, by weeks.",
  swap: "Swap for another card, or leave this exercise out and change the dose of the other (redose).",
  add: "Change its dose with redose instead, or name the phase that does not have it (phase: …).",
} as const;

/** A fault for each card that the plan brings into a week twice, by two phases that hold in it. */
export function twiceInAWeek(
  placed: readonly Placed[],
  phases: readonly { readonly id: string; readonly title: string }[],
): Fault[] {
  const titleOf = (id: string) => phases.find((phase) => phase.id === id)?.title ?? id;
  return placed.flatMap((one, at) =>
    placed.slice(0, at).flatMap((other) => {
      if (other.named.card !== one.named.card || other.phase === one.phase) return [];
      const [by] = [one, other].filter(({ named }) => named.origin !== "protocol");
      const before = [...other.weeks.values()];
      const weeks = [...one.weeks.values()].filter((week) => before.includes(week));
      const [first] = weeks;
      if (by === undefined || first === undefined) return [];
      const span = weekSpanText({ first, last: weeks.at(-1) ?? first });
      const said = `“${titleOf(other.phase)}” and “${titleOf(one.phase)}” would both have ${one.named.card}, with a dose each, in ${weeks.length === 1 ? "week" : "weeks"} ${span}.`;
      const hint = "Give it to one of the two in these weeks: phase: …, weeks: … .";
      return [twice(by.named.source, by.named.path, said, hint)];
    }),
  );
}

function twice(source: Source, path: Named["path"], message: string, hint: string): Fault {
  const place = source.at(path);
  return new Fault("card-twice", message, { place, frame: source.frame(place), hint });
}
