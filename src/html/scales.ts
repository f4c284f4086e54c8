/** Draws the scales from 0 to 10 and the cover's steps as SVG of lines, areas and numbers. */
import type { DoseExplained } from "../compose/exercise-model.ts";
import type { CalendarWeek, Cover, PainPage, WeekSteps } from "../compose/model.ts";
import type { PainZone } from "../pain/zone.ts";
import type { Words } from "../words/words.ts";

type Goal = Cover["goals"][number];

/** Units are millimetres at full width. */
const CELL = 15;
const EDGE = 2.5;
const WIDTH = 2 * EDGE + 11 * CELL;

const NUMBERS = Array.from({ length: 11 }, (_, n) => n);

/**
 * The pain ruler. Zones differ by pattern as well as by tone: blank, hatched, dark with light
 * numbers, and dark with a light frame around each of them. A flag stands at the client's limit.
 */
export function drawRuler(
  pain: Pick<PainPage, "ruler" | "limit">,
  zones: readonly { readonly name: string; readonly range: string }[],
  { say }: Words,
): string {
  const top = 9;
  const height = 15;
  const left = (n: number) => EDGE + n * CELL;
  const cells = pain.ruler.map(({ n, zone }) =>
    [
      area(zone, left(n), top, CELL, height),
      zone === "allowed" ? clearing(left(n) + CELL / 2, top + height / 2) : "",
      text(left(n) + CELL / 2, top + 10.2, n, `num on-${zone}`),
    ].join(""),
  );
  const marks = pain.ruler.map(({ n }) => line(left(n), top, left(n), top + height, "thin"));
  const limit = pain.ruler.filter(({ zone }) => zone === "fine" || zone === "allowed").at(-1)?.n;
  const flag =
    limit === undefined || limit === 10
      ? ""
      : `${line(left(limit + 1), 2.5, left(limit + 1), top + height, "thick")}${text(
          left(limit + 1) + (limit < 6 ? 2 : -2),
          6.2,
          say("pain.limit", { n: pain.limit }),
          `label ${limit < 6 ? "" : "end"}`,
        )}`;
  const frame = `<rect class="frame" x="${EDGE}" y="${top}" width="${11 * CELL}" height="${height}"/>`;
  const label = say("pain.ruler", {
    zones: zones.map(({ name, range }) => say("pain.zone", { name, range })).join(" "),
  });
  return picture(label, WIDTH, top + height + 1.5, [...cells, ...marks, frame, flag]);
}

/** A sample of a zone's pattern. */
export function drawZone(zone: PainZone): string {
  const frame = `<rect class="frame" x="1" y="1" width="${CELL}" height="10"/>`;
  return picture("", CELL + 2, 12, [area(zone, 1, 1, CELL, 10), frame]);
}

/** A goal's scale is half as wide: two of them stand side by side. */
const GOAL_CELL = 7;
const GOAL_WIDTH = 2 * EDGE + 11 * GOAL_CELL;

/** A goal on its scale: a dot for now, a ring for what is wanted, an arrow between them. */
export function drawGoal({ now, want, words }: Goal, { say }: Words): string {
  const y = 10;
  const at = (n: number) => EDGE + GOAL_CELL / 2 + n * GOAL_CELL;
  const forward = want >= now ? 1 : -1;
  const ticks = NUMBERS.map(
    (n) => `${line(at(n), y - 1.5, at(n), y + 1.5, "thin")}${text(at(n), y + 7, n, "small")}`,
  );
  const arrow =
    Math.abs(want - now) < 0.5
      ? ""
      : `${line(at(now), y, at(want) - forward * 5, y, "thick")}<path class="dark" d="M${round(
          at(want) - forward * 2.2,
        )} ${y}l${-forward * 3.6} -2v4z"/>`;
  const label = (n: number, side: number, words: string) =>
    text(inside(at(n) + side, side), y - 4.2, words, ends(side));
  return picture(`${words}`, GOAL_WIDTH, y + 9, [
    line(at(0), y, at(10), y, "thin"),
    ...ticks,
    arrow,
    `<circle class="dark" cx="${round(at(now))}" cy="${y}" r="2.2"/>`,
    `<circle class="ring" cx="${round(at(want))}" cy="${y}" r="2.2"/>`,
    label(now, -forward, say("goals.now")),
    label(want, forward, say("goals.want")),
  ]);
}

/** A bar for every week, as high as its share of the most, each phase in its own tone. */
export function drawSteps(steps: WeekSteps | undefined, weeks: readonly CalendarWeek[]): string {
  if (steps === undefined) return "";
  const width = WIDTH / Math.max(weeks.length, 1);
  let phase = 0;
  const bars = weeks.map((week, index) => {
    const before = weeks[index - 1];
    if (before !== undefined && before.phases.join() !== week.phases.join()) phase += 1;
    const height = 12.5 * (steps.heights[index] ?? 0);
    return `<rect class="step-${phase % 2}" x="${round(index * width)}" y="${round(
      12.5 - height,
    )}" width="${round(width - 0.8)}" height="${round(height)}"/>`;
  });
  return picture("", WIDTH, 12.5, bars);
}

/** Cells of the small ruler of effort, and their height. */
const EFFORT_CELL = 9;
const EFFORT_HEIGHT = 8;

/**
 * A small ruler from 0 to 10 on which the numbers that are asked for stand in thick frames, as goals do: the
 * dark cells of the pain ruler mean too much.
 */
export function drawEffort(
  { numbers, words }: NonNullable<DoseExplained["effort"]>,
  { say }: Words,
): string {
  const left = (n: number) => EDGE + n * EFFORT_CELL;
  const middle = EFFORT_HEIGHT - 2.2;
  // a half lies in two cells
  const asked = NUMBERS.filter((n) => numbers.some((one) => Math.abs(one - n) < 1)).map(
    (n) =>
      `<rect class="ring" x="${left(n)}" y="1" width="${EFFORT_CELL}" height="${EFFORT_HEIGHT}"/>`,
  );
  const figures = NUMBERS.map((n) => text(left(n) + EFFORT_CELL / 2, middle + 1, n, "num"));
  const marks = NUMBERS.map((n) => line(left(n), 1, left(n), 1 + EFFORT_HEIGHT, "thin"));
  const frame = `<rect class="frame" x="${EDGE}" y="1" width="${11 * EFFORT_CELL}" height="${EFFORT_HEIGHT}"/>`;
  const label = say("phase.effort-picture", { list: words });
  return picture(label, 2 * EDGE + 11 * EFFORT_CELL, EFFORT_HEIGHT + 2, [
    ...marks,
    frame,
    ...asked,
    ...figures,
  ]);
}

function area(zone: PainZone, x: number, y: number, width: number, height: number): string {
  const base = `<rect class="zone-${zone}" x="${x}" y="${y}" width="${width}" height="${height}"/>`;
  if (zone === "allowed") return base + hatch(x, y, width, height);
  return zone === "call" ? base + inset(x, y, width, height) : base;
}

/** A light frame within. */
function inset(x: number, y: number, width: number, height: number): string {
  const gap = 1.4;
  return `<rect class="inset" x="${round(x + gap)}" y="${round(y + gap)}" width="${round(width - 2 * gap)}" height="${round(height - 2 * gap)}"/>`;
}

/** Slanting lines, cut at the edges by hand: SVG patterns and clips print as pictures. */
function hatch(x: number, y: number, width: number, height: number): string {
  const step = 2.5;
  const strokes: string[] = [];
  for (let shift = step; shift < width + height; shift += step) {
    const fromX = Math.min(shift, width);
    const fromY = Math.max(0, shift - width);
    const toX = Math.max(0, shift - height);
    const toY = Math.min(shift, height);
    strokes.push(`M${round(x + fromX)} ${round(y + fromY)}L${round(x + toX)} ${round(y + toY)}`);
  }
  return `<path class="hatch" d="${strokes.join("")}"/>`;
}

/** A picture with its description, or one that readers pass over. */
export function picture(
  label: string,
  width: number,
  height: number,
  shapes: readonly string[],
): string {
  const role = label === "" ? 'aria-hidden="true"' : `role="img" aria-label="${escapeText(label)}"`;
  return `<svg ${role} viewBox="0 0 ${width} ${height}">${shapes.join("")}</svg>`;
}

/** A plain spot on which a number can be read. */
function clearing(x: number, y: number): string {
  return `<circle class="clear" cx="${x}" cy="${y}" r="4.6"/>`;
}

export function line(x: number, y: number, toX: number, toY: number, kind: string): string {
  return `<path class="${kind}" d="M${round(x)} ${round(y)}L${round(toX)} ${round(toY)}"/>`;
}

export function text(x: number, y: number, words: string | number, kind: string): string {
  return `<text class="${kind}" x="${round(x)}" y="${round(y)}">${escapeText(String(words))}</text>`;
}

/** Keeps a word of usual length within the drawing. */
function inside(x: number, side: number): number {
  const room = 13;
  return side < 0 ? Math.max(x, room) : Math.min(x, GOAL_WIDTH - room);
}

function ends(side: number): string {
  return side < 0 ? "label end" : "label";
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}

function escapeText(text: string): string {
  return text
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");
}
