/** The texts a client reads, each with its name and where its lines stand in the file. */

import type { LibraryCard } from "../cards/library.ts";
import { SECTIONS } from "../cards/sections.ts";
import type { Clinic } from "../clinic/schema.ts";
import type { Place } from "../faults/fault.ts";
import type { ReadPlan } from "../plan/read-plan.ts";
import { wordsOf } from "../protocols/named-cards.ts";
import type { Protocol } from "../protocols/schema.ts";
import type { Path, Read, Source } from "../read/source.ts";

export interface ClientText {
  /** As an author calls it, with its article: “the title”, “the section “Move””. */
  readonly name: string;
  readonly markdown: string;
  readonly source: Source;
  /** Place of a line and column of the Markdown, both from 0. */
  readonly place: (line: number, column: number) => Place;
}

/** What a client reads of a card: title, reason, words of care and steps, and the sections but the clinician's. */
export function cardTexts({ card, sections, source }: LibraryCard): readonly ClientText[] {
  const field = fieldOf(source);
  return [
    field("the title", ["title"], card.title),
    field("the reason", ["why"], card.why),
    ...card.care.map(({ flag, say }, at) =>
      field(`the care for ${flag}`, ["care", at, "say"], say),
    ),
    ...card.care.flatMap(({ flag, steps }, at) =>
      steps.map((step, which) =>
        field(`a step for ${flag}`, ["care", at, "steps", which, "do"], step.do),
      ),
    ),
    ...(["harder", "easier"] as const).flatMap((way) =>
      card[way].flatMap(({ to, when }, at) =>
        when?.say === undefined
          ? []
          : [field(`the line on when to take ${to}`, [way, at, "when", "say"], when.say)],
      ),
    ),
    ...[
      ...SECTIONS.flatMap(({ key, heading }) =>
        key === "clinician" ? [] : [{ heading, text: sections[key] }],
      ),
      ...sections.variants,
    ].map(({ heading, text }) =>
      body(source, `the section “${heading}”`, text, () => sectionStart(source, heading)),
    ),
  ];
}

/** What a client is told to expect, by its fields. */
const OUTLOOK = ["takes", "known", "unknown", "instead"] as const;

/** What a client reads of a protocol: its title, what to expect and, of each phase, title, aim, reasons and signs. */
export function protocolTexts({ value, source }: Read<Protocol>): readonly ClientText[] {
  const field = fieldOf(source);
  return [
    field("the title", ["title"], value.title),
    ...OUTLOOK.flatMap((name) => {
      const text = value.outlook?.[name];
      return text === undefined ? [] : [field(`what to expect (${name})`, ["outlook", name], text)];
    }),
    ...value.phases.flatMap((phase, phaseAt) => {
      const path = (...inner: Path): Path => ["phases", phaseAt, ...inner];
      return [
        field(`the title of phase ${phase.id}`, path("title"), phase.title),
        field(`the aim of phase ${phase.id}`, path("aim"), phase.aim),
        ...phase.exercises.flatMap(({ card, why, when }, at) => [
          ...(why === undefined
            ? []
            : [field(`the reason for ${card}`, path("exercises", at, "why"), why)]),
          ...(when === undefined
            ? []
            : [field(`the line on when ${card} starts`, path("exercises", at, "when"), when)]),
        ]),
        list(
          source,
          `the list of signs to move on from ${phase.id}`,
          path("move_on"),
          phase.move_on.map(wordsOf),
        ),
        list(
          source,
          `the list of signs to go back from ${phase.id}`,
          path("go_back"),
          phase.go_back,
        ),
      ];
    }),
  ];
}

/** What a client reads of a plan: the goals and the clinician's note. */
export function planTexts({ value, source, note }: ReadPlan): readonly ClientText[] {
  const field = fieldOf(source);
  return [
    ...value.goals.map(({ what }, at) => field("the goal", ["goals", at, "what"], what)),
    body(source, "the note", note, () => firstTextLine(source, bodyStart(source))),
  ];
}

/** What a client reads of a clinic's settings: when it answers, and whom to call when it does not. */
export function clinicTexts({ value, source }: Read<Clinic>): readonly ClientText[] {
  const field = fieldOf(source);
  return [
    field("the line on opening hours", ["hours"], value.hours),
    field("the line on whom to call out of hours", ["out_of_hours"], value.out_of_hours),
  ];
}

const fieldOf =
  (source: Source) =>
  (name: string, path: Path, markdown: string): ClientText => ({
    name,
    markdown,
    source,
    place: () => source.at(path),
  });

/** A list of lines as the items of one text. */
function list(source: Source, name: string, path: Path, items: readonly string[]): ClientText {
  return {
    name,
    markdown: items.map((item) => `- ${item}`).join("\n"),
    source,
    place: (line) => source.at([...path, line]),
  };
}

/** Text of the file's body; the line on which it begins, from 1, is looked up when it is asked for. */
function body(source: Source, name: string, markdown: string, first: () => number): ClientText {
  return {
    name,
    markdown,
    source,
    place: (line, column) => {
      // white space before the first line was trimmed
      const indent = line > 0 ? 0 : (linesOf(source)[first() - 1] ?? "").search(/\S|$/);
      return source.atLine(first() + line, column + 1 + indent);
    },
  };
}

const linesOf = (source: Source): readonly string[] => source.text.split(/\r?\n/);

/** The line, from 1, of the first text under a heading. */
function sectionStart(source: Source, heading: string): number {
  const start = bodyStart(source);
  const at = linesOf(source).findIndex((text, index) => {
    const found = index < start ? undefined : /^#{1,6}\s+(.*?)\s*#*\s*$/.exec(text)?.[1];
    return found?.toLowerCase() === heading.toLowerCase();
  });
  return firstTextLine(source, at + 1);
}

/** The line, from 1, of the first text after so many lines. */
function firstTextLine(source: Source, after: number): number {
  const found = linesOf(source).findIndex((text, index) => index >= after && text.trim() !== "");
  return found < 0 ? after + 1 : found + 1;
}

/** Lines of the file before its body: the front matter with its two rules. */
function bodyStart(source: Source): number {
  return linesOf(source).findIndex((text, index) => index > 0 && /^---[ \t]*$/.test(text)) + 1;
}
