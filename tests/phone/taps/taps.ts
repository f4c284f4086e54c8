/** What a client could tap now, by what it is and says, and one of these at random. */
import type { Random } from "../../surfaces/random.ts";
import type { Program } from "./program.ts";
import type { NumberColumn } from "./sheet.ts";

/** A number, or yes or no as 1 or 0, that a tap writes down. */
export interface Told {
  readonly column: NumberColumn;
  readonly value: number;
  /** The exercise, where it is told of one. */
  readonly title: string | undefined;
  /** In the middle of the exercise: of what was felt before and now, the most is kept. */
  readonly hurts: boolean;
}

export interface Tap {
  /** A word of the companion, such as pace.hurts, or what else it is. */
  readonly kind: string;
  readonly label: string;
  readonly element: HTMLElement;
  readonly told?: Told;
}

interface Choice {
  readonly weight: number;
  readonly taps: readonly Tap[];
}

/** How often a thing is tapped; what is not named is tapped as often as the last. */
const WEIGHTS: Readonly<Record<string, number>> = {
  "today.start": 14,
  "today.go-on": 12,
  "write.all": 2,
  "write.some": 2,
  "write.change": 2,
  "write.end": 2,
  "pace.start": 15,
  "pace.hurts": 7,
  "pace.go-on": 4,
  "pace.end": 5,
  "pace.leave": 1,
  "pace.set-done": 5,
  "pace.rest-end": 4,
  "pace.start-now": 4,
  "pace.done": 4,
  "pace.sound": 0.1,
  "pace.voice": 0.1,
  "pace.vibration": 0.1,
  "session.next": 14,
  "session.go-on": 7,
  "session.finish": 9,
  "undo.undo": 2,
  "call.called": 2,
  "morning.pass": 0.6,
  "missed.let-go": 0.7,
  "missed.was-done": 1.5,
  "same.yes": 6,
  "same.no": 2,
  "diary.bring": 0.4,
  "bring.code": 0.05,
  "bring.print": 0.1,
  "bring.save": 4,
  "delete.label": 0.3,
  "delete.yes": 1.5,
  "nav.today": 1.2,
  "nav.diary": 0.5,
  "nav.booklet": 0.1,
  "nav.stop": 0.1,
  "advice.phone": 0.4,
  "advice.signs": 0.3,
  "exercise.page": 0.15,
  line: 0.25,
  week: 0.1,
  fold: 0.2,
  scale: 6,
  choice: 2,
  tick: 0.5,
  note: 0.5,
  "count.less": 0.3,
  "count.more": 0.3,
  typed: 0.1,
  other: 1,
};

/** The tap of a client in this mood: the number of pain about which they choose. */
export function chosen(random: Random, program: Program, mood: number): Tap | undefined {
  const choices = choicesNow(program, random, mood);
  const total = choices.reduce((sum, { weight }) => sum + weight, 0);
  let left = (random.whole(0, 999_999) / 1_000_000) * total;
  for (const { weight, taps } of choices) {
    left -= weight;
    if (left < 0) return random.one(taps);
  }
  return undefined;
}

/** Everything that can be tapped, each thing of it once. */
export function choicesNow(program: Program, random: Random, mood: number): Choice[] {
  const choices: Choice[] = [];
  const add = (taps: readonly Tap[], weight = weightOf(taps[0]?.kind ?? "")) => {
    if (taps.length > 0) choices.push({ weight, taps });
  };
  for (const element of document.querySelectorAll<HTMLElement>(
    "#phone button, #phone a, #phone summary, #phone textarea, #phone input:not([type=radio]), #phone fieldset",
  )) {
    if (!isShown(element)) continue;
    if (element instanceof HTMLFieldSetElement) {
      const taps = tapsOf(element, program);
      const scale = element.classList.contains("scale");
      add(scale ? nearMood(taps, random, mood) : taps, weightOf(scale ? "scale" : "choice"));
    } else {
      const tap = tapOf(element, program);
      if (tap) add([tap]);
    }
  }
  return choices;
}

const weightOf = (kind: string): number => WEIGHTS[kind] ?? WEIGHTS.other ?? 1;

/** Not in what is folded, hidden or switched off. */
function isShown(element: HTMLElement): boolean {
  if (element.closest("[hidden], [aria-hidden=true], .sheet, :disabled") !== null) return false;
  const fold = element.closest("details:not([open])");
  return fold === null || (element.tagName === "SUMMARY" && element.parentElement === fold);
}

/** Numbers about the client's mood; now and then any. */
function nearMood(taps: readonly Tap[], random: Random, mood: number): readonly Tap[] {
  if (random.chance(0.15)) return taps;
  const near = taps.filter(({ told }) => told && Math.abs(told.value - mood) <= 2);
  return near.length > 0 ? near : taps;
}

export const nameOf = (element: Element): string =>
  (element.getAttribute("aria-label") ?? element.textContent ?? "").trim();

function tapOf(element: HTMLElement, program: Program): Tap | undefined {
  const label = nameOf(element);
  const as = (kind: string): Tap => ({ kind, label, element });
  if (element instanceof HTMLTextAreaElement) return as("note");
  if (element instanceof HTMLInputElement) {
    if (element.type === "file") return undefined;
    return as(element.type === "checkbox" ? "tick" : "typed");
  }
  if (element.tagName === "SUMMARY")
    return as(element.parentElement?.classList.contains("week") ? "week" : "fold");
  if (element.classList.contains("line")) return as("line");
  return as(wordOf(label, program.words) ?? "other");
}

const patterns = new WeakMap<object, readonly (readonly [string, RegExp])[]>();

/** The word of the companion that a label is. Of equal ones the first that the weights name. */
function wordOf(label: string, words: Program["words"]): string | undefined {
  let all = patterns.get(words);
  if (all === undefined) {
    const quoted = (text: string) => text.replaceAll(/[.*+?^${}()|[\]\\]/g, "\\$&");
    all = Object.keys(WEIGHTS).flatMap((key) => {
      const text = words[key];
      if (text === undefined) return [];
      const parts = text.split(/\{[^}]*\}/).map(quoted);
      return [[key, new RegExp(`^${parts.join(".*")}$`)] as const];
    });
    patterns.set(words, all);
  }
  return all.find(([, pattern]) => pattern.test(label))?.[0];
}

/** The answers of a question. */
function tapsOf(field: HTMLFieldSetElement, { words }: Program): Tap[] {
  const legend = field.querySelector("legend")?.textContent?.trim() ?? "";
  const section = field.closest("section");
  const ofExercise = section?.classList.contains("write-exercise") === true;
  const ofSession = section?.classList.contains("write-session") === true;
  const asked = section?.classList.contains("session") === true;
  const title = ofExercise
    ? section?.querySelector("h2")?.textContent
    : asked
      ? section?.querySelector(".scale legend")?.textContent
      : undefined;
  const column = ((): NumberColumn | undefined => {
    if (field.classList.contains("choice")) {
      if (legend === words.sudden) return "sudden";
      return legend === words["morning.usual"] ? "worse_morning" : undefined;
    }
    if (ofExercise || asked) return "pain_during";
    if (!ofSession || legend === words["write.morning"]) return "pain_morning";
    return legend === words["write.effort"] ? "effort" : "pain_after";
  })();
  return [...field.querySelectorAll("input")].map((element, at) => {
    const label = element.closest("label")?.textContent?.trim() ?? "";
    const kind = column ?? "done";
    const scale = field.classList.contains("scale");
    const yes = column === "worse_morning" ? at === 1 : at === 0;
    const value = scale ? Number(label) : yes ? 1 : 0;
    const told = column && {
      column,
      value,
      title: title?.trim(),
      hurts: asked && !ofExercise,
    };
    return { kind, label: `${legend} ${label}`, element, ...(told && { told }) };
  });
}
