/** What a card's words of care change for a client with a health flag: steps they do otherwise, and loads they must not take. */
import { Fault } from "../faults/fault.ts";
import type { Path, Source } from "../read/source.ts";
import { nearest } from "../read/validate.ts";
import type { LibraryCard } from "./library.ts";
import { bracedFaults } from "./placeholders.ts";
import type { Card } from "./schema.ts";
import type { SectionKey, Sections } from "./sections.ts";

export type Care = Card["care"][number];
export type CareStep = Care["steps"][number];

/** Sections whose steps care may replace: “How to do it”. */
const STEPPED: readonly SectionKey[] = ["setUp", "move"];

/** A step of a list: its mark, and its words. */
const STEP = /^(\s*(?:[-*+]|\d+[.)])\s+)(.*?)\s*$/;

/** The words of care for a client with these flags, in the card's order. */
export const careFor = (card: Pick<Card, "care">, flags: readonly string[]): Care[] =>
  card.care.filter(({ flag }) => flags.includes(flag));

/** Things of `load.with` that may make the load for a client with these flags. */
export function loadThings(card: Card, flags: readonly string[]): string[] {
  const not = new Set(careFor(card, flags).flatMap(({ not_with }) => not_with));
  return card.load.with.filter((thing) => !not.has(thing));
}

/** A section's Markdown with the steps that care puts in place of its own; of two for one step the first holds. */
export function withCare(text: string, section: SectionKey, care: readonly Care[]): string {
  const steps = care.flatMap((one) => one.steps);
  if (steps.length === 0 || !STEPPED.includes(section)) return text;
  return text
    .split("\n")
    .map((line) => {
      const [, mark = "", words = ""] = STEP.exec(line) ?? [];
      const found = steps.find(({ step }) => step === words);
      return found ? `${mark}${found.do}` : line;
    })
    .join("\n");
}

/** Faults of care for steps that the card does not have, and of loads that it does not take: wrong-value. */
export function careFaults(card: Card, sections: Sections, source: Source): Fault[] {
  return card.care.flatMap(({ flag, steps, not_with }, at) => [
    ...stepFaults(steps, sections, source, ["care", at, "steps"]),
    ...steps.flatMap((step, which) =>
      bracedFaults(step.do, source, ["care", at, "steps", which, "do"], card.language),
    ),
    ...not_with.flatMap((thing, which) =>
      card.load.with.includes(thing)
        ? []
        : [
            fault(
              source,
              ["care", at, "not_with", which],
              `The care for ${flag} rules out ${thing}, which never makes the load of ${card.id}.`,
              `It has: ${card.load.with.join(", ") || "none"}.`,
            ),
          ],
    ),
  ]);
}

/** A fault for each step that stands nowhere under the sections: wrong-value. */
export function stepFaults(
  steps: readonly CareStep[],
  sections: Pick<LibraryCard["sections"], "setUp" | "move" | "variants">,
  source: Source,
  path: Path,
): Fault[] {
  const texts = [
    sections.setUp,
    sections.move,
    ...sections.variants.filter(({ key }) => STEPPED.includes(key)).map(({ text }) => text),
  ];
  const known = texts.flatMap((text) =>
    text.split("\n").flatMap((line) => STEP.exec(line)?.[2] ?? []),
  );
  return steps.flatMap(({ step }, at) => {
    if (known.includes(step)) return [];
    const near = nearest(step, known);
    const hint = near ? `Did you mean “${near}”?` : "Copy a step as it stands there.";
    const message = `No step under “Set up” or “Move” reads “${step}”.`;
    return [fault(source, [...path, at, "step"], message, hint)];
  });
}

function fault(source: Source, path: Path, message: string, hint: string): Fault {
  const place = source.at(path);
  return new Fault("wrong-value", message, { place, frame: source.frame(place), hint });
}
