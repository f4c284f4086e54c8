/** What the templates are given: the booklet with everything worked out that they print. */
import { drawCode } from "../codes/draw.ts";
import type { Booklet, WeekSteps } from "../compose/model.ts";
import type { Words } from "../words/words.ts";
import { drawProgress } from "./charts.ts";
import { diaryHow, diaryParts } from "./diary.ts";
import { exerciseDoses } from "./doses.ts";
import { renderMarkdown } from "./markdown.ts";
import type { Part } from "./pages.ts";
import { partsOf, phaseViews } from "./phases.ts";
import { drawGoal, drawRuler, drawSteps, drawZone } from "./scales.ts";
import { calendarView } from "./weeks.ts";

/** A line of the list of contents. */
interface ContentsLine {
  readonly anchor: string;
  readonly title: string;
  /** Number of an exercise; empty for all else. */
  readonly number: string;
  /** Page as printed; empty while it is not known. */
  readonly page: string;
}

/** Works out everything the templates print; `pages` are the page numbers known so far. */
export function viewBooklet(booklet: Booklet, words: Words, pages: ReadonlyMap<string, number>) {
  const { say } = words;
  const part = (page: string, head: string): Part => ({ page, head });
  const numbers = new Map(booklet.exercises.map(({ anchor, number }) => [anchor, number]));
  const phases = phaseViews(booklet, numbers, words);
  const phaseParts = partsOf(phases);
  const exercises = booklet.exercises.map((exercise, index) => ({
    ...exercise,
    ...exerciseDoses(exercise),
    setUp: renderMarkdown(exercise.setUp),
    move: renderMarkdown(exercise.move),
    feel: renderMarkdown(exercise.feel),
    check: renderMarkdown(exercise.check),
    stop: renderMarkdown(exercise.stop),
    part: {
      ...part(`exercise-${index + 1}`, say("exercise.label", { n: exercise.number })),
      picture: exercise.figure?.width,
    },
  }));
  const easier = booklet.easier.map((one) => ({
    ...one,
    setUp: renderMarkdown(one.setUp),
    move: renderMarkdown(one.move),
    stop: renderMarkdown(one.stop),
    clinic: booklet.clinic,
  }));
  const own = (["before", "after"] as const).flatMap((where) =>
    booklet[where].map((page) => ({
      where,
      anchor: page.anchor,
      title: page.title,
      text: renderMarkdown(page.text),
      part: part(page.anchor, page.title),
    })),
  );
  const questions = questionsAfter(booklet);
  const frame = {
    cover: part("cover", ""),
    summary: part("summary", say("summary.heading")),
    stop: part("stop", say("stop.heading")),
    pain: part("pain", say("pain.heading")),
    weeks: part("weeks", say("weeks.heading")),
    myPlan: part("my-plan", say("my-plan.heading")),
    easier: part("easier", say("easier.heading")),
    progress: part("progress", say("progress.heading")),
    diary: part("diary", say("diary.heading")),
  };
  return {
    ...booklet,
    frame,
    parts: [
      ...Object.values(frame),
      ...[...own, ...phaseParts, ...exercises].map(({ part: own }) => own),
    ],
    contents: contents(booklet, words, pages),
    cover: coverView(booklet, words),
    outlook: booklet.outlook && { ...booklet.outlook, from: booklet.outlook.from.join("; ") },
    start: booklet.start && {
      ...booklet.start,
      exercises: booklet.start.exercises.map((one) => ({
        ...one,
        number: numbers.get(one.anchor),
        dose: one.dose.join(" · "),
      })),
    },
    pain: painView(booklet, words),
    calendar: calendarView(booklet),
    phases,
    phaseParts,
    exercises,
    easierPages: pairs(easier),
    before: own.filter(({ where }) => where === "before"),
    after: own.filter(({ where }) => where === "after"),
    progress: booklet.progress.map((chart) => ({ ...chart, drawing: drawProgress(chart, words) })),
    myPlan: {
      ...booklet.myPlan,
      answers:
        booklet.myPlan.ifThen.length > 0
          ? booklet.myPlan.ifThen.map((one) => ({ hurdle: one.if, answer: one.do }))
          : BLANK_ANSWERS,
    },
    badDays: badDays(booklet),
    shortVersions: booklet.phases.some(({ badDay }) => badDay !== undefined),
    diaryHow: diaryHow(booklet, words),
    toPhone: toPhone(booklet),
    diary: diaryParts(booklet, words),
    questions: { [questions]: true },
    lines: Array.from({ length: LINES[questions] }, () => ""),
    large: booklet.edition === "large",
  };
}

/** The clinic's page on booklets for the phone, as it is read and as a code. */
const toPhone = ({ clinic: { phonePage } }: Booklet) =>
  phonePage === undefined
    ? undefined
    : { shown: phonePage.replace(/^https:\/\//, ""), ...drawCode(phonePage) };

/** The part whose last page has room for the client's questions, as a rule; the diary begins anew after it. */
type BeforeQuestions = "easier" | "progress" | "diary";

/** Lines to write questions on. In large print they are few, too, and have a page of their own. */
const LINES: Readonly<Record<BeforeQuestions, number>> = { easier: 4, progress: 4, diary: 5 };

/** Two charts fill less than a page, as does one easier move: two of these do fill it. */
function questionsAfter({ edition, easier, progress }: Booklet): BeforeQuestions {
  if (edition !== "standard") return "diary";
  if (progress.length > 0) return progress.length <= 2 ? "progress" : "diary";
  return easier.length % 2 === 1 ? "easier" : "diary";
}

/** What a bad day keeps, a phase an entry, or one entry where it is the same in all; that has no name. */
function badDays({ phases }: Booklet) {
  const kept = phases.map(({ title, badDay, leaveOut }) => ({
    title,
    length: badDay?.length,
    exercises: badDay?.exercises ?? [],
    leaveOut,
  }));
  const alike = new Set(kept.map(({ title: _, ...rest }) => JSON.stringify(rest))).size <= 1;
  return (alike ? kept.slice(0, 1) : kept)
    .filter(({ length, leaveOut }) => length !== undefined || leaveOut !== undefined)
    .map(({ title, length, ...rest }) => {
      const heading = [alike ? undefined : title, length];
      return { ...rest, heading: heading.filter((part) => part !== undefined).join(": ") };
    });
}

/** Two at a time: so many easier moves stand on a page. */
function pairs<Item>(items: readonly Item[]): Item[][] {
  return items.flatMap((_, at) => (at % 2 === 0 ? [items.slice(at, at + 2)] : []));
}

/** Room for the client's own answers where the plan has none. */
const BLANK_ANSWERS = Array.from({ length: 2 }, () => ({ hurdle: "", answer: "" }));

function contents(
  booklet: Booklet,
  { say }: Words,
  pages: ReadonlyMap<string, number>,
): readonly ContentsLine[] {
  const line = (anchor: string, title: string, number = ""): ContentsLine => ({
    anchor,
    title,
    number,
    page: String(pages.get(anchor) ?? ""),
  });
  const after = questionsAfter(booklet);
  const questions = [line("part-questions", say("questions.heading"))];
  return [
    line("part-stop", say("stop.heading")),
    ...booklet.before.map(({ anchor, title }) => line(anchor, title)),
    line("part-pain", say("pain.heading")),
    line("part-weeks", say("weeks.heading")),
    line("part-my-plan", say("my-plan.heading")),
    ...(booklet.outlook === undefined ? [] : [line("part-expect", say("expect.heading"))]),
    ...booklet.phases.map(({ anchor, label, title }) =>
      line(anchor, label === undefined ? title : say("contents.phase", { label, title })),
    ),
    ...booklet.exercises.map(({ anchor, title, number }) => line(anchor, title, String(number))),
    ...(booklet.easier.length > 0 ? [line("part-easier", say("easier.heading"))] : []),
    ...(after === "easier" ? questions : []),
    ...(booklet.progress.length > 0 ? [line("part-progress", say("progress.heading"))] : []),
    ...(after === "progress" ? questions : []),
    line("part-diary", say("diary.heading")),
    ...(after === "diary" ? questions : []),
    ...booklet.after.map(({ anchor, title }) => line(anchor, title)),
  ];
}

function coverView(booklet: Booklet, words: Words) {
  const { cover } = booklet;
  return {
    ...cover,
    note: renderMarkdown(cover.note),
    goals: cover.goals.map((goal) => ({ ...goal, drawing: drawGoal(goal, words) })),
    steps: drawSteps(cover.steps, booklet.weeks),
    stepsOf: cover.steps && stepsOf(cover.steps.of, words),
    firstWeek: booklet.weeks.at(0)?.number,
    lastWeek: booklet.weeks.at(-1)?.number,
  };
}

function painView(booklet: Booklet, words: Words) {
  const { pain } = booklet;
  const zones = pain.zones.map((zone) => ({
    ...zone,
    span: zone.to - zone.from + 1,
    range:
      zone.from === zone.to
        ? `${zone.from}`
        : words.say("pain.range", { from: zone.from, to: zone.to }),
    swatch: drawZone(zone.zone),
  }));
  return {
    ...pain,
    monitored: pain.kind === "monitored",
    zones,
    drawing: drawRuler(pain, zones, words),
  };
}

/** What the rising bars of the cover show. */
function stepsOf(of: WeekSteps["of"], words: Words): string {
  return of === "weights" ? words.say("cover.steps-weights") : words.say("cover.steps-minutes");
}
