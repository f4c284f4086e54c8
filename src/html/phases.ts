/** The pages of the phases: each with its table, or with what changes since the phase before. */
import type { Booklet } from "../compose/model.ts";
import type { Words } from "../words/words.ts";
import { phaseDoses } from "./doses.ts";
import type { Part } from "./pages.ts";
import { changesSince } from "./phase-changes.ts";
import { drawEffort } from "./scales.ts";

type Phase = Booklet["phases"][number];
type Numbers = ReadonlyMap<string, number>;
type PhaseView = ReturnType<typeof phaseViews>[number];

/** One or two phases that are one part of the booklet. */
interface PhasePart {
  readonly part: Part;
  readonly together: boolean;
  readonly phases: readonly PhaseView[];
}

/** Each phase as its template needs it; `numbers`: those of the exercises' pages. */
export function phaseViews({ phases, edition }: Booklet, numbers: Numbers, words: Words) {
  let last: Phase | undefined;
  return phases.map((phase, at) => {
    // a phase that only says its changes stands under the one whose table it goes by
    const changes = edition === "standard" ? last && changesSince(last, phase) : undefined;
    const after = changes && last ? sinceView(last, phase, changes, numbers, words) : undefined;
    last = after === undefined ? phase : undefined;
    const table = phaseDoses(phase, numbers);
    return {
      ...phase,
      ...table,
      most: ofMost(phase, table.most, numbers, words),
      explains: explains(phase, words),
      after,
      part: { page: `phase-${at + 1}`, head: phase.label ?? phase.title },
    };
  });
}

/** A phase that goes by the table of the one before stands under it, on its page where there is room. */
export function partsOf(phases: readonly PhaseView[]): readonly PhasePart[] {
  return phases.flatMap((phase, at): PhasePart[] => {
    if (phase.after) return [];
    const next = phases[at + 1];
    if (!next?.after) return [{ part: phase.part, together: false, phases: [phase] }];
    const head = [phase, next].map(({ part }) => part.head).join(" · ");
    return [{ part: { ...phase.part, head }, together: true, phases: [phase, next] }];
  });
}

function sinceView(
  { title, anchor }: Phase,
  { rows }: Phase,
  changes: NonNullable<ReturnType<typeof changesSince>>,
  numbers: Numbers,
  { say }: Words,
) {
  return {
    title,
    anchor,
    changes: changes.map((one) =>
      one.rows === undefined
        ? say("phase.changes.all", { says: one.says })
        : `${named(rows, one.rows, numbers, say)} ${one.says}`,
    ),
  };
}

/** What holds for most exercises, and which these are. */
function ofMost(
  { rows }: Phase,
  most: ReturnType<typeof phaseDoses>["most"],
  numbers: Numbers,
  { say }: Words,
) {
  return (
    most && {
      who: named(rows, most.rows, numbers, say),
      says: most.parts.map(({ says }) => says),
    }
  );
}

/** "Exercises 1, 2, 4:" */
function named(
  rows: Phase["rows"],
  places: readonly number[],
  numbers: Numbers,
  say: Words["say"],
): string {
  const list = places.map((at) => numbers.get(rows[at]?.anchor ?? "") ?? 0);
  return say("phase.changes.some", { n: list.length, list: list.join(", ") });
}

/** What the words of a dose mean; undefined where an earlier page has said it. */
function explains({ explained: { work, effort } }: Phase, words: Words) {
  if (work === undefined && effort === undefined) return undefined;
  return { work, effort: effort && drawEffort(effort, words) };
}
