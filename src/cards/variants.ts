/** What a card says and needs with the things that make a client's load: the variants of its sections and equipment. */
import { Fault } from "../faults/fault.ts";
import type { Source } from "../read/source.ts";
import { nearest } from "../read/validate.ts";
import type { LibraryCard } from "./library.ts";
import type { Card } from "./schema.ts";
import type { SectionKey, Sections, SectionVariant } from "./sections.ts";

/** A text, and the things it is for; none where it is for all that have no text of their own. */
export interface VariedText {
  readonly things: readonly string[];
  /** Markdown. */
  readonly text: string;
}

/** The texts of a section for a client whose load is made by `things`, each once; without any, the plain one. */
export function sectionFor(
  { sections }: Pick<LibraryCard, "sections">,
  key: SectionKey,
  things: readonly string[],
): VariedText[] {
  const plain = { things: [], text: sections[key] };
  const own = sections.variants.filter((variant) => variant.key === key);
  const texts = things.map((thing) => own.find((variant) => variant.with.includes(thing)) ?? plain);
  return [...new Set(texts.length === 0 ? [plain] : texts)].map((one) => {
    const { text } = one;
    return { things: things.filter((_, at) => texts[at] === one), text };
  });
}

/** What is needed besides the load, where `things` make it. */
export function equipmentFor(card: Card, things: readonly string[]): string[] {
  if (things.length === 0) return card.equipment;
  return [...new Set(things.flatMap((thing) => card.equipment_with[thing] ?? card.equipment))];
}

/** Faults of variants for things that make no load of this card, or that have two texts: wrong-value, unknown-section. */
export function variantFaults(card: Card, { variants }: Sections, source: Source): Fault[] {
  const known = card.load.with;
  const list = known.length > 0 ? `It has: ${known.join(", ")}.` : "It has none.";
  const needs = Object.keys(card.equipment_with)
    .filter((thing) => !known.includes(thing))
    .map((thing) => {
      const place = source.atKey(["equipment_with", thing]);
      const message = `${thing} is not under load.with of ${card.id}.`;
      return new Fault("wrong-value", message, { place, frame: source.frame(place), hint: list });
    });
  const texts = variants.flatMap((variant, at) =>
    variant.with.flatMap((thing) => {
      const twice = variants.slice(0, at).some((one) => sameCase(one, variant, thing));
      if (known.includes(thing) && !twice) return [];
      const place = source.atLine(variant.line, 1);
      const near = nearest(thing, known);
      const message = twice
        ? `${thing} has two texts under “${variant.heading}”.`
        : `${thing} is not under load.with of ${card.id}, so that “${variant.heading}” is never printed.`;
      const hint = twice ? "Keep one of the two." : near ? `Did you mean ${near}?` : list;
      return [new Fault("unknown-section", message, { place, frame: source.frame(place), hint })];
    }),
  );
  return [...needs, ...texts];
}

const sameCase = (one: SectionVariant, other: SectionVariant, thing: string): boolean =>
  one.key === other.key && one.with.includes(thing);

/** The headings of variants that one of two texts has and the other lacks, told apart by what they are for. */
export function variantsLacking(
  of: Pick<Sections, "variants">,
  other: Pick<Sections, "variants">,
): SectionVariant[] {
  return of.variants.flatMap((variant) => {
    const there = variant.with.every((thing) =>
      other.variants.some((one) => sameCase(one, variant, thing)),
    );
    return there ? [] : [variant];
  });
}
