/**
 * One pain rule, read back from every output: exercise pages, pain page, page to hang up, calendar file,
 * phone and JSON say for each exercise what its card, its course and the plan state. Every shipped
 * course, as it is and with exercises and rules of the plan's own.
 */
import { readdirSync } from "node:fs";
import { basename, join } from "node:path";
import ICAL from "ical.js";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { type MadeProgram, makeBooklet } from "../../src/booklet.ts";
import { calendarFile } from "../../src/calendar/calendar-file.ts";
import { issue } from "../../src/calendar/issue.ts";
import { loadAssets } from "../../src/html/assets.ts";
import { companionOf } from "../../src/html/companion.ts";
import { renderHtml } from "../../src/html/html.ts";
import { type PhoneData, plannedSessions } from "../../src/phone/day/data.ts";
import { planJson } from "../../src/plan-text/json.ts";
import { course } from "../published/course-support.ts";
import { asSigned } from "../support/signed.ts";
import { DAY, demoClinic, english, ROOT, shippedText } from "../support/world.ts";

/** What a rule allows: the most pain while exercising, and in the hours after. */
interface Rule {
  readonly during: number;
  readonly after: number;
}

const words = english();
const assets = await loadAssets(join(ROOT, "templates"), words);
const workspace = demoClinic();

const filesIn = (folder: string, ending: string) =>
  readdirSync(join(ROOT, folder), { recursive: true, encoding: "utf8" })
    .filter((file) => file.endsWith(ending) && !/README|\.de\.md$/.test(file))
    .map((file) => join(folder, file));

const frontMatter = (path: string) => parse(shippedText(path).split(/^---$/m)[1] ?? "");
const cards = new Map(
  filesIn("exercises", ".md").map((path) => [basename(path, ".md"), frontMatter(path)]),
);
const PROTOCOLS = filesIn("templates/protocols", ".md").map((path) => basename(path, ".md"));

/** Limits as README files explain them: monitored is 2, 5, 5 where the clinic says nothing else. */
function stated(rule: "pain-free" | "monitored" | Rule): Rule {
  if (rule === "pain-free") return { during: 0, after: 0 };
  return rule === "monitored" ? { during: 5, after: 5 } : rule;
}

/** What holds for a card: the plan's own rule, else of course and card the stricter. */
function expected(card: string, protocol: string, own: Rule | undefined): Rule {
  if (own) return own;
  const both = [cards.get(card).pain, frontMatter(`templates/protocols/${protocol}.md`).pain];
  const [one, other] = both.map(stated) as [Rule, Rule];
  return {
    during: Math.min(one.during, other.during),
    after: Math.min(one.after, other.after),
  };
}

/** What a client reads in a sentence; undefined where it says nothing of pain that is all right. */
function readRule(text: string): Rule | undefined {
  const [, number] = /Pain up to ([\d.]+) out of 10 is all right/i.exec(text) ?? [];
  const free = /free of pain|No pain beyond/.test(text);
  if (number === undefined && !free) return undefined;
  const during = free ? 0 : Number(number);
  const [, later] = /In the hours after, up to ([\d.]+) out of 10/.exec(text) ?? [];
  const none = /In the hours after, there should be no new pain/.test(text);
  return { during, after: none ? 0 : later === undefined ? during : Number(later) };
}

/** The rule of each title in these lines: the general one, or the one said with its name. */
function readRules(lines: readonly string[], titles: readonly string[]): Record<string, Rule> {
  const own = new Map(
    titles.flatMap((title) => {
      const line = lines.find((one) => one.startsWith(`${title}: `) && readRule(one));
      return line === undefined ? [] : [[title, readRule(line)] as const];
    }),
  );
  const general = lines.filter((line) => !titles.some((one) => line.startsWith(`${one}: `)));
  const rules = general.flatMap((line) => readRule(line) ?? []);
  expect(rules).toHaveLength(1);
  return Object.fromEntries(titles.map((title) => [title, own.get(title) ?? rules[0]])) as Record<
    string,
    Rule
  >;
}

const textOf = (html: string): string =>
  html
    .replaceAll(/<[^>]*>/g, "")
    .replaceAll("&#x27;", "'")
    .replaceAll("&quot;", '"')
    .replaceAll("&amp;", "&")
    .trim();

const between = (html: string, from: string, to: string): string => {
  const at = html.indexOf(from);
  if (at < 0) throw new Error(`no ${from}`);
  return html.slice(at, html.indexOf(to, at));
};

const items = (html: string): string[] =>
  [...html.matchAll(/<li>(.*?)<\/li>/gs)].map(([, item = ""]) => textOf(item));

/** Everything that is made from a plan, and its cards with their titles and what they allow. */
function outputs(made: MadeProgram, own: Rule | undefined) {
  const booklet = makeBooklet(asSigned(made), workspace, words, DAY);
  const summary = makeBooklet(asSigned(made), workspace, words, DAY, "summary");
  const exercises = new Map(
    made.program.phases
      .flatMap((phase) => phase.exercises)
      .map(({ card: { card } }) => [card.id, card.title]),
  );
  const { id } = made.program.protocol.value;
  const rules = Object.fromEntries(
    [...exercises].map(([card, title]) => [title, expected(card, id, own)]),
  );
  return {
    html: renderHtml(booklet, assets),
    summary: renderHtml(summary, assets),
    calendar: calendarFile(booklet, issue(booklet, made.program, undefined).value),
    phone: JSON.parse(companionOf(booklet, "", words)?.data ?? "") as PhoneData,
    json: JSON.parse(JSON.stringify(planJson(made, []))) as ReturnType<typeof planJson>,
    exercises,
    titles: [...exercises.values()],
    rules,
  };
}

/** Checks every output of a plan. */
function sayTheSame(made: MadeProgram, own: Rule | undefined): void {
  const { html, summary, calendar, phone, json, exercises, titles, rules } = outputs(made, own);

  for (const [card, title] of exercises) {
    const page = between(html, `id="exercise-${card}"`, "</section>");
    const [, says = ""] = /<h3>Pain<\/h3>\s*<p>([^<]*)/.exec(page) ?? [];
    expect([title, readRule(says)]).toEqual([title, rules[title]]);
  }

  const painPage = between(html, 'id="part-pain"', "</section>");
  const during = items(painPage).map((line) =>
    line.replace("While you exercise: p", "P").replace("While you exercise: no", "No"),
  );
  const read = readRules(
    during.filter((line) => !line.startsWith("After you exercise:")),
    titles,
  );
  for (const title of titles) {
    expect([title, read[title]?.during]).toEqual([title, rules[title]?.during]);
  }
  expect(readRules(items(between(summary, 'class="limit"', "</section>")), titles)).toEqual(rules);

  const events = new ICAL.Component(ICAL.parse(calendar)).getAllSubcomponents("vevent");
  const planned = plannedSessions(phone);
  expect(events.length).toBe(planned.length);
  for (const [at, event] of events.entries()) {
    const lines = new ICAL.Event(event).description.split("\n");
    const here = planned[at]?.bouts.map(({ title }) => title) ?? [];
    expect(here.length).toBeGreaterThan(0);
    for (const title of here) expect(lines.join("\n")).toContain(`${title}: `);
    const said = readRules(lines, here);
    for (const title of here) expect([title, said[title]]).toEqual([title, rules[title]]);
  }

  for (const { title, pain, painWords } of planned.flatMap(({ bouts }) => bouts)) {
    expect([title, pain.during, pain.after]).toEqual([
      title,
      rules[title]?.during,
      rules[title]?.after,
    ]);
    expect([title, readRule(painWords.rule)]).toEqual([title, rules[title]]);
  }

  const bouts = json.weeks.flatMap(({ sessions }) => sessions.flatMap((one) => one.bouts));
  expect(bouts.length).toBeGreaterThan(0);
  for (const { card, pain } of bouts) {
    const rule = rules[exercises.get(card) ?? ""];
    expect([card, pain?.during, pain?.after]).toEqual([card, rule?.during, rule?.after]);
    expect([card, pain?.kind]).toEqual([card, rule?.during === 0 ? "pain-free" : "monitored"]);
  }
}

/** A pain-free exercise besides the course's own, on days of its own. */
const CIRCLES = `add:
  - { card: ankle-circles, why: For the stiff ankle., dose: { sets: 2, reps: 10, per_week: 7 } }`;

/** Cards that are loaded by a repetition maximum, and the side that is tested. */
const TESTED = [
  ["heel-raise-seated-weight", "both"],
  ["heel-press-leg-press", "both"],
  ["heel-raise-standing-weight", "both"],
  ["squat-weight", "both"],
  ["leg-press-two-legs", "both"],
  ["hack-squat", "both"],
  ["heel-raise-towel-one-leg", "left"],
] as const;
const measures = TESTED.map(([card, side]) => ({ card, side, kg: 60, reps: 10 }));

const made = (protocol: string, more: string): MadeProgram =>
  course({ protocol, more, measures, free: "morning: 90 min, evening: 180 min" });

test.each(PROTOCOLS.map((protocol) => [protocol]))("%s says one rule", (protocol) => {
  sayTheSame(made(protocol, ""), undefined);
});

describe.each([
  // both hold a pain-free exercise already
  ["achilles-four-phases"],
  ["shoulder-cuff-lowering"],
])("the first weeks of %s", (protocol) => {
  test.each<[string, string, Rule | undefined]>([
    ["a pain-free exercise besides", "", undefined],
    ["a pain-free rule", "pain: pain-free", { during: 0, after: 0 }],
    ["numbers", "pain: { comfortable: 1, during: 4, after: 2 }", { during: 4, after: 2 }],
    ["halves", "pain: { comfortable: 1, during: 2.5, after: 2.5 }", { during: 2.5, after: 2.5 }],
    ["none during", "pain: { comfortable: 0, during: 0, after: 2 }", { during: 0, after: 2 }],
    ["none after", "pain: { comfortable: 1, during: 3, after: 0 }", { during: 3, after: 0 }],
  ])("with %s", (_, more, own) => {
    sayTheSame(made(protocol, `weeks: 2\n${more}\n${CIRCLES}`), own);
  });
});
