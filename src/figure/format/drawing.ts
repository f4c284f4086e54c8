/** A drawn figure: its picture, its words, and what is wrong with it. */

/** The client's side; `each`: drawn for the right, and said so; `none`: the exercise has no side. */
export type FigureSide = "right" | "left" | "each" | "none";

export interface FigureFault {
  /** The way to the value in the card's front matter, such as ["figure", "poses", 1, "hip right"]. */
  readonly path: readonly (string | number)[];
  readonly message: string;
  readonly hint: string;
}

export interface Drawing {
  /** Undefined where there are faults: a wrong picture is never given. */
  readonly svg: string | undefined;
  /** The picture in words; empty where there is none. */
  readonly alt: string;
  /** A few words for each frame, in turn; none where the card has none. */
  readonly captions: readonly string[];
  /** Millimetres, as in the SVG. */
  readonly width: number;
  readonly height: number;
  readonly faults: readonly FigureFault[];
}
