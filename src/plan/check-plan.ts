/** What a plan alone can show to be wrong, beyond the shape of its fields. */

import type { FaultCode } from "../faults/catalogue.ts";
import { Fault, type Level } from "../faults/fault.ts";
import type { Path, Read } from "../read/source.ts";
import { clockText, dayClock, minutesToNext, rises } from "../units/clock.ts";
import { dayNumber } from "../units/dates.ts";
import { PARTS, type PartOfDay, WEEKDAYS } from "../units/day-parts.ts";
import { timeText } from "../units/serialise.ts";
import type { Plan } from "./schema.ts";

/** Strength lost in longer breaks makes the old measures useless; common practice. */
const LONGEST_AWAY_DAYS = 365;

/** Faults: no-free-slot, wrong-value, missing-field; warnings too, such as not-signed. */
export function planFaults(plan: Read<Plan>): Fault[] {
  const { value, source } = plan;
  const faults: Fault[] = [];
  const add = (
    code: FaultCode,
    path: Path,
    message: string,
    hint: string,
    level: Level = "error",
  ) => {
    const place = source.at(path);
    faults.push(new Fault(code, message, { level, place, hint, frame: source.frame(place) }));
  };
  const free = freeTimes(value);
  if (!free.some(({ seconds }) => seconds > 0)) {
    add(
      "no-free-slot",
      ["week", "free"],
      `${value.client.name} has no free time in the week.`,
      "Give at least one day a part with minutes, such as mon: { evening: 30 min }.",
    );
  }
  const clock = dayClock(value.week.hours);
  if (!rises(clock)) {
    const { morning, midday, evening } = value.week.hours;
    add(
      "wrong-value",
      ["week", "hours"],
      `The parts of the day begin at ${morning}, ${midday} and ${evening}: that is no one day.`,
      "Let them come one after the other, such as 07:00, 13:00, 19:00; for work at night 22:00, 02:00, 06:00.",
    );
  } else {
    for (const { path, part, seconds } of free) {
      const most = minutesToNext(clock, part);
      const given = seconds / 60;
      if (given <= most) continue;
      add(
        "wrong-value",
        path,
        `These ${amount(given)} begin at ${clockText(clock[part])} and run past the start of the next part of the day, ${clockText(clock[part] + most)}: ${amount(most)} of them are used.`,
        "Give the rest as free time of the next part, or change when it begins under hours.",
        "warning",
      );
    }
  }
  const spans: [Path, { from?: string | undefined; until?: string | undefined }][] = [
    ...value.week.events.map((event, at): [Path, typeof event] => [["events", at], event]),
    ...value.week.other_weeks.map((span, at): [Path, typeof span] => [["other_weeks", at], span]),
    ...(value.week.rota ? [[["rota"], value.week.rota] as [Path, { from: string }]] : []),
  ];
  for (const [path, { from, until }] of spans) {
    if (from === undefined || until === undefined || until >= from) continue;
    add(
      "wrong-value",
      ["week", ...path, "until"],
      `${until} is before ${from}.`,
      "Swap from and until.",
    );
  }
  value.week.away.forEach((away, at) => {
    if (typeof away !== "string" && away.to < away.from) {
      add(
        "wrong-value",
        ["week", "away", at],
        "These days away end before they begin.",
        "Swap from and to.",
      );
    }
    if (typeof away !== "string" && dayNumber(away.to) - dayNumber(away.from) > LONGEST_AWAY_DAYS) {
      add(
        "wrong-value",
        ["week", "away", at],
        "These days away last longer than a year.",
        "Check the years; after so long a break make a new plan.",
      );
    }
  });
  if (value.client.born !== undefined && value.client.born >= value.starts) {
    add(
      "wrong-value",
      ["client", "born"],
      "The client is born after the plan starts.",
      "Check the two dates.",
    );
  }
  value.measures.forEach((measure, at) => {
    if (measure.on > value.starts) {
      add(
        "wrong-value",
        ["measures", at, "on"],
        "This measure is later than the first day of the plan.",
        "Check the date; a plan is made from what is known before it starts.",
        "warning",
      );
    }
    if (
      measure.test === "speed" &&
      measure.speed === undefined &&
      (measure.distance === undefined || measure.time === undefined)
    ) {
      add(
        "missing-field",
        ["measures", at],
        "A speed test needs speed, or distance and time.",
        "Add what was measured.",
      );
    }
  });
  const flags = value.flags.map((one) => (typeof one === "string" ? one : one.flag));
  flags.forEach((flag, at) => {
    if (flags.indexOf(flag) === at) return;
    add("wrong-value", ["flags", at], `The flag ${flag} is named twice.`, "Keep one of the two.");
  });
  value.goals.forEach((goal, at) => {
    if (goal.want <= goal.now) {
      add(
        "wrong-value",
        ["goals", at, "want"],
        "This goal is already reached.",
        "want should be more than now.",
        "warning",
      );
    }
  });
  value.equipment.forEach((item, at) => {
    if (typeof item === "string") return;
    if (item.from !== undefined && item.up_to !== undefined && item.from > item.up_to) {
      add(
        "wrong-value",
        ["equipment", at, "up_to"],
        "The most it makes is less than the least.",
        "Swap from and up_to.",
      );
    }
    if (item.steps !== undefined && item.steps === 0) {
      add(
        "wrong-value",
        ["equipment", at, "steps"],
        "A step of 0 kg makes no loads.",
        "Give the step between two loads.",
      );
    }
    if (item.up_to !== undefined && item.steps === undefined) {
      add(
        "missing-field",
        ["equipment", at],
        "With up_to, steps is needed too.",
        "Give the step between two loads, such as steps: 1 kg.",
      );
    }
  });
  faults.push(...flagFaults(plan), ...signedFaults(plan));
  return faults;
}

/** Every statement of free time, and where it stands. */
function freeTimes({ week }: Plan) {
  const { free, other_weeks, rota } = week;
  const days: [Path, Partial<Record<PartOfDay, number>>][] = [
    ...WEEKDAYS.map((day): [Path, typeof free.mon] => [["free", day], free[day]]),
    ...other_weeks.flatMap((span, at) =>
      WEEKDAYS.map((day): [Path, typeof free.mon] => [
        ["other_weeks", at, "free", day],
        span.free[day],
      ]),
    ),
    [["rota", "free_on"], rota?.free_on],
    [["rota", "free_off"], rota?.free_off],
  ].map(([path, parts]) => [path as Path, (parts ?? {}) as Partial<Record<PartOfDay, number>>]);
  return days.flatMap(([path, parts]) =>
    PARTS.map((part) => ({ path: ["week", ...path, part], part, seconds: parts[part] ?? 0 })),
  );
}

/** Whether the client was asked for health flags is for the plan to say: "none" is an answer, nothing is not. */
function flagFaults({ value, source }: Read<Plan>): Fault[] {
  if (value.flags.length > 0 || source.holds(["flags"])) return [];
  const place = source.at(["flags"]);
  return [
    new Fault(
      "flags-not-asked",
      `Nothing says whether ${value.client.name} was asked for health flags.`,
      {
        level: "warning",
        place,
        hint: "Name those there are; where there are none, write flags: none.",
        remedies: [
          {
            lead: "If the client was asked, and has none of them",
            sentence: "Write flags: none.",
            edits: [{ kind: "set", path: ["flags"], value: "none" }],
          },
        ],
      },
    ),
  ];
}

/** A plan that nobody signed, or whose signature does not say what it covers. */
function signedFaults({ value, source }: Read<Plan>): Fault[] {
  const { signed } = value;
  if (signed?.digest !== undefined) return [];
  const place = source.at([signed === undefined ? "id" : "signed"]);
  const message =
    signed === undefined
      ? `The plan for ${value.client.name} is not signed off: its booklet prints as a draft.`
      : `Nothing says what ${signed.by} has signed, only when: the booklet prints as a draft.`;
  return [
    new Fault("not-signed", message, {
      level: "warning",
      place,
      hint: `When a clinician has checked it: paulatim sign ${source.file} --by "${signed?.by ?? "NAME"}"`,
      frame: source.frame(place),
    }),
  ];
}

const amount = (minutes: number): string => timeText(minutes * 60);
