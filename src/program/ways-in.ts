/** How a plan can take in a card that its course does not have, as edits to choose from. */
import type { LibraryCard } from "../cards/library.ts";
import type { Remedy } from "../edits/edit.ts";
import type { CoursePhase } from "./course.ts";
import type { ProgramParts } from "./parts.ts";
import { statedIn } from "./unused-changes.ts";

/** So many exercises are named at most that it could stand in for. */
const MOST_OFFERED = 3;

/**
 * In the place of a card that is tied to it (alternatives, easier, harder), or besides, in one phase or in
 * all. Whoever takes one has to say why.
 */
export function waysIn(
  card: LibraryCard,
  course: readonly CoursePhase[],
  { plan, library }: ProgramParts,
): Remedy[] {
  const { id, clinical } = card.card;
  const printed = course.filter((one) => one.printed > 0);
  const { swap, leave_out } = plan.value;
  const changed = new Set([...swap, ...leave_out].map((one) => one.card));
  const near = [...library.cards.values()]
    .filter((other) => isNear(card, other) && !changed.has(other.card.id))
    .filter(({ card: other }) => printed.some((one) => statedIn(one, other.id).length > 0))
    .slice(0, MOST_OFFERED);
  const instead = near.map(({ card: other }): Remedy => {
    return {
      lead: "In the place of an exercise near it, if it is right for this client",
      sentence: `${id} (${clinical}) instead of ${other.id}.`,
      edits: [{ kind: "append", path: ["swap"], value: { card: other.id, to: id, why: null } }],
    };
  });
  const lead = "Besides, if it is right for this client";
  const phases = printed.length < 2 ? [] : printed;
  const besides = phases.map(({ phase }): Remedy => {
    const value = { card: id, phase: phase.id, why: null };
    return {
      lead,
      sentence: `Add ${id} in ${phase.id} (${phase.title}).`,
      edits: [{ kind: "append", path: ["add"], value }],
    };
  });
  const throughout: Remedy = {
    lead,
    sentence: `Add ${id} in ${printed.length < 2 ? "the course" : "all phases"}.`,
    edits: [{ kind: "append", path: ["add"], value: { card: id, why: null } }],
  };
  return [...instead, throughout, ...besides];
}

/** Whether one of two cards names the other. */
function isNear({ card: one }: LibraryCard, { card: other }: LibraryCard): boolean {
  const named = ({ alternatives, easier, harder }: LibraryCard["card"]) => [
    ...alternatives,
    ...[...easier, ...harder].map(({ to }) => to),
  ];
  return named(one).includes(other.id) || named(other).includes(one.id);
}
