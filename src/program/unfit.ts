/** What stands against giving a client a card that is not in their program, or is stopped by it, as answers. */
import type { LibraryCard } from "../cards/library.ts";
import { Fault, type FaultDetails } from "../faults/fault.ts";
import type { Plan } from "../plan/schema.ts";
import type { Path, Read } from "../read/source.ts";
import { spansOf, weekSpanText } from "../units/week-span.ts";
import { cardAgeFaults } from "./age.ts";
import { type HeldFlag, openFlags, rulesIn } from "./flags.ts";
import type { ProgramParts } from "./parts.ts";
import { lackSentence, missing, rulingOut } from "./propose.ts";
import { ownedWays } from "./stand-ins.ts";

/** What stands against giving the card to this client in some weeks: flags, things that are not there, age. */
export function unfit(
  card: LibraryCard,
  held: readonly HeldFlag[],
  weeks: readonly number[],
  { plan, library }: ProgramParts,
): Fault[] {
  const { id } = card.card;
  const lacks = missing(card, plan.value, openFlags(held, weeks), library.words);
  const { name } = plan.value.client;
  return [
    ...flagged(card, held, weeks, plan),
    ...(lacks.length === 0
      ? []
      : [
          absent(plan, ["equipment"], lackSentence(name, lacks, id), {
            remedies: ownedWays(lacks, name),
          }),
        ]),
    ...aged(card, plan),
  ];
}

/** An age that the card is not meant for; one that the plan accepts stands against nothing. */
const aged = (card: LibraryCard, plan: Read<Plan>): Fault[] =>
  cardAgeFaults(card, plan)
    .filter(({ level }) => level === "error")
    .map(({ message, hint }) => absent(plan, ["client", "born"], message, { hint }));

/** The first flag that rules the card out, and the weeks in which it does where these are not all. */
function flagged(
  card: LibraryCard,
  held: readonly HeldFlag[],
  weeks: readonly number[],
  plan: Read<Plan>,
): Fault[] {
  const ruling = (week: number) =>
    rulingOut(
      card,
      held.filter((one) => rulesIn(one, week)).map(({ flag }) => flag),
    );
  const found = weeks.flatMap((week) => ruling(week) ?? [])[0];
  const at = held.find(({ flag }) => flag === found?.flag)?.at;
  if (found === undefined || at === undefined) return [];
  const ruled = weeks.filter((week) => ruling(week)?.flag === found.flag);
  const isWhole = ruled.length === weeks.length;
  const spans = spansOf(ruled).map(weekSpanText).join(", ");
  const when = isWhole ? "" : `, which holds in weeks ${spans}`;
  const says = `${card.card.id} is not for a client with the flag ${found.flag}${when}: ${found.why}`;
  const hint = isWhole
    ? "No edit brings it while the flag holds. If the flag ends within the course, write when: until."
    : "It can come in later weeks only: name them (phase, weeks).";
  return [absent(plan, ["flags", at], says, { hint })];
}

/** An answer, placed in the plan where what it says stands. */
export function absent(
  { source }: Read<Plan>,
  path: Path,
  message: string,
  details: Pick<FaultDetails, "hint" | "remedies">,
): Fault {
  const place = source.at(path);
  return new Fault("not-in-program", message, { level: "warning", place, ...details });
}
