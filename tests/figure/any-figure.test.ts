/** Whatever the schema lets through is drawn or explained, never thrown at. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import * as z from "zod";
import { drawFigure } from "../../src/figure/draw-figure.ts";
import { figureSchema } from "../../src/figure/format/schema.ts";
import * as words from "../../src/figure/format/words.ts";
import { xmlFault } from "./xml.ts";

const angle = fc.integer({ min: -180, max: 180 });
const some = <T>(values: readonly T[]) => fc.constantFrom(...values);
const sided = (names: readonly string[]) =>
  fc.tuple(some(names), some(["", " right", " left"])).map(([name, side]) => name + side);

const joints = fc.dictionary(
  fc.oneof(
    sided(["hip", "knee", "ankle", "shoulder", "elbow", "wrist"]),
    some(["trunk", "neck", "lean", "roll"]),
  ),
  angle,
  { maxKeys: 6 },
);
const rests = fc.dictionary(
  fc.oneof(sided(words.PAIRED_PARTS), some(words.MIDDLE_PARTS)),
  fc.oneof(
    some<string>([...words.SURFACES, ...words.LANDMARKS]),
    fc.record({
      on: some<string>([...words.SURFACES]),
      at: fc.double({ min: -2, max: 2, noNaN: true }),
      slides: fc.boolean(),
    }),
  ),
  { maxKeys: 4 },
);
const pose = fc
  .tuple(
    joints,
    fc.option(rests, { nil: undefined }),
    fc.option(some(words.BASES), { nil: undefined }),
  )
  .map(([stated, on, base]) => ({ ...stated, ...(on && { rests: on }), ...(base && { base }) }));
const arrow = fc.record(
  {
    of: some(words.LANDMARKS),
    direction: some(words.DIRECTIONS),
    side: some(["above", "below", "ahead", "behind"] as const),
    frame: fc.integer({ min: 1, max: 3 }),
  },
  { requiredKeys: [] },
);
const PROPS = ["wall", "step", "bench", "chair", "table", "bed", "mat", "handrail", "cushion"];
const MORE = ["towel", "pillow", "band", "strap", "dumbbell", "weight", "backpack", "barbell"];
const LAST = ["ball", "stick", "plate", "sled", "sofa", "lever", "doorway", "helper"];
const figure = fc.record(
  {
    base: some(words.BASES),
    view: some(words.VIEWS),
    turn: fc.integer({ min: -90, max: 90 }),
    rise: fc.integer({ min: -30, max: 60 }),
    working: fc.array(some(words.LIMBS), { minLength: 1, maxLength: 3 }),
    poses: fc.array(pose, { minLength: 1, maxLength: 3 }),
    props: fc.dictionary(some([...PROPS, ...MORE, ...LAST]), fc.constant(true), { maxKeys: 4 }),
    arrows: fc.array(arrow, { maxLength: 3 }),
    frames: some(["beside", "below", "ghost"] as const),
    crop: some(words.CROPS),
    inset: fc.constant("foot" as const),
  },
  { requiredKeys: ["working", "poses"] },
);

describe("any figure", () => {
  test("gives a well-formed picture and words, or faults and neither", () => {
    fc.assert(
      fc.property(figure, some(["right", "left", "each", "none"] as const), (source, side) => {
        const drawing = drawFigure(figureSchema.parse(source), side);
        if (drawing.svg === undefined) {
          expect(drawing.faults.length).toBeGreaterThan(0);
          expect(drawing.alt).toBe("");
          return;
        }
        expect(drawing.faults).toEqual([]);
        expect(xmlFault(drawing.svg)).toBeUndefined();
        expect(drawing.svg).not.toMatch(/NaN|Infinity|undefined/);
        expect(drawing.alt).not.toBe("");
      }),
      { numRuns: 300 },
    );
  });

  test("a text override with marks is escaped", () => {
    const text = 'Push <hard> & "hold".';
    const { svg = "", alt } = drawFigure(
      figureSchema.parse({ working: ["legs"], poses: [{}], text }),
      "none",
    );
    expect(alt).toBe(text);
    expect(svg).toContain("<desc>Push &lt;hard&gt; &amp; ");
    expect(xmlFault(svg)).toBeUndefined();
  });
});

describe("the schema", () => {
  test("describes every field", () => {
    const json = z.toJSONSchema(figureSchema, { io: "input" });
    const missing: string[] = [];
    walk(json as Json, "figure", missing);
    expect(missing).toEqual([]);
  });
});

interface Json {
  readonly properties?: Readonly<Record<string, Json>>;
  readonly anyOf?: readonly Json[];
  readonly items?: Json;
  readonly description?: string;
}

function walk(schema: Json, path: string, missing: string[]) {
  for (const [name, field] of Object.entries(schema.properties ?? {})) {
    if (field.description === undefined) missing.push(`${path}.${name}`);
    walk(field, `${path}.${name}`, missing);
  }
  for (const branch of schema.anyOf ?? []) walk(branch, path, missing);
  if (schema.items !== undefined) walk(schema.items, `${path}[]`, missing);
}
