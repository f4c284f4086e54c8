/** The shipped library and two courses of our own as their files say it: all that the proof over plans knows of them. */
import { parse } from "yaml";
import { shippedText } from "../support/world.ts";
import { CARDS, type CardText, PROTOCOLS, type ProtocolText } from "../surfaces/shipped.ts";
import { OWN_COURSES } from "./own-courses.ts";

/** Ages in whole years, either end open. */
export interface AgeText {
  readonly from?: number;
  readonly to?: number;
}

/** A card with what decides whether a client may do it, and when. */
export interface WholeCard extends CardText {
  readonly trains: string;
  readonly recovery: string;
  readonly demand: number;
  readonly hard?: boolean;
  readonly age?: AgeText;
  readonly equipment_with?: Readonly<Record<string, readonly string[]>>;
  readonly care?: readonly {
    readonly flag: string;
    readonly say: string;
    readonly not_with?: readonly string[];
  }[];
}

interface Vocabulary {
  readonly equipment: Readonly<Record<string, { readonly home?: boolean }>>;
  readonly flags: Readonly<Record<string, string>>;
}

const WORDS = parse(shippedText("exercises/vocabulary.yaml")) as Vocabulary;

export const ALL_CARDS: ReadonlyMap<string, WholeCard> = CARDS as ReadonlyMap<string, WholeCard>;
export const FLAGS = Object.keys(WORDS.flags);
export const THINGS = Object.keys(WORDS.equipment);
/** What every home has. */
export const AT_HOME: ReadonlySet<string> = new Set(
  THINGS.filter((thing) => WORDS.equipment[thing]?.home === true),
);

/** Every course that a plan of the proof may follow. */
export const COURSES: readonly (ProtocolText & { readonly age?: AgeText })[] = [
  ...PROTOCOLS.values(),
  ...OWN_COURSES.map(({ text }) => parse(text) as ProtocolText),
];

export function wholeCard(id: string): WholeCard {
  const card = ALL_CARDS.get(id);
  if (!card) throw new Error(`no card ${id}`);
  return card;
}

const UNITS: Readonly<Record<string, number>> = { s: 1, min: 60, h: 3600 };

/** Seconds of a time as files write it: 45 s, 2.5 min, 48 h. */
export function secondsOf(text: string): number {
  const [, amount, unit = ""] = /^([\d.]+) ?(s|min|h)$/.exec(text) ?? [];
  const seconds = UNITS[unit];
  if (amount === undefined || seconds === undefined) throw new Error(`"${text}" is no time`);
  return Number(amount) * seconds;
}
