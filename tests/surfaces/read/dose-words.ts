/** The words of a dose read back into numbers: what English and German pages may say, as rules of their own. */
import { type Language, readDistance, readTime, timeOrThrow } from "./amounts.ts";
import { plainNumber, readNumber } from "./numbers.ts";
import { readShortSpeed, readSpeed } from "./speed-words.ts";

/** Numbers of a dose as its words state them; what they do not state is undefined. Times in seconds. */
export interface SaidDose {
  readonly sets?: string;
  /** "12", "6–8", or one for each set: "12,10,8". */
  readonly reps?: string;
  readonly hold?: string;
  readonly time?: string;
  readonly distance?: string;
  /** "180+120×8": work, easy, and how many times. */
  readonly turns?: string;
  readonly load?: string;
  /** "lift 3, hold 2, lower 3", in the order of the movement. */
  readonly pace?: string;
  readonly rest?: string;
  readonly restReps?: string;
  readonly effort?: string;
  readonly often?: string;
}

const NONE = "none";
const COUNTED = { hold: NONE, time: NONE, distance: NONE, turns: NONE };

/** How the words name a number of sets, one count for all sets or one for each, and what is counted. */
const SHAPES: Readonly<
  Record<Language, readonly (readonly [RegExp, "reps" | "holds" | "distances"])[]>
> = {
  en: [
    [/^(?<sets>\d+) sets? of (?<count>\d+(?: to \d+)?)$/, "reps"],
    [/^(?<sets>\d+) sets? of (?<count>\d+(?: to \d+)?) holds?, (?<amount>.+) each$/, "holds"],
    [/^(?<sets>\d+) sets?: (?<count>[\d–]+(?:, [\d–]+)+) holds?, (?<amount>.+) each$/, "holds"],
    [/^(?<sets>\d+) holds? of (?<amount>.+)$/, "holds"],
    [/^(?<sets>\d+) sets? of (?<count>\d+(?: to \d+)?) times? (?<amount>.+)$/, "distances"],
    [/^(?<sets>\d+) sets?: (?<count>[\d–]+(?:, [\d–]+)+) times? (?<amount>.+)$/, "distances"],
    [/^(?<sets>\d+) sets?: (?<count>[\d–]+(?:, [\d–]+)*)$/, "reps"],
  ],
  de: [
    [/^(?<sets>\d+) (?:Satz|Sätze) zu (?<count>\d+(?: bis \d+)?)$/, "reps"],
    [
      /^(?<sets>\d+) (?:Satz|Sätze): je (?<count>\d+(?: bis \d+)?) Mal (?<amount>.+) halten$/,
      "holds",
    ],
    [
      /^(?<sets>\d+) (?:Satz|Sätze): (?<count>[\d–]+(?:, [\d–]+)+) Mal, je (?<amount>.+) halten$/,
      "holds",
    ],
    [/^(?<sets>\d+) Mal (?<amount>.+) halten$/, "holds"],
    [/^(?<sets>\d+) (?:Satz|Sätze): je (?<count>\d+(?: bis \d+)?) Mal (?<amount>.+)$/, "distances"],
    [
      /^(?<sets>\d+) (?:Satz|Sätze): (?<count>[\d–]+(?:, [\d–]+)+) Mal, je (?<amount>.+)$/,
      "distances",
    ],
    [/^(?<sets>\d+) (?:Satz|Sätze): (?<count>[\d–]+(?:, [\d–]+)*)$/, "reps"],
  ],
};

const SEVERAL: Readonly<Record<Language, RegExp>> = {
  en: /^(\d+) times? (.+)$/,
  de: /^(\d+) Mal (.+)$/,
};
const ONCE: Readonly<Record<Language, RegExp>> = { en: /^(\d+) times?$/, de: /^(\d+) Mal$/ };

const TURNS: Readonly<Record<Language, readonly RegExp[]>> = {
  en: [
    /^(?:(\d+) sets: )?run (.+), walk (.+), (once|\d+ times)$/i,
    /^(?:(\d+) sets: )?go for (.+), ease off for (.+), (once|\d+ times)$/i,
  ],
  de: [
    /^(?:(\d+) Sätze: )?(.+) laufen, (.+) gehen, (\d+ Mal)$/i,
    /^(?:(\d+) Sätze: )?(.+) Tempo, (.+) locker, (\d+ Mal)$/i,
  ],
};

/** What a set is, in full words: "3 sets of 12", "5 holds of 45 seconds", "3 times 1 minute". Throws on anything else. */
export function readWork(text: string, language: Language): SaidDose {
  const turns = readTurns(text, language);
  if (turns) return turns;
  for (const [pattern, kind] of SHAPES[language]) {
    const groups = pattern.exec(text)?.groups;
    const read = groups && readShape(kind, groups, language);
    if (read) return read;
  }
  const timed = amount("1", text, language);
  if (timed) return timed;
  const several = SEVERAL[language].exec(text);
  const many = several && amount(several[1] ?? "", several[2] ?? "", language);
  if (many) return many;
  const once = ONCE[language].exec(text);
  if (once) return { sets: once[1] ?? "", reps: NONE, ...COUNTED };
  throw new Error(`no rule reads the work "${text}"`);
}

/** Undefined where the amount is of another kind than the shape asks for. */
function readShape(
  kind: "reps" | "holds" | "distances",
  { sets = "", count = "1", amount: said = "" }: Readonly<Record<string, string | undefined>>,
  language: Language,
): SaidDose | undefined {
  const reps = count.replace(/ (?:to|bis) /, "–").replaceAll(", ", ",");
  if (kind === "reps") return { sets, reps, ...COUNTED };
  if (kind === "holds") {
    const hold = readTime(said, language);
    return hold === undefined ? undefined : { sets, reps, ...COUNTED, hold };
  }
  const distance = readDistance(said, language);
  return distance === undefined ? undefined : { sets, reps, ...COUNTED, distance };
}

function readTurns(text: string, language: Language): SaidDose | undefined {
  for (const pattern of TURNS[language]) {
    const found = pattern.exec(text);
    if (!found) continue;
    const [, sets = "1", work = "", easy = "", times = ""] = found;
    const n = times.toLowerCase() === "once" ? "1" : times.split(" ")[0];
    const turns = `${timeOrThrow(work, language)}+${timeOrThrow(easy, language)}×${n}`;
    return { sets, reps: NONE, ...COUNTED, turns };
  }
  return undefined;
}

function amount(sets: string, text: string, language: Language): SaidDose | undefined {
  const time = readTime(text, language);
  if (time !== undefined) return { sets, reps: NONE, ...COUNTED, time };
  const distance = readDistance(text, language);
  return distance === undefined ? undefined : { sets, reps: NONE, ...COUNTED, distance };
}

/** A band has a comma of its own: "Band, level 2". */
const BAND: Readonly<Record<Language, RegExp>> = {
  en: /, Band, (level \d)$/,
  de: /, Band, (Stufe \d)$/,
};

/** The short form that diary and calendar use: "3 × 15, 8 kg". Throws where no rule reads it. */
export function readShort(text: string, language: Language): SaidDose {
  const parts = text.replace(BAND[language], ", $1").split(", ");
  const last = parts.at(-1) ?? "";
  const loaded = isLoad(last, language);
  const load = loaded ? readLoad(last, language) : undefined;
  const work = (loaded ? parts.slice(0, -1) : parts).join(", ");
  return { ...readShortWork(work, language), load: load ?? NONE };
}

function isLoad(text: string, language: Language): boolean {
  return (
    /(kg|lb|km\/h|min\/km|^[\d.,–]+ (s|%))$/.test(text) ||
    (language === "en" ? /^level /.test(text) : /^Stufe /.test(text))
  );
}

/** "3 × 15", "3 × 45 s", "4 × 20 m"; all else stands in words. */
function readShortWork(text: string, language: Language): SaidDose {
  const [, sets = "", amount = ""] = /^(\d+) × (.+)$/.exec(text) ?? [];
  if (sets === "") return readWork(text, language);
  const time = readTime(amount, language);
  // holds and timed sets look alike in the short form
  if (time !== undefined) return { sets, time, distance: NONE, turns: NONE };
  const distance = readDistance(amount, language);
  // and so do a distance, and one repetition of it
  if (distance !== undefined) return { sets, distance, time: NONE, turns: NONE };
  if (/^\d+(–\d+)?$/.test(amount)) return { sets, reps: amount, ...COUNTED };
  throw new Error(`no rule reads the short work "${text}"`);
}

const LOADS: Readonly<Record<Language, readonly (readonly [RegExp, string])[]>> = {
  en: [
    [/^Your own weight and ([\d.,]+) kg\b/, "kg"],
    [/^Your own weight and ([\d.,]+) lb\b/, "lb"],
    [/^(?:Your own weight|No load)$/, NONE],
    [/^(?:Band, )?level (\d)$/, "band"],
    [/^A band that feels right$/, "by feel"],
    [/^A weight that feels right$/, "by feel"],
    [/^A speed that feels right$/, "by feel"],
  ],
  de: [
    [/^Eigenes Gewicht und ([\d.,]+) kg\b/, "kg"],
    [/^Eigenes Gewicht und ([\d.,]+) lb\b/, "lb"],
    [/^(?:Eigenes Gewicht|Ohne Gewicht)$/, NONE],
    [/^(?:Band, )?Stufe (\d)$/, "band"],
    [/^Ein Band, das gut passt$/, "by feel"],
    [/^Ein Gewicht, das gut passt$/, "by feel"],
    [/^Ein Tempo, das gut passt$/, "by feel"],
  ],
};

/** "kg 8", "band 2", a speed as above, "by feel" or "none". Throws where no rule reads it. */
export function readLoad(text: string, language: Language): string {
  const speed = readSpeed(text, language) ?? readShortSpeed(text, language);
  if (speed !== undefined) return speed;
  const plain = /^([\d.,]+) (kg|lb)(?: \(.+\))?$/.exec(text);
  if (plain) return `${plain[2]} ${plainNumber(readNumber(plain[1] ?? "", language))}`;
  for (const [pattern, kind] of LOADS[language]) {
    const found = pattern.exec(text);
    if (!found) continue;
    return found[1] === undefined ? kind : `${kind} ${plainNumber(readNumber(found[1], language))}`;
  }
  throw new Error(`no rule reads the load "${text}"`);
}
