/** How dark a page's letters are against what lies under them, once a printer has made both grey. */
import { OPS } from "pdfjs-dist/legacy/build/pdf.mjs";

/** A piece of text, and the contrast of its grey to the grey it stands on (WCAG 2, 1 to 21). */
export interface Ink {
  readonly text: string;
  readonly contrast: number;
}

export interface Operators {
  readonly fnArray: readonly number[];
  readonly argsArray: readonly unknown[];
}

type Matrix = readonly [number, number, number, number, number, number];
const AS_IS: Matrix = [1, 0, 0, 1, 0, 0];

/** Grey from 0 to 255; none where it is a pattern. */
type Grey = number | undefined;

interface State {
  readonly matrix: Matrix;
  readonly fill: Grey;
}

interface Area {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
  readonly grey: Grey;
}

const PAPER: Area = {
  left: -Infinity,
  right: Infinity,
  bottom: -Infinity,
  top: Infinity,
  grey: 255,
};

const FILLS: ReadonlySet<number> = new Set([
  OPS.fill,
  OPS.eoFill,
  OPS.fillStroke,
  OPS.eoFillStroke,
]);

/** Every piece of text that is drawn on a plain ground, in order. */
export function inkOf({ fnArray, argsArray }: Operators): readonly Ink[] {
  const inks: Ink[] = [];
  const areas: Area[] = [PAPER];
  const kept: State[] = [];
  let state: State = { matrix: AS_IS, fill: 0 };
  let text: Matrix = AS_IS;
  let size = 0;
  const restore = () => {
    state = kept.pop() ?? state;
  };
  fnArray.forEach((operator, at) => {
    const args = (argsArray[at] ?? []) as readonly unknown[];
    const numbers = () => numbersIn(args);
    switch (operator) {
      case OPS.save:
        kept.push(state);
        break;
      case OPS.restore:
      case OPS.paintFormXObjectEnd:
        restore();
        break;
      case OPS.paintFormXObjectBegin:
        kept.push(state);
        state = { ...state, matrix: times(state.matrix, matrixOf(numbersIn([args[0]]))) };
        break;
      case OPS.transform:
        state = { ...state, matrix: times(state.matrix, matrixOf(numbers())) };
        break;
      case OPS.setFillRGBColor:
        state = { ...state, fill: greyOf(args) };
        break;
      case OPS.setFillColorN:
        state = { ...state, fill: undefined };
        break;
      case OPS.constructPath:
        if (FILLS.has(args[0] as number)) areas.push(areaOf(args[2], state));
        break;
      case OPS.beginText:
        text = AS_IS;
        break;
      case OPS.setFont:
        size = args[1] as number;
        break;
      case OPS.setTextMatrix:
        text = matrixOf(numbers());
        break;
      case OPS.moveText:
        text = times(text, [1, 0, 0, 1, ...(numbers() as [number, number])]);
        break;
      case OPS.showText: {
        const said = glyphs(args[0]);
        const [x, y] = placed(times(state.matrix, text), [size * 0.25, size * 0.3]);
        const under = areas.findLast((area) => isIn(x, y, area))?.grey;
        if (said.trim() !== "" && state.fill !== undefined && under !== undefined)
          inks.push({ text: said, contrast: contrast(state.fill, under) });
        break;
      }
    }
  });
  return inks;
}

const numbersIn = (args: readonly unknown[]): number[] =>
  args.flatMap((one) => {
    if (typeof one === "number") return one;
    return one !== null && typeof one === "object" ? numbersIn(Object.values(one)) : [];
  });

const matrixOf = ([a = 1, b = 0, c = 0, d = 1, e = 0, f = 0]: readonly number[]): Matrix => [
  a,
  b,
  c,
  d,
  e,
  f,
];

const times = ([a, b, c, d, e, f]: Matrix, [g, h, i, j, k, l]: Matrix): Matrix => [
  a * g + c * h,
  b * g + d * h,
  a * i + c * j,
  b * i + d * j,
  a * k + c * l + e,
  b * k + d * l + f,
];

const placed = ([a, b, c, d, e, f]: Matrix, [x, y]: readonly [number, number]) =>
  [a * x + c * y + e, b * x + d * y + f] as const;

function areaOf(box: unknown, { matrix, fill }: State): Area {
  const [left = 0, bottom = 0, right = 0, top = 0] = numbersIn([box]);
  const corners = [
    placed(matrix, [left, bottom]),
    placed(matrix, [right, top]),
    placed(matrix, [left, top]),
    placed(matrix, [right, bottom]),
  ];
  const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
  return {
    left: Math.min(...xs),
    right: Math.max(...xs),
    bottom: Math.min(...ys),
    top: Math.max(...ys),
    grey: fill,
  };
}

const isIn = (x: number, y: number, { left, right, bottom, top }: Area): boolean =>
  x >= left && x <= right && y >= bottom && y <= top;

/** As printers make grey of red, green and blue (ITU-R BT.601). */
function greyOf(args: readonly unknown[]): Grey {
  const [first] = args;
  const [red = 0, green = 0, blue = 0] =
    typeof first === "string"
      ? [1, 3, 5].map((from) => Number.parseInt(first.slice(from, from + 2), 16))
      : numbersIn(args);
  return 0.299 * red + 0.587 * green + 0.114 * blue;
}

/** The contrast of two greys (WCAG 2, relative luminance). */
function contrast(one: number, other: number): number {
  const [dark, light] = [one, other].map(luminance).sort((a, b) => a - b) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

function luminance(grey: number): number {
  const share = grey / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
}

const glyphs = (shown: unknown): string =>
  (shown as readonly (number | { readonly unicode: string })[])
    .map((glyph) => (typeof glyph === "number" ? "" : glyph.unicode))
    .join("");
