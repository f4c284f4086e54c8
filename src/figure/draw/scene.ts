/** What the things of a picture are drawn from: the solved poses, and how far they reach. Lengths in body heights. */

import type { Props } from "../format/props-schema.ts";
import type { PlaneAxis } from "../solve/problem.ts";
import type { SolvedPose } from "../solve/solve-figure.ts";

export interface Scene {
  readonly props: Props | undefined;
  readonly poses: readonly SolvedPose[];
  /** The pose of this frame. */
  readonly pose?: SolvedPose;
  readonly axis: PlaneAxis;
  /** The highest point of the figure, up to which a wall is drawn. */
  readonly top: number;
  /** From where to where the figures reach, for mats and beds. */
  readonly reach: readonly [number, number];
}
