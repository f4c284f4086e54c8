/** Things that shipped cards name for clients: each is under what the card needs with the load it is named for. */
import { describe, expect, test } from "vitest";
import type { LibraryCard } from "../../src/cards/library.ts";
import type { SectionKey } from "../../src/cards/sections.ts";
import { equipmentFor, sectionFor } from "../../src/cards/variants.ts";
import { change, DEMO, demoClinic, shippedText } from "../support/world.ts";

const { texts } = demoClinic();
const cards = [...texts.library.cards.values()];

const MACHINES = Object.keys(texts.library.words.equipment).filter((id) => id.endsWith("-machine"));

/** Words of the trade for things, and the equipment that stands for them. */
const NAMED: readonly (readonly [RegExp, readonly string[]])[] = [
  [/\bchairs?\b/i, ["chair"]],
  [/\bbooks?\b/i, ["book"]],
  [/\bpads?\b(?! of the machine)/i, ["soft-pad"]],
  [/\btowels?\b/i, ["towel"]],
  [/\bpillows?\b/i, ["pillow"]],
  [/\bwear shoes\b|running shoes/i, ["grip-shoes"]],
  [/\b(hand)?rail\b|\bworktop\b/i, ["handrail"]],
  [/\bwall\b/i, ["wall"]],
  [/\btable\b/i, ["sturdy-table", "high-bench"]],
  [/\bstep\b(?! (on|back|up|in|away|nearer|closer|with|away)\b)(?<=(the|a) step)/i, ["step"]],
  [/\bmat\b/i, ["mat"]],
  [/\bband\b/i, ["band"]],
  [/\bball\b(?! of| side)/i, ["ball"]],
  [/\bboard\b/i, ["balance-board"]],
  [/\bbox\b/i, ["low-box"]],
  [/\bstrap\b/i, ["strap"]],
  [/\bhelper\b/i, ["helper", "ankle-hold"]],
  [/\bbackpack\b/i, ["backpack"]],
  [/\bvest\b/i, ["weight-vest"]],
  [/\bthe bar\b/i, ["barbell"]],
  [/\bmachine\b/i, MACHINES],
];

const SHOWN: readonly SectionKey[] = ["setUp", "move", "feel", "check", "stop"];

/** Every way to make a card's load, and what is then read and needed. */
function waysOf(card: LibraryCard): { things: string[]; text: string; needs: string[] }[] {
  const things = card.card.load.with.map((thing) => [thing]);
  return [[], ...things].map((way) => ({
    things: way,
    text: SHOWN.flatMap((key) => sectionFor(card, key, way).map(({ text }) => text)).join("\n"),
    needs: [...equipmentFor(card.card, way), ...way],
  }));
}

/** A machine has pads of its own. */
const own = (thing: string, needs: readonly string[]): boolean =>
  thing === "soft-pad" && needs.some((need) => need.endsWith("-machine"));

test.each(cards.map((card) => [card.card.id, card] as const))("%s", (_, card) => {
  const ways = waysOf(card);
  // a card that is never done without a load of its own is never read without one
  const loaded = ["weight", "band"].includes(card.card.load.kind);
  for (const { things, text, needs } of loaded ? ways.slice(1) : ways) {
    for (const [word, any] of NAMED) {
      if (!word.test(text)) continue;
      const there = any.some((thing) => needs.includes(thing) || own(thing, needs));
      expect(there, `${things.join()} names ${word.exec(text)?.[0]}, needs ${needs}`).toBe(true);
    }
  }
});

test("a word of care that names a thing lists it", () => {
  const CARE = NAMED.filter(([, [thing]]) =>
    ["chair", "soft-pad", "grip-shoes"].includes(thing ?? ""),
  );
  for (const { card } of cards) {
    for (const { flag, say, equipment } of card.care) {
      for (const [word, any] of CARE) {
        if (!word.test(say)) continue;
        const listed = [...equipment, ...card.equipment];
        expect(
          any.some((thing) => listed.includes(thing)),
          `${card.id} ${flag}: ${say}`,
        ).toBe(true);
      }
    }
  }
});

describe("variants", () => {
  const ID = "heel-raise-seated-weight";
  const FILE = `exercises/calf-and-achilles/${ID}.md`;
  const faultsWith = (from: string | RegExp, to: string, file = FILE) =>
    demoClinic({ [file]: change(shippedText(file), from, to) })
      .faults.filter((fault) => fault.place?.file === file)
      .map(({ code, message, place }) => `${code} ${place?.line}: ${message}`);

  test.each([
    [
      "a thing that makes no load of it",
      "with seated-calf-machine",
      "with leg-press-machine",
      "leg-press-machine is not under load.with",
    ],
    [
      "a thing misspelt",
      "with seated-calf-machine",
      "with seated-calf-machin",
      "seated-calf-machin is not under load.with",
    ],
    [
      "a section that there is not",
      "## Set up with seated-calf-machine",
      "## Setup with seated-calf-machine",
      "has no section",
    ],
    ["no text", /(## Set up with seated-calf-machine)[\s\S]*?(?=## Move)/, "$1\n\n", "is empty"],
    [
      "needs of a thing it does not have",
      "{ seated-calf-machine: [] }",
      "{ leg-press-machine: [] }",
      "leg-press-machine is not under load.with",
    ],
    [
      "the same thing twice",
      "## Check yourself with seated-calf-machine",
      "## Set up with seated-calf-machine",
      "has two texts",
    ],
  ] as const)("%s", (_, from, to, says) => {
    expect(faultsWith(from, to).join("\n")).toContain(says);
  });

  test("a translation has the same ones", () => {
    const german = FILE.replace(".md", ".de.md");
    expect(
      faultsWith("## Set up with seated-calf-machine", "## Set up with barbell", german),
    ).toEqual([
      expect.stringContaining("“Set up with seated-calf-machine” is not translated"),
      expect.stringContaining("has no section “Set up with barbell”"),
    ]);
  });

  test("the demo plan is read with them", () => {
    expect(demoClinic().faults.filter(({ level }) => level === "error")).toEqual([]);
    expect(shippedText(`${DEMO}/achilles.md`)).toContain("backpack");
  });
});
