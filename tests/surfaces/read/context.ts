/** What a reader knows beforehand: the language, the first day, and the titles in the shipped files. */
import { addDays } from "../calendar-days.ts";
import type { Client } from "../clients.ts";
import {
  CARDS,
  type CardText,
  cardIn,
  type Language,
  label,
  type ProtocolText,
  protocolIn,
} from "../shipped.ts";
import type { WayWords } from "./how-words.ts";

export interface Context {
  readonly language: Language;
  /** The first day of the course, for dates without a year. */
  readonly starts: string;
  /** The protocol in the client's language. */
  readonly protocol: ProtocolText;
  readonly cardByTitle: (title: string) => CardText;
  /** The title that a text begins with, the longest where several do; undefined for none. */
  readonly titleAtStart: (text: string) => string | undefined;
  readonly isTitle: (text: string) => boolean;
  readonly titleOf: (card: string) => string;
  /** When the parts of the client's day begin, HH:MM; those before the morning's lie on the next date. */
  readonly hours: Readonly<Record<Part, string>>;
  readonly label: (key: string) => string;
  /** The parts of a text that fill a message's places, in their order; undefined where it is another text. */
  readonly filled: (key: string, text: string) => readonly string[] | undefined;
}

const byTitle: Readonly<Record<Language, ReadonlyMap<string, CardText>>> = {
  en: titles("en"),
  de: titles("de"),
};

const LONGEST_FIRST: Readonly<Record<Language, readonly string[]>> = {
  en: longestFirst("en"),
  de: longestFirst("de"),
};

function longestFirst(language: Language): string[] {
  return [...byTitle[language].keys()].sort((a, b) => b.length - a.length);
}

function titles(language: Language): ReadonlyMap<string, CardText> {
  return new Map(
    [...CARDS.keys()].map((id) => cardIn(id, language)).map((card) => [card.title, card]),
  );
}

/** What of a client a reader has to know. */
interface ReadClient {
  readonly clinic: Pick<Client["clinic"], "language">;
  readonly plan: {
    readonly starts: string;
    readonly week: { readonly hours?: Context["hours"] | undefined };
  };
  readonly protocol: ProtocolText;
}

export function contextOf({ clinic: { language }, plan, protocol }: ReadClient): Context {
  return {
    language,
    starts: plan.starts,
    hours: { ...HOURS, ...plan.week.hours },
    protocol: language === "en" ? protocol : protocolIn(protocol.id, language),
    cardByTitle(title) {
      const card = byTitle[language].get(title);
      if (!card) throw new Error(`no card is called "${title}"`);
      return card;
    },
    titleAtStart: (text) => LONGEST_FIRST[language].find((title) => text.startsWith(title)),
    isTitle: (text) => byTitle[language].has(text),
    titleOf: (card) => cardIn(card, language).title,
    label: (key) => label(language, key),
    filled: (key, text) => fill(label(language, key), text),
  };
}

function fill(message: string, text: string): readonly string[] | undefined {
  const pattern = message
    .split(/\{\w+\}/)
    .map((part) => part.replace(/[.*+?^${}()|[\]\\]/g, "\\$&"))
    .join("(.+?)");
  return new RegExp(`^${pattern}$`).exec(text)?.slice(1);
}

/** The client's words for the two ways of a card's movement. */
export function waysOf({ pace }: CardText, { label }: Context): WayWords {
  return {
    lift: pace?.lift ?? label("dose.pace.up"),
    lower: pace?.lower ?? label("dose.pace.down"),
  };
}

const SIDES = ["left", "right", "each", "both"] as const;
const LIMBS = ["leg", "arm", "body"] as const;

/** left, right, each or both, from "Left leg" or from the sentence that says it. Throws on other words. */
export function readSide(
  text: string,
  { label }: Context,
  where: "side" | "side.sentence",
): string {
  for (const limb of LIMBS) {
    for (const side of SIDES) {
      if (label(`${where}.${limb}.${side}`).toLowerCase() === text.toLowerCase()) return side;
    }
  }
  throw new Error(`"${text}" names no side`);
}

/** Weeks of "Week 1" or "Weeks 2 to 3". */
export function readWeeks(
  text: string,
  { filled }: Context,
): { readonly first: number; readonly last: number } {
  const span = filled("weeks.span", text) ?? filled("weeks.one", text);
  const [first, last = first] = (span ?? []).map(Number);
  if (
    first === undefined ||
    last === undefined ||
    !Number.isInteger(first) ||
    !Number.isInteger(last)
  )
    throw new Error(`"${text}" names no weeks`);
  return { first, last };
}

const PARTS = ["morning", "midday", "evening"] as const;
export type Part = (typeof PARTS)[number];

/** Clock times where a plan names none: the defaults in the reference of plans. */
const HOURS: Readonly<Record<Part, string>> = {
  morning: "07:00",
  midday: "13:00",
  evening: "19:00",
};

/** The part of the day that a word of the booklet means, or a clock time of the plan. */
export function readPart(text: string, { label, hours }: Context): Part {
  const part = PARTS.find((one) => label(`part.${one}`) === text) ?? partAt(text, hours);
  if (!part) throw new Error(`"${text}" is no part of the day`);
  return part;
}

/** The part of the day that begins at a clock time. */
export const partAt = (time: string, hours: Context["hours"]): Part | undefined =>
  PARTS.find((part) => hours[part] === time);

/** Days from the client's day to the date on the wall when a part begins: 1 after midnight. */
const daysOn = (part: Part, hours: Context["hours"]): number =>
  hours[part] < hours.morning ? 1 : 0;

/** The client's day of a session, from the date on the wall. */
export const clientDay = (wall: string, part: Part, { hours }: Context): string =>
  addDays(wall, -daysOn(part, hours));

/** The date on the wall on which a part of a client's day begins. */
export const wallDay = (day: string, part: Part, { hours }: Context): string =>
  addDays(day, daysOn(part, hours));

/** How pages call the parts of the day: by name, or by the clock where the client's day passes midnight. */
export const partWords = ({ label, hours }: Context): string[] => [
  ...PARTS.map((part) => label(`part.${part}`)),
  ...PARTS.map((part) => hours[part]),
];
