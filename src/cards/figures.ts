/** The pictures of cards: drawn once for each card and side, with what is wrong with them. */

import { Fault } from "../faults/fault.ts";
import { drawFigure } from "../figure/draw-figure.ts";
import type { Drawing, FigureSide } from "../figure/format/drawing.ts";
import type { LibraryCard } from "./library.ts";

const drawn = new WeakMap<LibraryCard, Map<FigureSide, Drawing>>();

/** The picture of a card for a side; undefined where the card has none. */
export function figureOf(card: LibraryCard, side: FigureSide): Drawing | undefined {
  const { figure } = card.card;
  if (figure === undefined) return undefined;
  const known = drawn.get(card) ?? new Map<FigureSide, Drawing>();
  drawn.set(card, known);
  const drawing = known.get(side) ?? drawFigure(figure, side);
  known.set(side, drawing);
  return drawing;
}

/** What is wrong with a card's picture, each at its place; a picture without captions is a warning. Faults: figure-wrong. */
export function figureFaults(card: LibraryCard): Fault[] {
  const side = card.card.side === "each" ? "right" : "none";
  const wrong = (figureOf(card, side)?.faults ?? []).map(({ path, message, hint }) => {
    const place = card.source.at(path);
    return new Fault("figure-wrong", message, { place, frame: card.source.frame(place), hint });
  });
  const { figure } = card.card;
  const bare = figure !== undefined && figure.captions === undefined;
  return bare ? [...wrong, captionless(card)] : wrong;
}

function captionless({ source }: LibraryCard): Fault {
  const place = source.atKey(["figure"]);
  return new Fault("figure-wrong", "The frames of the picture have no captions.", {
    level: "warning",
    place,
    frame: source.frame(place),
    hint: "Say under captions in a few words what each frame shows, such as [Heel low, Push up high].",
  });
}

/**
 * An SVG as an address that may stand in an attribute between double quotation marks as it is. Those of
 * the SVG itself become single ones where that changes nothing, its title and description are left
 * out, which no reader gets from a picture that is told in words beside it, and only what must be is
 * escaped: every letter counts in a file of a dozen pictures.
 */
export function svgUrl(svg: string): string {
  const bare = svg.replace(/<title>[^<]*<\/title>/, "").replace(/<desc>[^<]*<\/desc>/, "");
  const quoted = bare.includes("'") ? bare : bare.replaceAll('"', "'");
  return `data:image/svg+xml,${quoted.replace(/[%#<>"&\s]/g, (letter) => (letter === " " ? " " : encodeURIComponent(letter)))}`;
}
