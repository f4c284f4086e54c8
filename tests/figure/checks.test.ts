/** Every check fires on a bad pose, at the value in the card that leads to it. */
import { describe, expect, test } from "vitest";
import { drawFigure } from "../../src/figure/draw-figure.ts";
import { figureSchema } from "../../src/figure/format/schema.ts";

const draw = (source: unknown) => drawFigure(figureSchema.parse(source), "right");

const BAD: readonly [name: string, source: unknown, path: (string | number)[], message: RegExp][] =
  [
    [
      "a caption too few",
      { working: ["arms"], captions: ["Arms down"], poses: [{}, { elbow: 90 }] },
      ["figure", "captions"],
      /2 frames, but 1 captions/,
    ],
    [
      "a caption too many, where a pale limb shows the start",
      {
        working: ["arms"],
        frames: "ghost",
        captions: ["Arms down", "Arms up"],
        poses: [{}, { elbow: 90 }],
      },
      ["figure", "captions"],
      /one frame, but 2 captions/,
    ],
    [
      "a stated joint out of range",
      { working: ["right leg"], poses: [{ rests: { "foot left": "floor" }, "knee right": 160 }] },
      ["figure", "poses", 0, "knee right"],
      /right knee is bent to 160°; a picture allows 145°/,
    ],
    [
      "a joint out of range in the second pose, of both sides",
      { working: ["arms"], poses: [{}, { elbow: 170 }] },
      ["figure", "poses", 1, "elbow"],
      /elbow is bent to 170°/,
    ],
    [
      "a named motion out of range",
      {
        view: "front",
        working: ["right leg"],
        poses: [{ "hip right": { abduction: 80 }, rests: { "foot left": "floor" } }],
      },
      ["figure", "poses", 0, "hip right"],
      /right hip is out to the side to 80°/,
    ],
    [
      "a hand off its wall",
      {
        working: ["arms"],
        props: { wall: { at: 0.9 } },
        poses: [{ lean: 0, hip: 0, knee: 0, rests: { foot: "floor", hand: "wall" } }],
      },
      ["figure", "poses", 0, "rests", "hand"],
      /right hand is \d+ cm off the wall/,
    ],
    [
      "a heel beside its chair",
      {
        base: "lying on the back",
        working: ["right leg"],
        props: { chair: { at: 0.6 } },
        poses: [
          {
            lean: -90,
            "knee right": 80,
            "ankle right": 0,
            rests: { pelvis: "floor", "heel right": "chair" },
          },
        ],
      },
      ["figure", "poses", 0, "rests", "heel right"],
      /right heel is \d+ cm beside the chair/,
    ],
    [
      "a foot off the floor",
      {
        working: ["legs"],
        poses: [{ hip: 90, knee: 0, lean: 0, ankle: 0, rests: { foot: "floor" } }],
      },
      ["figure", "poses", 0, "rests", "foot"],
      /right foot is \d+ cm off the floor/,
    ],
    [
      "a body through the floor",
      { base: "lying on the back", working: ["legs"], poses: [{ lean: -90, hip: -25 }] },
      ["figure", "poses", 0],
      /goes \d+ cm through the floor/,
    ],
    [
      "balance lost forward",
      { working: ["legs"], poses: [{ lean: 75, hip: 75, knee: 0, ankle: 0 }] },
      ["figure", "poses", 0],
      /would fall forward/,
    ],
    [
      "balance lost sideways in a front view",
      {
        view: "front",
        working: ["right leg"],
        poses: [{ roll: 0, hip: { abduction: 0 }, rests: { "foot left": "floor" } }],
      },
      ["figure", "poses", 0],
      /would fall to the right/,
    ],
    [
      "a picture that does not fit its frame",
      {
        working: ["arms"],
        props: { band: { from: [1.9, 1] } },
        poses: [{ shoulder: 70 }, { shoulder: 20 }],
      },
      ["figure"],
      /does not fit its frame/,
    ],
    [
      "a start and an end that look alike",
      { working: ["arms"], poses: [{ elbow: 20 }, { elbow: 22 }] },
      ["figure", "poses", 1],
      /look alike/,
    ],
    [
      "an arrow without room",
      {
        working: ["arms"],
        poses: [{ elbow: 20 }, { elbow: 90 }],
        arrows: [{ of: "heel right", direction: "up", side: "below" }],
      },
      ["figure", "arrows", 0],
      /no room for this arrow/,
    ],
  ];

describe("a figure with", () => {
  test.each(BAD)("%s gives a located fault and no picture", (_name, source, path, message) => {
    const drawing = draw(source);
    const fault = drawing.faults.find((one) => message.test(one.message));
    expect(drawing.faults.map((one) => one.message).join("\n")).toMatch(message);
    expect(fault?.path).toEqual(path);
    expect(fault?.hint).toMatch(/\.$/);
    expect(drawing.svg).toBeUndefined();
    expect(drawing.alt).toBe("");
  });

  test("no bad pose is drawn", () => {
    expect(
      draw({ working: ["legs"], poses: [{}, { lean: 35, knee: 70, shoulder: 90 }] }).faults,
    ).toEqual([]);
  });
});

describe("the schema", () => {
  test.each([
    ["an unknown joint", { working: ["legs"], poses: [{ thumb: 3 }] }],
    ["an unknown surface", { working: ["legs"], poses: [{ rests: { foot: "moon" } }] }],
    ["an unknown motion", { working: ["legs"], poses: [{ hip: { twist: 3 } }] }],
    ["an angle beyond half a turn", { working: ["legs"], poses: [{ hip: 200 }] }],
    ["no poses", { working: ["legs"], poses: [] }],
    ["four poses", { working: ["legs"], poses: [{}, {}, {}, {}] }],
    ["no working limb", { working: [], poses: [{}] }],
    ["an unknown prop", { working: ["legs"], props: { sword: true }, poses: [{}] }],
  ])("does not take %s", (_name, source) => {
    expect(figureSchema.safeParse(source).success).toBe(false);
  });
});
