/** Links between cards go up and down by demand; a card of equal demand is neither harder nor easier. */
import { describe, expect, test } from "vitest";
import { ladderFaults } from "../../src/cards/ladder.ts";
import type { LibraryCard } from "../../src/cards/library.ts";
import { card, library } from "../dose/fixtures.ts";

const rung = (id: string, demand: number, links = {}) =>
  card({ id, demand, load: { kind: "none" }, ...links });
const codes = (...cards: readonly LibraryCard[]) =>
  ladderFaults(library(...cards), new Set()).map(({ code, message }) => `${code} ${message}`);

describe("the demand of a linked card", () => {
  test.each([
    ["harder", 3, 4, undefined],
    ["harder", 3, 3, "two is not harder than one: its demand is 3, that of one is 3."],
    ["harder", 3, 2, "two is not harder than one: its demand is 2, that of one is 3."],
    ["easier", 3, 2, undefined],
    ["easier", 3, 3, "two is not easier than one: its demand is 3, that of one is 3."],
    ["easier", 3, 4, "two is not easier than one: its demand is 4, that of one is 3."],
  ] as const)("%s, from %d to %d", (kind, here, there, says) => {
    const link =
      kind === "harder" ? { to: "two", when: { reps_over: 2, sessions: 2 } } : { to: "two" };
    expect(codes(rung("one", here, { [kind]: [link] }), rung("two", there))).toEqual(
      says === undefined ? [] : [`ladder-order ${says}`],
    );
  });
  test.each(["alternatives", "capacity_from"])("%s may have any", (kind) => {
    for (const demand of [2, 3, 4]) {
      expect(codes(rung("one", 3, { [kind]: ["two"] }), rung("two", demand))).toEqual([]);
    }
  });
});
