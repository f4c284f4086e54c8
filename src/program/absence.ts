/** Why an exercise is not in a client's program, or not in all of its weeks, and which edit of the plan would bring it. */
import type { LibraryCard } from "../cards/library.ts";
import type { Edit, Remedy } from "../edits/edit.ts";
import type { Fault } from "../faults/fault.ts";
import type { Plan } from "../plan/schema.ts";
import type { Read } from "../read/source.ts";
import { courseCalendar } from "./away.ts";
import { changedExercises } from "./changes.ts";
import { type CoursePhase, coursePhases, lastPrinted } from "./course.ts";
import { heldFlags, waitsForReview } from "./flags.ts";
import type { ProgramParts } from "./parts.ts";
import { statedSign } from "./signs.ts";
import { absent, unfit } from "./unfit.ts";
import { doneIn, spanWords, statedIn } from "./unused-changes.ts";
import { waysIn } from "./ways-in.ts";

/** Where a card stands in a plan's course. */
export interface Presence {
  /** Weeks of the calendar, from 1, in which the client does it. */
  readonly weeks: readonly number[];
  /** The signs without which it is not begun, as the course states them. */
  readonly signs: readonly string[];
  /** Whether a flag rules it out until a review: it waits for the clinician's word. */
  readonly waits: boolean;
  /** A warning, not-in-program, for each reason why it is not there, or not in some of its weeks. */
  readonly absent: readonly Fault[];
}

/** Where a card is in a client's course, whether or not that can be made, and why it is not elsewhere. */
export function presenceOf(card: LibraryCard, parts: ProgramParts): Presence {
  const { plan, protocol, library } = parts;
  const { id } = card.card;
  const { language } = protocol.value;
  const course = coursePhases(plan, protocol).value;
  const calendar = courseCalendar(plan.value, lastPrinted(course));
  const done = course.flatMap((one) =>
    doneIn(plan, protocol, course, one, id)
      .filter((week) => week <= one.printed)
      .map((week) => calendar.indexOf(one.firstWeek + week - 1) + 1),
  );
  const weeks = [...new Set(done)].filter((week) => week > 0).sort((a, b) => a - b);
  const held = heldFlags(plan, course, calendar).value;
  const against = unfit(card, held, weeks.length > 0 ? weeks : everyWeek(calendar.length), parts);
  const named = course
    .filter(({ printed }) => printed > 0)
    .flatMap((one) =>
      changedExercises(plan, protocol, course, one).filter((other) => other.card === id),
    );
  const signs = named.flatMap(({ when }) => when ?? []);
  const isNamed = done.length > 0 || course.some((one) => statedIn(one, id).length > 0);
  return {
    weeks,
    signs: [...new Set(signs.map((sign) => statedSign(sign, library, language)))],
    waits: weeks.length > 0 && waitsForReview(card, held),
    absent: [
      ...changed(id, plan),
      ...cut(id, course, plan),
      ...(done.length > 0 && weeks.length === 0 ? [skipped(id, plan)] : []),
      ...against,
      ...(isNamed ? [] : [unnamed(card, course, against.length === 0, parts)]),
    ],
  };
}

/** What of the plan leaves the card out, or has another in its place. */
function changed(id: string, plan: Read<Plan>): Fault[] {
  const { leave_out, swap } = plan.value;
  const where = (change: Plan["leave_out" | "swap"][number]) =>
    change.phase === undefined && change.weeks === undefined ? "" : ` ${spanWords(change)}`;
  const without = leave_out.flatMap((change, at) => {
    if (change.card !== id) return [];
    const says = `The plan leaves out ${id}${where(change)}: ${change.why}`;
    const hint = "To have it there, take this entry out of leave_out.";
    return [absent(plan, ["leave_out", at], says, { hint })];
  });
  const others = swap.flatMap((change, at) => {
    if (change.card !== id) return [];
    const says = `The plan has ${change.to} in the place of ${id}${where(change)}: ${change.why}`;
    const hint = "To have it there, take this entry out of swap.";
    return [absent(plan, ["swap", at], says, { hint })];
  });
  return [...without, ...others];
}

/** The first phase that has the card in weeks after the plan's last. */
function cut(id: string, course: readonly CoursePhase[], plan: Read<Plan>): Fault[] {
  const { weeks } = plan.value;
  if (weeks === undefined) return [];
  const after = course.flatMap((one) => {
    const own = statedIn(one, id).filter((week) => week > one.printed);
    const inCourse = own.map((week) => one.firstWeek + week - 1);
    const [first] = inCourse;
    return first === undefined ? [] : [{ phase: one.phase.id, first, last: Math.max(...inCourse) }];
  });
  const [next] = after.sort((a, b) => a.first - b.first);
  if (next === undefined) return [];
  const says = `The plan prints ${weeks} ${weeks === 1 ? "week" : "weeks"} of the course; ${next.phase} has ${id} from week ${next.first} to week ${next.last}.`;
  const remedy: Remedy = {
    lead: "If the client is to go on so far",
    sentence: `Print ${next.last} weeks of the course.`,
    edits: [{ kind: "set", path: ["weeks"], value: next.last }],
  };
  return [absent(plan, ["weeks"], says, { remedies: [remedy] })];
}

/** All weeks of the card fall into weeks away that the course leaves out. */
function skipped(id: string, plan: Read<Plan>): Fault {
  const edits = plan.value.week.away.flatMap((away, at): Edit[] =>
    typeof away !== "string" && away.then === "skip"
      ? [{ kind: "set", path: ["week", "away", at, "then"], value: "shift" }]
      : [],
  );
  const remedy: Remedy = {
    lead: "If the course should wait for the client",
    sentence: "Move the rest of the course by the weeks away (then: shift).",
    edits,
  };
  const says = `The weeks away leave out every week of ${id}.`;
  return absent(plan, ["week", "away"], says, { remedies: [remedy] });
}

const everyWeek = (weeks: number): number[] => Array.from({ length: weeks }, (_, at) => at + 1);

/** Neither protocol nor plan names the card. `fits`: whether nothing stands against it. */
function unnamed(
  card: LibraryCard,
  course: readonly CoursePhase[],
  fits: boolean,
  parts: ProgramParts,
): Fault {
  const { plan, protocol } = parts;
  const { id, clinical } = card.card;
  const says = `${protocol.value.id} does not have ${id} (${clinical}), and the plan does not add it.`;
  const details = fits
    ? { remedies: waysIn(card, course, parts) }
    : { hint: "What stands against it comes first; then it can be added (add)." };
  return absent(plan, ["protocol"], says, details);
}
