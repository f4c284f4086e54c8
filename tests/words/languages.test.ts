/** Every language says the same: its keys, what each message is given, and nothing left in English. */
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { IntlMessageFormat } from "intl-messageformat";
import { describe, expect, test } from "vitest";
import { directionOf, LANGUAGES, ORIGINAL, usualLocale } from "../../src/words/languages.ts";
import { loadWords } from "../../src/words/load-words.ts";
import { readWords } from "../../src/words/words.ts";
import { ROOT, shippedText } from "../support/world.ts";

type Element = ReturnType<IntlMessageFormat["getAst"]>[number];

/** Names of all values in a message, those inside its plurals too. */
function valuesIn(message: string): string[] {
  const names = new Set<string>();
  const visit = (element: Element): void => {
    if ("options" in element)
      for (const { value } of Object.values(element.options)) value.forEach(visit);
    if ("value" in element && element.type !== 0) names.add(String(element.value));
  };
  new IntlMessageFormat(message, "en", undefined, { ignoreTag: true }).getAst().forEach(visit);
  return [...names].sort();
}

/** Messages as they are written, by key. */
function messages(language: string): Map<string, string> {
  const file = `templates/words/${language}.yaml`;
  const words = readWords([{ file, text: shippedText(file) }], language);
  return new Map(
    words.keys.map((key) => [key, words.list(parent(key))[indexOf(key, words.keys)] ?? ""]),
  );
}

const parent = (key: string): string => key.split(".").slice(0, -1).join(".");
const indexOf = (key: string, keys: readonly string[]): number =>
  keys.filter((other) => parent(key) === "" || other.startsWith(`${parent(key)}.`)).indexOf(key);

test("each language has its file of words, and each file its language", () => {
  const files = readdirSync(join(ROOT, "templates/words")).sort();
  expect(files).toEqual(LANGUAGES.map((language) => `${language}.yaml`).sort());
});

test.each(LANGUAGES.map((language) => [language]))(
  "%s has a locale and a direction",
  (language) => {
    expect(usualLocale(language).startsWith(`${language}-`)).toBe(true);
    expect(Intl.DateTimeFormat.supportedLocalesOf(usualLocale(language))).toHaveLength(1);
    expect(["ltr", "rtl"]).toContain(directionOf(language));
  },
);

describe.each(LANGUAGES.filter((language) => language !== ORIGINAL).map((language) => [language]))(
  "%s",
  (language) => {
    const [own, english] = [messages(language), messages(ORIGINAL)];

    test("has the same keys in the same order", () => {
      expect([...own.keys()]).toEqual([...english.keys()]);
    });

    test("gives every message the same values", () => {
      const different = [...english].filter(
        ([key, message]) =>
          key !== "title" && valuesIn(message).join() !== valuesIn(own.get(key) ?? "").join(),
      );
      expect(different.map(([key, message]) => `${key}: ${message} | ${own.get(key)}`)).toEqual([]);
    });

    test("leaves no sentence in English", () => {
      const same = [...english].filter(
        ([key, message]) =>
          own.get(key) === message &&
          /[a-z]{3,} [a-z]{3,}/i.test(message.replaceAll(/\{[^}]*\}/g, "")),
      );
      expect(same).toEqual([]);
    });

    test("chooses by number and writes numbers as its locale does", () => {
      const words = loadWords(language, usualLocale(language));
      expect(words.say("weeks.length", { n: 1 })).not.toBe(
        words.say("weeks.length", { n: 2 }).replace("2", "1"),
      );
    });
  },
);

test.each([
  ["dose.count.reps.number", { sets: 1, reps: 12 }, "1 Satz zu 12"],
  ["dose.count.reps.number", { sets: 3, reps: 12 }, "3 Sätze zu 12"],
  ["dose.count.reps.range", { sets: 2, low: 6, high: 8 }, "2 Sätze zu 6 bis 8"],
  ["dose.work.holds", { sets: 5, time: "45 Sekunden" }, "5 Mal 45 Sekunden halten"],
  [
    "dose.count.holds.number",
    { sets: 2, reps: 5, time: "10 Sekunden" },
    "2 Sätze: je 5 Mal 10 Sekunden halten",
  ],
  ["dose.pace.move", { seconds: 1, way: "hoch" }, "1 Sekunde hoch"],
  ["dose.pace.pause", { seconds: 2 }, "2 Sekunden halten"],
  ["dose.often.per_week", { n: 1 }, "Einmal pro Woche"],
  ["dose.often.per_week", { n: 3 }, "3 Tage pro Woche"],
  ["dose.often.per_week", { n: 7 }, "Jeden Tag"],
  ["dose.often.per_day", { n: 2 }, "Jeden Tag zweimal"],
  ["dose.often.every", { n: 2 }, "Jeden zweiten Tag"],
  ["dose.often.every", { n: 4 }, "Alle 4 Tage"],
  ["weeks.summary", { n: 0, minutes: 0 }, "Diese Woche keine Übungen"],
  ["weeks.summary", { n: 1, minutes: 20 }, "1 Mal üben, etwa 20 Minuten"],
  ["weeks.summary", { n: 3, minutes: 24 }, "3 Mal üben, je etwa 24 Minuten"],
  ["frame.goals.heading", { n: 1 }, "Ihr Ziel"],
  ["frame.progress.amount", { n: 2.5 }, "2,5"],
])("German: %s of %o is “%s”", (key, values, expected) => {
  expect(loadWords("de", "de-DE").say(key, values)).toBe(expected);
});
