/** Everything the program ships for clients to read is at grade 6 or under. */
import { describe, expect, test } from "vitest";
import type { Fault } from "../../src/faults/fault.ts";
import { readPlan } from "../../src/plan/read-plan.ts";
import { Source } from "../../src/read/source.ts";
import { type ClientText, cardTexts } from "../../src/readability/client-texts.ts";
import { readText } from "../../src/readability/read-text.ts";
import {
  cardTextFaults,
  clinicTextFaults,
  planTextFaults,
  protocolTextFaults,
  textFault,
  USUAL_GRADE,
} from "../../src/readability/text-faults.ts";
import { loadWords } from "../../src/words/load-words.ts";
import type { Words } from "../../src/words/words.ts";
import { DEMO, demoClinic, english } from "../support/world.ts";

const workspace = demoClinic();
const cards = [...workspace.cards.library.cards.values()];
const told = (faults: readonly Fault[]) =>
  faults.map(({ place, message }) => `${place?.file}:${place?.line} ${message}`);

test("every card", () => {
  expect(cards.length).toBeGreaterThan(60);
  expect(told(cards.flatMap((card) => cardTextFaults(card, USUAL_GRADE, "en")))).toEqual([]);
});

test("every card as a whole, by SMOG too", () => {
  for (const card of cards) {
    const sections = cardTexts(card).filter(({ name }) => name.startsWith("the section"));
    const reading = readText(sections.map(({ markdown }) => markdown).join("\n\n"), "en");
    expect(reading?.grade).toBeLessThanOrEqual(USUAL_GRADE);
    expect(reading?.smog).toBeLessThanOrEqual(USUAL_GRADE);
  }
});

test("every protocol", () => {
  const protocols = [...workspace.protocols.protocols.values()];
  expect(protocols.length).toBeGreaterThan(10);
  expect(
    told(protocols.flatMap((protocol) => protocolTextFaults(protocol, USUAL_GRADE, "en"))),
  ).toEqual([]);
});

test("the demo clinic and its plans", () => {
  const faults = workspace.clinic ? clinicTextFaults(workspace.clinic, USUAL_GRADE, "en") : [];
  for (const name of ["achilles", "shoulder"]) {
    const { plan } = readPlan(workspace.tree, `${DEMO}/${name}.md`, workspace.cards.library.words);
    if (!plan) throw new Error(`no plan ${name}`);
    faults.push(...planTextFaults(plan, USUAL_GRADE, "en"));
  }
  expect(told(faults)).toEqual([]);
});

describe("the words of the booklet's frame", () => {
  test.each(english().keys)("%s", (key) => {
    expect(adviceOn("en", english(), key)).toBeUndefined();
  });
});

describe("the words of the frame and of the phone's screens, in German", () => {
  const words = loadWords("de", "de-DE");
  /** Two long words that nobody says in a shorter way: what to do, in the name of the page on when to stop. */
  const stop = ["frame.stop.heading", "frame.exercise.stop", "frame.summary.stop"];
  const names = [...stop, "phone.nav.stop", "phone.advice.signs"];
  /** No sentences: units, which are counted as they are read out. */
  const measures = ["time.minutes_seconds", "session.title"];
  const left = new Set([...names, ...measures]);
  test.each(words.keys.filter((key) => !left.has(key)))("%s", (key) => {
    expect(adviceOn("de", words, key)).toBeUndefined();
  });

  test("what is left out is no more than its two words", () => {
    const said = names.map((key) => words.say(key, values));
    expect(said.filter((text) => !/aufhören.* anrufen/i.test(text))).toEqual([]);
  });
});

/** Any value a message asks for: a number, which is also a text. */
const values = new Proxy({}, { has: () => true, get: () => 3 });

function adviceOn(language: string, words: Words, key: string): string | undefined {
  const source = new Source(`templates/words/${language}.yaml`, "");
  const text: ClientText = {
    name: key,
    markdown: words.say(key, values),
    source,
    place: () => source.atLine(1),
  };
  return textFault(text, USUAL_GRADE, language)?.hint;
}
