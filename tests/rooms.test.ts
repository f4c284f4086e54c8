/** The order of the rooms of src/, as DEVELOPERS.md draws it: imports go down, never up or across. */
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, normalize } from "node:path";
import { describe, expect, test } from "vitest";
import { ROOT } from "./support/world.ts";

/** Floors from the top down, each a list of rooms: folders of src/, or single files in it. */
function floors(): string[][] {
  const text = readFileSync(join(ROOT, "DEVELOPERS.md"), "utf8");
  const block = /```text rooms\n([\s\S]*?)```/.exec(text)?.[1] ?? "";
  return block
    .trim()
    .split("\n")
    .map((line) => line.trim().split(/\s+/));
}

/** Every source file, from src/. */
const FILES = readdirSync(join(ROOT, "src"), { recursive: true, encoding: "utf8" }).filter((file) =>
  /\.tsx?$/.test(file),
);

const ORDER = floors();
const FLOOR = new Map(ORDER.flatMap((rooms, floor) => rooms.map((room) => [room, floor] as const)));

/** The innermost room that a file of src/ lies in. */
function roomOf(file: string): string | undefined {
  for (let place = file; place !== "."; place = dirname(place)) {
    if (FLOOR.has(place)) return place;
  }
  return undefined;
}

interface Arrow {
  readonly from: string;
  readonly to: string;
}

/** Every import of one file of src/ by another, types included; paths from src/. */
function arrows(): Arrow[] {
  return FILES.flatMap((from) => {
    const text = readFileSync(join(ROOT, "src", from), "utf8");
    return [...text.matchAll(/(?:from |import\(|import )"(\.{1,2}\/[^"]+)"/g)].map(([, to]) => ({
      from,
      to: normalize(join(dirname(from), to ?? "")),
    }));
  });
}

describe("the rooms of src/", () => {
  const all = arrows();

  test("are read from DEVELOPERS.md and from the code", () => {
    expect(ORDER.length).toBeGreaterThan(10);
    expect(all.length).toBeGreaterThan(1000);
  });

  test("hold every file, and none is drawn that is not there", () => {
    expect(FILES.filter((file) => roomOf(file) === undefined)).toEqual([]);
    const lived = new Set(FILES.map(roomOf));
    expect([...FLOOR.keys()].filter((room) => !lived.has(room))).toEqual([]);
  });

  test("import only from floors below", () => {
    const wrong = all.filter(({ from, to }) => {
      const [upper, lower] = [roomOf(from), roomOf(to)];
      if (upper === lower) return false;
      return (FLOOR.get(lower ?? "") ?? -1) <= (FLOOR.get(upper ?? "") ?? -1);
    });
    expect(wrong.map(({ from, to }) => `${from} → ${to}`)).toEqual([]);
  });
});
