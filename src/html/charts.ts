/** Draws the chart of planned loads, with a grid to mark what was really done. */
import type { ProgressChart } from "../compose/model.ts";
import type { Words } from "../words/words.ts";
import { line, picture, text } from "./scales.ts";

/** Units are millimetres at full width. */
const WIDTH = 170;
const LEFT = 16;
const RIGHT = 3;
const TOP = 4;
const HEIGHT = 46;

/** Planned loads as a line of steps over the weeks, on a grid with room above for more. */
export function drawProgress({ planned, unit, words }: ProgressChart, { say }: Words): string {
  const weeks = planned.length;
  const scale = scaleFor(planned.filter((value) => value !== undefined));
  const wide = (WIDTH - LEFT - RIGHT) / weeks;
  const x = (week: number) => LEFT + week * wide;
  const y = (value: number) => TOP + HEIGHT * (1 - value / scale.top);
  const rows = Array.from(
    { length: Math.round(scale.top / scale.step) + 1 },
    (_, n) => n * scale.step,
  );
  const grid = [
    ...rows.map((value) => line(LEFT, y(value), WIDTH - RIGHT, y(value), "grid")),
    ...Array.from({ length: weeks + 1 }, (_, week) =>
      line(x(week), TOP, x(week), TOP + HEIGHT, "grid"),
    ),
  ];
  const every = Math.ceil(weeks / 13);
  const labels = [
    ...rows.map((value) =>
      text(
        LEFT - 2,
        y(value) + 1.5,
        value === 0 ? `0 ${unit}` : say("progress.amount", { n: value }),
        "label end",
      ),
    ),
    ...planned.flatMap((_, week) =>
      week % every === 0 ? [text(x(week) + wide / 2, TOP + HEIGHT + 6, week + 1, "axis")] : [],
    ),
    text(LEFT, TOP + HEIGHT + 12, say("progress.week"), "label"),
  ];
  const steps = planned.flatMap((value, week) => {
    if (value === undefined) return [];
    const next = planned[week + 1];
    const across = line(x(week), y(value), x(week + 1), y(value), "plan");
    return next === undefined
      ? [across]
      : [across, line(x(week + 1), y(value), x(week + 1), y(next), "plan")];
  });
  return picture(words, WIDTH, TOP + HEIGHT + 14, [...grid, ...labels, ...steps]);
}

/** A round step that gives four to eight rows, with at least a row of room above the most. */
function scaleFor(values: readonly number[]): { step: number; top: number } {
  const most = Math.max(1, ...values);
  const raw = most / 5;
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = [1, 2, 5, 10].map((n) => n * power).find((size) => size >= raw) ?? raw;
  const tidy = Math.round(step * 1000) / 1000;
  return { step: tidy, top: (Math.floor(most / tidy) + 1) * tidy };
}
