/** What the ruler says to each number from 0 to 10: as far as it is comfortable, to the limit, above it, and to call for. */
import { expect, test } from "vitest";
import { painZone } from "../../src/pain/zone.ts";

const zones = (comfortable: number, during: number, callLevel: number): string =>
  Array.from({ length: 11 }, (_, n) => {
    const kind = during === 0 ? "pain-free" : "monitored";
    const zone = painZone(n, { kind, comfortable, during, after: during }, callLevel);
    return { fine: "f", allowed: "a", "too-much": "t", call: "c" }[zone];
  }).join("");

test.each<[string, [number, number, number], string]>([
  ["the usual numbers", [2, 5, 8], "fffaaattccc"],
  ["no pain allowed", [0, 0, 8], "ftttttttccc"],
  ["comfortable up to the limit", [3, 3, 8], "ffffttttccc"],
  ["a limit right below the level", [2, 7, 8], "fffaaaaaccc"],
  ["a level between two numbers", [2, 5, 6.5], "fffaaatcccc"],
  ["a level of 10", [2, 5, 10], "fffaaattttc"],
])("%s", (_, [comfortable, during, level], expected) => {
  expect(zones(comfortable, during, level)).toBe(expected);
});
