/** Measures what a figure costs, for `npm run bench` and by hand; not a test. */
import { drawFigure } from "../../src/figure/draw-figure.ts";
import { cardFigures } from "./card-figures.ts";

export interface FigureCost {
  readonly figures: number;
  /** Milliseconds a figure, warm. */
  readonly milliseconds: number;
  /** Bytes of SVG a figure, on average and at most. */
  readonly bytes: number;
  readonly most: number;
}

/** Draws every card's figure several times over; `now` gives milliseconds. */
export function figureCost(now: () => number, rounds = 5): FigureCost {
  const figures = [...cardFigures().values()];
  const sizes = figures.map((figure) => (drawFigure(figure, "right").svg ?? "").length);
  for (const figure of figures) drawFigure(figure, "left");
  const start = now();
  for (let i = 0; i < rounds; i += 1) for (const figure of figures) drawFigure(figure, "right");
  const milliseconds = (now() - start) / rounds / figures.length;
  const bytes = sizes.reduce((sum, size) => sum + size, 0) / figures.length;
  return { figures: figures.length, milliseconds, bytes, most: Math.max(...sizes) };
}
