/** What an invented client has and has shown: flags that ask for care, measures, equipment. */
import type { PlanText } from "./plan-text.ts";
import type { Random } from "./random.ts";
import type { CardText } from "./shipped.ts";

/** Flags that ask for care and rule nothing out. */
export function flagsFor(cards: readonly CardText[], random: Random): string[] {
  if (random.chance(0.5)) return [];
  const out = new Set(cards.flatMap(({ not_for = [] }) => not_for.map(({ flag }) => flag)));
  const careful = new Set(cards.flatMap(({ care = [] }) => care.map(({ flag }) => flag)));
  return random.some(
    [...careful].filter((flag) => !out.has(flag)),
    random.whole(1, 3),
  );
}

export type MassUnit = "kg" | "lb";

export function measuresFor(
  cards: readonly CardText[],
  side: PlanText["side"],
  on: string,
  unit: MassUnit,
  random: Random,
) {
  const sidesOf = (card: CardText) =>
    card.side === "each" ? (["left", "right"] as const) : (["both"] as const);
  return cards.flatMap((card): unknown[] => {
    const { kind, add } = card.load;
    if (kind === "weight" || add === "weight") {
      const load = card.region === "shoulder" ? random.whole(2, 6) : random.whole(8, 45);
      return sidesOf(card).map((tested) => ({
        test: "repetitions",
        card: card.id,
        side: tested,
        load: massIn(unit, load + (tested === side ? 0 : 1)),
        reps: random.whole(6, 10),
        on,
      }));
    }
    if (kind === "hold" || "hold" in card.dose)
      return sidesOf(card).map((tested) => ({
        test: "hold",
        card: card.id,
        side: tested,
        time: `${random.whole(20, 60)} s`,
        on,
      }));
    if (kind === "speed")
      return [{ test: "speed", card: card.id, speed: `${random.whole(14, 26)} km/h`, on }];
    return [];
  });
}

/** So many kilograms, or pounds that are about as much. */
const massIn = (unit: MassUnit, kg: number): string =>
  unit === "kg" ? `${kg} kg` : `${Math.round(kg * 2.2)} lb`;

export function equipmentFor(
  cards: readonly CardText[],
  unit: MassUnit,
  random: Random,
): unknown[] {
  const things = new Set(cards.flatMap(({ equipment = [] }) => equipment));
  const makers = cards.flatMap(({ load }) => {
    const { kind, add, with: options = [] } = load;
    if (options.length === 0 || (kind === "body" && add !== undefined && random.chance(0.2)))
      return [];
    return [random.one(options)];
  });
  if (things.has("band")) makers.push("band");
  for (const maker of makers) things.delete(maker);
  return [...things, ...[...new Set(makers)].map((have) => makerOf(have, unit, random))];
}

function makerOf(have: string, unit: MassUnit, random: Random): unknown {
  if (have === "band")
    return random.chance(0.2)
      ? have
      : { have, levels: random.one([[1, 2, 3], [1, 3], [2], [1, 2, 4, 6]]) };
  if (unit === "lb") return poundsOf(have, random);
  if (have.endsWith("machine"))
    return { have, from: "5 kg", up_to: "180 kg", steps: random.one(["2.5 kg", "5 kg", "10 kg"]) };
  if (have === "barbell")
    return {
      have,
      bar: random.one(["7.5 kg", "10 kg", "20 kg"]),
      plates: ["1.25 kg", "2.5 kg", "5 kg", "10 kg", "15 kg"],
    };
  if (have === "filled-bottle") return { have, from: "0.5 kg", up_to: "2 kg", steps: "0.5 kg" };
  if (random.chance(0.1)) return have;
  return random.one([
    { have, from: "1 kg", up_to: "40 kg", steps: random.one(["0.5 kg", "1 kg"]) },
    { have, from: "2 kg", up_to: "40 kg", steps: "4 kg" },
    { have, loads: ["1 kg", "2 kg", "3 kg", "4 kg", "6 kg", "8 kg", "10 kg", "12 kg", "16 kg"] },
    { have, loads: ["2.25 kg", "4.5 kg", "9 kg", "18 kg"] },
  ]);
}

/** What loads in pounds are made with. */
function poundsOf(have: string, random: Random): unknown {
  if (have.endsWith("machine"))
    return { have, from: "10 lb", up_to: "400 lb", steps: random.one(["5 lb", "10 lb", "20 lb"]) };
  if (have === "barbell")
    return {
      have,
      bar: random.one(["15 lb", "35 lb", "45 lb"]),
      plates: ["2.5 lb", "5 lb", "10 lb", "25 lb", "35 lb"],
    };
  if (have === "filled-bottle") return { have, from: "1 lb", up_to: "4 lb", steps: "1 lb" };
  return random.one([
    { have, from: "2 lb", up_to: "90 lb", steps: random.one(["1 lb", "2.5 lb"]) },
    {
      have,
      loads: ["2 lb", "3 lb", "5 lb", "8 lb", "10 lb", "12 lb", "15 lb", "20 lb", "25 lb", "35 lb"],
    },
  ]);
}
