/** The author's reference and the JSON Schemas: in step with the schemas, and every field described. */
import { describe, expect, test } from "vitest";
import { readLibrary } from "../../src/cards/read-library.ts";
import { cardSchema } from "../../src/cards/schema.ts";
import { clinicSchema } from "../../src/clinic/schema.ts";
import { planSchema } from "../../src/plan/schema.ts";
import { protocolSchema } from "../../src/protocols/schema.ts";
import { authorSchema, type JsonSchema } from "../../src/reference/fields.ts";
import { referenceFiles } from "../../src/reference/pages.ts";
import { DAY, shippedText, worldWith } from "../support/world.ts";

const { library, faults } = readLibrary(worldWith(), ["exercises"], DAY);

test("the shipped library has no problems", () => {
  expect(faults.map(({ message, place }) => `${place?.file}: ${message}`)).toEqual([]);
  expect(library.cards.size).toBeGreaterThanOrEqual(16);
});

test.each([...referenceFiles(library)])(
  "%s is as `npm run reference` writes it",
  (file, content) => {
    expect(shippedText(file)).toBe(content);
  },
);

describe.each([
  ["card", cardSchema(library.words)],
  ["protocol", protocolSchema],
  ["plan", planSchema(library.words)],
  ["clinic", clinicSchema],
])("the schema of a %s", (_name, schema) => {
  test("describes every field", () => {
    const bare: string[] = [];
    const visit = (node: JsonSchema, path: string): void => {
      for (const [key, field] of Object.entries(node.properties ?? {})) {
        if (!field.description) bare.push(`${path}${key}`);
        visit(field, `${path}${key} › `);
      }
      for (const inner of [...(node.anyOf ?? []), ...(node.oneOf ?? [])]) visit(inner, path);
      if (node.items) visit(node.items, path);
    };
    visit(authorSchema(schema), "");
    expect(bare).toEqual([]);
  });
});

test("every word of figures has its picture", () => {
  const page = shippedText("exercises/README.md");
  const words = page.slice(page.indexOf("### Base postures"), page.indexOf("## Vocabulary"));
  const rows = words.split("\n").filter((line) => line.startsWith("| `"));
  expect(rows.length).toBeGreaterThan(50);
  for (const row of rows) expect(row).toMatch(/!\[[^\]]+\]\(figures\/[\w-]+\.svg\)/);
});

test("the ladder of the calf goes from holds to hops without a gap", () => {
  const seen = new Set<string>();
  const climb = (id: string): void => {
    if (seen.has(id)) return;
    seen.add(id);
    for (const { to } of library.cards.get(id)?.card.harder ?? []) climb(to);
  };
  climb("calf-hold-seated-weight");
  for (const rung of [
    "calf-hold-two-legs",
    "calf-hold-one-leg",
    "heel-raise-one-leg-step-weight",
    "hops-two-legs",
    "hops-one-leg",
  ]) {
    expect([...seen]).toContain(rung);
  }
});

test("a card's file is named by its id, in the folder of its region", () => {
  for (const { card, source } of library.cards.values()) {
    expect(source.file).toBe(`exercises/${card.region}/${card.id}.md`);
  }
});

describe("the page of a plan", () => {
  const page = shippedText("templates/demo/README.md");
  const row = (field: string) =>
    page.split("\n").find((line) => line.startsWith(`| \`${field}\` |`)) ?? "";

  test("names every test that a measure can be, and which fields go with it", () => {
    for (const word of ["repetitions", "hold", "speed"]) {
      expect(row("measures › test").split("|")[2]).toContain(word);
    }
    expect(row("measures › test")).toContain("The longest hold.");
    expect(row("measures › side")).toContain("(repetitions, hold)");
    expect(row("measures › card")).not.toContain("(");
  });
  test("and all pages say what a dose is by one table", () => {
    const cards = shippedText("exercises/README.md");
    for (const text of [page, shippedText("templates/protocols/README.md"), cards]) {
      expect(text.match(/dose › sets`/g)).toBeNull();
    }
    expect(cards.match(/^\| `sets` \|/gm)).toHaveLength(1);
    expect(cards).toContain("## A dose");
    for (const field of ["swap", "add", "redose"]) {
      expect(row(`${field} › dose`)).toContain("../../exercises/README.md#a-dose");
    }
  });
});
