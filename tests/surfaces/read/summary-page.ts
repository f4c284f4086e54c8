/** Reads the one-page summary: when, what, how much pain, when to stop. */
import type { Fact, Say } from "../facts.ts";
import { type Context, readSide, readWeeks, waysOf } from "./context.ts";
import { doseFacts, NONE, weekKey } from "./dose-facts.ts";
import { timesFacts, titleAtStart } from "./dose-pages.ts";
import { readLoad, readWork, type SaidDose } from "./dose-words.ts";
import { gateFact, withoutGate } from "./gates.ts";
import { readHow } from "./how-words.ts";
import { readSpan } from "./numbers.ts";
import { readSummaryPain, zonesInWords } from "./pain-page.ts";
import { sayCallLevel } from "./pain-words.ts";
import { itemsIn, picturesIn, type Section, textsIn } from "./sections.ts";
import { urgentIn, urgentSign } from "./urgent.ts";

export function readSummary(
  sections: readonly Section[],
  facts: Fact[],
  say: Say,
  context: Context,
): void {
  const { label, protocol } = context;
  const called = (key: string) =>
    sections.find(({ title }) => title === label(`frame.summary.${key}`));
  const [days, work, pain, stop] = ["days", "work", "pain", "stop"].map(called);
  if (sections.some(({ title }) => title === protocol.title))
    say("course title", "", protocol.title, "title");
  readHead(sections, say);
  readWhen(itemsIn(days?.blocks ?? []), say, context);
  const titles = (work?.parts ?? []).map((part) => readExercise(part, facts, context));
  readSummaryPain(itemsIn(pain?.blocks ?? []), titles, facts, context);
  for (const words of picturesIn(pain?.blocks ?? [])) zonesInWords(words, say, context);
  if (stop) readStopBox(stop, say, context);
}

function readStopBox({ title, blocks }: Section, say: Say, context: Context): void {
  say("stop signs", "", itemsIn(blocks).join(" | "), title);
  sayCallLevel(itemsIn(blocks), say, title, context);
  for (const sign of urgentIn(blocks, context)) say("sign for a flag", sign, "said", title);
  const texts = textsIn(blocks).filter((text) => urgentSign(text, context) === undefined);
  const phone = /^.+?: (.+) \S+: (\S+)$/.exec(texts.join(" "));
  say("telephone", "clinic", phone?.[1] ?? NONE, title);
  say("telephone", "emergency", phone?.[2] ?? NONE, title);
}

/** "Clinic · Name (Reference)", before the first title. */
function readHead(sections: readonly Section[], say: Say): void {
  const before = sections
    .filter(({ title }) => title === "")
    .flatMap(({ blocks }) => textsIn(blocks));
  const named = /^(.*) · (.*) \((.*)\)$/.exec(before.find((text) => text.includes(" · ")) ?? "");
  say("clinic", "name", named?.[1] ?? NONE, "head");
  say("client", "name", named?.[2] ?? NONE, "head");
  say("client", "reference", named?.[3] ?? NONE, "head");
}

/** "First steps: Every day, morning. A session takes about 9 minutes." */
function readWhen(items: readonly string[], say: Say, { protocol, filled }: Context): void {
  for (const item of items) {
    const phase = protocol.phases.find(({ title }) => item.startsWith(`${title}: `));
    const sentences = item.split(/(?<=\.) /);
    const [minutes] = sentences.flatMap(
      (_, at) => filled("phase.sessions", sentences.slice(at).join(" ")) ?? [],
    );
    if (phase && minutes !== undefined) say("phase lengths", phase.title, readSpan(minutes), item);
  }
}

/** A title with its side; weeks with all that changes; sentences with what always holds. */
function readExercise({ title: head, blocks }: Section, facts: Fact[], context: Context): string {
  const title = titleAtStart(head, context);
  const words = head.slice(title.length).trim();
  const side = words === "" ? NONE : readSide(words, context, "side");
  const gates = textsIn(blocks).map((text) => withoutGate(text, context));
  const whole = gates.find(({ text }) => text === "");
  const [spans = "", always = ""] = textsIn(blocks).filter((_, at) => gates[at] !== whole);
  for (const { weeks, text } of spansIn(spans, context)) {
    const own = withoutGate(text, context);
    const sign = own.sign === NONE ? (whole?.sign ?? NONE) : own.sign;
    const dose = own.sign === NONE ? text : own.text.replace(/\.$/, "");
    const said = readSpanOf(dose, always, title, context);
    const { first, last } = readWeeks(weeks, context);
    for (let week = first; week <= last; week += 1) {
      const key = weekKey(week, title);
      const place = `${title} › ${weeks}`;
      facts.push(gateFact(key, sign, place));
      const often = said.often ?? NONE;
      facts.push(...timesFacts(key, often, place));
      if (often === NONE) continue;
      facts.push(...doseFacts(key, said, place));
      facts.push(
        { kind: "side", key, value: side, place },
        { kind: "often", key, value: often, place },
      );
    }
  }
  return title;
}

/** "Week 1: 3 sets of 15, 38 kg (bar) Weeks 2 to 3: …" cut at the names of weeks. */
function spansIn(text: string, { label }: Context): { weeks: string; text: string }[] {
  const names = [label("weeks.span"), label("weeks.one")]
    .map((name) => name.replace(/\{\w+\}/g, "\\d+"))
    .join("|");
  const cut = new RegExp(`(?:^| )(${names}): `, "g");
  const found = [...text.matchAll(cut)];
  return found.map((match, at) => ({
    weeks: match[1] ?? "",
    text: text.slice(match.index + match[0].length, found[at + 1]?.index).trim(),
  }));
}

/** Work first, then a load if there is one, then what changes. */
function readSpanOf(text: string, always: string, title: string, context: Context): SaidDose {
  const { language } = context;
  const [first = "", ...others] = text.split(" · ");
  const work = readWork(first, language);
  const load = attempt(() => readLoad(others[0] ?? "", language));
  return load === undefined
    ? { ...work, ...howOf(others, always, title, context) }
    : { ...work, load, ...howOf(others.slice(1), always, title, context) };
}

/** What changes, and what always holds: found by its words. */
const howOf = (
  parts: readonly string[],
  always: string,
  title: string,
  context: Context,
): SaidDose =>
  readHow(
    [...parts, always].filter((text) => text !== "").join(" · "),
    context.language,
    waysOf(context.cardByTitle(title), context),
  );

function attempt<T>(read: () => T): T | undefined {
  try {
    return read();
  } catch {
    return undefined;
  }
}
