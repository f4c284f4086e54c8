/** Reads the page of easier moves: in place of which exercise each stands, and that it is no more than that. */
import type { Fact, Say } from "../facts.ts";
import { type Context, waysOf } from "./context.ts";
import { titleAtStart } from "./dose-pages.ts";
import { readLoad, readWork, type SaidDose } from "./dose-words.ts";
import { readHow } from "./how-words.ts";
import { NOT_ITS_OWN } from "./instead.ts";
import { plainNumber } from "./numbers.ts";
import { readPain, sayCallLevel } from "./pain-words.ts";
import { itemsIn, type Section, textsIn } from "./sections.ts";

/**
 * The page of easier moves. `exercises`: the titles of the booklet's exercises in the order of their
 * numbers; `doses`: what their pages say of them.
 */
export function readEasierPage(
  { parts }: Section,
  exercises: readonly string[],
  doses: readonly Fact[],
  say: Say,
  context: Context,
): void {
  const { label } = context;
  const told = new Set<string>();
  let title = "";
  for (const part of parts) {
    const place = `${title} › ${part.title}`;
    if (part.title === label("frame.exercise.pain")) {
      const { during, after } = readPain(textsIn(part.blocks)[0] ?? "", context);
      say("pain of an easier move", title, `${during}, then ${after}`, place);
    } else if (part.title.startsWith(label("frame.exercise.stop"))) {
      const phone = /\((.*)\)$/.exec(part.title)?.[1] ?? "(no number)";
      say("telephone", "clinic", phone, place);
      sayCallLevel(itemsIn(part.blocks), say, place, context);
    } else if (context.titleAtStart(part.title) !== undefined) {
      title = titleAtStart(part.title, context);
      for (const exercise of readMove(part, title, exercises, doses, say, context))
        told.add(exercise);
    }
  }
  for (const exercise of exercises)
    if (!told.has(exercise)) say("easier move", exercise, NOT_ITS_OWN, "all of the page");
}

/** Of one easier move: in place of which exercises it stands, and how much of it is done. Gives those exercises. */
function readMove(
  { blocks }: Section,
  title: string,
  exercises: readonly string[],
  doses: readonly Fact[],
  say: Say,
  context: Context,
): string[] {
  const [instead = "", dose = ""] = textsIn(blocks);
  const numbers = (instead.match(/\d+/g) ?? []).map(Number);
  if (numbers.length === 0) throw new Error(`"${instead}" names no exercise`);
  const said = readDose(dose, title, context);
  return numbers.map((number) => {
    const exercise = exercises[number - 1] ?? `(there is no exercise ${number})`;
    say("easier move", exercise, title, `${title} › ${instead}`);
    const key = `${title} for ${exercise}`;
    say("no more than the exercise", key, "no more", "what the page is for");
    for (const more of moreThan(said, exercise, doses))
      say("no more than the exercise", key, more, `${title} › ${dose}`);
    return exercise;
  });
}

/** "2 sets of 10. 4 kg. 3 seconds up, 3 seconds down. Rest 1 minute between sets. It should feel 3 out of 10." */
function readDose(text: string, title: string, context: Context): SaidDose {
  const { language } = context;
  const work = sentence(text, (words) => readWork(words, language));
  if (!work) throw new Error(`no rule reads the work of "${text}"`);
  const load = sentence(work.rest, (words) => ({ load: readLoad(words, language) }));
  const ways = waysOf(context.cardByTitle(title), context);
  const how = readHow(load?.rest ?? work.rest, language, ways);
  return { ...work.said, ...load?.said, ...how };
}

/** The shortest beginning, up to a full stop, that a rule reads, for abbreviations have full stops too. */
function sentence<T>(
  text: string,
  read: (words: string) => T,
): { said: T; rest: string } | undefined {
  for (let at = text.indexOf("."); at >= 0; at = text.indexOf(".", at + 1)) {
    try {
      return { said: read(text.slice(0, at)), rest: text.slice(at + 1).trim() };
    } catch {
      // the sentence may be longer
    }
  }
  return undefined;
}

/** Numbers that are higher than in the lightest week of the exercise, in words. */
function moreThan(said: SaidDose, exercise: string, doses: readonly Fact[]): string[] {
  const least = (kind: string): number | undefined => {
    const numbers = doses
      .filter((fact) => fact.kind === kind && fact.key.endsWith(` · ${exercise}`))
      .flatMap(({ value }) => amounts(value));
    return numbers.length === 0 ? undefined : Math.min(...numbers);
  };
  const held = least("hold");
  const longHold = least("reps") === 1 ? held : undefined;
  const over = (["sets", "reps", "hold", "effort", "load"] as const).flatMap((kind) => {
    // one long hold is no number of repetitions
    if (kind === "reps" && longHold !== undefined) return [];
    const most = Math.max(...amounts(said[kind] ?? ""), Number.NEGATIVE_INFINITY);
    const limit = least(kind);
    return limit !== undefined && most > limit
      ? [`${kind} ${plainNumber(most)} over ${plainNumber(limit)}`]
      : [];
  });
  const seconds = setSeconds(said);
  if (longHold === undefined || seconds === undefined || seconds <= longHold) return over;
  return [...over, `seconds of a set ${plainNumber(seconds)} over ${plainNumber(longHold)}`];
}

/** Seconds of a set of several repetitions, by their hold or their pace; undefined where neither is said. */
function setSeconds({ reps = "", hold = "", pace = "" }: SaidDose): number | undefined {
  const most = Math.max(...amounts(reps), 1);
  const [held] = amounts(hold);
  const paced = (pace.match(/[\d.]+/g) ?? []).map(Number);
  const each = held ?? (paced.length > 0 ? paced.reduce((sum, one) => sum + one) : undefined);
  return each === undefined || most === 1 ? undefined : most * each;
}

/** The highest number that each set, or the load, states: "6–8" is 8, "kg 4" is 4. */
const amounts = (value: string): number[] =>
  value.split(",").flatMap((one) => {
    const numbers = one.match(/[\d.]+/g) ?? [];
    return numbers.length === 0 ? [] : [Number(numbers.at(-1))];
  });
