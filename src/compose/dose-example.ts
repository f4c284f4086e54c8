/** Explains the words of doses once, by an example of the client's own, on the page that is the first to use them. */
import type { LibraryCard } from "../cards/library.ts";
import type { Bout } from "../dose/types.ts";
import { type Count, countIfMany, countOf, shapeOf } from "../prescription/shape.ts";
import { isInPhase } from "../program/phase-weeks.ts";
import type { ProgramPhase } from "../program/program.ts";
import type { Composing } from "./composing.ts";
import { doseWords } from "./dose-words.ts";
import type { DoseExplained } from "./exercise-model.ts";
import type { Writer } from "./numbers.ts";

/** What each of the phases' pages explains: the first of them a dose, and the first that asks for effort its numbers. */
export function explainedOn(
  phases: readonly ProgramPhase[],
  { dosed, write }: Composing,
): DoseExplained[] {
  const bouts = phases.map((phase) =>
    dosed.weeks
      .filter(({ week }) => isInPhase(phase, week))
      .flatMap((week) => week.bouts.filter(({ phase: id }) => id === phase.id)),
  );
  const efforts = bouts.map((all) => [...new Set(all.flatMap(({ effort }) => effort ?? []))]);
  const first = efforts.findIndex((all) => all.length > 0);
  const numbers = [...(efforts[first] ?? [])].sort((a, b) => a - b);
  const effort = { numbers, words: write.list(numbers.map(write.number)) };
  return phases.map((phase, at) => {
    const [bout] = at === 0 ? (bouts[0] ?? []) : [];
    const card = phase.exercises.find(({ key }) => key === bout?.key)?.card;
    return {
      work:
        bout &&
        card &&
        write.words.say("explain.example", {
          dose: doseWords(bout, card, undefined, write).work,
          says: inPlainWords(bout, card, write),
        }),
      effort: at === first ? effort : undefined,
    };
  });
}

/** What a dose asks for, step by step, whatever the exercise. */
function inPlainWords(bout: Bout, { card }: LibraryCard, write: Writer): string {
  const { words } = write;
  const { sets, restS = 0 } = bout;
  const walked = card.trains === "running";
  const pause = { time: write.time(restS) };
  const rest = () => {
    if (restS === 0) return words.say("explain.rest_free");
    return walked ? words.say("explain.walk", pause) : words.say("explain.rest", pause);
  };
  const once = onceInWords(bout, write);
  if (once === undefined) return words.say("explain.each", { rest: rest() });
  return sets === 1
    ? words.say("explain.once", { once })
    : words.say("explain.again", { once, rest: rest(), sets });
}

/** One set; undefined where each is another. */
function onceInWords(bout: Bout, write: Writer): string | undefined {
  const { words } = write;
  const shape = shapeOf(bout);
  switch (shape?.kind) {
    case "repetitions":
      return countWords("reps", countOf(shape.reps), {}, write);
    case "holds": {
      const held = { time: write.time(shape.holdS) };
      const count = countIfMany(shape.reps);
      return count ? countWords("holds", count, held, write) : words.say("explain.hold", held);
    }
    case "distance": {
      const far = { distance: write.distance(shape.distanceM) };
      const count = countIfMany(shape.reps);
      return count ? countWords("distances", count, far, write) : words.say("explain.far", far);
    }
    case "time":
      return words.say("explain.time", { time: write.time(shape.timeS) });
    case "turns": {
      const { work, easy, times } = shape.turns;
      return words.say("explain.turns", { work: write.time(work), easy: write.time(easy), times });
    }
    case undefined:
      return words.say("explain.do");
  }
}

function countWords(
  what: "reps" | "holds" | "distances",
  count: Count,
  values: Readonly<Record<string, string>>,
  { words }: Writer,
): string | undefined {
  switch (count.kind) {
    case "number":
      return words.say(`explain.${what}.number`, { ...values, reps: count.n });
    case "range":
      return words.say(`explain.${what}.range`, { ...values, low: count.low, high: count.high });
    case "each":
      return undefined;
  }
}
