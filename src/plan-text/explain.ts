/** How the numbers of one exercise came about, for the clinician. */
import type { MadeProgram } from "../booklet.ts";
import type { Bout, TrailStep } from "../dose/types.ts";

/** The trail of every number of a card, week by week where it changes; undefined if the card is not in the program. */
export function explainText({ program, dosed }: MadeProgram, card: string): string | undefined {
  const bouts = dosed.weeks.flatMap((week) => week.bouts.filter((bout) => bout.card === card));
  const found = program.phases
    .flatMap((phase) => phase.exercises)
    .find((exercise) => exercise.card.card.id === card);
  if (bouts.length === 0 || !found) return undefined;
  const lines = [`${found.card.card.clinical} [${card}]`, ""];
  for (const { first, last, bout } of spans(bouts)) {
    lines.push(first === last ? `Week ${first}` : `Weeks ${first} to ${last}`);
    for (const [name, steps] of Object.entries(bout.trail)) {
      lines.push(`  ${name}`);
      for (const step of steps ?? []) lines.push(`    ${stepText(step)}`);
    }
    lines.push("");
  }
  return lines.join("\n").trimEnd();
}

function stepText({ step, says, value, unit, source }: TrailStep): string {
  const number = value === undefined ? "" : ` = ${value}${unit ? ` ${unit}` : ""}`;
  return `${step.padEnd(9)} ${says}${number}${source ? `  [${source}]` : ""}`;
}

function spans(bouts: readonly Bout[]): { first: number; last: number; bout: Bout }[] {
  const out: { first: number; last: number; bout: Bout; key: string }[] = [];
  for (const bout of bouts) {
    const key = JSON.stringify(bout.trail);
    const open = out.at(-1);
    if (open && open.key === key && open.last === bout.week - 1) open.last = bout.week;
    else out.push({ first: bout.week, last: bout.week, bout, key });
  }
  return out;
}
