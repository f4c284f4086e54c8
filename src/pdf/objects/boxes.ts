/** Boxes on a page and the matrices that move them. */

/** Left, bottom, right, top. */
export type Box = readonly [number, number, number, number];
export type Matrix = readonly [number, number, number, number, number, number];

export const UNIT: Matrix = [1, 0, 0, 1, 0, 0];
/** Around nothing. */
export const BOX_NONE: Box = [Infinity, Infinity, -Infinity, -Infinity];

/** Around everything. */
export const BOX_ALL: Box = [-Infinity, -Infinity, Infinity, Infinity];

/** First `inner`, then `outer`. */
export function times(inner: readonly number[], outer: Matrix): Matrix {
  const [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0] = inner;
  const [g, h, i, j, k, l] = outer;
  return [
    a * g + b * i,
    a * h + b * j,
    c * g + d * i,
    c * h + d * j,
    e * g + f * i + k,
    e * h + f * j + l,
  ];
}

/** Where a matrix puts a point. */
export function moved(matrix: Matrix, x: number, y: number): readonly [number, number] {
  const [a, b, c, d, e, f] = matrix;
  return [a * x + c * y + e, b * x + d * y + f];
}

/** The box with a point more in it. */
export function grown(box: Box, [x, y]: readonly [number, number]): Box {
  return [Math.min(box[0], x), Math.min(box[1], y), Math.max(box[2], x), Math.max(box[3], y)];
}

/** The point of a box that is nearest to one. */
export function nearest([left, bottom, right, top]: Box, [x, y]: readonly [number, number]) {
  return [Math.min(Math.max(x, left), right), Math.min(Math.max(y, bottom), top)] as const;
}

/** The box around two. */
export function joined(one: Box, other: Box): Box {
  return grown(grown(one, [other[0], other[1]]), [other[2], other[3]]);
}
