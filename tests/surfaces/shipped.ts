/** What the shipped files say, read as their text and not by the program: cards, protocols, words. */
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { parse } from "yaml";
import { ROOT, shippedText } from "../support/world.ts";

export type Language = "en" | "de";

/** Part of a dose as it stands in a file. */
export type DoseText = Readonly<Record<string, unknown>>;

export interface CardText {
  readonly id: string;
  readonly title: string;
  readonly clinical: string;
  readonly region: string;
  readonly side: "each" | "both" | "none";
  readonly tissues: readonly string[];
  readonly equipment?: readonly string[];
  readonly load: {
    readonly kind: string;
    readonly add?: string;
    readonly body_share?: number;
    readonly with?: readonly string[];
  };
  readonly dose: DoseText;
  readonly pace?: { readonly first?: string; readonly lift?: string; readonly lower?: string };
  readonly pain: PainText;
  readonly harder?: readonly { readonly to: string }[];
  readonly easier?: readonly { readonly to: string }[];
  readonly alternatives?: readonly string[];
  readonly not_for?: readonly { readonly flag: string }[];
  readonly care?: readonly { readonly flag: string; readonly say: string }[];
}

export type PainText =
  | "pain-free"
  | "monitored"
  | { readonly comfortable: number; readonly during: number; readonly after: number };

/** A sign to move on: alone, or with the card whose it is and the flags that it is not for. */
export type SignText =
  | string
  | { readonly say: string; readonly of?: string; readonly not_for?: readonly string[] };

export const signWords = (sign: SignText): string => (typeof sign === "string" ? sign : sign.say);

export interface PhaseText {
  readonly id: string;
  readonly title: string;
  readonly weeks: number;
  readonly from_week?: number;
  readonly exercises: readonly {
    readonly card: string;
    readonly dose?: DoseText;
    /** A row that is no dose says that the exercise is left out in these weeks. */
    readonly weeks?: Readonly<Record<string, DoseText | string>>;
    readonly same_session_as?: string;
    readonly when?: string;
  }[];
  readonly move_on: readonly SignText[];
  readonly go_back?: readonly string[];
}

export interface ProtocolText {
  readonly id: string;
  readonly title: string;
  readonly clinical: string;
  readonly pain: PainText;
  readonly phases: readonly PhaseText[];
}

const frontMatter = (path: string): unknown =>
  parse(/^---\n([\s\S]*?)\n---/.exec(shippedText(path))?.[1] ?? "");

const markdownIn = (folder: string): string[] =>
  readdirSync(join(ROOT, folder), { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".md") && !name.endsWith("README.md"))
    .sort()
    .map((name) => `${folder}/${name}`);

function readAll<T extends { readonly id: string }>(folder: string): ReadonlyMap<string, T> {
  const files = markdownIn(folder).filter((path) => !/\.[a-z]{2}\.md$/.test(path));
  return new Map(files.map((path) => frontMatter(path) as T).map((item) => [item.id, item]));
}

function translations(folder: string): ReadonlyMap<string, Record<string, unknown>> {
  const files = markdownIn(folder).filter((path) => path.endsWith(".de.md"));
  const read = files.map((path) => frontMatter(path) as Record<string, unknown>);
  return new Map(read.map((item) => [String(item.of), item]));
}

export const CARDS = readAll<CardText>("exercises");
export const PROTOCOLS = readAll<ProtocolText>("templates/protocols");
const GERMAN_CARDS = translations("exercises");
const GERMAN_PROTOCOLS = translations("templates/protocols");

export function cardOf(id: string): CardText {
  const card = CARDS.get(id);
  if (!card) throw new Error(`no card ${id}`);
  return card;
}

/** A card as a client of this language reads it. */
export function cardIn(id: string, language: Language): CardText {
  const card = cardOf(id);
  const own = language === "de" ? GERMAN_CARDS.get(id) : undefined;
  if (language === "de" && !own)
    return { ...card, ...(card.pace && { pace: thereAndBack(card.pace) }) };
  if (!own) return card;
  return { ...card, title: String(own.title), pace: { ...card.pace, ...(own.pace as object) } };
}

/** The ways of a card that is not translated: its own words do not stand inside sentences of a booklet in German. */
function thereAndBack(pace: NonNullable<CardText["pace"]>): NonNullable<CardText["pace"]> {
  const { first = "lift" } = pace;
  const way = (of: "lift" | "lower") =>
    pace[of] && { [of]: label("de", `dose.pace.${of === first ? "there" : "back"}`) };
  return { first, ...way("lift"), ...way("lower") };
}

/** The last week of the course that a phase reaches, counted from 1. */
export function lastWeekOf({ phases }: Pick<ProtocolText, "phases">, at: number): number {
  const phase = phases[at];
  if (!phase) return 0;
  return (phase.from_week ?? lastWeekOf({ phases }, at - 1) + 1) + phase.weeks - 1;
}

/** Weeks of a protocol's course. */
export const weeksOf = (protocol: Pick<ProtocolText, "phases">): number =>
  Math.max(...protocol.phases.map((_, at) => lastWeekOf(protocol, at)));

/** A protocol as a client of this language reads it. */
export function protocolIn(id: string, language: Language): ProtocolText {
  const protocol = PROTOCOLS.get(id);
  if (!protocol) throw new Error(`no protocol ${id}`);
  const own = language === "de" ? GERMAN_PROTOCOLS.get(id) : undefined;
  if (!own) return protocol;
  const phases = own.phases as Record<string, Partial<PhaseText>>;
  return {
    ...protocol,
    title: String(own.title),
    phases: protocol.phases.map((phase) => ({
      ...phase,
      ...phases[phase.id],
      move_on: phase.move_on.map((sign, at) => {
        const words = signWords(phases[phase.id]?.move_on?.[at] ?? sign);
        return typeof sign === "string" ? words : { ...sign, say: words };
      }),
    })),
  };
}

/** Every dose that a protocol states for an exercise. */
export const dosesOf = ({ dose = {}, weeks = {} }: PhaseText["exercises"][number]): DoseText[] => [
  dose,
  ...Object.values(weeks).filter((row) => typeof row !== "string"),
];

type WordTree = { readonly [key: string]: string | WordTree };

const WORDS: Readonly<Record<Language, WordTree>> = {
  en: parse(shippedText("templates/words/en.yaml")) as WordTree,
  de: parse(shippedText("templates/words/de.yaml")) as WordTree,
};

/** A message of the booklet's frame as it stands in the file of its language: "stop.heading". */
export function label(language: Language, key: string): string {
  const found = wordsAt(language, key);
  if (typeof found !== "string") throw new Error(`no words ${key} in ${language}`);
  return found;
}

/** All messages under a key, in their order. */
export function labels(language: Language, key: string): string[] {
  const found = wordsAt(language, key);
  return typeof found === "object"
    ? Object.values(found).filter((one) => typeof one === "string")
    : [];
}

function wordsAt(language: Language, key: string): string | WordTree | undefined {
  let here: string | WordTree | undefined = WORDS[language];
  for (const step of key.split(".")) here = typeof here === "object" ? here[step] : undefined;
  return here;
}
