/** Reads the pages that a booklet has once: signs to stop, goals and own plan, progress. */
import type { Say } from "../facts.ts";
import type { Context } from "./context.ts";
import { readLoad } from "./dose-words.ts";
import { readDate } from "./numbers.ts";
import { sayCallLevel } from "./pain-words.ts";
import { itemsIn, picturesIn, type Section, textsIn } from "./sections.ts";

/** "Your goal" or "Your goals". */
const isGoals = (title: string, { label }: Context): boolean =>
  [...label("frame.goals.heading").matchAll(/(?:one|other) \{([^}]*)\}/g)].some(
    ([, words]) => words === title,
  );

/** Under their own heading of the client's plan: what is wanted, and its scale. */
export function readGoals({ parts }: Section, say: Say, context: Context): void {
  const { filled } = context;
  const blocks = parts.find(({ title }) => isGoals(title, context))?.blocks ?? [];
  const [, ...goals] = textsIn(blocks);
  picturesIn(blocks).forEach((words, at) => {
    const numbers = filled("goal", words);
    say(
      "goal",
      String(at + 1),
      `${goals[at]}: ${numbers?.join(" to ").replaceAll(",", ".")}`,
      "goals",
    );
  });
}

/** "Rise up on one leg: 2 sets" under each phase's short version; one that holds in all of them names none. */
export function readShortVersions(
  { parts }: Section,
  phases: readonly string[],
  say: Say,
  context: Context,
): void {
  for (const { title, blocks } of parts) {
    const named = phases.filter((one) => title.startsWith(`${one}: `));
    for (const item of itemsIn(blocks)) {
      const sets = /^(.*): (\d+) (?:sets?|Satz|Sätze)$/.exec(item);
      if (!sets) continue;
      const exercise = context.cardByTitle(sets[1] ?? "").title;
      for (const phase of named.length > 0 ? named : phases)
        say("short version", `${phase} · ${exercise}`, sets[2] ?? "", title);
    }
  }
}

export function readProgress({ parts }: Section, say: Say, { filled, language }: Context): void {
  for (const { title, blocks } of parts) {
    for (const words of picturesIn(blocks)) {
      const [name = "", first = "", last = ""] = filled("progress.words", words) ?? [];
      if (name !== title) say("first and last load", title, `its words name "${name}"`, title);
      const loads = [first, last].map((load) => readLoad(load, language).split(" ")[1]);
      say("first and last load", title, loads.join(" to "), title);
    }
  }
}

export function readStopPage({ parts }: Section, say: Say, context: Context): void {
  const { filled, label } = context;
  for (const { title, blocks } of parts) {
    const items = itemsIn(blocks);
    const [emergency] = filled("frame.stop.emergency", title) ?? [];
    if (emergency !== undefined) {
      say("telephone", "emergency", emergency, title);
      say("emergency signs", "", items.join(" | "), title);
    }
    if (title === label("frame.stop.call")) {
      say("stop signs", "", items.join(" | "), title);
      sayCallLevel(items, say, title, context);
      const texts = textsIn(blocks);
      const [phone = ""] = texts;
      say("telephone", "clinic", phone, title);
      const closed = `${label("frame.stop.closed")}: `;
      const found = texts.find((text) => text.startsWith(closed));
      say("telephone", "when closed", found?.slice(closed.length) ?? "", title);
      // the clinic's name stands alone, above when it is open
      const open = texts.findIndex((text) => text.startsWith(`${label("frame.stop.open")}: `));
      say("clinic", "name", texts[open - 1] ?? "", title);
    }
    if (title === label("frame.stop.care"))
      for (const item of items) say("care", item, "said", title);
  }
}

/** The last lines of a booklet: who made it, when it was signed off, and when it was printed. */
export function readEnd({ blocks }: Section, say: Say, { filled, label, starts }: Context): void {
  const place = "last lines";
  const [printed = ""] = label("frame.end.printed").split("{");
  for (const text of textsIn(blocks)) {
    const cut = text.lastIndexOf(printed);
    const [day] = filled("frame.end.printed", text.slice(Math.max(0, cut))) ?? [];
    if (day !== undefined) say("made", "", readDate(day, starts), place);
    const before = text.slice(0, Math.max(0, cut)).trim();
    const [clinician, date] = filled("frame.end.made", before) ?? [];
    const [maker] = filled("frame.end.draft", before) ?? [];
    const name = clinician ?? maker;
    if (name === undefined) continue;
    say("clinician", "", name, place);
    say("signed", "", date === undefined ? "draft" : "signed", place);
    if (date !== undefined) say("signed on", "", readDate(date, starts), place);
  }
}
