/** All figures of the trial exercises and of the library's cards: solved, drawn, well formed, mirrored, repeatable. */
import { describe, expect, test } from "vitest";
import { drawFigure } from "../../src/figure/draw-figure.ts";
import { figureCost } from "./bench.ts";
import { cardFigures } from "./card-figures.ts";
import { POSES } from "./poses.ts";
import { xmlFault } from "./xml.ts";

const ALL = [...POSES, ...cardFigures()];

/** Path data and places of one drawing, without its words. */
const bare = (svg: string) => svg.replace(/<title>.*<\/desc>/, "");
const pathsOf = (svg: string) =>
  [...svg.matchAll(/ d="([^"]*)"|href="([^"]*)"/g)].map((m) => m[1] ?? m[2]);

/** Each frame's place across the page, whether it is turned over, and the middle of its ground line. */
function framesOf(svg: string) {
  const frame =
    /<g transform="translate\((\S+) \S+\) scale\((-?)\.01(?: \.01)?\)">(?:<path d="M(\S+) \S+?H(\S+?)" )?(?!<circle)/g;
  return [...svg.matchAll(frame)].map(([, x, turned, from, to]) => ({
    x: Number(x),
    turned: turned === "-",
    middle: from === undefined ? undefined : (Number(from) + Number(to)) / 200,
  }));
}

test.each([...cardFigures()])("%s: a caption a frame, and no angle in its words", (_id, figure) => {
  const { alt, captions, svg } = drawFigure(figure, "right");
  const frames = svg?.match(/<g transform="translate\(\S+ \S+\) scale\(\.01\)">/g)?.length;
  expect(captions).toHaveLength(frames ?? 0);
  if (figure.text === undefined) for (const said of captions) expect(alt).toContain(`${said}.`);
  expect(alt).not.toMatch(/\d ?°|degree/);
});

describe.each(ALL)("%s", (_name, figure) => {
  const drawing = drawFigure(figure, "right");
  const svg = drawing.svg ?? "";

  test("has no faults", () => {
    expect(drawing.faults).toEqual([]);
  });

  test("is well-formed XML without numbers that are none", () => {
    expect(xmlFault(svg)).toBeUndefined();
    expect(svg).not.toMatch(/NaN|Infinity|undefined/);
  });

  test("says what it shows, as a picture", () => {
    expect(svg).toContain('role="img"');
    expect(svg).toMatch(/<title>[^<]+<\/title><desc>[^<]+<\/desc>/);
    expect(drawing.alt).toMatch(/^[A-Z].*\.$/);
  });

  test("fits its place on the page and stays small", () => {
    expect(drawing.width).toBeLessThanOrEqual(118);
    expect(drawing.height).toBeLessThanOrEqual(80);
    expect(svg.length).toBeLessThan(26_000);
  });

  test("is the same, byte for byte, when it is drawn again", () => {
    expect(drawFigure(figure, "right")).toEqual(drawing);
  });

  test("is mirrored exactly for the left", () => {
    const left = drawFigure(figure, "left");
    expect([left.width, left.height]).toEqual([drawing.width, drawing.height]);
    expect(pathsOf(bare(left.svg ?? ""))).toEqual(pathsOf(bare(svg)));
    const [there, turned] = [framesOf(svg), framesOf(left.svg ?? "")];
    expect(turned).toHaveLength(there.length);
    turned.forEach((frame, index) => {
      const other = there[index];
      expect(frame.turned).toBe(true);
      expect(other?.turned).toBe(false);
      if (frame.middle === undefined || other === undefined) return;
      expect(frame.x - frame.middle).toBeCloseTo(other.x + frame.middle, 1);
    });
  });
});

describe("sides", () => {
  const figure = POSES.get("calf raise, one leg on a step");

  test("the left says left where the right says right", () => {
    if (figure === undefined) throw new Error("no figure");
    const right = drawFigure(figure, "right").alt;
    const left = drawFigure(figure, "left").alt;
    expect(right).toContain("right ankle pointed down 40°");
    expect(left).toContain("left ankle pointed down 40°");
  });

  test("each side is drawn once and says so", () => {
    if (figure === undefined) throw new Error("no figure");
    const each = drawFigure(figure, "each");
    expect(each.alt).toMatch(/Shown for the right side\.$/);
    expect(bare(each.svg ?? "")).toBe(bare(drawFigure(figure, "right").svg ?? ""));
  });
});

describe("the measure of cost", () => {
  test("draws every card's figure and counts its bytes", () => {
    let clock = 0;
    const cost = figureCost(() => {
      clock += 73;
      return clock;
    }, 1);
    expect(cost.figures).toBe(cardFigures().size);
    expect(cost.milliseconds).toBeCloseTo(73 / cost.figures, 10);
    expect(cost.bytes).toBeLessThan(cost.most);
  });
});
