/**
 * The demo booklet scored item by item by two published instruments for patient texts. What a
 * program can check is checked; the reason stands beside every item.
 *
 * PEMAT-P: Shoemaker, Wolf, Brach 2014, Patient Educ Couns 96:395, and the user guide (AHRQ): items
 * 1 to 12 and 15 to 19 understandability, 20 to 26 actionability; 1, 0 or not applicable; score in
 * percent of the applicable. Item wording is ours, in short.
 * CDC Clear Communication Index: Baur, Prue 2014, Health Promot Pract 15:629: 20 items, score in
 * percent of the applicable, 90 and more passes (the pass mark from memory, as are items 12 to 20).
 */
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { makeBooklet, makeProgram } from "../../src/booklet.ts";
import { loadAssets } from "../../src/html/assets.ts";
import { renderHtml } from "../../src/html/html.ts";
import { readText } from "../../src/readability/read-text.ts";
import { DAY, DEMO, demoClinic, english, ROOT } from "../support/world.ts";

const workspace = demoClinic();
const words = english();
const assets = await loadAssets(join(ROOT, "templates"), words);

function demo(name: string) {
  const { value } = makeProgram(workspace, `${DEMO}/${name}.md`);
  if (!value) throw new Error(name);
  const booklet = makeBooklet(value, workspace, words, DAY);
  const html = renderHtml(booklet, assets);
  const text = html
    .replace(/<style>[\s\S]*?<\/style>/g, "")
    .replace(/<[^>]+>/g, " ")
    .replace(/\s+/g, " ");
  const steps = booklet.exercises.map(({ move }) =>
    move.split("\n").filter((line) => /^\d+\./.test(line)),
  );
  const client = booklet.exercises.map((one) =>
    [one.setUp, one.move, one.feel, one.check, one.stop].join("\n\n"),
  );
  return { booklet, html, text, steps, client };
}

type Demo = ReturnType<typeof demo>;
type Item = readonly [number, string, ((one: Demo) => boolean) | "not applicable", string];

const count = (text: string, pattern: RegExp): number => text.match(pattern)?.length ?? 0;

const PEMAT: readonly Item[] = [
  [
    1,
    "purpose is plain",
    ({ booklet, html }) => html.indexOf(booklet.cover.message) < html.indexOf("</header>"),
    "the course and what it is for open the cover",
  ],
  [
    2,
    "nothing that distracts",
    ({ booklet }) => booklet.before.length === 0,
    "no page without a task: safety, pain, dates, doses, exercises, diary, questions",
  ],
  [
    3,
    "everyday words",
    ({ client }) => client.every((text) => (readText(text, "en")?.grade ?? 99) <= 6),
    "every exercise reads at grade 6 or lower",
  ],
  [
    4,
    "medical terms only to make them familiar, and explained",
    ({ text }) =>
      !/\b(eccentric|concentric|isometric|tendinopathy|plantarflexion|dorsiflexion|RM|1RM|bilateral)\b/i.test(
        text,
      ),
    "no term of the trade is printed; “heel cord” stands for Achilles tendon",
  ],
  [
    5,
    "active voice",
    ({ client }) =>
      client.every(
        (text) => count(text, /\b(is|are|be|been|being) \w+ed\b/gi) <= count(text, /[.!?]/g) / 20,
      ),
    "fewer than one passive in twenty sentences",
  ],
  [
    6,
    "numbers are clear",
    ({ text }) => /\d sets of \d+/.test(text) && !/\d+ ?%/.test(text),
    "whole sets and repetitions, no percentages",
  ],
  [
    7,
    "no sums for the reader",
    ({ text }) => !/\b(add|subtract|multiply|divide|per cent of)\b/i.test(text),
    "loads and dates are worked out",
  ],
  [
    8,
    "short sections",
    ({ client }) =>
      client.every((text) => text.split(/\n{2,}/).every((part) => part.split(/\s+/).length <= 90)),
    "no section has more than 90 words",
  ],
  [
    9,
    "headings that say what follows",
    ({ html }) => count(html, /<h[23]/g) >= 20,
    "every section has its heading",
  ],
  [
    10,
    "an order that follows the reader",
    ({ html }) =>
      [
        'class="start"',
        'id="part-stop',
        'id="part-pain',
        'id="part-weeks',
        'id="part-my-plan',
        'id="phase-',
        'id="exercise-',
        'id="part-diary',
      ]
        .map((mark) => html.indexOf(mark))
        .every((at, index, all) => at > (all[index - 1] ?? -1)),
    "what to do first, safety, pain, when, what, how, writing down",
  ],
  [
    11,
    "a summary",
    ({ booklet }) => renderHtml({ ...booklet, edition: "summary" }, assets).includes("summary"),
    "the summary edition is the whole program on one page",
  ],
  [
    12,
    "visual cues for what matters",
    ({ html }) => html.includes("stop-box") && html.includes('class="emergency"'),
    "boxes, bold and a sign mark stop and call",
  ],
  [
    15,
    "pictures where they help",
    ({ booklet, html }) =>
      /Pain ruler/.test(html) && booklet.exercises.every(({ figure }) => figure),
    "pain, goals, progress and exercises are drawn",
  ],
  [
    16,
    "pictures reinforce the text",
    ({ booklet }) =>
      booklet.exercises.every(({ figure }) => figure === undefined || figure.alt.length > 20),
    "each picture's words tell the same movement",
  ],
  [
    17,
    "pictures have titles",
    ({ html }) =>
      count(html, /<(svg|img)\b/g) <=
      count(html, /(aria-label|alt|aria-hidden)="/g) + count(html, /<title>/g),
    "each picture stands under its heading and has words",
  ],
  [
    18,
    "pictures are uncluttered",
    ({ booklet }) =>
      booklet.exercises.every(({ figure }) => figure === undefined || figure.width <= 116),
    "one idea a picture: start, end, an arrow",
  ],
  [
    19,
    "simple tables with clear heads",
    ({ html }) =>
      count(html, /<table/g) === count(html, /<thead/g) &&
      count(html, /<th /g) === count(html, /<th [^>]*scope=/g),
    "every table has a head, every head a scope",
  ],
  [
    20,
    "at least one action is named",
    ({ steps }) => steps.every((list) => list.length >= 3),
    "every exercise has steps",
  ],
  [
    21,
    "the reader is addressed",
    ({ client }) => client.every((text) => /\byou(r)?\b/i.test(text)),
    "“you” and “your” in every exercise",
  ],
  [
    22,
    "explicit steps",
    ({ steps }) => steps.every((list) => list.every((step) => step.split(/\s+/).length <= 22)),
    "numbered steps of one action each",
  ],
  [
    23,
    "something to use",
    ({ html }) => html.includes('class="checks"') && html.includes('<td class="tick">'),
    "checklists to move on, diary boxes, room for one's own plan",
  ],
  [24, "how to do sums", "not applicable", "there are no sums to do"],
  [
    25,
    "how to use charts and tables",
    ({ text }) => text.includes("Give your pain a number") && text.includes("Each row is one week"),
    "ruler, calendar, diary and chart say how they are read",
  ],
  [
    26,
    "pictures where they help to act",
    ({ html }) => count(html, /<(svg|img)\b/g) >= 4,
    "pain ruler, goals, progress, exercises",
  ],
];

const CDC: readonly Item[] = [
  [
    1,
    "one main message",
    ({ booklet }) =>
      booklet.cover.message.length > 20 && booklet.cover.message.split(". ").length <= 2,
    "one sentence on the cover",
  ],
  [
    2,
    "the message stands at the beginning",
    ({ booklet, html }) => html.indexOf(booklet.cover.message) < html.indexOf("part-stop"),
    "on the cover, before anything else",
  ],
  [3, "the message is marked", ({ html }) => html.includes('class="message"'), "larger and bold"],
  [
    4,
    "a picture supports it",
    ({ html }) => html.includes('class="steps"'),
    "steps that rise over the weeks",
  ],
  [
    5,
    "a call to action",
    ({ booklet }) => booklet.phases.every(({ rows }) => rows.length > 0),
    "what to do, week by week",
  ],
  [
    6,
    "message and call are active",
    ({ booklet }) => !/\b(is|are|be) \w+ed\b/.test(booklet.cover.message),
    "“your heel cord gets stronger when you load it”",
  ],
  [
    7,
    "words the audience uses",
    ({ client }) => client.every((text) => (readText(text, "en")?.grade ?? 99) <= 6),
    "grade 6 or lower",
  ],
  [8, "lists", ({ html }) => count(html, /<(ul|ol)/g) >= 10, "steps, signs and checks are lists"],
  [9, "chunks with headings", ({ html }) => count(html, /<h[23]/g) >= 20, "every section has one"],
  [
    10,
    "the most important first",
    ({ html }) =>
      html.indexOf("part-stop") < html.indexOf("part-pain") || html.indexOf('id="part-stop"') > 0,
    "what it is for, then when to stop",
  ],
  [
    11,
    "what is known and what is not",
    ({ booklet }) =>
      /trial/.test(booklet.outlook?.known ?? "") && (booklet.outlook?.unknown ?? "") !== "",
    "one trial, and who gains most is not known",
  ],
  [12, "behaviour is recommended", ({ booklet }) => booklet.exercises.length > 0, "exercises"],
  [
    13,
    "why it matters to the reader",
    ({ booklet }) => booklet.exercises.every(({ why }) => why.length > 15),
    "one sentence a card, and the client's own goals",
  ],
  [
    14,
    "how to do it",
    ({ steps }) => steps.every((list) => list.length >= 3),
    "steps, doses, dates",
  ],
  [
    15,
    "familiar numbers",
    ({ text }) => !/\d\.\d{2}/.test(text),
    "whole numbers, at most one decimal for a weight",
  ],
  [
    16,
    "what numbers mean",
    ({ text }) =>
      text.includes("10 means you can do it") && text.includes("What your number means"),
    "both scales are explained",
  ],
  [17, "no sums", ({ text }) => !/\b(add up|subtract|multiply|divide)\b/i.test(text), "none"],
  [
    18,
    "the nature of the risk",
    ({ booklet }) => booklet.stop.call.length >= 5,
    "signs to stop for, and what they ask for",
  ],
  [
    19,
    "risks and benefits",
    ({ booklet }) =>
      booklet.pain.rules.length >= 4 && booklet.exercises.every(({ why }) => why !== ""),
    "pain and signs beside what each exercise is for",
  ],
  [20, "probabilities are explained", "not applicable", "no probability is given"],
];

const score = (items: readonly Item[], one: Demo): number => {
  const judged = items.filter((item) => item[2] !== "not applicable");
  const agreed = judged.filter(([, , check]) => typeof check === "function" && check(one));
  return (agreed.length / judged.length) * 100;
};

// worked examples of the score, derived from the user guide's rule
test.each([
  [15, 1, 93.75],
  [5, 0, 100],
])("the score of %i agreed and %i not is %d", (yes, no, expected) => {
  const items: Item[] = [
    ...Array.from({ length: yes }, (): Item => [1, "", () => true, ""]),
    ...Array.from({ length: no }, (): Item => [1, "", () => false, ""]),
    [1, "", "not applicable", ""],
  ];
  expect(score(items, demo("achilles"))).toBe(expected);
});

describe.each(["achilles", "shoulder"])("the %s booklet", (name) => {
  const one = demo(name);

  describe("PEMAT-P", () => {
    test.each(PEMAT.filter((item) => item[2] !== "not applicable"))(
      "item %i: %s",
      (_n, _says, check) => {
        expect(typeof check === "function" && check(one)).toBe(true);
      },
    );
    test("understandability and actionability are 100", () => {
      expect(
        score(
          PEMAT.filter(([n]) => n < 20),
          one,
        ),
      ).toBe(100);
      expect(
        score(
          PEMAT.filter(([n]) => n >= 20),
          one,
        ),
      ).toBe(100);
    });
  });

  describe("CDC Clear Communication Index", () => {
    test.each(CDC.filter((item) => item[2] !== "not applicable"))(
      "item %i: %s",
      (_n, _says, check) => {
        expect(typeof check === "function" && check(one)).toBe(true);
      },
    );
    test("the score is 100, above the pass mark of 90", () => expect(score(CDC, one)).toBe(100));
  });
});

test("each item has its reason", () => {
  expect(PEMAT).toHaveLength(24);
  expect(CDC).toHaveLength(20);
  for (const [, , , reason] of [...PEMAT, ...CDC]) expect(reason.length).toBeGreaterThan(3);
});
