/** Words of care in another language, with the steps that they put in place of the card's own. */
import * as z from "zod";
import { type CareStep, stepFaults } from "../cards/care.ts";
import type { LibraryCard } from "../cards/library.ts";
import { bracedFaults } from "../cards/placeholders.ts";
import { careSteps } from "../cards/schema.ts";
import type { ClientSections } from "../cards/sections.ts";
import { Fault } from "../faults/fault.ts";
import type { Read } from "../read/source.ts";
import { line } from "../units/quantities.ts";
import type { Language } from "../words/languages.ts";

const withSteps = z.strictObject({
  say: line.describe("The words of care."),
  steps: careSteps.describe("As many as the card has for this flag, in its order."),
});

/** Words alone, or words and steps; read as the second either way. */
export const careTranslation = z
  .union([line, withSteps])
  .transform(
    (care): z.infer<typeof withSteps> =>
      typeof care === "string" ? { say: care, steps: [] } : care,
  );

interface Translated {
  readonly language: Language;
  readonly care: Readonly<
    Partial<Record<string, { readonly say: string; readonly steps: readonly CareStep[] }>>
  >;
  readonly sections: ClientSections;
}

/** Every step that care replaces is replaced in the translation too, and is one of its steps: missing-field, wrong-value. */
export function careStepFaults(
  { value, source }: Read<Translated>,
  { card }: LibraryCard,
): Fault[] {
  return card.care.flatMap(({ flag, steps }) => {
    const own = value.care[flag]?.steps;
    if (own === undefined) return [];
    const path = ["care", flag, "steps"];
    if (own.length !== steps.length) {
      const place = source.at(["care", flag]);
      const message = `The card puts ${steps.length} steps in place of its own for ${flag}; here there are ${own.length}.`;
      const hint = `Write ${flag}: { say: …, steps: [{ step: …, do: … }] }, a step for each of the card's.`;
      return [new Fault("missing-field", message, { place, frame: source.frame(place), hint })];
    }
    return [
      ...stepFaults(own, value.sections, source, path),
      ...own.flatMap((step, at) =>
        bracedFaults(step.do, source, [...path, at, "do"], value.language),
      ),
    ];
  });
}
