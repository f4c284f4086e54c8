/** Names of the places in a booklet that links lead to. */
import type { LibraryCard } from "../cards/library.ts";
import type { ProgramPhase } from "../program/program.ts";

export const phaseAnchor = ({ id }: ProgramPhase): string => `phase-${id}`;

export const exerciseAnchor = ({ card }: LibraryCard): string => `exercise-${card.id}`;

/** Where an exercise stands that is only done in place of another. */
export const easierAnchor = ({ card }: LibraryCard): string => `easier-${card.id}`;
