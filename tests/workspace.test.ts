/** What belongs to a clinic: its folder, its own cards beside the shipped ones. */
import { describe, expect, test } from "vitest";
import { clinicFolderOf, openWorkspace } from "../src/workspace.ts";
import { memoryTree } from "./support/memory-tree.ts";
import { change, DAY, shippedText, worldWith } from "./support/world.ts";

describe("the clinic of a file is the nearest clinic.yaml above it", () => {
  const tree = memoryTree({
    "a/clinic.yaml": "",
    "a/b/plan.md": "",
    "c/plan.md": "",
    "../clinic.yaml": "",
  });
  test.each([
    ["a/b/plan.md", "a"],
    ["a/b", "a"],
    ["a", "a"],
    ["c/plan.md", ".."],
    [".", ".."],
    ["../x/y.md", ".."],
  ])("%s", (path, folder) => expect(clinicFolderOf(tree, path)).toBe(folder));

  test("none", () => {
    expect(clinicFolderOf(memoryTree({ "a/plan.md": "" }), "a/plan.md")).toBeUndefined();
  });
});

const clinic = shippedText("templates/demo/clinic.yaml");
const stretch = shippedText("exercises/calf-and-achilles/calf-stretch.md");
const open = (files: Record<string, string>) =>
  openWorkspace({ tree: worldWith(files), clinicFolder: "own", shipped: ".", today: DAY });

test("a clinic's own cards, protocols and words stand beside the shipped ones", () => {
  const own = change(
    change(stretch, "id: calf-stretch", "id: our-stretch"),
    /^equipment:.*$/m,
    "equipment: [slope]",
  );
  const { cards, faults } = open({
    "own/clinic.yaml": clinic,
    "own/exercises/vocabulary.yaml":
      "regions: {}\ntissues: {}\nequipment: { slope: { say: a sloping board } }\nflags: {}\n",
    "own/exercises/calf-and-achilles/our-stretch.md": own,
  });
  expect(faults).toEqual([]);
  expect(cards.library.cards.has("our-stretch")).toBe(true);
  expect(cards.library.cards.has("calf-stretch")).toBe(true);
});

test("a clinic that keeps its own library alone", () => {
  const { cards } = open({
    "own/clinic.yaml": `${clinic}\nshipped_cards: false\n`,
    "own/exercises/vocabulary.yaml": shippedText("exercises/vocabulary.yaml"),
    "own/exercises/calf-and-achilles/calf-stretch.md": change(
      stretch,
      /^easier:.*$/m,
      "easier: []",
    ),
  });
  expect([...cards.library.cards.keys()]).toEqual(["calf-stretch"]);
});

test("an id that the shipped library has already", () => {
  const { faults } = open({
    "own/clinic.yaml": clinic,
    "own/exercises/calf-and-achilles/calf-stretch.md": stretch,
  });
  expect(faults.map(({ code }) => code)).toEqual(["duplicate-id"]);
});

test.each([
  ["a wrong number", "session: 45 min", "session: 45", "wrong-value"],
  ["an unknown setting", "paper: A4", "papper: A4", "unknown-field"],
  ["a paper that does not exist", "paper: A4", "paper: A5", "wrong-value"],
  ["no telephone", /^phone:.*\n/m, "", "missing-field"],
] as const)("settings with %s", (_name, from, to, code) => {
  const { clinic: settings, faults } = open({ "own/clinic.yaml": change(clinic, from, to) });
  expect(settings).toBeUndefined();
  expect(faults[0]?.code).toBe(code);
  expect(faults[0]?.place?.file).toBe("own/clinic.yaml");
});
