/** The figures of the library's cards, read for the tests. */
import { readFileSync } from "node:fs";
import { parse } from "yaml";
import { type Figure, figureSchema } from "../../src/figure/schema.ts";

const FILE = new URL("card-figures.yaml", import.meta.url);

/** Every figure by the id of its card. Throws where one does not fit the schema. */
export function cardFigures(): ReadonlyMap<string, Figure> {
  const source = parse(readFileSync(FILE, "utf8")) as Record<string, unknown>;
  return new Map(Object.entries(source).map(([id, figure]) => [id, figureSchema.parse(figure)]));
}
