/** Changes of a plan in words: one plain English sentence for those made together. */
import { counted } from "../../units/counted.ts";
import type { ProgramTimes, ProgramWeeks } from "../program/program-types.ts";
import { WEEKDAY_NAMES } from "../search/dates.ts";
import { usualMinutes, weeklyParts } from "./apply.ts";
import type { Change } from "./explain-types.ts";
import { listed, timesWord } from "./requirement-words.ts";

/** "Open Friday evening for 25 minutes and do Heel raise twice a week in week 4." */
export function changesSentence(changes: readonly Change[], program: ProgramWeeks): string {
  const words = everywhere(changes, program) ?? listed(changes.map((one) => inWords(one, program)));
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
}

function inWords(change: Change, program: ProgramWeeks): string {
  switch (change.kind) {
    case "open-slot":
      return `open ${slotOf(change)} for ${change.minutes} minutes`;
    case "more-minutes":
      return `allow ${change.minutes} minutes more on ${slotOf(change)}`;
    case "fewer-sets": {
      const sets = counted(change.sets, "set");
      return `do ${sets} of ${nameOf(change.exercise, program)}${inWeeks(change, program)}`;
    }
    case "less-often":
      return `do ${nameOf(change.exercise, program)} ${often(change.times)}${inWeeks(change, program)}`;
  }
}

/** The same minutes more in every part of the week with free time need no list. */
function everywhere(changes: readonly Change[], program: ProgramWeeks): string | undefined {
  const [first] = changes;
  if (first?.kind !== "more-minutes" || changes.length < 3) return undefined;
  const open = weeklyParts(program).filter(({ part, days }) =>
    days.some((day) => usualMinutes(day)[part] > 0),
  );
  const alike = changes.every(
    (change) => change.kind === "more-minutes" && change.minutes === first.minutes,
  );
  return alike && changes.length === open.length
    ? `allow ${first.minutes} minutes more each time`
    : undefined;
}

const slotOf = ({ weekday, part }: Extract<Change, { weekday: number }>): string =>
  `${WEEKDAY_NAMES[weekday] ?? ""} ${part}`;

function nameOf(exercise: string, program: ProgramWeeks): string {
  const all = program.phases.flatMap(({ weeks }) => weeks.flatMap(({ exercises }) => exercises));
  return all.find(({ id }) => id === exercise)?.name ?? exercise;
}

function often(times: ProgramTimes): string {
  if ("perWeek" in times) return `${timesWord(times.perWeek)} a week`;
  return "perDay" in times ? `${timesWord(times.perDay)} a day` : `every ${times.everyDays} days`;
}

/** " in week 4", " in weeks 4, 5 and 11", " in weeks 4 to 6 and 9"; nothing where it is every week of the program. */
function inWeeks({ weeks }: { weeks: readonly number[] }, program: ProgramWeeks): string {
  const all = program.phases.reduce((sum, phase) => sum + phase.weeks.length, 0);
  if (weeks.length === all) return "";
  const runs: { first: number; last: number }[] = [];
  for (const week of [...weeks].sort((a, b) => a - b)) {
    const run = runs.at(-1);
    if (run !== undefined && run.last === week - 1) run.last = week;
    else runs.push({ first: week, last: week });
  }
  const words = runs.flatMap(({ first, last }) => {
    if (last > first + 1) return [`${first + 1} to ${last + 1}`];
    return [...new Set([first, last])].map((week) => `${week + 1}`);
  });
  return ` in ${weeks.length === 1 ? "week" : "weeks"} ${listed(words)}`;
}
