/** The diary's tables: which columns they have, and what each row asks. */
import type { Booklet, DiaryPart, DiaryRow } from "../compose/model.ts";
import { onPaper } from "../diary/questions.ts";
import type { Words } from "../words/words.ts";

type Paper = Pick<Booklet, "diary" | "edition" | "units">;

/** Widths in millimetres; together with a day and the numbers they fill an A4 page. */
const ROOM = { all: 64, column: 16, which: 18, when: 26 } as const;

/** Rows a week from which they are set closer. */
const MANY_ROWS = 5;

/** What the diary asks, a sentence an entry: of weights only where some table has any. */
export function diaryHow({ diary }: Paper, { say }: Words): string[] {
  const ticks: SaidOf<"tick"> = { done: say("diary.how.done") };
  const marks: SaidOf<"mark"> = {
    sudden: say("diary.how.sudden"),
    worse_morning: say("diary.how.worse_morning"),
  };
  const weights: SaidOf<"weight"> = { kg: say("diary.how.kg") };
  const weighted = diary.some((part) => part.weights.length > 0);
  return [
    ...onPaper("tick").map((name) => ticks[name]),
    say("diary.how.effort"),
    say("diary.how.pain"),
    ...onPaper("mark").map((name) => marks[name]),
    ...(weighted ? onPaper("weight").map((name) => weights[name]) : []),
    say("diary.how.notes"),
  ];
}

/** Words for each question that is asked on paper in one way: none is left out, and no other is there. */
type SaidOf<Way extends Parameters<typeof onPaper>[0]> = Readonly<
  Record<ReturnType<typeof onPaper<Way>>[number], string>
>;

/** The tables of the diary, one a part. */
export const diaryParts = (booklet: Paper, words: Words) =>
  booklet.diary.map((part) => partView(part, booklet, words));

function partView(part: DiaryPart, { edition, units }: Paper, { say }: Words) {
  const { weights, which, weeks } = part;
  const ticks = ticksOf(part, say("diary.head.when"));
  const columns = weights.length + (ticks.named ? 0 : ticks.heads.length);
  const wide = ROOM.column * columns + (ticks.named ? ROOM.when : 0) + (which ? ROOM.which : 0);
  // weights and notes that have no room beside the numbers stand in a line under each day
  const apart = edition === "large" || wide > ROOM.all;
  const numbers = onPaper("column");
  const heads: SaidOf<"column"> = {
    effort: say("diary.head.effort"),
    pain_during: say("diary.head.pain_during"),
    pain_after: say("diary.head.pain_after"),
    pain_morning: say("diary.head.pain_morning"),
  };
  const weightHeads = weights.map((n) => say("diary.head.kg", { n, unit: units }));
  const beside = apart ? 0 : weights.length + 1;
  return {
    ...part,
    apart,
    notes: !apart,
    caption: part.phases.join(" + "),
    tickHeads: ticks.heads,
    named: ticks.named,
    numbers: numbers.map((name) => ({ name, head: heads[name] })),
    weightHeads: apart ? [] : weightHeads,
    columns: 1 + (which ? 1 : 0) + ticks.heads.length + numbers.length + beside,
    size: weeks.some(({ rows }) => rows.length >= MANY_ROWS) ? "dense" : "roomy",
    weeks: weeks.map((week) => ({
      ...week,
      rows: week.rows.map((row) => ({
        ...row,
        which: row.exercises.join(", "),
        ticks: ticks.of(row),
        numbers: numbers.map((name) => name !== "pain_morning" || row.morning),
        weights: apart ? [] : row.weights,
        used: row.weights.flatMap((used, at) => (used ? (weightHeads[at] ?? []) : [])),
      })),
    })),
  };
}

/**
 * The boxes to tick: a column for each part of the day, or where no day has two sessions one column in
 * which the part of the day stands beside its box. Of a row, an entry a column: undefined where it has none.
 */
function ticksOf({ parts, weeks }: DiaryPart, when: string) {
  const named =
    parts.length > 1 &&
    weeks.every(({ rows }) => rows.every(({ ticks }) => ticks.filter(Boolean).length === 1));
  return {
    named,
    heads: named ? [when] : parts,
    of: ({ ticks }: DiaryRow) =>
      named
        ? [{ part: parts[ticks.indexOf(true)] ?? "" }]
        : ticks.map((asked) => (asked ? { part: "" } : undefined)),
  };
}
