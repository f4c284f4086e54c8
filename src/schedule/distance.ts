/** How far a client goes each week, as laid out, and whether that grows faster than plan, protocol or card allow. */

import { DoseContext } from "../dose/context.ts";
import { growth } from "../dose/load.ts";
import { metresPerSecond } from "../dose/time.ts";
import type { Bout } from "../dose/types.ts";
import { choices, type Remedy, type Value } from "../edits/edit.ts";
import { Fault } from "../faults/fault.ts";
import { shapeOf } from "../prescription/shape.ts";
import type { Program, ProgramExercise } from "../program/program.ts";
import { atMost, floorTo, show, showPercent } from "../units/rounding.ts";
import type { Schedule } from "./schedule.ts";
import { boutsIn } from "./week-loads.ts";

/**
 * The most that may be stated, and what holds for running where nothing is: common practice; no study gives
 * a sure limit.
 */
export const MOST_DISTANCE_GROWTH = 0.2;

/**
 * Metres of one bout, both sides: of distances as stated, of times and turns where the speed is known, at its
 * fast end. 0 where it has no way to go; undefined where it is a run whose way nobody knows.
 */
export function metresOf(bout: Bout, running: boolean): number | undefined {
  const shape = shapeOf(bout);
  const speed = metresPerSecond(bout.load.kmH);
  const unknown = running ? undefined : 0;
  switch (shape?.kind) {
    case "distance": {
      const { reps, distanceM } = shape;
      const sets = Array.from({ length: bout.sets }, (_, set) => reps?.[set] ?? reps?.at(-1));
      return sets.reduce((sum, each) => sum + (each?.high ?? 1) * distanceM, 0) * bout.sides;
    }
    case "time":
      return speed === undefined ? unknown : speed * shape.timeS * bout.sets * bout.sides;
    case "turns": {
      const { work, times } = shape.turns;
      return speed === undefined ? unknown : speed * work * times * bout.sets * bout.sides;
    }
    case "holds":
    case "repetitions":
    case undefined:
      return 0;
  }
}

/** Metres of each week, as laid out; undefined where a run of it has no known length. */
export function weekMetres(program: Program, schedule: Schedule): (number | undefined)[] {
  const runs = new Set(
    exercisesOf(program)
      .filter(isRun)
      .map(({ key }) => key),
  );
  return schedule.weeks.map((week) =>
    boutsIn(week).reduce<number | undefined>((sum, bout) => {
      const metres = metresOf(bout, runs.has(bout.key));
      return sum === undefined || metres === undefined ? undefined : sum + metres;
    }, 0),
  );
}

const exercisesOf = ({ phases }: Program): ProgramExercise[] =>
  phases.flatMap(({ exercises }) => exercises);
const isRun = ({ card: { card } }: ProgramExercise): boolean => card.trains === "running";

/** What is measured as one: all running together, or one other card. */
interface Group {
  readonly name: string;
  readonly exercises: readonly ProgramExercise[];
  readonly running: boolean;
  /** The limit, and whether somebody stated it. */
  readonly limit: number;
  readonly stated: boolean;
}

/**
 * distance-steep: a week goes further over the last one before it that had any than the limit allows. An
 * error where plan, protocol or card state the limit, unless the plan accepts it; a warning for running where
 * nobody does. distance-unknown, a warning: a limit is stated, and a run has no known length.
 * Judged on the weeks as laid out; a first week back after a break is no base. Also change-unused.
 */
export function distanceFaults(program: Program, schedule: Schedule): Fault[] {
  const context = new DoseContext(program, undefined);
  const steep = new Set<string>();
  for (const group of groupsOf(program)) checkGroup(context, schedule, group, steep);
  const { value: plan, source } = program.plan;
  const unused = plan.accept.flatMap(({ code, card }, at) => {
    if (code !== "distance-steep" || steep.has(card)) return [];
    const place = source.at(["accept", at]);
    return [
      new Fault("change-unused", `There is no ${code} for ${card} to accept.`, {
        level: "warning",
        place,
        frame: source.frame(place),
        hint: "Take the entry out, or correct its card.",
      }),
    ];
  });
  return [...context.findings.faults((place) => context.frameOf(place)), ...unused];
}

function groupsOf(program: Program): Group[] {
  const all = exercisesOf(program);
  const runs = all.filter(isRun);
  const others = [...new Set(all.filter((one) => !isRun(one)).map(({ card }) => card.card.id))];
  const made = (name: string, exercises: readonly ProgramExercise[], running: boolean): Group => {
    const limits = [
      program.protocol.value.distance_growth,
      ...exercises.map(({ card }) => card.card.distance_growth),
    ].filter((limit) => limit !== undefined);
    const own =
      program.plan.value.distance_growth ?? (limits.length ? Math.min(...limits) : undefined);
    const limit = own ?? MOST_DISTANCE_GROWTH;
    return { name, exercises, running, limit, stated: own !== undefined };
  };
  return [
    ...(runs.length > 0 ? [made("running", runs, true)] : []),
    ...others
      .map((id) =>
        made(
          id,
          all.filter(({ card }) => card.card.id === id),
          false,
        ),
      )
      .filter(({ stated }) => stated),
  ];
}

function checkGroup(
  context: DoseContext,
  schedule: Schedule,
  group: Group,
  steep: Set<string>,
): void {
  const keys = new Set(group.exercises.map(({ key }) => key));
  let before: { readonly metres: number; readonly week: number } | undefined;
  for (const week of schedule.weeks) {
    const bouts = boutsIn(week).filter(({ key }) => keys.has(key));
    const each = bouts.map((bout) => metresOf(bout, group.running));
    if (each.includes(undefined)) {
      if (group.stated) reportUnknown(context, group, week.number, bouts);
      before = undefined;
      continue;
    }
    const metres = each.reduce<number>((sum, one) => sum + (one ?? 0), 0);
    if (metres <= 0) continue;
    const share = before && growth(before.metres, metres);
    if (before && share !== undefined && !atMost(share, group.limit)) {
      for (const { card } of bouts) steep.add(card);
      report(context, group, { bouts, metres, share, before, week: week.number });
    }
    if (!week.eased || before === undefined) before = { metres, week: week.number };
  }
}

interface Steep {
  readonly bouts: readonly Bout[];
  readonly metres: number;
  readonly share: number;
  readonly before: { readonly metres: number; readonly week: number };
  readonly week: number;
}

function report(context: DoseContext, group: Group, steep: Steep): void {
  const { program } = context;
  const { bouts, metres, share, before, week } = steep;
  const accepted = program.plan.value.accept.find(
    ({ code, card }) => code === "distance-steep" && bouts.some((bout) => bout.card === card),
  );
  const what = group.running ? "All running together" : group.name;
  const whose = group.stated
    ? "the limit is"
    : "no limit is stated, and common practice is at most";
  context.findings.add(
    {
      code: "distance-steep",
      cause: group.name,
      level: group.stated && !accepted ? "error" : "warning",
      weight: share,
      place: () => placeOf(group, bouts),
      say: (weeks) =>
        `${what} goes from ${kilometres(before.metres)} in week ${before.week} to ${kilometres(metres)} in week ${week}, ${showPercent(share)} more (${weeks}); ${whose} ${showPercent(group.limit)}.${accepted ? ` Accepted: ${accepted.why}` : ""}`,
      hint: `At most ${kilometres(floorTo(before.metres * (1 + group.limit), 1))} in week ${week}: go less far, or less often, or spread the growth over more weeks.`,
      remedies: () => remediesFor(program, group, steep),
    },
    week,
  );
}

/** Less far in this week, where one exercise makes it all and the plan says nothing else of it; or accepting it. */
function remediesFor(program: Program, group: Group, steep: Steep): Remedy[] {
  const { bouts, metres, before, week } = steep;
  const [bout] = bouts;
  if (bout === undefined) return [];
  const remedy = (sentence: string, list: string, entry: Readonly<Record<string, Value>>) => ({
    sentence,
    edits: [{ kind: "append", path: [list], value: { ...entry, why: null } } as const],
  });
  const alone = bouts.every(({ key }) => key === bout.key) && bout.distanceM !== undefined;
  const phase = program.phases.find(({ id }) => id === bout.phase);
  const courseWeek = program.courseWeeks[week - 1];
  const free = !program.plan.value.redose.some(({ card }) => card === bout.card);
  const each = floorTo(
    ((bout.distanceM ?? 0) * before.metres * (1 + group.limit)) / metres,
    (bout.distanceM ?? 0) >= 100 ? 5 : 1,
  );
  const less =
    alone && free && phase && courseWeek !== undefined && each > 0
      ? [
          remedy(`${show(each)} m each time for ${bout.card} in week ${week}.`, "redose", {
            card: bout.card,
            phase: phase.id,
            weeks: String(courseWeek - phase.courseWeek + 1),
            dose: { distance: `${show(each)} m` },
          }),
        ]
      : [];
  const accept = group.stated
    ? [
        remedy(`Accept distance-steep for ${bout.card} as it is.`, "accept", {
          code: "distance-steep",
          card: bout.card,
        }),
      ]
    : [];
  return choices([...less, ...accept]);
}

function reportUnknown(
  context: DoseContext,
  group: Group,
  week: number,
  bouts: readonly Bout[],
): void {
  context.findings.add(
    {
      code: "distance-unknown",
      cause: group.name,
      level: "warning",
      place: () => placeOf(group, bouts),
      say: (weeks) =>
        `Growth in distance is limited to ${showPercent(group.limit)}, but a run has a time and no known speed, so how far it goes is not known (${weeks}).`,
      hint: "State a distance, or a speed or pace as its target.",
    },
    week,
  );
}

const placeOf = ({ exercises }: Group, bouts: readonly Bout[]) =>
  exercises.find(({ key }) => key === bouts[0]?.key)?.place ?? exercises[0]?.place;

const kilometres = (metres: number): string =>
  metres < 1000 ? `${show(metres)} m` : `${show(metres / 1000)} km`;
