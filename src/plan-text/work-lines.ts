/** The work of each tissue in each quality, week by week, for the terminal. */
import type { Writer } from "../compose/numbers.ts";
import type { Program } from "../program/program.ts";
import { isSteep } from "../schedule/ramp.ts";
import type { Schedule } from "../schedule/schedule.ts";
import { tissueWork, type WeekOfWork } from "../schedule/tissue-work.ts";
import { columns } from "../terminal/columns.ts";

/**
 * A line for each main tissue and quality, a column for each week: effort × minutes, or minutes where not
 * every exercise states an effort. Growth over the clinic's limit stands beside its number.
 */
export function workLines(program: Program, schedule: Schedule, write: Writer): string[] {
  const rows = tissueWork(program, schedule).map(({ tissue, trains, weeks }) => {
    const inLoad = weeks.every(({ minutes, load }) => minutes <= 0 || load !== undefined);
    return [
      `  ${tissue}, ${trains}${inLoad ? "" : " (minutes)"}`,
      ...weeks.map((week) => `${amount(week, inLoad, write)}${steep(week, program, write)}`),
    ];
  });
  const head = ["  Week", ...schedule.weeks.map(({ number }) => write.number(number))];
  return rows.length === 0
    ? []
    : ["  Work: effort × minutes at work on one side, without rests", ...columns([head, ...rows])];
}

function amount({ minutes, load }: WeekOfWork, inLoad: boolean, write: Writer): string {
  if (minutes <= 0) return "–";
  const value = inLoad ? (load ?? 0) : minutes;
  return write.number(Math.round(value * 10) / 10);
}

function steep({ change }: WeekOfWork, program: Program, write: Writer): string {
  if (!change || !isSteep(change, program)) return "";
  return ` (+${write.number(Math.round(change.share * 100))} %)`;
}
