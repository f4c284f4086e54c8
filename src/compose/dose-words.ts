/** A computed dose in the client's words. */
import type { LibraryCard } from "../cards/library.ts";
import type { Vocabulary } from "../cards/vocabulary.ts";
import type { Bout } from "../dose/types.ts";
import type { Repetitions } from "../prescription/fields.ts";
import type { DoseLine } from "./model.ts";
import type { Writer } from "./numbers.ts";

/** A dose without its weeks. */
export type DoseWords = Omit<DoseLine, "weeks">;

/**
 * What a bout asks of the client: how much, with what, how fast, how hard, how often.
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
    work: workWords(bout, write),
    load: loadWords(bout, things, write),
    pace: paceWords(bout, card, write),
    rest: restWords(bout, card, write),
    effort:
      bout.effort === undefined
        ? undefined
        : words.say("dose.effort", { effort: write.number(bout.effort) }),
    often: oftenWords(bout, write),
  };
}

/** Doses of weeks in order, with weeks of the same dose brought together: "Weeks 2 to 3". */
export function doseLines(
  weeks: readonly { readonly week: number; readonly dose: DoseWords }[],
  write: Writer,
): DoseLine[] {
  const spans: { first: number; last: number; dose: DoseWords }[] = [];
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

/** The dose as short as a diary needs it: "3 × 15, 8 kg". */
export function shortDose(bout: Bout, write: Writer): string {
  const { words } = write;
  const work = shortWork(bout, write);
  const kg = bout.load.kg;
  if (kg !== undefined && kg > 0) {
    return `${work}, ${words.say("dose.load.kg_plain", { kg: write.number(kg) })}`;
  }
  if (bout.load.level !== undefined) {
    return `${work}, ${words.say("dose.load.band", { level: bout.load.level })}`;
  }
  return work;
}

function workWords(bout: Bout, write: Writer): string {
  const { words } = write;
  const { sets, reps, holdS, timeS, distanceM } = bout;
  if (timeS !== undefined) return words.say("dose.work.timed", { sets, time: write.time(timeS) });
  const first = reps?.[0];
  if (distanceM !== undefined && reps === undefined) {
    return words.say("dose.work.distance", { sets, distance: `${write.number(distanceM)} m` });
  }
  if (holdS !== undefined) {
    const time = write.time(holdS);
    if (first === undefined || first.high === 1)
      return words.say("dose.work.holds", { sets, time });
    return words.say("dose.work.holds_reps", { sets, reps: first.high, time });
  }
  if (reps === undefined || first === undefined)
    return words.say("dose.work.reps_once", { reps: sets });
  if (!allSame(reps)) {
    const list = reps.map(({ low, high }) => rangeText(low, high, write)).join(", ");
    return words.say("dose.work.each_set", { sets, list });
  }
  return first.low === first.high
    ? words.say("dose.work.reps", { sets, reps: first.low })
    : words.say("dose.work.range", { sets, low: first.low, high: first.high });
}

function shortWork(bout: Bout, write: Writer): string {
  const { words } = write;
  const { sets, reps, holdS, timeS } = bout;
  if (timeS !== undefined)
    return words.say("dose.short.time", { sets, time: write.shortTime(timeS) });
  const first = reps?.[0];
  if (holdS !== undefined) {
    const time = write.shortTime(holdS);
    return first === undefined || first.high === 1
      ? words.say("dose.short.time", { sets, time })
      : words.say("dose.short.holds_reps", { sets, reps: first.high, time });
  }
  if (!reps || !first) return words.say("dose.work.reps_once", { reps: sets });
  if (!allSame(reps)) return reps.map(({ low, high }) => rangeText(low, high, write)).join(", ");
  return first.low === first.high
    ? words.say("dose.short.reps", { sets, reps: first.low })
    : words.say("dose.short.range", { sets, low: first.low, high: first.high });
}

const allSame = (reps: Repetitions): boolean =>
  reps.every(({ low, high }) => low === reps[0]?.low && high === reps[0]?.high);

const rangeText = (low: number, high: number, write: Writer): string =>
  low === high ? write.number(low) : `${write.number(low)}–${write.number(high)}`;

function loadWords(
  { load }: Bout,
  things: Vocabulary | undefined,
  write: Writer,
): string | undefined {
  const { words } = write;
  const what = load.equipment === undefined || !things ? "" : shortName(load.equipment, things);
  switch (load.kind) {
    case "none":
      return undefined;
    case "speed":
      return load.kmH === undefined ? load.words : `${write.number(load.kmH)} km/h`;
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
      const values = { kg: write.number(kg), what };
      if (load.addedTo === "body" && what !== "") return words.say("dose.load.body_and", values);
      return words.say(what === "" ? "dose.load.kg_plain" : "dose.load.kg", values);
    }
  }
}

function shortName(id: string, { equipment }: Vocabulary): string {
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
  const lift = [way(tempo.lift, card.pace.lift ?? words.say("dose.pace.up")), pause(tempo.top)];
  const lower = [
    way(tempo.lower, card.pace.lower ?? words.say("dose.pace.down")),
    pause(tempo.bottom),
  ];
  const parts = (card.pace.first === "lift" ? [...lift, ...lower] : [...lower, ...lift]).filter(
    (part) => part !== "",
  );
  return parts.length === 0 ? undefined : parts.join(", ");
}

/** Between runs one walks. */
function restWords(
  { restS, restRepsS, sets }: Bout,
  { card }: LibraryCard,
  write: Writer,
): string | undefined {
  const { words } = write;
  const parts: string[] = [];
  if (restS !== undefined && restS > 0 && sets > 1) {
    const key = card.trains === "running" ? "dose.rest_walk" : "dose.rest";
    parts.push(words.say(key, { time: write.time(restS) }));
  }
  if (restRepsS !== undefined && restRepsS > 0) {
    parts.push(words.say("dose.rest_reps", { time: write.time(restRepsS) }));
  }
  return parts.length === 0 ? undefined : parts.join(". ");
}

function oftenWords({ frequency }: Bout, { words }: Writer): string {
  if ("perWeek" in frequency) return words.say("dose.often.per_week", { n: frequency.perWeek });
  if ("perDay" in frequency) return words.say("dose.often.per_day", { n: frequency.perDay });
  return words.say("dose.often.every", { n: frequency.everyDays });
}

const same = (a: DoseWords, b: DoseWords): boolean =>
  a.work === b.work &&
  a.load === b.load &&
  a.pace === b.pace &&
  a.rest === b.rest &&
  a.effort === b.effort &&
  a.often === b.often;
