/** The words of how an exercise is done, read back into numbers: pace, rests, effort, how often. */
import { type Language, timeOrThrow } from "./amounts.ts";
import type { SaidDose } from "./dose-words.ts";
import { plainNumber, readNumber } from "./numbers.ts";

/** The client's words for the two ways of a movement. */
export interface WayWords {
  readonly lift: string;
  readonly lower: string;
}

const OFTEN: Readonly<Record<Language, readonly (readonly [RegExp, (n: string) => string])[]>> = {
  en: [
    [/\bonce a week\b/i, () => "1 a week"],
    [/\btwice a week\b/i, () => "2 a week"],
    [/\b(\d) days a week\b/i, (n) => `${n} a week`],
    [/\bonce every day\b/i, () => "1 a day"],
    [/\btwice every day\b/i, () => "2 a day"],
    [/\b(\d) times every day\b/i, (n) => `${n} a day`],
    [/\bevery second day\b/i, () => "every 2"],
    [/\bevery third day\b/i, () => "every 3"],
    [/\bevery (\d) days\b/i, (n) => `every ${n}`],
    [/\bevery day\b/i, () => "7 a week"],
  ],
  de: [
    [/\beinmal pro Woche\b/i, () => "1 a week"],
    [/\b(\d) Tage pro Woche\b/i, (n) => `${n} a week`],
    [/\bjeden Tag einmal\b/i, () => "1 a day"],
    [/\bjeden Tag zweimal\b/i, () => "2 a day"],
    [/\bjeden Tag (\d) Mal\b/i, (n) => `${n} a day`],
    [/\bjeden zweiten Tag\b/i, () => "every 2"],
    [/\bjeden dritten Tag\b/i, () => "every 3"],
    [/\balle (\d) Tage\b/i, (n) => `every ${n}`],
    [/\bjeden Tag\b/i, () => "7 a week"],
  ],
};

/** What the calendar has where it does not hold how often: "3", "3–4", or none at all. */
const FREE: Readonly<Record<Language, RegExp>> = {
  en: /, on days that are free: (once|twice|\d+ times|\d+ or \d+ times) a week/i,
  de: /, an freien Tagen: (einmal|zweimal|\d+ Mal|\d+ bis \d+ Mal) pro Woche/i,
};
const NO_DAY: Readonly<Record<Language, RegExp>> = {
  en: /none: no day is free/i,
  de: /gar nicht: kein Tag ist frei/i,
};

/** "3" or "3 to 4" of "3 times" or "3 or 4 times". */
function readTimes(words: string): string {
  if (/^(once|einmal)$/i.test(words)) return "1";
  if (/^(twice|zweimal)$/i.test(words)) return "2";
  return (words.match(/\d+/g) ?? []).join(" to ");
}

const TIME_WORDS: Readonly<Record<Language, string>> = {
  en: "(\\d+ min \\d+(?:\\.\\d+)? s|[\\d.]+ (?:seconds?|minutes?|hours?))",
  de: "(\\d+ Min\\. \\d+(?:,\\d+)? Sek\\.|[\\d,]+ (?:Sekunden?|Minuten?|Stunden?))",
};

const RESTS: Readonly<Record<Language, readonly (readonly ["rest" | "restReps", string])[]>> = {
  en: [
    ["rest", "Rest TIME between sets"],
    ["rest", "Walk TIME in between"],
    ["restReps", "Rest TIME between holds"],
    ["restReps", "Rest TIME after each one"],
    ["restReps", "Walk TIME after each one"],
  ],
  de: [
    ["rest", "TIME Pause zwischen den Sätzen"],
    ["rest", "Gehen Sie dazwischen TIME"],
    ["restReps", "TIME Pause nach jedem Halten"],
    ["restReps", "TIME Pause nach jedem Mal"],
    ["restReps", "Gehen Sie nach jedem Mal TIME"],
  ],
};

const EFFORT: Readonly<Record<Language, RegExp>> = {
  en: /should feel ([\d.]+) out of 10/i,
  de: /Anstrengung: ([\d,]+) von 10/i,
};

/** Pace, rests, effort and how often, from any text that says them in any order. What is left over is pace. */
export function readHow(text: string, language: Language, ways: WayWords): SaidDose {
  let left = text;
  const take = (pattern: RegExp): string | undefined => {
    const found = pattern.exec(left);
    if (!found) return undefined;
    left = `${left.slice(0, found.index)}\n${left.slice(found.index + found[0].length)}`;
    return found[1] ?? "";
  };
  const said: { -readonly [K in keyof SaidDose]: string | undefined } = {};
  for (const [field, words] of RESTS[language]) {
    const time = take(new RegExp(words.replace("TIME", TIME_WORDS[language]), "i"));
    if (time !== undefined) said[field] = timeOrThrow(time, language);
  }
  const effort = take(EFFORT[language]);
  if (effort !== undefined) said.effort = plainNumber(readNumber(effort, language));
  const free = take(FREE[language]);
  for (const [pattern, value] of OFTEN[language]) {
    const n = take(pattern);
    if (n !== undefined) said.often = value(n);
  }
  if (free !== undefined) said.often = `${said.often}, ${readTimes(free)} when free`;
  if (take(NO_DAY[language]) !== undefined) said.often = "none";
  const rest = left
    .split(/[\n·]/)
    .map((part) => part.replace(/^[\s.,;]+|[\s.,;]+$/g, ""))
    .filter((part) => part !== "");
  if (rest.length > 1) throw new Error(`no rule reads "${rest.join('" and "')}" of "${text}"`);
  if (rest[0] !== undefined) said.pace = readPace(rest[0], language, ways);
  return said as SaidDose;
}

const PACE: Readonly<
  Record<Language, { readonly pause: RegExp; readonly move: RegExp; readonly fast: RegExp }>
> = {
  en: { pause: /^hold (\d+) seconds?$/i, move: /^(\d+) seconds? (.+)$/i, fast: /^(.+) fast$/i },
  de: {
    pause: /^(\d+) Sekunden? halten$/i,
    move: /^(\d+) Sekunden? (.+)$/i,
    fast: /^schnell (.+)$/i,
  },
};

function readPace(text: string, language: Language, { lift, lower }: WayWords): string {
  const { pause, move, fast } = PACE[language];
  const wayOf = (words: string): string => {
    const said = words.toLowerCase();
    if (said === lift.toLowerCase()) return "lift";
    if (said === lower.toLowerCase()) return "lower";
    throw new Error(`"${words}" is neither "${lift}" nor "${lower}", in "${text}"`);
  };
  return text
    .split(", ")
    .map((part) => {
      const held = pause.exec(part);
      if (held) return `hold ${held[1]}`;
      const moved = move.exec(part);
      if (moved) return `${wayOf(moved[2] ?? "")} ${moved[1]}`;
      const quick = fast.exec(part);
      if (quick) return `${wayOf(quick[1] ?? "")} X`;
      throw new Error(`no rule reads the pace "${part}"`);
    })
    .join(", ");
}

/** The order of a movement, for a tempo written "3-0-3-0": lowering, pause below, lifting, pause above. */
export function paceOf(tempo: string, first: "lift" | "lower"): string {
  const [lower = "0", bottom = "0", lift = "0", top = "0"] = tempo.split("-");
  const part = (name: string, seconds: string) => (seconds === "0" ? [] : [`${name} ${seconds}`]);
  const pause = (seconds: string) =>
    seconds === "0" || seconds === "X" ? [] : [`hold ${seconds}`];
  const up = [...part("lift", lift), ...pause(top)];
  const down = [...part("lower", lower), ...pause(bottom)];
  const order = first === "lift" ? [...up, ...down] : [...down, ...up];
  return order.length === 0 ? "none" : order.join(", ");
}
