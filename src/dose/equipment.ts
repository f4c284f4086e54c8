/** What the client's equipment can make: the largest load at or under a target, and the next above it. */
import type { Card } from "../cards/schema.ts";
import type { PlanEquipment } from "../plan/schema.ts";
import { atMost, floorTo } from "../units/rounding.ts";

/** What one piece of equipment makes, in kilograms. */
export interface Makes {
  /** The equipment's word. */
  readonly have: string;
  /** Single loads, ascending, without 0. */
  readonly loads: readonly number[];
  /** Evenly spaced loads from the least to the most, where it has them. */
  readonly ladder?: { readonly from: number; readonly upTo: number; readonly step: number };
}

export interface Made {
  readonly kg: number;
  readonly have: string;
}

type Described = Exclude<PlanEquipment, string>;

/** No home equipment makes more; keeps the sums of a long list of plates bounded. */
const MOST_KG = 500;

/**
 * What the client has that can load this card, in the order of the card's `load.with`.
 * Loads are taken each alone: a pair of dumbbells counts only if the plan lists what both together
 * weigh. Plates come in pairs and every set of pairs can go on the bar.
 */
export function weightsFor(card: Card, equipment: readonly PlanEquipment[]): Makes[] {
  return piecesFor(card, equipment)
    .map(makesOf)
    .filter((makes) => makes.loads.length > 0 || makes.ladder !== undefined);
}

/** Band levels the client has for this card, ascending. */
export function bandsFor(card: Card, equipment: readonly PlanEquipment[]): number[] {
  const levels = piecesFor(card, equipment).flatMap((piece) => piece.levels ?? []);
  return [...new Set(levels)].sort((a, b) => a - b);
}

/** The card's own equipment words that the client has but says no load for. */
export function silentFor(card: Card, equipment: readonly PlanEquipment[]): string[] {
  return equipment.flatMap((piece) =>
    typeof piece === "string" && card.load.with.includes(piece) ? [piece] : [],
  );
}

/** The largest load at or under `target`; undefined where every load is above it. Never rounds up. */
export function atOrUnder(makes: readonly Makes[], target: number): Made | undefined {
  let best: Made | undefined;
  for (const piece of makes) {
    for (const kg of candidatesUnder(piece, target)) {
      if (best === undefined || kg > best.kg) best = { kg, have: piece.have };
    }
  }
  return best;
}

/** The smallest load above `kg`; undefined where there is none. */
export function nextAbove(makes: readonly Makes[], kg: number): Made | undefined {
  let best: Made | undefined;
  for (const piece of makes) {
    for (const above of candidatesAbove(piece, kg)) {
      if (best === undefined || above < best.kg) best = { kg: above, have: piece.have };
    }
  }
  return best;
}

/** All sums of pairs of plates on a bar, ascending, in kilograms; a bar of 0 stands for none. */
export function barLoads(bar: number, plates: readonly number[]): number[] {
  let sums = new Set([exact(bar)]);
  for (const plate of plates) {
    const more = [...sums].map((sum) => exact(sum + 2 * plate)).filter((sum) => sum <= MOST_KG);
    sums = new Set([...sums, ...more]);
  }
  return [...sums].filter((sum) => sum > 0).sort((a, b) => a - b);
}

/**
 * Without the last bits of floating-point arithmetic, yet finer than any tolerance: a load in pounds
 * has up to eleven decimals in kilograms, and must be found at or under itself.
 */
function exact(kg: number): number {
  return Math.round(kg * 1e12) / 1e12;
}

function piecesFor(card: Card, equipment: readonly PlanEquipment[]): Described[] {
  return card.load.with.flatMap((word) =>
    equipment.filter(
      (piece): piece is Described => typeof piece !== "string" && piece.have === word,
    ),
  );
}

function makesOf(piece: Described): Makes {
  const loads = new Set((piece.loads ?? []).filter((kg) => kg > 0));
  if (piece.bar !== undefined || piece.plates !== undefined) {
    for (const kg of barLoads(piece.bar ?? 0, piece.plates ?? [])) loads.add(kg);
  }
  const { from, up_to: upTo, steps } = piece;
  const single = { have: piece.have, loads: ascending(loads) };
  if (steps !== undefined && steps > 0) {
    const first = from ?? steps;
    return {
      ...single,
      ladder: { from: first, upTo: Math.min(upTo ?? MOST_KG, MOST_KG), step: steps },
    };
  }
  // Without a step only the two ends are certain.
  for (const end of [from, upTo]) if (end !== undefined && end > 0) loads.add(end);
  return { have: piece.have, loads: ascending(loads) };
}

function candidatesUnder({ loads, ladder }: Makes, target: number): number[] {
  const single = loads.filter((kg) => atMost(kg, target)).slice(-1);
  if (!ladder || ladder.upTo < ladder.from || !atMost(ladder.from, target)) return single;
  const steps = floorTo((Math.min(target, ladder.upTo) - ladder.from) / ladder.step, 1);
  const kg = exact(ladder.from + Math.max(0, steps) * ladder.step);
  return kg > 0 ? [...single, kg] : single;
}

function candidatesAbove({ loads, ladder }: Makes, kg: number): number[] {
  const single = loads.filter((load) => !atMost(load, kg)).slice(0, 1);
  if (!ladder || ladder.upTo < ladder.from) return single;
  const steps = floorTo((kg - ladder.from) / ladder.step, 1) + 1;
  const above = exact(ladder.from + Math.max(0, steps) * ladder.step);
  const next = above > 0 ? above : exact(ladder.from + ladder.step);
  return atMost(next, ladder.upTo) ? [...single, next] : single;
}

function ascending(loads: ReadonlySet<number>): number[] {
  return [...loads].sort((a, b) => a - b);
}
