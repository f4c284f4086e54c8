/** Reads the pages of a booklet, HTML or PDF, from what stands on them: by their titles and the heads of their tables. */
import { collector, type Fact, type Kind, type Say, type Surface } from "../facts.ts";
import type { Context } from "./context.ts";
import { readDiary } from "./diary-pages.ts";
import { DOSE_KINDS, SHORT_KINDS } from "./dose-facts.ts";
import { readExercisePage } from "./dose-pages.ts";
import { readEasierPage } from "./easier-page.ts";
import { isFirstPage, readFirstPage } from "./first-page.ts";
import type { Block } from "./outline.ts";
import { readPainPage } from "./pain-page.ts";
import { type PhaseTables, readPhasePage } from "./phase-page.ts";
import { readPhases } from "./phases.ts";
import { type Section, sectionsOf } from "./sections.ts";
import {
  readEnd,
  readGoals,
  readProgress,
  readShortVersions,
  readStopPage,
} from "./single-pages.ts";
import { readSummary } from "./summary-page.ts";
import { readWeeksPage } from "./weeks-page.ts";

/** A page that is found by its title, and what it has to state of every client. */
interface Page {
  readonly name: string;
  readonly isIt: (title: string, context: Context) => boolean;
  readonly complete: readonly Kind[];
  readonly read: (section: Section, reading: Reading) => void;
}

interface Reading {
  readonly facts: Fact[];
  readonly say: Say;
  /** Titles of the exercises and of the phases that have a page in this file. */
  readonly exercises: readonly string[];
  readonly phases: readonly string[];
  /** What the pages read before this one say. */
  readonly before: readonly Fact[];
  /** The tables of the phases read before, by their titles. */
  readonly tables: PhaseTables;
  readonly context: Context;
}

const called =
  (key: string) =>
  (title: string, { label }: Context): boolean =>
    title === label(key);

const PAGES: readonly Page[] = [
  {
    name: "cover",
    isIt: isFirstPage,
    complete: ["course title", "course", "client", "clinician", "signed"],
    read: (section, { facts, say, context }) => readFirstPage(section, facts, say, context),
  },
  {
    name: "stop page",
    isIt: called("frame.stop.heading"),
    complete: ["stop signs", "emergency signs", "telephone", "clinic"],
    read: (section, { say, context }) => readStopPage(section, say, context),
  },
  {
    name: "pain page",
    isIt: called("frame.pain.heading"),
    complete: ["pain during", "pain after"],
    read: (section, { facts, say, exercises, context }) =>
      readPainPage(section, exercises, facts, say, context),
  },
  {
    name: "weeks page",
    isIt: called("frame.weeks.heading"),
    complete: ["session", "week dates", "week phases", "phase label", "note of a day"],
    read: (section, { say, context }) => readWeeksPage(section, say, context),
  },
  {
    name: "my plan",
    isIt: called("frame.my-plan.heading"),
    complete: ["short version", "goal"],
    read(section, { say, phases, context }) {
      readGoals(section, say, context);
      readShortVersions(section, phases, say, context);
    },
  },
  {
    name: "phase page",
    isIt: (title, context) => phaseOf(title, context) !== undefined,
    complete: [
      ...DOSE_KINDS,
      "often",
      "starts when",
      "phase weeks",
      "phase label",
      "move on",
      "go back",
    ],
    read: (section, { facts, say, tables, context }) => {
      readPhases(section.title, say, section.title, context);
      const title = phaseOf(section.title, context) ?? "";
      readPhasePage(section, title, tables, facts, say, context);
    },
  },
  {
    name: "exercise page",
    isIt: (title, context) => exerciseOf(title, context) !== undefined,
    complete: [
      ...DOSE_KINDS,
      "often",
      "starts when",
      "pain during",
      "sign for a flag",
      "easier move",
    ],
    read: (section, { facts, say, exercises, context }) => {
      const title = exerciseOf(section.title, context) ?? "";
      const number = String(exercises.indexOf(title) + 1);
      say("number of an exercise", title, number, "the order of the pages");
      say("number of an exercise", title, /\d+/.exec(section.title)?.[0] ?? "", section.title);
      readExercisePage(section, title, facts, say, context);
    },
  },
  {
    name: "easier moves",
    isIt: called("frame.easier.heading"),
    complete: [],
    read: (section, { say, exercises, before, context }) =>
      readEasierPage(section, exercises, before, say, context),
  },
  {
    name: "progress",
    isIt: called("frame.progress.heading"),
    complete: ["first and last load"],
    read: (section, { say, context }) => readProgress(section, say, context),
  },
  {
    name: "diary",
    isIt: called("frame.diary.heading"),
    complete: [
      "session",
      "exercises",
      "starts when",
      // a week without sessions has no rows
      "phase label",
      "weight asked for",
      "phone page",
      ...SHORT_KINDS,
    ],
    read: (section, { facts, say, context }) => readDiary(section, facts, say, context),
  },
  {
    name: "last page",
    isIt: called("frame.questions.heading"),
    complete: ["signed", "signed on", "made"],
    read: (section, { say, context }) => readEnd(section, say, context),
  },
];

/** Every page of a standard or large booklet is a surface of its own: they are held against each other too. */
export function readPages(file: string, blocks: readonly Block[], context: Context): Surface[] {
  const sections = sectionsOf(blocks);
  const exercises = sections.flatMap(({ title }) => exerciseOf(title, context) ?? []);
  const phases = sections.flatMap(({ title }) => phaseOf(title, context) ?? []);
  const before: Fact[] = [];
  return PAGES.map(({ name, isIt, complete, read }) => {
    const { facts, say } = collector();
    const tables: PhaseTables = new Map();
    for (const section of sections.filter(({ title }) => isIt(title, context))) {
      read(section, { facts, say, exercises, phases, before, tables, context });
    }
    before.push(...facts);
    return { name: `${file} ${name}`, facts, complete: new Set(complete) };
  });
}

/** The one-page summary as a surface. */
export function readSummaryPage(file: string, blocks: readonly Block[], context: Context): Surface {
  const { facts, say } = collector();
  readSummary(sectionsOf(blocks), facts, say, context);
  return {
    name: `${file} summary`,
    facts,
    complete: new Set([
      ...DOSE_KINDS,
      "often",
      "starts when",
      "stop signs",
      "sign for a flag",
      "pain during",
    ]),
  };
}

/** "Exercise 3: Title". */
function exerciseOf(title: string, { filled }: Context): string | undefined {
  const cut = title.indexOf(": ");
  const head = title.slice(0, Math.max(0, cut));
  return filled("frame.exercise.label", head) ? title.slice(cut + 2) : undefined;
}

/** The phase's title where a page's title is "Phase 1 of 2: …" or the bare title. */
function phaseOf(title: string, { protocol, filled }: Context): string | undefined {
  return protocol.phases.find((phase) => {
    if (title === phase.title) return true;
    const head = title.slice(0, Math.max(0, title.length - phase.title.length - 2));
    return title.endsWith(`: ${phase.title}`) && filled("phase.label", head) !== undefined;
  })?.title;
}
