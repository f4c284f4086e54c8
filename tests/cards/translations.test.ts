/** Translations of cards, protocols and vocabularies: what can be wrong with them, and what a plan is told. */
import { describe, expect, test } from "vitest";
import { makeProgram } from "../../src/booklet.ts";
import type { Fault } from "../../src/faults/fault.ts";
import { readTranslations } from "../../src/translations/read-translations.ts";
import { openWorkspace } from "../../src/workspace.ts";
import { change, DAY, shippedText, textAt, worldWith } from "../support/world.ts";

const CLINIC = "templates/demo-de";
const PLAN = `${CLINIC}/achilles.md`;
const CARD = "exercises/calf-and-achilles/heel-raise-one-leg-step-weight.de.md";
const EASIER = "exercises/calf-and-achilles/heel-raise-seated.de.md";
const PROTOCOL = "templates/protocols/achilles-heavy-slow-resistance.de.md";
const VOCABULARY = "exercises/vocabulary.de.yaml";
const ORIGINAL_CARD = change(CARD, ".de.md", ".md");

const open = (files: Readonly<Record<string, string>> = {}) =>
  openWorkspace({ tree: worldWith(files), clinicFolder: CLINIC, shipped: ".", today: DAY });

const FOLDERS = {
  cards: ["exercises", `${CLINIC}/exercises`],
  protocols: ["templates/protocols"],
};
const shipped = open();

/** The faults in a translation with this text in its place, beside the shipped originals. */
function faultsIn(file: string, text: string): readonly Fault[] {
  const tree = worldWith({ [file]: text });
  const { faults } = readTranslations(tree, FOLDERS, shipped.cards, shipped.protocols);
  return faults.filter(({ place }) => place?.file === file);
}

/** What a plan is told with these files in place. */
function told(files: Readonly<Record<string, string>>) {
  const { value, faults } = makeProgram(open(files), PLAN);
  expect(value, faults.map(({ message }) => message).join("\n")).toBeDefined();
  return faults.filter(({ code }) => code.startsWith("translation"));
}

test("the shipped translations have no faults, and the demo has all it uses", () => {
  expect(shipped.faults).toEqual([]);
  expect(told({})).toEqual([]);
});

test("a translation is no card and no protocol", () => {
  const { cards, protocols, translations } = shipped;
  expect([...cards.library.cards.keys(), ...protocols.protocols.keys()].join()).not.toContain(
    ".de",
  );
  expect(translations.cards.size).toBeGreaterThanOrEqual(4);
  expect(translations.protocols.size).toBeGreaterThanOrEqual(1);
});

type Row = readonly [
  name: string,
  from: string | RegExp,
  to: string,
  code: Fault["code"],
  at: string,
  says: RegExp,
];

const card: readonly Row[] = [
  ["an unknown field", /^why:/m, "wy: x\nwhy:", "unknown-field", "wy", /Did you mean why/],
  ["a missing title", /^title:.*\n/m, "", "missing-field", "of:", /title is missing/],
  ["a language that is not there", "language: de", "language: fr", "wrong-value", "fr", /"fr"/],
  [
    "another language than the name's",
    "language: de",
    "language: en",
    "wrong-value",
    "en",
    /name says de/,
  ],
  [
    "an original that is not there",
    /^of: .*$/m,
    "of: heel-raise-one-leg-step-wieght",
    "unknown-card",
    "heel",
    /Did you mean heel-raise-one-leg-step-weight/,
  ],
  [
    "a date the original never had",
    "from: 2026-11-02",
    "from: 2026-12-24",
    "wrong-value",
    "2026-12-24",
    /2026-11-02/,
  ],
  [
    "translated before it was written",
    "on: 2026-11-10",
    "on: 2026-10-10",
    "wrong-value",
    "2026-10-10",
    /before its original/,
  ],
  [
    "nobody who answers for it",
    /^translated:.*\n/m,
    "",
    "missing-field",
    "of:",
    /translated is missing/,
  ],
  [
    "a flag that does not exist",
    "falls-risk:",
    "fall-risk:",
    "unknown-field",
    "fall-risk",
    /Did you mean falls-risk/,
  ],
  [
    "a flag the card has no care for",
    "  pregnancy:",
    '  dizziness: "x"\n  pregnancy:',
    "wrong-value",
    "dizziness",
    /not in heel-raise/,
  ],
  [
    "a word of care left out",
    /^ {2}pregnancy:.*\n/m,
    "",
    "missing-field",
    "blood-clot",
    /care for pregnancy is not translated/,
  ],
  [
    "a step left out",
    /^steps:\n.*\n/m,
    "",
    "missing-field",
    "of:",
    /hops-two-legs is not translated/,
  ],
  [
    "a step to a card it does not lead to",
    "  hops-two-legs:",
    '  calf-stretch: "x"\n  hops-two-legs:',
    "wrong-value",
    "calf-stretch",
    /not in heel-raise/,
  ],
  [
    "a missing section",
    /^## Check yourself\n[\s\S]*?(?=^## )/m,
    "",
    "missing-section",
    "",
    /“Check yourself” is missing/,
  ],
  [
    "a heading in German",
    "## Move",
    "## Bewegung",
    "unknown-section",
    "## Bewegung",
    /A translation has no section/,
  ],
  [
    "the clinician's section",
    /$/,
    "\n## For the clinician\n\nx\n",
    "unknown-section",
    "## For",
    /A translation has no section/,
  ],
  [
    "an unknown placeholder",
    "Senken Sie die {side}e Ferse",
    "Senken Sie die {seite}e Ferse",
    "unknown-placeholder",
    "{seite}",
    /\{side\}, \{other\}/,
  ],
  [
    "a placeholder without its ending",
    "das {side}e Knie",
    "das {side} Knie",
    "unknown-placeholder",
    "{side} Knie",
    /needs an ending/,
  ],
  [
    "a placeholder with a wrong ending",
    "das {side}e Knie",
    "das {side}ex Knie",
    "unknown-placeholder",
    "{side}ex",
    /\{side\}en/,
  ],
  [
    "an unknown placeholder in the picture's words",
    "auf dem {side}en Fußballen",
    "auf dem {foot}",
    "unknown-placeholder",
    "Stehen",
    /\{foot\}/,
  ],
  [
    "a link to elsewhere",
    "## Move",
    "## Move\n\n[x](https://example.com)",
    "unsafe-text",
    "](https",
    /outside/,
  ],
];

const protocol: readonly Row[] = [
  [
    "an unknown field",
    /^title:/m,
    "titel: x\ntitle:",
    "unknown-field",
    "titel",
    /Did you mean title/,
  ],
  [
    "an original that is not there",
    /^of: .*$/m,
    "of: achilles-heavy",
    "unknown-protocol",
    "achilles-heavy",
    /to translate/,
  ],
  [
    "a phase that is not there",
    "  heavy-slow:",
    "  heavy-fast:",
    "wrong-value",
    "heavy-fast:",
    /no phase heavy-fast/,
  ],
  [
    "a phase left out",
    "  heavy-slow:",
    "  heavy-fast:",
    "missing-field",
    "heavy-fast:",
    /heavy-slow is not translated/,
  ],
  [
    "a sign left out",
    /^ {6}- Ihre Achillessehne.*\n/m,
    "",
    "wrong-value",
    "- Sie",
    /3 lines here and 4/,
  ],
  [
    "a reason for a card that has none",
    "    aim:",
    "    why: { calf-stretch: x }\n    aim:",
    "wrong-value",
    "x",
    /no why for calf-stretch/,
  ],
  [
    "what to expect left out",
    /^outlook:\n(?: .*\n)+/m,
    "",
    "missing-field",
    "Langsam",
    /outlook is not translated/,
  ],
  [
    "what nobody knows left out of what to expect",
    /^ {2}unknown: >-\n(?: {4}.*\n)+/m,
    "",
    "missing-field",
    "takes",
    /unknown is missing in outlook/,
  ],
];

const vocabulary: readonly Row[] = [
  [
    "a thing that is not there",
    "  step:",
    "  steps:",
    "unknown-field",
    "steps",
    /Did you mean step/,
  ],
  [
    "a thing without words",
    /step: \{ say: .*\}/,
    "step: {}",
    "missing-field",
    "{}",
    /say is missing/,
  ],
  ["a slip of YAML", "equipment:", "equipment: [", "yaml-syntax", "", /./],
  ["flags", "regions:", "flags: {}\nregions:", "unknown-field", "flags", /no field flags/],
];

describe.each([
  ["card", CARD, card],
  ["protocol", PROTOCOL, protocol],
  ["vocabulary", VOCABULARY, vocabulary],
] as const)("the translation of a %s", (_kind, file, rows) => {
  const good = shippedText(file);
  test.each(rows)("%s", (_name, from, to, code, at, says) => {
    const text = change(good, from, to);
    const faults = faultsIn(file, text);
    const fault = faults.find((one) => one.code === code && textAt(text, one.place).startsWith(at));
    expect(
      fault,
      faults.map((one) => `${one.code} ${textAt(text, one.place)}: ${one.message}`).join("\n"),
    ).toBeDefined();
    expect(`${fault?.message} ${fault?.hint}`).toMatch(says);
    expect(fault?.level).toBe("error");
  });
});

test("a second translation is a fault that names the first", () => {
  const second = `${CLINIC}/exercises/again.de.md`;
  const [fault] = faultsIn(second, shippedText(CARD));
  expect(fault?.code).toBe("duplicate-id");
  expect(fault?.message).toContain(CARD);
});

test("an original with faults of its own is not said to be missing", () => {
  const broken = change(shippedText(ORIGINAL_CARD), "trains: strength", "trains: strenght");
  expect(
    open({ [ORIGINAL_CARD]: broken }).faults.filter(({ place }) => place?.file === CARD),
  ).toEqual([]);
});

test("a clinic translates a shipped card in its own folder", () => {
  const own = `${CLINIC}/exercises/calf-stretch.de.md`;
  const text = change(shippedText(EASIER), /^of: .*$/m, "of: calf-stretch");
  const codes = faultsIn(own, text).map(({ code }) => code);
  expect(codes).not.toContain("unknown-card");
});

describe("a plan is told", () => {
  const plan = shippedText(PLAN);
  const gone = (text: string) => change(text, /^of: .*$/m, "of: not-there");

  test.each([
    ["a protocol", PROTOCOL, "achilles-heavy-slow-resistance", "achilles-heavy-slow-resistance"],
    [
      "a card of the protocol",
      "exercises/calf-and-achilles/heel-raise-seated-weight.de.md",
      "heel-raise-seated-weight",
      "achilles-heavy-slow-resistance",
    ],
    ["a card swapped in", CARD, "heel-raise-one-leg-step-weight", "heel-raise-one-leg-step-weight"],
    ["an easier card it names", EASIER, "heel-raise-seated", "achilles-heavy-slow-resistance"],
  ])("once that %s is not translated", (_name, file, id, at) => {
    const faults = told({ [file]: gone(shippedText(file)) });
    expect(faults.map(({ code, level }) => `${code} ${level}`)).toEqual([
      "translation-missing warning",
    ]);
    expect(faults[0]?.message).toMatch(new RegExp(`^${id} has no German translation`));
    expect(faults[0]?.hint).toContain(`${id}.de.md`);
    expect(faults[0]?.place?.file).toBe(PLAN);
    expect(textAt(plan, faults[0]?.place).startsWith(at)).toBe(true);
  });

  test("that a thing has no words, where the plan names it", () => {
    const [fault, ...more] = told({
      [VOCABULARY]: change(shippedText(VOCABULARY), /^ {2}barbell: .*\n/m, ""),
    });
    expect(more).toEqual([]);
    expect(fault?.message).toMatch(/^barbell has no German words/);
    expect(textAt(plan, fault?.place)).toMatch(/^\{ have: barbell/);
  });

  test.each([
    ["card", CARD],
    ["protocol", PROTOCOL],
  ])("that the translation of a %s is older than its original", (_kind, file) => {
    const text = change(shippedText(file), "from: 2026-11-02", "from: 2026-05-01");
    const [fault, ...more] = told({ [file]: text });
    expect(more).toEqual([]);
    expect(fault).toMatchObject({ code: "translation-stale", level: "warning" });
    expect(textAt(text, fault?.place)).toBe("2026-05-01");
    expect(fault?.hint).toContain("2026-11-02");
  });

  test("nothing of what a card has gained since it was translated", () => {
    const old = change(shippedText(CARD), "from: 2026-11-02", "from: 2026-05-01");
    const faults = faultsIn(CARD, change(old, /^ {2}pregnancy:.*\n/m, ""));
    expect(faults.map(({ code }) => code)).toEqual(["translation-stale"]);
  });

  test("nothing in the language of the originals", () => {
    const english = change(shippedText(`${CLINIC}/clinic.yaml`), "language: de", "language: en");
    expect(told({ [`${CLINIC}/clinic.yaml`]: english })).toEqual([]);
  });

  test("nothing of a card that is written in the clinic's language", () => {
    const text = change(shippedText(ORIGINAL_CARD), /^title:/m, "language: de\ntitle:");
    const endings = text.replaceAll("{side}", "{side}en").replaceAll("{other}", "{other}en");
    const faults = told({ [ORIGINAL_CARD]: endings, [CARD]: gone(shippedText(CARD)) });
    expect(faults).toEqual([]);
  });
});

test("a card into its own language is no translation", () => {
  const file = change(CARD, ".de.md", ".en.md");
  const [fault] = faultsIn(file, change(shippedText(CARD), "language: de", "language: en"));
  expect(fault?.message).toMatch(/written in English itself/);
});

test("a picture without words is called by the title, with a warning", () => {
  const [fault] = faultsIn(CARD, change(shippedText(CARD), /^picture:.*\n/m, ""));
  expect(fault).toMatchObject({ code: "translation-missing", level: "warning" });
});

test("captions that are not translated are left out, with a warning", () => {
  const without = change(shippedText(CARD), /^captions:.*\n/m, "");
  const [fault] = faultsIn(CARD, without);
  expect(fault).toMatchObject({ code: "translation-missing", level: "warning" });
  expect(fault?.message).toMatch(/captions/);
});

test.each([
  ["too few", "captions: [Ferse tief]", /2 captions, here are 1/],
  ["too many", "captions: [Ferse tief, Hoch drücken, Halten]", /2 captions, here are 3/],
])("captions, %s: at their place", (_name, line, says) => {
  const [fault] = faultsIn(CARD, change(shippedText(CARD), /^captions:.*$/m, line));
  expect(fault).toMatchObject({ code: "wrong-value", level: "error" });
  expect(fault?.message).toMatch(says);
});
