/** Reads what a booklet calls its phases: "Phase 1 of 2: Twice a day", one after another. */
import type { Say } from "../facts.ts";
import type { Context } from "./context.ts";
import { NONE } from "./dose-facts.ts";

/** The titles of the phases that a text begins with, and what follows them; each is told with its label. */
export function readPhases(
  text: string,
  say: Say,
  place: string,
  { protocol, label }: Context,
): { readonly titles: readonly string[]; readonly rest: string } {
  const words = label("phase.label").replace(/\{\w+\}/g, "\\d+");
  const labelled = new RegExp(`^(${words}): `);
  const titles: string[] = [];
  let rest = text;
  for (;;) {
    const [head = "", name = NONE] = labelled.exec(rest) ?? [];
    const after = rest.slice(head.length);
    const next = protocol.phases
      .map(({ title }) => title)
      .filter((title) => after.startsWith(title))
      .sort((a, b) => b.length - a.length)[0];
    if (next === undefined) return { titles, rest };
    say("phase label", next, name, place);
    titles.push(next);
    rest = after.slice(next.length).trim();
  }
}
