/** What a client's booklet uses that has no translation, or an old one. */
import type { Library } from "../cards/library.ts";
import { easierOf } from "../dose/easier.ts";
import type { DosedProgram } from "../dose/types.ts";
import { Fault } from "../faults/fault.ts";
import type { Program, ProgramExercise } from "../program/program.ts";
import type { Path, Read } from "../read/source.ts";
import {
  type Head,
  isStale,
  type Original,
  staleFault,
  translationKey,
} from "../translations/head.ts";
import type { AllTranslations } from "../translations/read-translations.ts";
import { languageName, ORIGINAL } from "../words/languages.ts";
import { loadMakers, needsOf } from "./needs.ts";

/** A card or protocol, and where the plan brings it in. */
interface Used extends Original {
  readonly path: Path;
}

/** Warnings, once for each protocol, card and thing: translation-missing, translation-stale. */
export function usedFaults(
  program: Program,
  dosed: DosedProgram,
  library: Library,
  { cards, protocols, vocabularies }: AllTranslations,
): Fault[] {
  const { language } = program.clinic;
  const { source } = program.plan;
  const missing = (path: Path, message: string, hint: string) => {
    const place = source.at(path);
    const frame = source.frame(place);
    return new Fault("translation-missing", message, { level: "warning", place, frame, hint });
  };
  const judge = (used: Used, translation: Read<Head> | undefined, folder: string): Fault[] => {
    // a text in the clinic's language that is no translation was written in it
    if (!translation && used.language === language) return [];
    if (translation) return isStale(translation.value, used) ? [staleFault(translation, used)] : [];
    return [
      missing(
        used.path,
        `${used.id} has no ${languageName(language)} translation: its ${languageName(used.language)} text is printed.`,
        `Write ${translationKey(used.id, language)}.md beside it, or in the clinic's own ${folder}.`,
      ),
    ];
  };
  const { id, reviewed, language: written } = program.protocol.value;
  const course: Used = { id, language: written, reviewedOn: reviewed.on, path: ["protocol"] };
  const words = language === ORIGINAL ? undefined : vocabularies.get(language);
  const things = language === ORIGINAL ? [] : thingsUsed(program, dosed, library);
  return [
    ...judge(course, protocols.get(translationKey(id, language)), "protocols"),
    ...cardsUsed(program, dosed, library).flatMap((used) =>
      judge(used, cards.get(translationKey(used.id, language)), "exercises"),
    ),
    ...things
      .filter((thing) => words?.equipment[thing] === undefined)
      .map((thing) =>
        missing(
          pathOfThing(program, thing),
          `${thing} has no ${languageName(language)} words: its English ones are printed.`,
          `Add it under equipment in vocabulary.${language}.yaml beside its vocabulary, or in the clinic's own exercises.`,
        ),
      ),
  ];
}

/** The cards of the program, and the easier ones that its pages name. */
function cardsUsed(program: Program, dosed: DosedProgram, library: Library): Used[] {
  const used = new Map<string, Used>();
  const add = (name: string | undefined, path: Path) => {
    const card = name === undefined ? undefined : library.cards.get(name)?.card;
    if (card && !used.has(card.id)) {
      const { id, language, reviewed } = card;
      used.set(id, { id, language, reviewedOn: reviewed.on, path });
    }
  };
  const exercises = program.phases.flatMap((phase) => phase.exercises);
  for (const exercise of exercises) add(exercise.card.card.id, pathOf(exercise, program));
  for (const exercise of exercises) {
    const easier = easierOf(exercise, program, dosed, library);
    add(easier?.card.card.id, pathOf(exercise, program));
  }
  return [...used.values()];
}

/** Where the plan brings an exercise in: by its protocol, a swap, or an addition. */
function pathOf({ origin, card }: ProgramExercise, { plan }: Program): Path {
  const { swap, add } = plan.value;
  const { id } = card.card;
  if (origin === "swap") return ["swap", swap.findIndex(({ to }) => to === id), "to"];
  if (origin === "add") return ["add", add.findIndex((one) => one.card === id), "card"];
  return ["protocol"];
}

/** Equipment that the booklet names: what the cards need, and what makes the loads. */
function thingsUsed(program: Program, dosed: DosedProgram, library: Library): string[] {
  const exercises = program.phases.flatMap((phase) => phase.exercises);
  const parts = { program, dosed, library };
  return [...new Set(exercises.flatMap((one) => needsOf(one, loadMakers(one, parts), program)))];
}

function pathOfThing({ plan }: Program, thing: string): Path {
  const at = plan.value.equipment.findIndex(
    (item) => thing === (typeof item === "string" ? item : item.have),
  );
  return at < 0 ? ["protocol"] : ["equipment", at];
}
