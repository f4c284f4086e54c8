/** Checks the links between cards: they lead somewhere, upwards, and never in a circle. */
import { Fault } from "../faults/fault.ts";
import type { Path } from "../read/source.ts";
import { nearest } from "../read/validate.ts";
import type { Library, LibraryCard } from "./library.ts";

/** Faults: unknown-card, ladder-order, ladder-circle. Links to `broken` cards are not faults of their own. */
export function ladderFaults(library: Library, broken: ReadonlySet<string>): Fault[] {
  const known = [...library.cards.keys()];
  const faults: Fault[] = [];
  for (const card of library.cards.values()) {
    for (const link of linksOf(card)) {
      const target = library.cards.get(link.to);
      if (!target) {
        if (!broken.has(link.to)) faults.push(unknownCard(link.to, card, link.path, known));
      } else {
        const fault = orderFault(card, target, link);
        if (fault) faults.push(fault);
      }
    }
  }
  return [...faults, ...circleFaults(library)];
}

/** The fault of naming a card that does not exist, with the nearest one that does. */
export function unknownCard(
  id: string,
  { source }: Pick<LibraryCard, "source">,
  path: Path,
  known: readonly string[],
): Fault {
  const place = source.at(path);
  const near = nearest(id, known);
  return new Fault("unknown-card", `There is no card ${id}.`, {
    place,
    frame: source.frame(place),
    hint: near ? `Did you mean ${near}?` : "Check the id, or write the card.",
  });
}

interface Link {
  readonly kind: "harder" | "easier" | "alternatives" | "capacity_from";
  readonly to: string;
  readonly path: Path;
}

function linksOf({ card }: LibraryCard): Link[] {
  return [
    ...card.harder.map(({ to }, at): Link => ({ kind: "harder", to, path: ["harder", at, "to"] })),
    ...card.easier.map(({ to }, at): Link => ({ kind: "easier", to, path: ["easier", at, "to"] })),
    ...card.alternatives.map(
      (to, at): Link => ({ kind: "alternatives", to, path: ["alternatives", at] }),
    ),
    ...card.capacity_from.map(
      (to, at): Link => ({ kind: "capacity_from", to, path: ["capacity_from", at] }),
    ),
  ];
}

function orderFault(from: LibraryCard, to: LibraryCard, link: Link): Fault | undefined {
  const up = to.card.demand - from.card.demand;
  const wrong = (link.kind === "harder" && up <= 0) || (link.kind === "easier" && up >= 0);
  const itself = from === to;
  if (!wrong && !itself) return undefined;
  const place = from.source.at(link.path);
  const message = itself
    ? `${from.card.id} names itself.`
    : `${to.card.id} is not ${link.kind} than ${from.card.id}: its demand is ${to.card.demand}, that of ${from.card.id} is ${from.card.demand}.`;
  return new Fault("ladder-order", message, {
    place,
    frame: from.source.frame(place),
    hint: "Change the link, or the demand of one of the two cards.",
  });
}

/** One fault a circle of harder links, or of easier ones, placed at the circle's first card by id. */
function circleFaults(library: Library): Fault[] {
  return (["harder", "easier"] as const).flatMap((kind) => circlesOf(library, kind));
}

function circlesOf(library: Library, kind: "harder" | "easier"): Fault[] {
  const done = new Set<string>();
  const faults: Fault[] = [];
  const visit = (id: string, way: string[]): void => {
    const begin = way.indexOf(id);
    if (begin >= 0) {
      const circle = way.slice(begin);
      const first = [...circle].sort()[0];
      const card = library.cards.get(first ?? "");
      const next = circle[(circle.indexOf(first ?? "") + 1) % circle.length];
      const index = card?.card[kind].findIndex(({ to }) => to === next) ?? -1;
      if (card && index >= 0 && circle.length > 1) {
        const place = card.source.at([kind, index, "to"]);
        const chain = [...circle, circle[0]].join(" → ");
        faults.push(
          new Fault("ladder-circle", `The ${kind} cards lead back to where they began: ${chain}.`, {
            place,
            frame: card.source.frame(place),
            hint: "Take one of these links out.",
          }),
        );
      }
      return;
    }
    if (done.has(id)) return;
    way.push(id);
    for (const { to } of library.cards.get(id)?.card[kind] ?? []) visit(to, way);
    way.pop();
    done.add(id);
  };
  for (const id of [...library.cards.keys()].sort()) visit(id, []);
  return faults;
}
