/** A clinic's own pictures: of a known kind, beside the card, with words, and nothing active in them. */
import { describe, expect, test } from "vitest";
import { readLibrary } from "../../src/cards/read-library.ts";
import { change, DAY, shippedText, textAt, worldWith } from "../support/world.ts";

const FILE = "exercises/calf-and-achilles/calf-stretch.md";
const base = shippedText(FILE).replace(/^figure:\n(?: .*\n)+/m, "");

function read(image: string, files: Record<string, string> = {}) {
  const text = change(base, /^sources:/m, `image: ${image}\nsources:`);
  const { library, faults } = readLibrary(
    worldWith({ [FILE]: text, ...files }),
    ["exercises"],
    DAY,
  );
  const own = faults.filter((fault) => fault.place?.file === FILE);
  return { card: library.cards.get("calf-stretch"), faults: own, text };
}

const svg = (inner: string) => ({
  "exercises/calf-and-achilles/own.svg": `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 10 10">${inner}</svg>`,
});

test("a plain SVG with its words", () => {
  const { card, faults } = read(
    "{ file: own.svg, alt: A person at a wall. }",
    svg('<path d="M0 0h10"/>'),
  );
  expect(faults).toEqual([]);
  expect(card?.image?.alt).toBe("A person at a wall.");
  expect(card?.image?.url).toMatch(/^data:image\/svg\+xml;base64,/);
});

describe("an SVG that does more than show is refused", () => {
  test.each([
    ["a script", "<script>alert(1)</script>"],
    ["a script in a namespace", "<svg:script>alert(1)</svg:script>"],
    ["an event handler", '<path d="M0 0" onload="alert(1)"/>'],
    ["a link to elsewhere", '<image href="https://example.org/x.png"/>'],
    ["a link to elsewhere, old way", '<image xlink:href="//example.org/x.png"/>'],
    ["a script as a link", '<a href="javascript:alert(1)"><path d="M0 0"/></a>'],
    ["a foreign object", "<foreignObject><p>x</p></foreignObject>"],
    ["a style from elsewhere", "<style>@import 'https://example.org/x.css'</style>"],
    ["a fill from elsewhere", '<path fill="url(https://example.org/x#y)" d="M0 0"/>'],
    ["an entity", '<!ENTITY x "y">'],
  ])("%s", (_name, inner) => {
    const { card, faults, text } = read("{ file: own.svg, alt: x }", svg(inner));
    expect(card).toBeUndefined();
    expect(faults.map(({ code }) => code)).toEqual(["image-wrong"]);
    expect(textAt(text, faults[0]?.place)).toMatch(/^own\.svg/);
  });
});

describe("other faults", () => {
  test.each([
    ["no words", "{ file: own.svg }", "missing-field"],
    ["a file that is not there", "{ file: none.svg, alt: x }", "file-unreadable"],
    ["a path out of the folder", "{ file: ../own.svg, alt: x }", "wrong-value"],
    ["another kind of file", "{ file: own.gif, alt: x }", "wrong-value"],
    ["a PNG that is none", "{ file: own.png, alt: x }", "image-wrong"],
    ["a JPEG that is none", "{ file: own.jpg, alt: x }", "image-wrong"],
    ["an SVG that is none", "{ file: text.svg, alt: x }", "image-wrong"],
    ["a picture of several megabytes", "{ file: huge.svg, alt: x }", "file-too-large"],
  ])("%s", (_name, image, code) => {
    const { faults } = read(image, {
      ...svg(""),
      "exercises/calf-and-achilles/own.png": "not a PNG",
      "exercises/calf-and-achilles/own.jpg": "not a JPEG",
      "exercises/calf-and-achilles/text.svg": "hello",
      "exercises/calf-and-achilles/huge.svg": `<svg>${" ".repeat(2_000_000)}</svg>`,
    });
    expect(faults.map((fault) => fault.code)).toEqual([code]);
  });
});
