/** A computed dose in the client's words. */

import type { LibraryCard } from "../cards/library.ts";
import type { Vocabulary } from "../cards/vocabulary.ts";
import type { Bout } from "../dose/types.ts";
import type { Repetitions } from "../prescription/fields.ts";
import { type Count, countIfMany, countOf, shapeOf } from "../prescription/shape.ts";
import type { HowOften } from "../schedule/how-often.ts";
import type { DoseLine } from "./exercise-model.ts";
import type { Writer } from "./numbers.ts";
import { shortSpeed, speedWords } from "./speed-words.ts";

/** A dose without its weeks. */
type WeekDose = Omit<DoseLine, "weeks">;

/** A dose without its weeks and how often. */
export type DoseWords = Omit<WeekDose, "often">;

/**
 * What a bout asks of the client: how much, with what, how fast, how hard.
 * `things`: names for what makes the load; without them the load stands alone.
 */
export function doseWords(
  bout: Bout,
  card: LibraryCard,
  things: Vocabulary | undefined,
  write: Writer,
): DoseWords {
  const { words } = write;
  return {
    work: workWords(bout, card, write),
    load: loadWords(bout, things, write),
    pace: paceWords(bout, card, write),
    rest: restWords(bout, card, write),
    effort:
      bout.effort === undefined
        ? undefined
        : words.say("dose.effort", { effort: write.number(bout.effort) }),
  };
}

/** Doses of weeks in order, with weeks of the same dose brought together: "Weeks 2 to 3". */
export function doseLines(
  weeks: readonly { readonly week: number; readonly dose: WeekDose }[],
  write: Writer,
): DoseLine[] {
  const spans: { first: number; last: number; dose: WeekDose }[] = [];
  for (const { week, dose } of weeks) {
    const open = spans.at(-1);
    if (open && open.last === week - 1 && same(open.dose, dose)) open.last = week;
    else spans.push({ first: week, last: week, dose });
  }
  return spans.map(({ first, last, dose }) => ({ weeks: weekWords(first, last, write), ...dose }));
}

/** "Week 1" or "Weeks 2 to 3". */
export function weekWords(first: number, last: number, { words }: Writer): string {
  return first === last
    ? words.say("weeks.one", { first })
    : words.say("weeks.span", { first, last });
}

/** The dose as short as a diary needs it: "3 × 15, 8 kg". What has no plain short form is said in words. */
export function shortDose(bout: Bout, card: LibraryCard, write: Writer): string {
  const { words } = write;
  const work = shortWork(bout, card, write);
  const kg = bout.load.kg;
  if (kg !== undefined && kg > 0) {
    return `${work}, ${write.mass(kg)}`;
  }
  if (bout.load.level !== undefined) {
    return `${work}, ${words.say("dose.load.band", { level: bout.load.level })}`;
  }
  const speed = bout.load.kind === "speed" ? shortSpeed(bout.load, write) : undefined;
  return speed === undefined ? work : `${work}, ${speed}`;
}

/** `time`: how lengths of time are written. */
function workWords(
  bout: Bout,
  { card }: LibraryCard,
  write: Writer,
  time: Writer["time"] = write.time,
): string {
  const { words } = write;
  const { sets } = bout;
  const shape = shapeOf(bout);
  if (!shape) return words.say("dose.work.reps_once", { reps: sets });
  switch (shape.kind) {
    case "time":
      return words.say("dose.work.timed", { sets, time: time(shape.timeS) });
    case "turns": {
      const { work, easy, times } = shape.turns;
      const values = { work: time(work), easy: time(easy), times };
      const key = card.trains === "running" ? "dose.work.run_walk" : "dose.work.turns";
      const turns = words.say(key, values);
      return sets === 1 ? capital(turns) : words.say("dose.work.sets_of_turns", { sets, turns });
    }
    case "distance": {
      const distance = write.distance(shape.distanceM);
      const count = countIfMany(shape.reps);
      return count
        ? countedWords("distances", count, { sets, distance }, write)
        : words.say("dose.work.distance", { sets, distance });
    }
    case "holds": {
      const held = time(shape.holdS);
      const count = countIfMany(shape.reps);
      return count
        ? countedWords("holds", count, { sets, time: held }, write)
        : words.say("dose.work.holds", { sets, time: held });
    }
    case "repetitions":
      return countedWords("reps", countOf(shape.reps), { sets }, write);
  }
}

/** Words for what is done several times in a set. */
function countedWords(
  what: "reps" | "holds" | "distances",
  count: Count,
  values: Readonly<Record<string, string | number>>,
  write: Writer,
): string {
  const say = (more: Readonly<Record<string, string | number>>) =>
    write.words.say(`dose.count.${what}.${count.kind}`, { ...values, ...more });
  switch (count.kind) {
    case "number":
      return say({ reps: count.n });
    case "range":
      return say({ low: count.low, high: count.high });
    case "each":
      return say({ list: listText(count.sets, write) });
  }
}

function shortWork(bout: Bout, card: LibraryCard, write: Writer): string {
  const { words } = write;
  const { sets } = bout;
  const shape = shapeOf(bout);
  const once = (amount: string) => words.say("dose.short.time", { sets, time: amount });
  if (shape?.kind === "time") return once(write.shortTime(shape.timeS));
  if (shape?.kind === "distance" && !countIfMany(shape.reps))
    return once(write.distance(shape.distanceM));
  if (shape?.kind === "holds" && !countIfMany(shape.reps))
    return once(write.shortTime(shape.holdS));
  const count = shape?.kind === "repetitions" ? countOf(shape.reps) : undefined;
  if (count?.kind === "number") return words.say("dose.short.reps", { sets, reps: count.n });
  if (count?.kind === "range")
    return words.say("dose.short.range", { sets, low: count.low, high: count.high });
  return workWords(bout, card, write, write.shortTime);
}

const listText = (sets: Repetitions, write: Writer): string =>
  sets.map(({ low, high }) => rangeText(low, high, write)).join(", ");

/** Text that opens a line, with a capital letter. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const rangeText = (low: number, high: number, write: Writer): string =>
  low === high ? write.number(low) : `${write.number(low)}–${write.number(high)}`;

function loadWords(bout: Bout, things: Vocabulary | undefined, write: Writer): string | undefined {
  const { load } = bout;
  const { words } = write;
  const what = load.equipment === undefined || !things ? "" : thingName(load.equipment, things);
  switch (load.kind) {
    case "none":
      return undefined;
    case "speed":
      return speedWords(bout, write);
    case "band":
      return load.level === undefined
        ? words.say("dose.load.band_free")
        : words.say("dose.load.band", { level: load.level });
    case "body":
      return words.say("dose.load.body");
    case "weight": {
      const { kg } = load;
      if (kg === undefined) return words.say("dose.load.weight_free");
      if (kg === 0) return words.say(load.addedTo === "body" ? "dose.load.body" : "dose.load.none");
      const values = { mass: write.mass(kg), what };
      if (load.addedTo === "body" && what !== "") return words.say("dose.load.body_and", values);
      return what === "" ? values.mass : words.say("dose.load.with", values);
    }
  }
}

/** What a thing is called in a table: backpack, bar. */
export function thingName(id: string, { equipment }: Vocabulary): string {
  return equipment[id]?.short ?? equipment[id]?.say ?? id;
}

/** The parts of a repetition in the order in which they come, with pauses of some length. */
function paceWords({ tempo }: Bout, { card }: LibraryCard, write: Writer): string | undefined {
  if (!tempo) return undefined;
  const { words } = write;
  const way = (seconds: number | "X", name: string) =>
    seconds === "X"
      ? words.say("dose.pace.fast", { way: name })
      : seconds === 0
        ? ""
        : words.say("dose.pace.move", { seconds, way: name });
  const pause = (seconds: number | "X") =>
    seconds === "X" || seconds === 0 ? "" : words.say("dose.pace.pause", { seconds });
  const lift = [way(tempo.lift, wayWords(card, "lift", write)), pause(tempo.top)];
  const lower = [way(tempo.lower, wayWords(card, "lower", write)), pause(tempo.bottom)];
  const parts = (card.pace.first === "lift" ? [...lift, ...lower] : [...lower, ...lift]).filter(
    (part) => part !== "",
  );
  return parts.length === 0 ? undefined : capital(parts.join(", "));
}

/**
 * What a card calls one of its two ways. Of a card in another language than the booklet no words stand
 * inside the booklet's sentences: such a way goes there or back.
 */
export function wayWords(
  { pace, language }: LibraryCard["card"],
  way: "lift" | "lower",
  { words, language: here }: Writer,
): string {
  const own = pace[way];
  if (own === undefined) return words.say(way === "lift" ? "dose.pace.up" : "dose.pace.down");
  if (language === here) return own;
  return words.say(way === pace.first ? "dose.pace.there" : "dose.pace.back");
}

/** Between runs one walks. */
function restWords(bout: Bout, { card }: LibraryCard, write: Writer): string | undefined {
  const { words } = write;
  const { restS, restRepsS, sets } = bout;
  const walked = card.trains === "running";
  const parts: string[] = [];
  if (restS !== undefined && restS > 0 && sets > 1) {
    parts.push(words.say(walked ? "dose.rest_walk" : "dose.rest", { time: write.time(restS) }));
  }
  if (restRepsS !== undefined && restRepsS > 0) {
    const held = shapeOf(bout)?.kind === "holds";
    const key = held ? "dose.rest_reps" : walked ? "dose.walk_each" : "dose.rest_each";
    parts.push(words.say(key, { time: write.time(restRepsS) }));
  }
  return parts.length === 0 ? undefined : parts.join(". ");
}

/**
 * How often, as the calendar has it: "Every second day", or where days taken do not let it "Every
 * second day, on days that are free: 3 or 4 times a week".
 */
export function oftenWords({ frequency, instead }: HowOften, { words }: Writer): string {
  if (instead?.high === 0) return words.say("dose.often.none");
  if ("perWeek" in frequency) {
    return words.say("dose.often.per_week", { n: instead?.high ?? frequency.perWeek });
  }
  const often =
    "perDay" in frequency
      ? words.say("dose.often.per_day", { n: frequency.perDay })
      : words.say("dose.often.every", { n: frequency.everyDays });
  if (instead === undefined) return often;
  const { low, high } = instead;
  return low === high
    ? words.say("dose.often.free_days", { often, n: high })
    : words.say("dose.often.free_days_range", { often, low, high });
}

const same = (a: WeekDose, b: WeekDose): boolean =>
  a.work === b.work &&
  a.load === b.load &&
  a.pace === b.pace &&
  a.rest === b.rest &&
  a.effort === b.effort &&
  a.often === b.often;
