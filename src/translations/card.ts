/** The translation of a card: every text that a client reads, under the same headings. */
import * as z from "zod";
import type { LibraryCard } from "../cards/library.ts";
import { pictureFaults, placeholderFaults } from "../cards/placeholders.ts";
import { type ClientSections, readSections, SECTIONS } from "../cards/sections.ts";
import { variantsLacking } from "../cards/variants.ts";
import { type Vocabulary, word } from "../cards/vocabulary.ts";
import { Fault } from "../faults/fault.ts";
import { caption } from "../figure/format/schema.ts";
import type { Split } from "../read/front-matter.ts";
import type { Path, Read } from "../read/source.ts";
import { validate } from "../read/validate.ts";
import { id, line } from "../units/quantities.ts";
import { careStepFaults, careTranslation } from "./care.ts";
import { headFields, type Original, translatedField } from "./head.ts";
import type { Kind } from "./read-files.ts";

/** The schema of its front matter, given the words of the library. */
export function cardTranslationSchema(words: Vocabulary) {
  return z.strictObject({
    ...headFields("card"),
    title: line.describe("The exercise in the client's words."),
    why: line.describe("One sentence for the client: why this exercise is there."),
    pace: z
      .strictObject({
        lift: line.optional().describe("The client's word for lifting."),
        lower: line.optional().describe("The client's word for lowering."),
      })
      .prefault({})
      .describe("How the two parts of the movement are called, where the card says so."),
    care: z
      .partialRecord(word(words.flags), careTranslation)
      .default({})
      .describe(
        "The words of care, each by its flag: falls-risk: …; with say and steps where the card has steps.",
      ),
    steps: z
      .record(id, line)
      .default({})
      .describe("When to take a step to another card, by that card's id, where the card says it."),
    picture: line
      .optional()
      .describe("What the picture shows, for people who cannot see it; may hold placeholders."),
    captions: z
      .array(caption)
      .optional()
      .describe("A few words for each frame of the picture in turn, as under figure in the card."),
    translated: translatedField,
  });
}

type CardFields = z.infer<ReturnType<typeof cardTranslationSchema>>;

export interface CardTranslation extends CardFields {
  readonly sections: ClientSections;
}

/** A card as an original. */
export interface OriginalCard extends Original {
  readonly library: LibraryCard;
}

/** How cards are translated. */
export function cardKind(
  cards: ReadonlyMap<string, LibraryCard>,
  broken: ReadonlySet<string>,
  words: Vocabulary,
): Kind<CardTranslation, OriginalCard> {
  const schema = cardTranslationSchema(words);
  const original = (library: LibraryCard): OriginalCard => ({
    id: library.card.id,
    language: library.card.language,
    reviewedOn: library.card.reviewed.on,
    library,
  });
  return {
    what: "card",
    originals: new Map([...cards].map(([name, card]) => [name, original(card)])),
    broken,
    parse: (split) => parse(split, schema),
    compare,
  };
}

const HEADINGS = SECTIONS.filter(({ key }) => key !== "clinician");

function parse(split: Split, schema: ReturnType<typeof cardTranslationSchema>) {
  const { data, source, body, bodyLine } = split;
  const checked = validate(schema, data, source);
  const read = readSections(body, bodyLine, source, { what: "translation", sections: HEADINGS });
  const language = checked.value?.language;
  const faults = [
    ...checked.faults,
    ...read.faults,
    ...(language ? placeholderFaults(body, bodyLine, source, language) : []),
    ...(language ? pictureFaults(checked.value.picture, source, language) : []),
  ];
  return checked.value && faults.length === 0
    ? { value: { ...checked.value, sections: read.sections }, faults }
    : { faults };
}

/** Every text of the original has its translation, and none has lost its original. */
function compare({ value, source }: Read<CardTranslation>, { library }: OriginalCard): Fault[] {
  const { card, image } = library;
  const faults: Fault[] = [];
  const add = (
    code: "missing-field" | "wrong-value",
    path: Path,
    message: string,
    hint: string,
  ) => {
    const place = code === "wrong-value" ? source.atKey(path) : source.at(path);
    faults.push(new Fault(code, message, { place, frame: source.frame(place), hint }));
  };
  const match = (
    field: "care" | "steps",
    wanted: readonly string[],
    given: readonly string[],
    name: (key: string) => string,
  ) => {
    for (const key of wanted.filter((one) => !given.includes(one))) {
      add(
        "missing-field",
        [field],
        `${name(key)} is not translated.`,
        `Add it under ${field}, or leave the file out until it is complete.`,
      );
    }
    for (const key of given.filter((one) => !wanted.includes(one))) {
      const known = wanted.length > 0 ? `It has: ${wanted.join(", ")}.` : "It has none.";
      add("wrong-value", [field, key], `${name(key)} is not in ${card.id}.`, known);
    }
  };
  faults.push(...careStepFaults({ value, source }, library));
  const steps = [...card.harder, ...card.easier].filter(({ when }) => when?.say !== undefined);
  match(
    "care",
    card.care.map(({ flag }) => flag),
    Object.keys(value.care),
    (flag) => `The care for ${flag}`,
  );
  match(
    "steps",
    steps.map(({ to }) => to),
    Object.keys(value.steps),
    (to) => `The line on when to take ${to}`,
  );
  for (const part of ["lift", "lower"] as const) {
    if (card.pace[part] === undefined || value.pace[part] !== undefined) continue;
    add(
      "missing-field",
      ["pace"],
      `The card's word for its ${part} part, “${card.pace[part]}”, is not translated.`,
      `Add it under pace: ${part}.`,
    );
  }
  for (const { heading } of variantsLacking(library.sections, value.sections)) {
    add(
      "missing-field",
      ["title"],
      `The section “${heading}” is not translated.`,
      `Add a heading ## ${heading}.`,
    );
  }
  for (const { heading, line } of variantsLacking(value.sections, library.sections)) {
    const place = source.atLine(line, 1);
    const message = `${card.id} has no section “${heading}”.`;
    faults.push(new Fault("unknown-section", message, { place, frame: source.frame(place) }));
  }
  if ((card.figure || image) && value.picture === undefined) faults.push(wordless(value, source));
  const wanted = image ? undefined : card.figure?.captions?.length;
  const given = value.captions?.length;
  if (wanted !== undefined && given === undefined) faults.push(captionless(value, source));
  else if (given !== undefined && given !== (wanted ?? 0)) {
    add(
      "wrong-value",
      ["captions"],
      `${card.id} has ${wanted ?? 0} captions, here are ${given}.`,
      "Write one for each caption of the card, in their order.",
    );
  }
  return faults;
}

/** Without words of its own a picture is called by the exercise's title: right, but little. */
function wordless({ of }: CardTranslation, source: Read<CardTranslation>["source"]): Fault {
  return new Fault("translation-missing", `The picture of ${of} is not put into words here.`, {
    level: "warning",
    place: source.at(["title"]),
    hint: "Say what it shows under picture.",
  });
}

function captionless({ of }: CardTranslation, source: Read<CardTranslation>["source"]): Fault {
  return new Fault("translation-missing", `The captions of ${of} are not translated.`, {
    level: "warning",
    place: source.at(["title"]),
    hint: "Say under captions what each frame of the picture shows.",
  });
}
