/** Reads protocols and checks them against the library: cards that exist, weeks without gaps, sums that agree. */

import { cardLayer } from "../cards/dose-layer.ts";
import { unknownCard } from "../cards/ladder.ts";
import type { Library } from "../cards/library.ts";
import { idOf, type LibraryResult } from "../cards/read-library.ts";
import { frequencies } from "../cards/schema.ts";
import { Fault } from "../faults/fault.ts";
import type { Tree } from "../files/tree.ts";
import { mergeLayers } from "../prescription/merge.ts";
import { misshapen } from "../prescription/shape-problem.ts";
import { expandWeeks, type WeekProblem } from "../prescription/week-table.ts";
import { splitMarkdown } from "../read/front-matter.ts";
import type { Path, Read } from "../read/source.ts";
import { nearest, validate } from "../read/validate.ts";
import { counted } from "../units/counted.ts";
import { weekSpanText } from "../units/week-span.ts";
import { languageInName } from "../words/languages.ts";
import { cardsNamed, wordsOf } from "./named-cards.ts";
import { type Protocol, type ProtocolExercise, protocolSchema } from "./schema.ts";
import { weeklyLayers } from "./weekly-layers.ts";

export interface ProtocolsResult {
  readonly protocols: ReadonlyMap<string, Read<Protocol>>;
  /** Ids of protocols that were found but have faults: naming them is not an error of its own. */
  readonly broken: ReadonlySet<string>;
  readonly faults: readonly Fault[];
}

/** Compares the sums that a source prints with those of its table. */
export type SumCheck = (protocol: Read<Protocol>, library: Library) => readonly Fault[];

/** The protocols in the given folders, earlier ones first. Protocols with faults of their own are left out. */
export function readProtocols(
  tree: Tree,
  folders: readonly string[],
  cards: LibraryResult,
  sumFaults: SumCheck,
): ProtocolsResult {
  const protocols = new Map<string, Read<Protocol>>();
  const broken = new Set<string>();
  const faults: Fault[] = [];
  for (const folder of folders) {
    const listing = tree.list(folder, ".md");
    faults.push(...listing.faults);
    for (const file of listing.files) {
      if (languageInName(file) !== undefined) continue;
      const read = readProtocol(tree, file, cards, sumFaults);
      faults.push(...read.faults);
      if (!read.protocol) {
        // what cannot be read at all is named by its file
        broken.add(read.id ?? file.replace(/^.*\//, "").replace(/\.md$/, ""));
        continue;
      }
      const first = protocols.get(read.protocol.value.id);
      if (first) faults.push(duplicate(read.protocol, first));
      else protocols.set(read.protocol.value.id, read.protocol);
    }
  }
  return { protocols, broken, faults };
}

function readProtocol(
  tree: Tree,
  file: string,
  cards: LibraryResult,
  sumFaults: SumCheck,
): { protocol?: Read<Protocol>; id?: string | undefined; faults: readonly Fault[] } {
  const reading = tree.read(file);
  if (reading.fault) return { faults: [reading.fault] };
  const { split, faults } = splitMarkdown(file, reading.text);
  if (!split) return { faults };
  const checked = validate(protocolSchema, split.data, split.source);
  if (!checked.value) return { id: idOf(split.data), faults: checked.faults };
  const protocol = { value: checked.value, source: split.source };
  const found = protocolFaults(protocol, cards);
  if (found.length === 0) found.push(...sumFaults(protocol, cards.library));
  return found.some((fault) => fault.level === "error")
    ? { id: checked.value.id, faults: found }
    : { protocol, faults: found };
}

function protocolFaults(protocol: Read<Protocol>, cards: LibraryResult): Fault[] {
  const { value, source } = protocol;
  const faults: Fault[] = [];
  faults.push(...outlookFaults(protocol));
  const phaseIds = new Set<string>();
  value.phases.forEach((phase, phaseAt) => {
    if (phaseIds.has(phase.id)) {
      const place = source.at(["phases", phaseAt, "id"]);
      faults.push(
        new Fault("duplicate-id", `Two phases are called ${phase.id}.`, {
          place,
          frame: source.frame(place),
          hint: "Give one of them another id.",
        }),
      );
    }
    phaseIds.add(phase.id);
    faults.push(...namedFaults(protocol, phaseAt, cards));
    const names = phase.exercises.map(({ card }) => card);
    phase.exercises.forEach((exercise, at) => {
      for (const [field, named] of tiesOf(exercise)) {
        if (names.includes(named) && named !== exercise.card) continue;
        const place = source.at(["phases", phaseAt, "exercises", at, field]);
        faults.push(
          new Fault("unknown-card", `The phase ${phase.id} has no other exercise ${named}.`, {
            place,
            frame: source.frame(place),
            hint: `It has: ${names.join(", ")}.`,
          }),
        );
      }
      const path: Path = ["phases", phaseAt, "exercises", at];
      faults.push(...exerciseFaults(protocol, exercise, path, phase.weeks, cards));
    });
  });
  return faults;
}

/** What a client is told to expect comes from the protocol's own sources. */
function outlookFaults({ value, source }: Read<Protocol>): Fault[] {
  const cites = value.sources.map(({ cite }) => cite);
  return (value.outlook?.from ?? []).flatMap((from, at) => {
    if (cites.includes(from)) return [];
    const place = source.at(["outlook", "from", at]);
    const near = nearest(from, cites);
    return [
      new Fault("wrong-value", `${from} is not among the sources of ${value.id}.`, {
        place,
        frame: source.frame(place),
        hint: near ? `Did you mean ${near}?` : "Cite it under sources first.",
      }),
    ];
  });
}

/** Cards and flags that the signs of a phase name and that are not there. */
function namedFaults(
  { value, source }: Read<Protocol>,
  phaseAt: number,
  { library, broken }: LibraryResult,
): Fault[] {
  const phase = value.phases[phaseAt];
  if (!phase) return [];
  const path = (...inner: Path): Path => ["phases", phaseAt, ...inner];
  const known = [...library.cards.keys()];
  const named = [
    ...phase.move_on.flatMap((sign, at) => [
      { text: wordsOf(sign), path: path("move_on", at) },
      ...(typeof sign === "string" || sign.of === undefined
        ? []
        : [{ text: `{${sign.of}}`, path: path("move_on", at, "of") }]),
    ]),
    ...phase.go_back.map((text, at) => ({ text, path: path("go_back", at) })),
    ...phase.exercises.map(({ when = "" }, at) => ({
      text: when,
      path: path("exercises", at, "when"),
    })),
  ];
  const cards = named.flatMap(({ text, path }) =>
    cardsNamed(text)
      .filter((id) => !library.cards.has(id) && !broken.has(id))
      .map((id) => unknownCard(id, { source }, path, known)),
  );
  const flags = Object.keys(library.words.flags);
  const unknown = phase.move_on.flatMap((sign, at) =>
    (typeof sign === "string" ? [] : sign.not_for).flatMap((flag, which) =>
      flags.includes(flag) ? [] : [unknownFlag(flag, path("move_on", at, "not_for", which))],
    ),
  );
  return [...cards, ...unknown];

  function unknownFlag(flag: string, path: Path): Fault {
    const place = source.at(path);
    const near = nearest(flag, flags);
    return new Fault("wrong-value", `There is no flag ${flag}.`, {
      place,
      frame: source.frame(place),
      hint: near ? `Did you mean ${near}?` : "Write it into vocabulary.yaml beside your cards.",
    });
  }
}

/** The exercises that one is tied to, by the field that names them. */
function tiesOf({ same_session_as, after }: ProtocolExercise): (readonly [string, string])[] {
  return [
    ...(same_session_as === undefined ? [] : [["same_session_as", same_session_as] as const]),
    ...after.map((card) => ["after", card] as const),
  ];
}

function exerciseFaults(
  { source }: Read<Protocol>,
  exercise: ProtocolExercise,
  path: Path,
  weeks: number,
  { library, broken }: LibraryResult,
): Fault[] {
  const faults: Fault[] = [];
  const at = (inner: Path) => source.at([...path, ...inner]);
  if (!library.cards.has(exercise.card) && !broken.has(exercise.card)) {
    faults.push(
      unknownCard(exercise.card, { source }, [...path, "card"], [...library.cards.keys()]),
    );
  }
  const rows = Object.values(exercise.weeks ?? {}).filter((row) => row !== "none");
  const parts = [exercise.dose, ...rows];
  if (parts.some((part) => frequencies(part) > 1)) {
    const place = at(["dose"]);
    faults.push(
      new Fault(
        "wrong-value",
        `${exercise.card} gives more than one of per_week, per_day and every.`,
        {
          place,
          frame: source.frame(place),
          hint: "Keep one of them.",
        },
      ),
    );
  }
  for (const problem of expandWeeks(exercise, weeks).problems) {
    const said = weekProblem(exercise, problem, weeks);
    const place = at(problem.path);
    faults.push(
      new Fault("week-gap", said.message, { place, frame: source.frame(place), hint: said.hint }),
    );
  }
  const card = library.cards.get(exercise.card);
  const own = card ? [cardLayer(card)] : [];
  const doses = weeklyLayers(exercise, weeks, source, path).map(
    (layer) => layer && mergeLayers([...own, layer]),
  );
  for (const { says, hint, place } of misshapen(doses)) {
    faults.push(
      new Fault("wrong-value", `The dose of ${exercise.card} ${says}.`, {
        place,
        frame: place.file === source.file ? source.frame(place) : undefined,
        hint,
      }),
    );
  }
  return faults;
}

/** A problem of a week table in words. */
function weekProblem(
  { card }: ProtocolExercise,
  { kind, key, weeks }: WeekProblem,
  phaseWeeks: number,
): { readonly message: string; readonly hint: string } {
  const span =
    weeks.first === weeks.last ? `week ${weeks.first}` : `weeks ${weeks.first} to ${weeks.last}`;
  if (kind === "both") {
    return { message: `${card} has both a week table and a rule.`, hint: "Keep one of the two." };
  }
  if (kind === "overlap") {
    return {
      message: `${card}: the row ${key} fills ${span} a second time.`,
      hint: "Let each week stand in one row.",
    };
  }
  if (kind === "outside") {
    return {
      message: `${card}: the row ${key} goes past the phase, which has ${counted(phaseWeeks, "week")}.`,
      hint: "Shorten the row, or give the phase more weeks.",
    };
  }
  if (kind === "never") {
    return {
      message: `${card} has no week in its table.`,
      hint: "Give it a row, or leave it out.",
    };
  }
  return {
    message: `${card} has no row for ${span}, and what it states for every week is no complete dose.`,
    hint: `Add a row, or for weeks without the exercise ${weekSpanText(weeks)}: none. A complete dose has sets, what a set is, and how often.`,
  };
}

function duplicate(protocol: Read<Protocol>, first: Read<Protocol>): Fault {
  const place = protocol.source.at(["id"]);
  return new Fault(
    "duplicate-id",
    `The protocol id ${protocol.value.id} is used by ${protocol.source.file} and by ${first.source.file}.`,
    { place, frame: protocol.source.frame(place), hint: "Give one of them another id." },
  );
}
