/** The computed program as a table for the terminal. */
import type { MadeProgram } from "../booklet.ts";
import type { Library } from "../cards/library.ts";
import { NO_LOOK } from "../clinic/look.ts";
import { phaseAnchor } from "../compose/anchors.ts";
import { calendar } from "../compose/calendar.ts";
import { startSign } from "../compose/flag-words.ts";
import { keptWords } from "../compose/kept-words.ts";
import { type Writer, writer } from "../compose/numbers.ts";
import { dosesIn, phasePages } from "../compose/phase-pages.ts";
import { sideName } from "../compose/side-words.ts";
import { hardness } from "../program/hardness.ts";
import type { ProgramExercise } from "../program/program.ts";
import { weekMetres } from "../schedule/distance.ts";
import { clearAfter } from "../schedule/event-hours.ts";
import { howOften } from "../schedule/how-often.ts";
import type { ScheduledWeek } from "../schedule/schedule.ts";
import { type WeekLoads, weekLoads } from "../schedule/week-loads.ts";
import { columns } from "../terminal/columns.ts";
import { clockText, DAY_MINUTES, type DayClock } from "../units/clock.ts";
import { WEEKDAYS } from "../units/day-parts.ts";
import type { Words } from "../words/words.ts";
import { workLines } from "./work-lines.ts";

/** Who it is for, the doses of each phase, and the sessions of each week on their dates. */
export function planTable(made: MadeProgram, library: Library, words: Words): string {
  const { program, dosed, schedule, plan, signedOff } = made;
  const write = writer(words, program.clinic.locale, program.clinic.units);
  const composing = {
    program,
    dosed,
    schedule,
    signedOff,
    library,
    words,
    note: "",
    day: "",
    edition: "standard" as const,
    look: NO_LOOK,
    often: howOften(dosed, schedule),
    write,
  };
  const lines = [
    `${plan.value.client.name} (${plan.value.client.reference})`,
    `${program.protocol.value.clinical}`,
    `${write.longDate(plan.value.starts)}, ${words.say("weeks.length", { n: program.weeks })}`,
    signedOff
      ? `Signed off: ${words.say("signed", { by: signedOff.by, on: write.longDate(signedOff.on) })}`
      : "DRAFT: not signed off",
    "",
  ];
  const pages = phasePages(composing);
  for (const phase of program.phases) {
    const page = pages.find(({ anchor }) => anchor === phaseAnchor(phase));
    if (!page) continue;
    lines.push(`${page.title}: ${page.when}`, page.sessions, "");
    for (const exercise of phase.exercises) {
      const { card } = exercise.card;
      const side = sideName(exercise, write);
      lines.push(`  ${card.clinical} [${card.id}]${side ? `, ${small(side)}` : ""}`);
      const rows = dosesIn(phase, exercise, composing).map((dose) => [
        `    ${dose.weeks}`,
        dose.work,
        dose.load ?? "",
        dose.pace ?? "",
        dose.rest ?? "",
        dose.often,
      ]);
      const sign = startSign(exercise, program, write);
      const gate = sign === undefined ? [] : [`    starts only when: ${sign}`];
      lines.push(...gate, ...hardLine(exercise, made), ...columns(rows), "");
    }
  }
  const weeks = calendar(composing);
  const loads = weekLoads(schedule, program.clinic.dosing.deviation);
  const metres = weekMetres(program, schedule);
  lines.push(
    ...columns(
      schedule.weeks.map((week, index) => [
        `  ${words.say("weeks.one", { first: week.number })}`,
        weeks[index]?.dates ?? "",
        week.away ? words.say("weeks.away_week") : sessionsOf(week, program.clock, write),
        [farText(metres[index], write), loadText(loads[index], write)]
          .filter((text) => text !== "")
          .join(", "),
      ]),
    ),
  );
  lines.push("", ...workLines(program, schedule, write));
  const kept = schedule.kept.map((one) => keptWords(one, write));
  const all = [...kept, ...assumedClear(made, write)];
  if (all.length > 0) lines.push("", ...all.map((line) => `  ${line}`));
  return lines
    .map((line) => line.trimEnd())
    .join("\n")
    .trimEnd();
}

/** Hours kept clear after events that the plan does not state, each once. */
function assumedClear({ plan }: MadeProgram, write: Writer): string[] {
  const lines = plan.value.week.events.flatMap((event) => {
    const after = clearAfter(event);
    if (!after?.assumed) return [];
    const day = event.day ? ` (${write.weekdayName(WEEKDAYS.indexOf(event.day))})` : "";
    return [
      `${after.hours} h after ${event.what}${day} without hard work on its tissues: not stated, assumed.`,
    ];
  });
  return [...new Set(lines)];
}

/** Why its bouts are hard work, where they are in any week: what events are kept clear of. */
function hardLine({ key, card }: ProgramExercise, { dosed }: MadeProgram): string[] {
  const reasons = dosed.weeks.flatMap(({ bouts }) =>
    bouts
      .filter((bout) => bout.key === key)
      .map(({ effort }) => hardness(card.card, effort))
      .flatMap(({ hard, because }) => (hard ? [because] : [])),
  );
  const all = [...new Set(reasons)];
  return all.length > 0 ? [`    hard work: ${all.join("; ")}`] : [];
}

/** With a small first letter; German nouns after it keep theirs. */
const small = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** How far all runs and carries of a week go. */
const farText = (metres: number | undefined, write: Writer): string =>
  metres === undefined || metres <= 0 ? "" : write.distance(Math.round(metres));

/** "load 510, monotony 0.87, strain 444": effort × minutes on the clock, and how even the days are. */
function loadText(loads: WeekLoads | undefined, write: Writer): string {
  if (loads?.load === undefined) return "";
  const { load, monotony, strain } = loads;
  const evenness =
    monotony === undefined || strain === undefined
      ? ["every day alike"]
      : [`monotony ${write.number(monotony)}`, `strain ${write.number(Math.round(strain))}`];
  return [`load ${write.number(Math.round(load))}`, ...evenness].join(", ");
}

/** "Mon evening 36 min · Wed evening 36 min · away Thu". */
function sessionsOf(week: ScheduledWeek, clock: DayClock, write: Writer): string {
  const sessions = week.days.flatMap((day) =>
    day.sessions.map(({ part, minutes }) => ({
      day: write.weekday(day.date, "short"),
      part,
      minutes,
    })),
  );
  const byKind = new Map<string, string[]>();
  for (const { day, part, minutes } of sessions) {
    const after = clock[part] < DAY_MINUTES ? "" : ` (${clockText(clock[part])} the next date)`;
    const kind = `${part}${after} ${minutes} min`;
    byKind.set(kind, [...(byKind.get(kind) ?? []), day]);
  }
  const away = week.days.filter((day) => day.away).map((day) => write.weekday(day.date, "short"));
  return [
    ...[...byKind].map(([kind, days]) => `${days.join(" ")} ${kind}`),
    ...(away.length > 0 ? [`away ${away.join(" ")}`] : []),
  ].join(" · ");
}
