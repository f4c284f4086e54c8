/** Words of care against the steps beside them: what a client with a flag reads never says both yes and no. */
import { describe, expect, test } from "vitest";
import { makeBooklet, makeProgram } from "../../src/booklet.ts";
import { loadAssets } from "../../src/html/assets.ts";
import { renderHtml } from "../../src/html/html.ts";
import { partsOf, shippedCourse, textOf } from "../support/shipped.ts";
import { change, DAY, DEMO, demoClinic, english, shippedText } from "../support/world.ts";

const workspace = demoClinic();
const cards = [...workspace.texts.library.cards.values()];
const assets = await loadAssets("templates", english());
const KNEE = "exercises/knee/chair-stand.md";
const HEEL = "exercises/calf-and-achilles/heel-raise-one-leg-step-weight.md";

/** Words of care, and words of a step that go against them. */
const AGAINST: readonly (readonly [RegExp, RegExp])[] = [
  [/both hands/, /fingers on|in one hand|free hand|[Cc]ross your arms|Hold the bar/],
  [/[Hh]old on/, /fingers on|[Cc]ross your arms|with both hands\.$/],
  [/worktop/, /hold a chair|[Cc]ross your arms/],
  [/Do not curl/, /[Cc]url/],
  [/a little before the end/, /firm pull|as big as feels good|past the/],
  [/Stand closer/, /^Face a wall at arm's length/],
  [/Use no weight/, /the weight/],
  [/Do not walk in socks/, /Wear socks/],
  [/Hop low/, /hand's width|a few fingers/],
  [/chair right behind/, /heel up behind|on the step\b/],
];

/** The steps that a client with this flag and this load reads, from the Markdown of the card's own file. */
function stepsFor(file: string, flag: string, thing: string | undefined): string[] {
  const [, front = "", body = ""] = file.split(/^---$/m);
  const [, care = ""] =
    new RegExp(`flag: ${flag}\\b([\\s\\S]*?)(?=\\n  - |\\n\\w)`).exec(
      front.slice(front.indexOf("\ncare:")),
    ) ?? [];
  const otherwise = new Map(
    [...care.matchAll(/step: "(.*?)", do: "(.*?)"/g)].map(([, from = "", to = ""]) => [from, to]),
  );
  const sections = body.split(/^## /m).filter((text) => /^(Set up|Move)\b/.test(text));
  return ["Set up", "Move"].flatMap((name) => {
    const own = sections.find(
      (text) =>
        text.startsWith(`${name} with `) &&
        thing !== undefined &&
        (text.split("\n")[0] ?? "").includes(thing),
    );
    const plain = sections.find((text) => text.startsWith(`${name}\n`)) ?? "";
    return [...(own ?? plain).matchAll(/^\s*(?:-|\d+\.) (.*)$/gm)].map(
      ([, step = ""]) => otherwise.get(step) ?? step,
    );
  });
}

test.each(cards.map(({ card, source }) => [card.id, card, source.file] as const))(
  "%s",
  (_, card, path) => {
    const file = shippedText(path);
    const needsOne = card.load.kind === "weight";
    for (const { flag, say, not_with } of card.care) {
      const things = card.load.with.filter((thing) => !not_with.includes(thing));
      for (const thing of needsOne ? things : [undefined, ...things]) {
        const steps = stepsFor(file, flag, thing);
        expect(steps.length).toBeGreaterThan(0);
        for (const [care, step] of AGAINST) {
          if (care.test(say))
            expect(
              steps.filter((one) => step.test(one)),
              `${say} (${thing})`,
            ).toEqual([]);
        }
      }
    }
  },
);

/** An exercise's page in the booklet of a client with this flag, who does it in place of another. */
function pageFor(flag: string, card: string): string {
  const { html } = shippedCourse("knee-tendon-holds", {
    more: `flags: [${flag}]\nadd: [{ card: ${card}, why: Agreed with the client. }]`,
  });
  return textOf(partsOf(html, "exercise").at(-1) ?? "");
}

describe("a step that care replaces", () => {
  test("is not on the page, and what stands in its place is", () => {
    const plain = pageFor("diabetes-insulin", "chair-stand");
    expect(plain).toContain("Cross your arms, or rest your hands lightly on the seat.");
    const careful = pageFor("falls-risk", "chair-stand");
    expect(careful).toContain("Keep a worktop in front of you to hold.");
    expect(careful).toContain("Rest both hands on the worktop in front of you.");
    expect(careful).not.toContain("Cross your arms");
  });

  test("keeps its placeholders for the client's side", () => {
    expect(pageFor("falls-risk", "band-push-out")).toContain(
      "Stand on your right leg, so far away",
    );
  });
});

/** What a plan of the heavy Achilles course says for a client who owns these things and has this flag. */
function heavy(flag: string, things: string) {
  const plan = `${DEMO}/achilles.md`;
  const text = change(
    change(shippedText(plan), /^flags: .*$/m, `flags: [${flag}]`),
    /^equipment:\n(?: {2}.*\n)+/m,
    `equipment: [step, handrail, wall, ${things}]\n`,
  );
  const world = demoClinic({ [plan]: text });
  const { value, faults } = makeProgram(world, plan);
  const html = value && renderHtml(makeBooklet(value, world, english(), DAY), assets);
  return { faults, html };
}

const BACKPACK = "{ have: backpack, from: 1 kg, up_to: 60 kg, steps: 1 kg }";
const DUMBBELLS = "{ have: dumbbells, from: 1 kg, up_to: 60 kg, steps: 1 kg }";

describe("a load that care rules out", () => {
  test("is not taken where the client has another", () => {
    const { html = "", faults } = heavy("falls-risk", `${BACKPACK}, ${DUMBBELLS}`);
    expect(faults.filter(({ level }) => level === "error")).toEqual([]);
    const [page = ""] = partsOf(html, "exercise").filter((part) =>
      part.includes("one leg over a step"),
    );
    expect(textOf(page)).toContain("Put on the backpack.");
    expect(textOf(page)).not.toMatch(/hand weights|in one hand/);
  });

  test("stops the booklet where the client has nothing else", () => {
    const { html, faults } = heavy("falls-risk", DUMBBELLS);
    expect(html).toBeUndefined();
    expect(faults.map(({ code, message }) => `${code} ${message}`)).toContainEqual(
      expect.stringMatching(/^equipment-missing .* no backpack, weight-vest or calf-raise-machine/),
    );
    const without = heavy("diabetes-insulin", DUMBBELLS);
    expect(without.faults.filter(({ level }) => level === "error")).toEqual([]);
  });

  test("rules the exercise out where nothing else could make it", () => {
    const all = "not_with: [backpack, weight-vest, calf-raise-machine, dumbbells, kettlebell]";
    const plan = `${DEMO}/achilles.md`;
    const text = change(shippedText(plan), /^flags: .*$/m, "flags: [falls-risk]");
    const card = change(shippedText(HEEL), "not_with: [dumbbells, kettlebell]", all);
    const { faults } = makeProgram(demoClinic({ [plan]: text, [HEEL]: card }), plan);
    expect(faults.map(({ code, message }) => `${code} ${message}`)).toContainEqual(
      expect.stringMatching(/^not-for-client .*falls-risk: nothing that makes its load/),
    );
  });
});

test.each([
  [
    "a step that is not there",
    KNEE,
    '{ step: "Cross your arms,',
    '{ step: "Fold your arms,',
    /No step under “Set up” or “Move” reads “Fold your arms/,
  ],
  [
    "a placeholder that is none",
    KNEE,
    "Rest both hands on the worktop",
    "Rest both {hand}s on the worktop",
    /no placeholder \{hand\}/,
  ],
  [
    "a load that it never takes",
    KNEE,
    "not_with: [dumbbells",
    "not_with: [barbell",
    /rules out barbell, which never makes the load/,
  ],
] as const)("%s is a fault at its place", (_, file, from, to, says) => {
  const { faults } = demoClinic({ [file]: change(shippedText(file), from, to) });
  const own = faults.filter(({ place }) => place?.file === file);
  expect(own.map(({ message }) => message).join("\n")).toMatch(says);
  expect(own[0]?.place?.line).toBeGreaterThan(30);
});

describe("in translation", () => {
  const german = HEEL.replace(".md", ".de.md");
  const step = 'steps:\n      - { step: "Hold a handrail with your free hand.", do: "Hold on." }';
  const original = change(
    shippedText(HEEL),
    "not_with: [dumbbells, kettlebell]",
    `not_with: [dumbbells, kettlebell]\n    ${step}`,
  );
  const said = (translation: string) =>
    demoClinic({ [HEEL]: original, [german]: translation })
      .faults.filter(({ place }) => place?.file === german)
      .map(({ code, message }) => `${code} ${message}`);
  const withStep = (from: string) =>
    change(
      shippedText(german),
      /^ {2}falls-risk: (.*)$/m,
      `  falls-risk: { say: $1, steps: [{ step: "${from}", do: "Halten Sie sich fest." }] }`,
    );

  test("steps have to be there too, word for word as in the translation", () => {
    expect(said(shippedText(german))).toEqual([
      expect.stringMatching(/^missing-field .*1 steps.*falls-risk/),
    ]);
    expect(said(withStep("Die Hand hält das Geländer."))).toEqual([
      expect.stringMatching(/^wrong-value No step .*Die Hand/),
    ]);
    expect(said(withStep("Die freie Hand hält das Geländer."))).toEqual([]);
  });
});
