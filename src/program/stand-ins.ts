/** What a plan can do about an exercise that does not fit its client, as edits to choose from. */
import type { LibraryCard } from "../cards/library.ts";
import type { Edit, Remedy } from "../edits/edit.ts";
import type { Plan } from "../plan/schema.ts";
import type { Read } from "../read/source.ts";
import type { Named } from "./changes.ts";

/** So many stand-ins are offered at most. */
const MOST_OFFERED = 3;

/** Weeks of a phase, as a plan writes them. */
interface PhaseSpan {
  readonly phase: string;
  readonly weeks: string;
}

/**
 * Other cards in the place of one, the nearest first; where there are none, doing without it. Whoever takes
 * one has to say why. None where the plan already says something else about some weeks of the card.
 *
 * @param spans where it does not fit; undefined for everywhere
 */
export function standInRemedies(
  { card }: LibraryCard,
  standIns: readonly LibraryCard[],
  named: Named,
  plan: Read<Plan>,
  spans?: readonly PhaseSpan[],
): readonly Remedy[] {
  const changed = [...plan.value.swap, ...plan.value.leave_out].some((one) => one.card === card.id);
  if (named.origin === "protocol" ? changed : spans !== undefined) return [];
  if (standIns.length > 0) {
    return standIns.slice(0, MOST_OFFERED).map(({ card: other }) => ({
      lead: "Could be done instead, if it is right for this client",
      sentence: `${other.id} (${other.clinical}) instead of ${card.id}.`,
      edits: inPlaceOf(card.id, other.id, named, spans),
    }));
  }
  if (named.origin !== "protocol") return [];
  return [
    {
      lead: "No card of the library could stand in",
      sentence: `Leave out ${card.id} (${card.clinical}).`,
      edits: everywhere(spans).map((span) => appended("leave_out", { card: card.id, ...span })),
    },
  ];
}

/**
 * What the client may have though the plan does not say so: one way for each thing of which one would do;
 * what else is missing comes with it. `lacks`: things, those of which one would do joined by |.
 */
export function ownedWays(lacks: readonly string[], name: string): Remedy[] {
  const things = lacks.map((one) => one.split("|"));
  const choice = things.find((one) => one.length > 1) ?? things[0] ?? [];
  const others = things.filter((one) => one !== choice).flatMap(([one]) => one ?? []);
  return choice.map((thing) => ({
    lead: `If ${name} has it, or gets it`,
    sentence: `Write ${[thing, ...others].join(" and ")} under equipment.`,
    edits: [thing, ...others].map((value) => ({ kind: "append", path: ["equipment"], value })),
  }));
}

function inPlaceOf(
  card: string,
  other: string,
  { origin, path }: Named,
  spans: readonly PhaseSpan[] | undefined,
): readonly Edit[] {
  if (origin === "protocol") {
    return everywhere(spans).map((span) => appended("swap", { card, to: other, ...span }));
  }
  return [
    { kind: "set", path, value: other },
    { kind: "set", path: [...path.slice(0, -1), "why"], value: null },
  ];
}

const everywhere = (spans: readonly PhaseSpan[] | undefined): readonly (PhaseSpan | undefined)[] =>
  spans ?? [undefined];

const appended = (list: string, entry: Readonly<Record<string, string>>): Edit => {
  return { kind: "append", path: [list], value: { ...entry, why: null } };
};
