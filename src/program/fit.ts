/** What stands against giving a card to this client in its weeks: flags that rule it out, and things that are not there. */
import type { LibraryCard } from "../cards/library.ts";
import { Fault, type FaultDetails } from "../faults/fault.ts";
import { spansOf, weekSpanText } from "../units/week-span.ts";
import type { Named } from "./changes.ts";
import { type HeldFlag, openFlags, rulesIn } from "./flags.ts";
import type { ProgramParts } from "./parts.ts";
import { lackSentence, missing, proposals, rulingOut } from "./propose.ts";
import { ownedWays, standInRemedies } from "./stand-ins.ts";

/** An exercise of a phase with the weeks in which it is done. */
export interface Placed {
  readonly named: Named;
  readonly card: LibraryCard;
  readonly phase: string;
  /** By weeks of the phase, from 1, the week of the calendar; without those left out for days away. */
  readonly weeks: ReadonlyMap<number, number>;
}

/** Faults not-for-client and equipment-missing, each once for a card however many phases have it. */
export function fitFaults(
  all: readonly Placed[],
  flags: readonly HeldFlag[],
  parts: ProgramParts,
): Fault[] {
  const byCard = new Map<string, Placed[]>();
  for (const placed of all) {
    if (placed.weeks.size === 0) continue;
    const { id } = placed.card.card;
    byCard.set(id, [...(byCard.get(id) ?? []), placed]);
  }
  return [...byCard.values()].flatMap((placed) => [
    ...ruledOut(placed, flags, parts),
    ...lacking(placed, flags, parts),
  ]);
}

/** The first flag that rules the card out in some of its weeks. */
function ruledOut(
  placed: readonly Placed[],
  flags: readonly HeldFlag[],
  parts: ProgramParts,
): Fault[] {
  const [first] = placed;
  if (!first) return [];
  const { plan } = parts;
  const ruling = (week: number) =>
    rulingOut(
      first.card,
      flags.filter((one) => rulesIn(one, week)).map(({ flag }) => flag),
    );
  const all = placed.flatMap(({ weeks }) => [...weeks.values()]);
  const found = all.flatMap((week) => ruling(week) ?? [])[0];
  const held = flags.find(({ flag }) => flag === found?.flag);
  if (!found || !held) return [];
  const within = placed
    .map((one) => ({
      ...one,
      weeks: new Map([...one.weeks].filter(([, week]) => ruling(week)?.flag === found.flag)),
    }))
    .filter(({ weeks }) => weeks.size > 0);
  const whole = within.reduce((sum, { weeks }) => sum + weeks.size, 0) === all.length;
  const when = whole ? "" : `, which holds in ${weekWords(within)}`;
  const review =
    held.byReview && held.freeFrom === undefined
      ? " If a review may free it, write when that is, such as until: { review: { week: 6 } }: the card may then stand in the plan from that week on, for when you have said so."
      : "";
  const place = plan.source.at(["flags", held.at]);
  return [
    new Fault(
      "not-for-client",
      `${first.card.card.id} is not for a client with the flag ${found.flag}${when}: ${found.why}${review}`,
      { place, frame: plan.source.frame(place), ...moves(within, whole, flags, parts) },
    ),
  ];
}

function lacking(
  placed: readonly Placed[],
  flags: readonly HeldFlag[],
  parts: ProgramParts,
): Fault[] {
  const [first] = placed;
  if (!first) return [];
  const { plan, library } = parts;
  const weeks = placed.flatMap((one) => [...one.weeks.values()]);
  const things = missing(first.card, plan.value, openFlags(flags, weeks), library.words);
  if (things.length === 0) return [];
  const inPlan = first.named.source === plan.source;
  const place = plan.source.at(inPlan ? first.named.path : ["equipment"]);
  return [
    new Fault(
      "equipment-missing",
      lackSentence(plan.value.client.name, things, first.card.card.id),
      {
        place,
        frame: plan.source.frame(place),
        ...orOwned(moves(placed, true, flags, parts), things, plan.value.client.name),
      },
    ),
  ];
}

/** The client may have what is missing, too. */
function orOwned(
  { hint, remedies = [] }: Pick<FaultDetails, "hint" | "remedies">,
  things: readonly string[],
  name: string,
): Pick<FaultDetails, "hint" | "remedies"> {
  const owned = ownedWays(things, name);
  // without other remedies it is the hint that says what else could be done
  if (remedies.length > 0) return { hint, remedies: [...remedies, ...owned] };
  const ways = owned.map(({ lead, sentence }) => `${lead}: ${sentence}`);
  return { hint: [hint, ...ways].join(" ") };
}

/** What a plan can do about an exercise that does not fit, by where it comes from. */
const MOVES = {
  protocol: { other: "Write it under swap", none: "leave it out (leave_out)" },
  swap: {
    other: "Write it as to of this swap",
    none: "leave the exercise out (leave_out) in place of this swap",
  },
  add: { other: "Add it instead", none: "take it out of add" },
} as const;

/** What could be done instead. `whole`: in all weeks of the card; else the weeks are named as a plan names them. */
function moves(
  placed: readonly Placed[],
  whole: boolean,
  flags: readonly HeldFlag[],
  parts: ProgramParts,
): Pick<FaultDetails, "hint" | "remedies"> {
  const [first] = placed;
  if (!first) return {};
  const { plan, library } = parts;
  const weeks = placed.flatMap((one) => [...one.weeks.values()]);
  const standIns = proposals(first.card, library, plan.value, openFlags(flags, weeks));
  const [instead] = standIns;
  const move = MOVES[first.named.origin];
  const spans = whole
    ? undefined
    : placed.flatMap(({ phase, weeks: here }) =>
        spansOf([...here.keys()]).map((span) => ({ phase, weeks: weekSpanText(span) })),
      );
  const words = spans?.map((span) => `phase: ${span.phase}, weeks: ${span.weeks}`).join("; ");
  const only = words === undefined ? "" : ` (${words})`;
  return {
    remedies: standInRemedies(first.card, standIns, first.named, plan, spans),
    hint: instead
      ? `Could be done instead: ${instead.card.id} (${instead.card.clinical}). ${move.other}${only} if it is right for this client.`
      : `No card of the library could stand in; ${move.none}${only}, or write one.`,
  };
}

function weekWords(placed: readonly Placed[]): string {
  const weeks = placed.flatMap((one) => [...one.weeks.values()]);
  const spans = spansOf(weeks).map(weekSpanText);
  return `week${weeks.length === 1 ? "" : "s"} ${spans.join(", ")}`;
}
