/** A client's diary as a table for the terminal: each session, and under it what was not as planned. */
import { columns } from "../terminal/columns.ts";
import { weekdayOf } from "../units/dates.ts";
import type { Diary, DiaryEntry, DiaryExercise, Done } from "./entry.ts";
import { worstPain } from "./json.ts";
import { oneLine } from "./printable.ts";

const DONE_WORDS: Readonly<Record<Done, string>> = {
  yes: "done",
  part: "done in part",
  no: "not done",
};

const WEEKDAYS = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"] as const;

/** Whose diary it is, then its sessions week by week. */
export function diaryTable({ plan, client, entries }: Diary): string {
  const count = `${entries.length} ${entries.length === 1 ? "session" : "sessions"}`;
  const lines = [`${oneLine(client)}, ${oneLine(plan)}: ${count} written down`];
  const heads = columns(entries.map(headOf));
  let week: number | undefined;
  for (const [index, entry] of entries.entries()) {
    if (entry.week !== week) lines.push("", `Week ${entry.week}`);
    week = entry.week;
    lines.push(`  ${heads[index]}`.trimEnd(), ...details(entry).map((line) => `    ${line}`));
  }
  return lines.join("\n");
}

/** "Tue 2026-12-01", "evening", "done in part", "effort 6", "pain 2 during, 3 after, 1 next morning". */
function headOf(entry: DiaryEntry): string[] {
  return [
    day(entry.date),
    entry.part,
    doneText(entry),
    entry.effort === undefined ? "" : `effort ${entry.effort}`,
    painText(entry),
  ];
}

const day = (date: string): string => `${WEEKDAYS[weekdayOf(date)] ?? ""} ${date}`;

function doneText({ done, short, date, doneOn }: DiaryEntry): string {
  return [
    DONE_WORDS[done],
    ...(short ? ["short version"] : []),
    ...(doneOn === undefined || doneOn === date ? [] : [`on ${day(doneOn)}`]),
  ].join(", ");
}

function painText(entry: DiaryEntry): string {
  const said = [
    [worstPain(entry), "during"],
    [entry.painAfter, "after"],
    [entry.painMorning, "next morning"],
  ] as const;
  const pains = said.flatMap(([pain, when]) => (pain === undefined ? [] : [`${pain} ${when}`]));
  const morning =
    entry.worseMorning === undefined
      ? []
      : [entry.worseMorning ? "worse than usual" : "no worse than usual"];
  const all = [...pains, ...morning].join(", ");
  return pains.length === 0 ? all : `pain ${all}`;
}

/** Exercises that were not as planned or hurt, how many others there are, and the note. */
function details(entry: DiaryEntry): string[] {
  const told = entry.exercises
    .map((exercise) => ({ exercise, differs: differences(exercise) }))
    .filter(({ differs }) => differs.length > 0);
  const rest = entry.exercises.length - told.length;
  const note = oneLine(entry.note);
  return [
    ...columns(told.map(({ exercise, differs }) => [nameOf(exercise), differs.join(", ")])),
    ...(rest === 0 ? [] : [`${rest} ${rest === 1 ? "exercise" : "exercises"} as planned`]),
    ...(note === "" ? [] : [`Note: ${note}`]),
  ];
}

const nameOf = ({ title, card, side }: DiaryExercise): string =>
  `${oneLine(title)} [${card}]${side === "none" ? "" : `, ${SIDES[side]}`}`;

const SIDES = { left: "left", right: "right", each: "each side", both: "both sides" } as const;

function differences({ done, planned, real, pain, sudden }: DiaryExercise): string[] {
  const amounts = [
    [real.sets, planned.sets, "sets"],
    [real.reps, planned.reps, "repetitions"],
    [real.kg, planned.kg, "kg"],
  ] as const;
  return [
    ...(done === "yes" ? [] : [DONE_WORDS[done]]),
    ...amounts.flatMap(([was, want, unit]) => {
      if (was === undefined || was === want) return [];
      return want === undefined ? [`${was} ${unit}`] : [`${was} ${unit} (${want} planned)`];
    }),
    ...(pain === undefined || pain === 0 ? [] : [`pain ${pain}`]),
    ...(sudden ? ["sudden pain"] : []),
  ];
}
