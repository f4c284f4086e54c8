/** `paulatim plan PLAN --explain CARD`: how the numbers of an exercise came about, or why it is not there. */
import type { IssuedBefore, MadeProgram } from "../booklet.ts";
import { unknownCard } from "../cards/ladder.ts";
import type { LibraryCard } from "../cards/library.ts";
import { EXIT } from "../faults/catalogue.ts";
import { Fault, isError, sortFaults } from "../faults/fault.ts";
import { faultJson, numberedRemedies } from "../faults/print.ts";
import { explainText } from "../plan-text/explain.ts";
import { planJson } from "../plan-text/json.ts";
import { startLines, weeksLine, whyNotText } from "../plan-text/why-not.ts";
import { type Presence, presenceOf } from "../program/absence.ts";
import { signsToBegin } from "../program/signs.ts";
import { printFaults, type Terminal } from "../terminal/terminal.ts";
import { withCauses } from "./causes.ts";
import type { Workspaces } from "./one-plan.ts";

/** A card of the library, and where it stands in a plan's course. */
interface Asked extends Presence {
  readonly card: LibraryCard;
}

/**
 * The card that was asked about; where the plan itself cannot be read the faults that say why. Throws a
 * usage fault for a card that the library does not have.
 *
 * @param text the plan's text in place of what its file holds
 */
export function askedAbout(
  path: string,
  id: string,
  workspaces: Workspaces,
  text?: string,
): Asked | { readonly faults: readonly Fault[] } {
  const { value, faults } = workspaces.parts(path, text);
  if (!value) return { faults };
  const { parts, workspace } = value;
  const card = parts.library.cards.get(id);
  if (card) return { card, ...presenceOf(card, parts) };
  const known = [...parts.library.cards.keys()];
  const [first, cause] = withCauses([unknownCard(id, parts.plan, [], known)], workspace);
  throw new Fault("usage", cause?.message ?? first?.message ?? `There is no card ${id}.`, {
    place: cause?.place,
    hint: first?.hint,
  });
}

/** Prints how a card came to be in the program, or why it is not there. Returns the exit status. */
export function explain(
  path: string,
  { explain: id, json }: { readonly explain: string; readonly json?: boolean | undefined },
  { workspaces, before, terminal }: Asking,
): number {
  const asked = askedAbout(path, id, workspaces);
  const { value, faults } = workspaces.make(path, before);
  const status = faults.some(isError) ? EXIT.input : EXIT.done;
  if ("faults" in asked) {
    if (json) terminal.out(JSON.stringify({ faults: asked.faults.map(faultJson) }, null, 2));
    else printFaults(terminal, asked.faults);
    return EXIT.input;
  }
  // the signs of a plan that is stopped are those of its course
  const starts = value
    ? { ...asked, ...signsToBegin(value.made.program, id) }
    : { ...asked, asks: false };
  if (json) {
    terminal.out(JSON.stringify(answerJson(starts, value?.made, faults), null, 2));
    return status;
  }
  const { card, weeks, absent } = asked;
  const numbers = value && explainText(value.made, id);
  const remedies = numberedRemedies(absent);
  const lines = [
    ...(numbers === undefined ? [] : [numbers]),
    [weeksLine(card.card, weeks), ...startLines(starts)].join("\n"),
    ...(absent.length > 0 ? [whyNotText(sortFaults(absent), remedies)] : []),
    ...(remedies.length > 0
      ? [
          `To have one of these written into the plan: paulatim plan ${path} --explain ${id} --apply NUMBER`,
        ]
      : []),
  ];
  terminal.out(lines.join("\n\n"));
  if (!value) {
    terminal.err("The plan itself is stopped:\n");
    printFaults(terminal, faults.filter(isError));
  }
  return status;
}

/** What begins the card: its signs in the client's words, or the clinician's word. */
interface Starting extends Asked {
  readonly asks: boolean;
}

interface Asking {
  readonly workspaces: Workspaces;
  readonly before: IssuedBefore;
  readonly terminal: Terminal;
}

/** The answer as data: `weeks` are empty for a card that is not there, `trails` for a plan that is stopped. */
function answerJson(
  { card, weeks, signs, asks, waits, absent }: Starting,
  made: MadeProgram | undefined,
  faults: readonly Fault[],
) {
  const { id, clinical } = card.card;
  const all = made ? planJson(made, []).weeks : [];
  return {
    version: 1,
    card: id,
    title: clinical,
    in_program: weeks.length > 0,
    weeks,
    starts_when: signs,
    after_review: waits || asks,
    reasons: sortFaults(absent).map(faultJson),
    trails: all.flatMap(({ week, trails }) =>
      Object.entries(trails)
        .filter(([key]) => key.endsWith(`/${id}`))
        .map(([key, numbers]) => ({ week, key, numbers })),
    ),
    faults: sortFaults(faults.filter(isError)).map(faultJson),
  };
}
