/** A booklet in German: nothing of the frame in English, dates and numbers as Germans write them. */
import { join } from "node:path";
import { IntlMessageFormat } from "intl-messageformat";
import { describe, expect, test } from "vitest";
import { makeBooklet, makeProgram } from "../../src/booklet.ts";
import { calendarFile } from "../../src/calendar/calendar-file.ts";
import { issue } from "../../src/calendar/issue.ts";
import { clinicSchema } from "../../src/clinic/schema.ts";
import { loadAssets } from "../../src/html/assets.ts";
import { renderHtml } from "../../src/html/html.ts";
import { loadWords } from "../../src/words/load-words.ts";
import { openWorkspace } from "../../src/workspace.ts";
import { asSigned } from "../support/signed.ts";
import { change, DAY, english, ROOT, shippedText, worldWith } from "../support/world.ts";

const CLINIC = "templates/demo-de";
const words = loadWords("de", "de-DE");
const assets = await loadAssets(join(ROOT, "templates"), words);

function german(files: Readonly<Record<string, string>> = {}) {
  const workspace = openWorkspace({
    tree: worldWith(files),
    clinicFolder: CLINIC,
    shipped: ".",
    today: DAY,
  });
  const { value, faults } = makeProgram(workspace, `${CLINIC}/achilles.md`);
  if (!value) throw new Error(faults.map(({ message }) => message).join("\n"));
  return { booklet: makeBooklet(asSigned(value), workspace, words, DAY), program: value.program };
}

const { booklet, program } = german();
const html = renderHtml(booklet, assets);
const text = html
  .replace(/<style>[\s\S]*?<\/style>/, "")
  .replaceAll(/src="data:[^"]*"/g, "")
  .replaceAll(/\s+/g, " ");

/** The English texts between the values of a message, those of its plurals too. */
function literals(message: string): string[] {
  type Element = ReturnType<IntlMessageFormat["getAst"]>[number];
  const inside = (element: Element): string[] => {
    if (element.type === 0) return [element.value];
    return "options" in element
      ? Object.values(element.options).flatMap(({ value }) => value.flatMap(inside))
      : [];
  };
  return new IntlMessageFormat(message, "en", undefined, { ignoreTag: true })
    .getAst()
    .flatMap(inside);
}

test("no English frame word of three words and more is left", () => {
  const all = english();
  const groups = new Set(all.keys.map((key) => key.split(".").slice(0, -1).join(".")));
  const phrases = [...groups]
    .flatMap((group) => all.list(group))
    .flatMap(literals)
    .map((phrase) => phrase.trim())
    .filter((phrase) => phrase.split(/\s+/).filter((word) => /[a-z]/i.test(word)).length >= 3);
  expect(phrases.length).toBeGreaterThan(80);
  expect([...new Set(phrases)].filter((phrase) => text.includes(phrase))).toEqual([]);
});

test("no English text of its cards and its protocol is left", () => {
  const cards = ["heel-raise-seated-weight", "heel-raise-one-leg-step-weight"].map((id) =>
    shippedText(`exercises/calf-and-achilles/${id}.md`),
  );
  const lines = [...cards, shippedText("templates/protocols/achilles-heavy-slow-resistance.md")]
    .flatMap((file) => [...file.matchAll(/^(?:[-\d.]+|\s+-|title:|why:|\s+aim:) (.{16,})$/gm)])
    .map(([, line = ""]) => line);
  expect(lines.length).toBeGreaterThan(25);
  expect(lines.filter((line) => text.includes(line))).toEqual([]);
});

test("the document is German", () => {
  expect(html).toContain('<html lang="de" dir="ltr"');
  expect(booklet.title).toMatch(/Übungsprogramm für Hanne Wiesengrund$/);
  expect(calendarFile(booklet, issue(booklet, program, undefined).value)).toMatch(
    /^SUMMARY:Übungen\\, 24 min\r?$/m,
  );
});

describe("as Germans write it", () => {
  test.each([
    ["a date", "Montag, 30. November 2026"],
    ["a short date", "30. Nov. bis 6. Dez."],
    ["a weekday's column", '<abbr title="Montag">Mo</abbr>'],
    ["a decimal comma", "42,5 kg"],
    ["a dose", "3 Sätze zu 15"],
    ["a load with its thing", "42,5 kg (Stange)"],
    ["a pace", "3 Sekunden hoch, 3 Sekunden runter"],
    ["a rest", "2 Min. 30 Sek. Pause zwischen den Sätzen"],
    ["the emergency number", "Sofort 112 anrufen, wenn:"],
    ["a pain rule", "Schmerz bis 5 von 10 ist in Ordnung"],
    ["a part of the day", "Abends"],
    ["weeks", "Woche 9 bis 12"],
  ])("%s", (_name, expected) => expect(text).toContain(expected));
});

test("a side has the ending its noun needs", () => {
  expect(text).toContain(
    "Stellen Sie den rechten Fußballen auf die Stufe. Der linke Fuß bleibt frei.",
  );
  expect(text).toContain("Halten Sie das rechte Knie gerade.");
  expect(text).toContain("Üben Sie mit dem rechten Bein.");
  const { booklet: both } = german({
    [`${CLINIC}/achilles.md`]: change(
      shippedText(`${CLINIC}/achilles.md`),
      "side: right\n",
      "side: both\n",
    ),
  });
  expect(both.exercises[1]?.move).toContain("die trainierte Ferse");
  expect(both.exercises[1]?.setUp).toContain("Der andere Fuß");
});

test("pictures are put into German words for the client's side", () => {
  expect(booklet.exercises.map(({ figure }) => figure?.alt)).toEqual([
    expect.stringMatching(/^Sitzen mit einem Gewicht/),
    expect.stringMatching(/auf dem rechten Fußballen/),
  ]);
});

test("a sore number is written with a comma in the rules as well", () => {
  const plan = change(
    shippedText(`${CLINIC}/achilles.md`),
    /^signed:/m,
    "pain: { comfortable: 1, during: 3.5, after: 3.5 }\nsigned:",
  );
  const { booklet: rules } = german({ [`${CLINIC}/achilles.md`]: plan });
  expect(rules.pain.rules[0]).toContain("bis 3,5 von 10");
  expect(rules.exercises[0]?.pain).toContain("Bis 3,5 von 10");
});

describe("the locale of a clinic", () => {
  const base = { name: "x", phone: "1", hours: "x", out_of_hours: "x", emergency: "112" };
  test.each([
    [{}, "en-GB"],
    [{ language: "de" }, "de-DE"],
    [{ language: "de", locale: "de-AT" }, "de-AT"],
    [{ language: "en", locale: "en-US" }, "en-US"],
  ])("with %o is %s", (given, expected) => {
    expect(clinicSchema.parse({ ...base, ...given }).locale).toBe(expected);
  });
  test("has to be of its language", () => {
    expect(clinicSchema.safeParse({ ...base, language: "de", locale: "en-GB" }).success).toBe(
      false,
    );
    expect(clinicSchema.safeParse({ ...base, language: "fr" }).success).toBe(false);
  });
});

test("answers in the client's own plan read as one sentence, in their own words", () => {
  const [page = ""] = /<section class="part my-plan[\s\S]*?<\/section>/.exec(html) ?? [];
  const said = page.replaceAll(/<[^>]*>/g, " ").replaceAll(/\s+/g, " ");
  expect(said).toContain(
    "Wenn: ich spät vom Dienst komme Dann: mache ich gleich die kurze Fassung",
  );
});

test("the plan's day is that of its sign-off, and the day of printing is called so", () => {
  expect(text).toContain("Er wurde freigegeben: Dienstag, 24. November 2026.");
  expect(text).toContain("Gedruckt: Mittwoch, 25. November 2026.");
});
