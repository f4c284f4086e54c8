/** The translation of a protocol: every text that a client reads, phase by phase. */
import * as z from "zod";
import { Fault } from "../faults/fault.ts";
import { cardsNamed, wordsOf } from "../protocols/named-cards.ts";
import { outlookTexts, type Protocol, type ProtocolPhase } from "../protocols/schema.ts";
import type { Path, Read } from "../read/source.ts";
import { validate } from "../read/validate.ts";
import { id, line } from "../units/quantities.ts";
import { headFields, type Original, translatedField } from "./head.ts";
import type { Kind } from "./read-files.ts";

const phase = z.strictObject({
  title: line.describe("The phase in the client's words."),
  aim: line.describe("What this phase is for, in the client's words."),
  move_on: z.array(line).min(1).describe("Signs to move on, as many as in the protocol."),
  go_back: z.array(line).default([]).describe("Signs to go back, as many as in the protocol."),
  why: z
    .record(id, line)
    .default({})
    .describe("Why an exercise is there, by its card's id, where the protocol says it."),
  when: z
    .record(id, line)
    .default({})
    .describe(
      "The sign on which an exercise starts, by its card's id, where the protocol says it.",
    ),
});

export const protocolTranslationSchema = z.strictObject({
  ...headFields("protocol"),
  title: line.describe("The course in the client's words."),
  outlook: z
    .strictObject(outlookTexts)
    .optional()
    .describe("What to expect, where the protocol says it."),
  phases: z.record(id, phase).describe("The phases, each by its id."),
  translated: translatedField,
});

export type ProtocolTranslation = z.infer<typeof protocolTranslationSchema>;

export type PhaseTranslation = ProtocolTranslation["phases"][string];

/** A protocol as an original. */
export interface OriginalProtocol extends Original {
  readonly protocol: Protocol;
}

/** How protocols are translated. */
export function protocolKind(
  protocols: ReadonlyMap<string, Read<Protocol>>,
  broken: ReadonlySet<string>,
): Kind<ProtocolTranslation, OriginalProtocol> {
  const original = ({ value }: Read<Protocol>): OriginalProtocol => ({
    id: value.id,
    language: value.language,
    reviewedOn: value.reviewed.on,
    protocol: value,
  });
  return {
    what: "protocol",
    originals: new Map([...protocols].map(([name, one]) => [name, original(one)])),
    broken,
    parse: ({ data, source }) => validate(protocolTranslationSchema, data, source),
    compare,
  };
}

function compare(
  { value, source }: Read<ProtocolTranslation>,
  { protocol }: OriginalProtocol,
): Fault[] {
  const known = protocol.phases.map((one) => one.id);
  const untold =
    protocol.outlook !== undefined && value.outlook === undefined
      ? [lacking("outlook", source)]
      : [];
  const missing = known
    .filter((name) => !(name in value.phases))
    .map((name) => {
      const place = source.at(["phases"]);
      return new Fault("missing-field", `The phase ${name} is not translated.`, {
        place,
        frame: source.frame(place),
        hint: "Add it under phases, or leave the file out until it is complete.",
      });
    });
  const given = Object.entries(value.phases).flatMap(([name, translation]) => {
    const original = protocol.phases.find((one) => one.id === name);
    if (original) return phaseFaults(original, translation, source);
    const place = source.atKey(["phases", name]);
    const hint = `It has: ${known.join(", ")}.`;
    return [
      new Fault("wrong-value", `There is no phase ${name} in ${protocol.id}.`, {
        place,
        frame: source.frame(place),
        hint,
      }),
    ];
  });
  return [...untold, ...missing, ...given];
}

function lacking(field: string, source: Read<unknown>["source"]): Fault {
  const place = source.at(["title"]);
  return new Fault("missing-field", `The text under ${field} is not translated.`, {
    place,
    frame: source.frame(place),
    hint: `Add ${field}, or leave the file out until it is complete.`,
  });
}

function phaseFaults(
  original: ProtocolPhase,
  translation: PhaseTranslation,
  source: Read<unknown>["source"],
): Fault[] {
  const faults: Fault[] = [];
  const add = (
    code: "missing-field" | "wrong-value",
    path: Path,
    message: string,
    hint: string,
  ) => {
    const place = source.at(["phases", original.id, ...path]);
    faults.push(new Fault(code, message, { place, frame: source.frame(place), hint }));
  };
  for (const field of ["move_on", "go_back"] as const) {
    const [wanted, given] = [original[field].length, translation[field].length];
    if (wanted !== given) {
      add(
        "wrong-value",
        [field],
        `${field} of ${original.id} has ${given} lines here and ${wanted} in the protocol.`,
        "Translate each line, in the same order.",
      );
    }
  }
  const signs = [
    ...translation.move_on.map((line, at) => ({
      path: ["move_on", at],
      line,
      from: wordsOf(original.move_on[at] ?? ""),
    })),
    ...translation.go_back.map((line, at) => ({
      path: ["go_back", at],
      line,
      from: original.go_back[at] ?? "",
    })),
    ...Object.entries(translation.when).map(([card, line]) => ({
      path: ["when", card],
      line,
      from: original.exercises.find((one) => one.card === card)?.when ?? "",
    })),
  ];
  for (const { path, line, from } of signs) {
    const wanted = cardsNamed(from);
    if (sameNames(wanted, cardsNamed(line))) continue;
    add(
      "wrong-value",
      path,
      "The line does not name the exercises that the protocol names in it.",
      wanted.length === 0
        ? "It names none."
        : `It names: ${wanted.map((id) => `{${id}}`).join(", ")}.`,
    );
  }
  for (const field of ["why", "when"] as const) {
    const wanted = original.exercises
      .filter((one) => one[field] !== undefined)
      .map((one) => one.card);
    const given = Object.keys(translation[field]);
    for (const card of wanted.filter((one) => !given.includes(one))) {
      add(
        "missing-field",
        [field],
        `${field} of ${card} in ${original.id} is not translated.`,
        `Add it: ${field}: { ${card}: … }`,
      );
    }
    for (const card of given.filter((one) => !wanted.includes(one))) {
      const hint = wanted.length > 0 ? `It has: ${wanted.join(", ")}.` : "It has none.";
      add("wrong-value", [field, card], `${original.id} has no ${field} for ${card}.`, hint);
    }
  }
  return faults;
}

const sameNames = (some: readonly string[], others: readonly string[]): boolean =>
  [...new Set(some)].sort().join() === [...new Set(others)].sort().join();
