/** What an invented client does differently from the protocol: left out, swapped, added, another dose. */
import type { Random } from "./random.ts";
import { CARDS, cardOf, type DoseText, dosesOf, type ProtocolText } from "./shipped.ts";

const WHY = "Agreed with the client.";

export function changesOf(protocol: ProtocolText, random: Random) {
  const named = [
    ...new Set(protocol.phases.flatMap(({ exercises }) => exercises.map(({ card }) => card))),
  ];
  const tied = new Set(
    protocol.phases.flatMap(({ exercises }) =>
      exercises.flatMap((one) => (one.same_session_as ? [one.card, one.same_session_as] : [])),
    ),
  );
  const free = named.filter((card) => !tied.has(card));
  const leaveOut =
    named.length > 1 && free.length > 0 && random.chance(0.25) ? [random.one(free)] : [];
  const kept = free.filter((card) => !leaveOut.includes(card));
  const others = (card: string): string[] => {
    const { alternatives = [], easier = [], harder = [] } = cardOf(card);
    return [...alternatives, ...[...easier, ...harder].map(({ to }) => to)].filter(
      (to) => !named.includes(to) && CARDS.has(to),
    );
  };
  const swapped = kept.filter((card) => others(card).length > 0);
  const swap =
    swapped.length > 0 && random.chance(0.25)
      ? [random.one(swapped)].map((card) => ({ card, to: random.one(others(card)), why: WHY }))
      : [];
  const region = cardOf(named[0] ?? "").region;
  const taken = new Set([...named, ...swap.map(({ to }) => to)]);
  const near = [...CARDS.values()].filter(
    (card) => card.region === region && !taken.has(card.id) && card.load.kind !== "speed",
  );
  const add =
    near.length > 0 && random.chance(0.25)
      ? [random.one(near)].map(({ id }) => ({
          card: id,
          ...(random.chance(0.5) && { phase: random.one(protocol.phases).id }),
          why: WHY,
          dose: random.chance(0.4) ? { per_week: random.whole(1, 3) } : {},
        }))
      : [];
  const left = named.filter(
    (card) => !leaveOut.includes(card) && !swap.some((one) => one.card === card),
  );
  const redose =
    left.length > 0 && random.chance(0.35)
      ? random
          .some(left, random.chance(0.3) ? 2 : 1)
          .map((card) => ({ card, why: WHY, dose: otherDose(card, protocol, random) }))
      : [];
  const bands = left.filter(
    (card) => cardOf(card).load.kind === "band" && !redose.some((one) => one.card === card),
  );
  const levels =
    bands.length > 0 && random.chance(0.5)
      ? [random.one(bands)].map((card) => ({
          card,
          why: WHY,
          dose: { target: `band ${random.whole(1, 4)}` },
        }))
      : [];
  const cards = [...left, ...swap.map(({ to }) => to), ...add.map(({ card }) => card)].map(cardOf);
  return {
    leaveOut: leaveOut.map((card) => ({ card, why: WHY })),
    swap,
    add,
    redose: [...redose, ...levels],
    cards,
  };
}

/** A dose that differs, of the shape that the protocol states. */
export function otherDose(
  card: string,
  protocol: Pick<ProtocolText, "phases">,
  random: Random,
): DoseText {
  const stated = protocol.phases.flatMap(({ exercises }) =>
    exercises.filter((one) => one.card === card).flatMap((one) => dosesOf(one)),
  );
  const own = cardOf(card).dose;
  const counted =
    stated.some((dose) => "reps" in dose) ||
    (!stated.some((dose) => "time" in dose || "distance" in dose || "hold" in dose) &&
      "reps" in own);
  const holds = stated.some((dose) => "hold" in dose) || "hold" in own;
  const choices: DoseText[] = [
    { rest: random.one(["45 s", "90 s", "2 min", "2.5 min"]) },
    { effort: random.one([3, 4.5, 6, 7]) },
    ...(counted && !holds
      ? [
          { sets: 3, reps: [12, 10, 8] },
          { sets: 2, reps: "6-8" },
          { sets: 1, reps: random.whole(1, 20) },
          { tempo: "2-1-X-0" },
        ]
      : []),
    ...(counted && !holds ? [{ time: "60 s" }, { sets: 3, time: "90 s" }] : []),
    ...(holds ? [{ hold: "7 s" }, { hold: "1 min" }] : []),
    ...(holds && counted
      ? [
          { sets: 3, reps: [5, 3, 2] },
          { sets: 2, reps: "4-6" },
        ]
      : []),
    ...(counted && !holds
      ? [
          { sets: 3, distance: "20 m" },
          { sets: 2, reps: 5, distance: "80 m" },
          { sets: 3, distance: "40 m", target: "75-80 % of top speed" },
          { sets: 2, distance: "400 m", target: "8-9 km/h" },
          { turns: { work: "2 min", easy: "1 min", times: 3 }, target: "6:00-6:30 min/km" },
          { sets: 2, turns: { work: "40 s", easy: "20 s", times: 4 } },
          { turns: { work: "3 min", easy: "90 s", times: random.whole(2, 6) } },
        ]
      : []),
  ];
  return random.one(choices);
}
