/** Reads the page of pain: the zones of its ruler, the rules in words, and the exercises with a rule of their own. */
import type { Fact, Say } from "../facts.ts";
import type { Context } from "./context.ts";
import {
  FREE,
  painFacts,
  readException,
  readOver,
  readPain,
  type SaidPain,
  sayCallLevel,
} from "./pain-words.ts";
import { itemsIn, picturesIn, rowsIn, type Section } from "./sections.ts";

const ZONES = ["fine", "allowed", "too-much", "call"] as const;

/** `titles`: the exercises of the booklet, for which the page speaks. */
export function readPainPage(
  { blocks, parts }: Section,
  titles: readonly string[],
  facts: Fact[],
  say: Say,
  context: Context,
): void {
  const { filled, label } = context;
  const all = [...blocks, ...parts.flatMap((part) => part.blocks)];
  const items = itemsIn(all);
  for (const row of rowsIn(all)) {
    const [range, means] = row.cells;
    const numbers = filled("frame.pain.range", range?.text ?? "") ?? [
      range?.text ?? "",
      range?.text ?? "",
    ];
    for (const zone of ZONES) {
      if (means?.text.startsWith(`${label(`pain.zone.${zone}.name`)}.`))
        say("zone of pain", zone, numbers.join(" to "), "table of zones");
    }
  }
  for (const words of picturesIn(all)) zonesInWords(words, say, context);
  sayCallLevel(items, say, "rules", context);
  const general = generalOf(items, context);
  if (general) readRules(items, general, titles, facts, context);
}

/** The rules hold for all exercises but those that are named with another. */
function readRules(
  items: readonly string[],
  general: SaidPain,
  titles: readonly string[],
  facts: Fact[],
  context: Context,
): void {
  const exceptions = new Map(
    items
      .flatMap((item) => readException(item, context) ?? [])
      .map(({ title, pain }) => [title, pain]),
  );
  for (const title of titles)
    facts.push(
      ...painFacts(
        title,
        exceptions.get(title) ?? general,
        exceptions.has(title) ? "its own rule" : "rules",
      ),
    );
}

function generalOf(items: readonly string[], context: Context): SaidPain | undefined {
  const first = <T>(read: (item: string) => T): T | undefined => {
    for (const item of items) {
      try {
        return read(item);
      } catch {
        // another item may say it
      }
    }
    return undefined;
  };
  const during = first((item) => duringOf(item, context));
  const after = first((item) => readOver(item, "after", context));
  return during === undefined || after === undefined ? undefined : { during, after };
}

function duringOf(item: string, { filled, label }: Context): string {
  if (item === label("pain.rules.pain-free.during")) return FREE;
  const [during] = filled("pain.rules.monitored.during", item) ?? [];
  if (during === undefined) throw new Error(`"${item}" is another rule`);
  return during.replace(",", ".");
}

/** The one-page summary says the rule in a sentence, and those of the exercises with another. */
export function readSummaryPain(
  items: readonly string[],
  titles: readonly string[],
  facts: Fact[],
  context: Context,
): void {
  for (const item of items) {
    if (readException(item, context)) continue;
    try {
      readRules(items, readPain(item, context), titles, facts, context);
      return;
    } catch {
      // the sentence stands further down
    }
  }
}

/** The ruler's own words: "Pain ruler from 0 … 0 to 2: Fine. 3 to 5: All right for now." */
export function zonesInWords(words: string, say: Say, { label }: Context): void {
  for (const zone of ZONES) {
    const found = new RegExp(
      `(\\d+) (?:to|bis) (\\d+): ${label(`pain.zone.${zone}.name`)}\\.`,
    ).exec(words);
    if (found) say("zone of pain", zone, `${found[1]} to ${found[2]}`, "the ruler's words");
  }
}
