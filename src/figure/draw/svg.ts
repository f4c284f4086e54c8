/** Puts drawn frames together into one SVG that stands alone. Millimetres; within a frame hundredths of one. */
import { compactPath, inHundredths } from "./compact-path.ts";
import type { DrawnFrames, FrameLayout } from "./frames.ts";
import { round } from "./hull.ts";
import { LINE, TONE } from "./palette.ts";
import type { Box, Inset, Path } from "./picture.ts";

export interface Sheet {
  readonly svg: string;
  readonly width: number;
  readonly height: number;
}

const NUMBER_ROOM = 5.2;
const EDGE = 0.8;
const BETWEEN = 3.5;

/** The whole picture. `mirrored` turns every frame over, but not their order or numbers. */
export function figureSvg(
  drawn: DrawnFrames,
  layout: FrameLayout,
  alt: string,
  mirrored: boolean,
): Sheet {
  const boxes = drawn.pictures.map((picture) =>
    grown(drawn.crop ?? picture.box, drawn.crop !== undefined),
  );
  const numbered = boxes.length > 1;
  const room = numbered ? NUMBER_ROOM : 0;
  const places = layout === "beside" ? beside(boxes, room) : below(boxes, room);
  const reused = new Reuse(
    drawn.pictures.flatMap((picture) => [
      ...picture.paths,
      ...picture.insets.flatMap((inset) => inset.paths),
    ]),
  );
  let content = "";
  drawn.pictures.forEach((picture, index) => {
    const box = boxes[index] as Box;
    const { x, y } = places.origins[index] as { x: number; y: number };
    const paths =
      picture.paths.map((path) => reused.write(path)).join("") +
      picture.insets.map((inset) => insetSvg(inset, reused)).join("");
    const ground = drawn.crop === undefined || box.bottom > -0.5 ? groundLine(box) : "";
    const left = mirrored ? x + box.left + box.right : x;
    const scale = mirrored ? "-.01 .01" : ".01";
    const group = `<g transform="translate(${round(left)} ${round(y)}) scale(${scale})">${ground}${paths}</g>`;
    content += drawn.crop === undefined ? group : clipped(group, box, x, y);
    if (numbered) content += number(index + 1, x + box.left - room + 2.3, places.tops[index] ?? 0);
  });
  const { width, height } = places;
  const svg =
    `<svg xmlns="http://www.w3.org/2000/svg" role="img" width="${round(width)}mm" height="${round(height)}mm" viewBox="0 0 ${round(width)} ${round(height)}">` +
    `<title>${escaped(firstSentence(alt))}</title><desc>${escaped(alt)}</desc>` +
    `<g fill="none" stroke-linejoin="round" stroke-linecap="round" stroke="${TONE.ink}" stroke-width="${fine(LINE.body)}" paint-order="stroke">${content}</g></svg>`;
  return { svg, width: Number(round(width)), height: Number(round(height)) };
}

function grown(box: Box, crop: boolean): Box {
  if (crop) return box;
  return {
    left: box.left - EDGE,
    right: box.right + EDGE,
    top: box.top - EDGE,
    bottom: Math.max(box.bottom, 0) + EDGE,
  };
}

interface Places {
  readonly origins: readonly { x: number; y: number }[];
  readonly tops: readonly number[];
  readonly width: number;
  readonly height: number;
}

/** Frames in a row on one ground. */
function beside(boxes: readonly Box[], room: number): Places {
  const top = Math.min(...boxes.map((box) => box.top));
  const bottom = Math.max(...boxes.map((box) => box.bottom));
  let x = 0;
  const origins = boxes.map((box) => {
    const origin = { x: x + room - box.left, y: -top };
    x += room + box.right - box.left + BETWEEN;
    return origin;
  });
  const tops = boxes.map((box) => Math.min(box.top - top, bottom - top - 10));
  return { origins, tops, width: x - BETWEEN, height: bottom - top };
}

/** Frames one below the other, the same place above the same place. */
function below(boxes: readonly Box[], room: number): Places {
  const left = Math.min(...boxes.map((box) => box.left));
  const right = Math.max(...boxes.map((box) => box.right));
  let y = 0;
  const tops: number[] = [];
  const origins = boxes.map((box) => {
    tops.push(y);
    const origin = { x: room - left, y: y - box.top };
    y += box.bottom - box.top + BETWEEN;
    return origin;
  });
  for (const box of boxes) {
    box.left = left;
    box.right = right;
  }
  return { origins, tops, width: room + right - left, height: y - BETWEEN };
}

/** Whole hundredths of a millimetre, the grid on which all points lie: numbers without a point take less room. */
const fine = (millimetres: number): string => inHundredths(round(millimetres));

function groundLine(box: Box): string {
  const half = LINE.ground / 2;
  return `<path d="M${fine(box.left + half)} ${fine(half)}H${fine(box.right - half)}" stroke="${TONE.ground}" stroke-width="${fine(LINE.ground)}"/>`;
}

function clipped(group: string, box: Box, x: number, y: number): string {
  const size = `width="${round(box.right - box.left)}" height="${round(box.bottom - box.top)}"`;
  const corner = `${round(x + box.left)} ${round(y + box.top)}`;
  const [left, top] = corner.split(" ");
  return `<svg x="${left}" y="${top}" ${size} viewBox="${corner} ${round(box.right - box.left)} ${round(box.bottom - box.top)}" overflow="hidden">${group}</svg>`;
}

/** A box with its own enlarged ground, clipped to its edge. */
function insetSvg({ place, view, paths }: Inset, reused: Reuse): string {
  const size = `width="${fine(place.right - place.left)}" height="${fine(place.bottom - place.top)}"`;
  const corner = `x="${fine(place.left)}" y="${fine(place.top)}" ${size}`;
  const seen = `${fine(view.left)} ${fine(view.top)} ${fine(view.right - view.left)} ${fine(view.bottom - view.top)}`;
  const content = groundLine(view) + paths.map((path) => reused.write(path)).join("");
  const edge = `<rect ${corner} rx="120" stroke="${TONE.ground}" stroke-width="35"`;
  return (
    `${edge} fill="${TONE.paper}"/>` +
    `<svg ${corner} viewBox="${seen}" overflow="hidden">${content}</svg>${edge}/>`
  );
}

/** Digits as lines, so that the picture needs no font. */
const DIGITS = [
  "",
  "M-.55-.55L.1-1.1V1.1",
  "M-.65-.5C-.6-1.4.7-1.35.65-.45C.6.1-.5.7-.65 1.1H.7",
  "M-.6-.95C.2-1.5 1-.3-.1-.1C1.2.1.5 1.6-.65.95",
];

function number(digit: number, x: number, y: number): string {
  return (
    `<g transform="translate(${round(x)} ${round(y + 2.3)})"><circle r="2.2" fill="${TONE.ink}" stroke="none"/>` +
    `<path d="${DIGITS[digit] ?? ""}" stroke="${TONE.paper}" stroke-width=".5"/></g>`
  );
}

/** Writes a path once and points to it where the same path comes again. */
class Reuse {
  readonly #count = new Map<string, number>();
  readonly #written = new Map<string, string>();
  readonly #prefix: string;

  constructor(paths: readonly Path[]) {
    let hash = 5381;
    for (const path of paths) {
      const key = keyOf(path);
      this.#count.set(key, (this.#count.get(key) ?? 0) + 1);
      for (let i = 0; i < path.d.length; i += 1) hash = (hash * 33 + path.d.charCodeAt(i)) | 0;
    }
    this.#prefix = `f${(hash >>> 0).toString(36)}`;
  }

  write(path: Path): string {
    const key = keyOf(path);
    const before = this.#written.get(key);
    if (before !== undefined) return `<use href="#${before}"/>`;
    if ((this.#count.get(key) ?? 0) < 2 || path.d.length < 60) return element(path, "");
    const id = `${this.#prefix}-${this.#written.size}`;
    this.#written.set(key, id);
    return element(path, ` id="${id}"`);
  }
}

const keyOf = (path: Path) => `${path.d}|${path.fill}|${path.stroke}|${path.width}`;

function element({ d, fill, stroke, width, under }: Path, id: string): string {
  const colour = stroke === TONE.ink ? "" : ` stroke="${stroke ?? "none"}"`;
  const wide = stroke === undefined || width === LINE.body ? "" : ` stroke-width="${fine(width)}"`;
  const line = colour + wide;
  const filled = fill === "none" ? "" : ` fill="${fill}"`;
  // most lines are those of a body and lie under their fill: that stands once for all
  const over = filled && stroke !== undefined && !under ? ' paint-order="normal"' : "";
  return `<path${id} d="${inHundredths(compactPath(d))}"${filled}${line}${over}/>`;
}

function firstSentence(text: string): string {
  return text.split(/(?<=\.) /)[0] ?? text;
}

function escaped(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");
}
