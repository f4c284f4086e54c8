/** Path data of a picture in fewer letters: relative to where the pen is, without needless zeros and blanks. */
import { round } from "./hull.ts";

/** How many numbers each command takes; those not named take none. */
const TAKES: Readonly<Record<string, number>> = { M: 2, L: 2, H: 1, V: 1, Q: 4, C: 6, A: 7 };

/**
 * The same path with relative commands (SVG 2, paths): every point lies on a grid of hundredths, so
 * that differences are exact, and a line along an axis names one number. Takes the absolute commands M, L, H, V, Q, C, A and Z; a path with any other is
 * given back as it is.
 */
export function compactPath(path: string): string {
  const pen = { x: 0, y: 0, startX: 0, startY: 0 };
  let text = "";
  for (const [, command = "", rest = ""] of path.matchAll(/([a-zA-Z])([^a-zA-Z]*)/g)) {
    const numbers = rest.match(/-?(?:\d+\.?\d*|\.\d+)/g)?.map(Number) ?? [];
    const takes = TAKES[command];
    if (numbers.length !== (takes ?? 0) || (takes === undefined && command !== "Z")) return path;
    text += relative(command, numbers, pen);
    move(command, numbers, pen);
  }
  return text;
}

interface Pen {
  x: number;
  y: number;
  startX: number;
  startY: number;
}

function relative(command: string, numbers: readonly number[], { x, y }: Pen): string {
  if (command === "Z") return "z";
  const from = command === "V" ? [y] : [x, y];
  // the radii, the turn and the two flags of an arc are no places
  const fixed = command === "A" ? 5 : 0;
  const moved = numbers.map((n, at) =>
    at < fixed ? n : n - (from[(at - fixed) % from.length] ?? 0),
  );
  const [across = 0, down = 0] = moved;
  if (command === "L" && down === 0) return `h${joined([across])}`;
  if (command === "L" && across === 0) return `v${joined([down])}`;
  return command.toLowerCase() + joined(moved);
}

function move(command: string, numbers: readonly number[], pen: Pen): void {
  const [first = 0] = numbers;
  if (command === "Z") [pen.x, pen.y] = [pen.startX, pen.startY];
  else if (command === "H") pen.x = first;
  else if (command === "V") pen.y = first;
  else [pen.x = pen.x, pen.y = pen.y] = numbers.slice(-2);
  if (command === "M") [pen.startX, pen.startY] = [pen.x, pen.y];
}

/** Numbers side by side: a minus sign or a leading point parts them where it can. */
function joined(numbers: readonly number[]): string {
  let text = "";
  for (const number of numbers) {
    const word = round(number).replace(/^(-?)0\./, "$1.");
    const apart =
      text === "" || word.startsWith("-") || (word.startsWith(".") && /\.\d*$/.test(text));
    text += apart ? word : ` ${word}`;
  }
  return text;
}

/** The numbers after the radii of an arc: a turn in degrees and two flags, which have no size. */
const SIZELESS = [2, 3, 4];

/** A path, or a number alone, in units a hundred times as small: whole numbers, parted by blanks or minus signs. */
export function inHundredths(path: string): string {
  let text = "";
  for (const [, command = "", rest = ""] of path.matchAll(/([a-zA-Z]?)([^a-zA-Z]*)/g)) {
    const numbers = rest.match(/-?(?:\d+\.?\d*|\.\d+)/g)?.map(Number) ?? [];
    const whole = numbers.map((n, at) =>
      /a/i.test(command) && SIZELESS.includes(at % 7) ? n : Math.round(n * 100),
    );
    text += command + whole.join(" ").replaceAll(" -", "-");
  }
  return text;
}
