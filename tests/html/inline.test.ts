/** Templates with styles or scripts amid their HTML, which the booklet's policy leaves without effect. */
import fc from "fast-check";
import Handlebars from "handlebars";
import { describe, expect, test } from "vitest";
import { withBrowser } from "../../src/browser/browser.ts";
import type { Fault } from "../../src/faults/fault.ts";
import { inlineFaults } from "../../src/html/inline.ts";
import { found } from "../support/render.ts";
import { change, shippedText, textAt } from "../support/world.ts";

const DOCUMENT = shippedText("templates/booklet/document.hbs");

function faultsOf(text: string, name = "contact"): Fault[] {
  return inlineFaults(name, { file: "own.hbs", text }, Handlebars.parse(text));
}

const ATTRIBUTE = "A style attribute has no effect in a booklet.";
const STYLE = "A style element of its own has no effect in a booklet.";
const HANDLER = "A handler of events never runs in a booklet.";
const SCRIPT = "A script of a template never runs in a booklet.";

describe("refused, at its place", () => {
  test.each([
    ["a style attribute", '<p class="a" style="color: red">', "style=", ATTRIBUTE],
    ["on a line of its own", '<p\n  class="a"\n  style="a">', "style=", ATTRIBUTE],
    ["after lines that end otherwise", "<p>\r\n<b\r\n STYLE = a>", "STYLE =", ATTRIBUTE],
    ["a style that was the page's", '<p style="page: {{part.page}}">', "style=", ATTRIBUTE],
    [
      "after an expression with quotes",
      '<p title="{{t "a.b" n=">"}}" style="a">',
      "style=",
      ATTRIBUTE,
    ],
    ["after a value without quotes", "<p class={{kind}} style='a'>", "style=", ATTRIBUTE],
    [
      "after a value that holds the end of a tag",
      '<p title="a > b" style="a">',
      "style=",
      ATTRIBUTE,
    ],
    ["after a quote amid a value", '<p class=a"b style="a">', "style=", ATTRIBUTE],
    ["with no space before it", '<p class="a"style="a">', "style=", ATTRIBUTE],
    ["behind a stroke", '<p/style="a">', "style=", ATTRIBUTE],
    ["in a block", '<p{{#if a}} style="a"{{/if}}>', "style=", ATTRIBUTE],
    ["in the other half of a block", '<p{{#if a}}{{else}} style="a"{{/if}}>', "style=", ATTRIBUTE],
    ["in a partial's block", '{{#> goals}}<p style="a">{{/goals}}', "style=", ATTRIBUTE],
    ["behind an expression", '<p {{a}}style="a">', "style=", ATTRIBUTE],
    ["in a drawing", '<svg><path style="fill:red"/></svg>', "style=", ATTRIBUTE],
    ["a handler", '<p onclick="a()">', "onclick=", HANDLER],
    ["a handler in capitals", "<p ONCLICK=a()>", "ONCLICK=", HANDLER],
    ["a handler with a name that is filled in", '<p on{{event}}="a()">', "on{{event}}=", HANDLER],
    ["a script", "<p>a</p>\n<script>a()</script>", "<script>", SCRIPT],
    ["a script from elsewhere", '<SCRIPT src="a">', "<SCRIPT", SCRIPT],
    ["a script in a block", "{{#if a}}<script>{{a}}</script>{{/if}}", "<script>", SCRIPT],
    ["a script in a drawing", "<svg><script/></svg>", "<script/>", SCRIPT],
    ["a style element", "<style>p { color: red }</style>", "<style>", STYLE],
    [
      "a style element with a block in it",
      "<style{{#if a}} media='print'{{/if}}>",
      "<style{{",
      STYLE,
    ],
  ])("%s", (_name, text, at, message) => {
    const [fault, ...more] = faultsOf(text);
    expect(more).toEqual([]);
    expect(fault?.code).toBe("template-broken");
    expect(fault?.message).toBe(message);
    expect(textAt(text, fault?.place).startsWith(at)).toBe(true);
    expect(fault?.frame).toContain(at);
    expect(fault?.hint).toMatch(/\.$/);
  });

  test("all that there is, in order", () => {
    const text =
      '<p style="a" onclick="b">\n<style></style><script style="c"></script><b style="d">';
    expect(faultsOf(text).map(({ message }) => message)).toEqual([
      ATTRIBUTE,
      HANDLER,
      STYLE,
      SCRIPT,
      ATTRIBUTE,
      ATTRIBUTE,
    ]);
  });
});

describe("let be", () => {
  test.each([
    ["the words in a text", 'Write style="a" or onclick="b".'],
    ["in a text with a sign for less", '1 < 2 style="a"'],
    ["in a value", "<p title='style=\"a\"' alt=\"onclick='b'\">"],
    ["in an expression", '<p title="{{t "a.b" style="a" onclick="b"}}">'],
    ["in a remark of the template", '{{!-- <p style="a"> --}}{{! <script> }}'],
    ["in a remark of the page", '<!-- <p style="a"> <script> -->'],
    ["at the end of a tag", '</p style="a">'],
    [
      "names that only hold the words",
      '<p data-style="a" styled="b" data-on="c" on="d" content="e">',
    ],
    ["a style without a value", "<p style>"],
    ["elements that only begin so", "<styled-p><scripture></scripture></styled-p>"],
  ])("%s", (_name, text) => {
    expect(faultsOf(text)).toEqual([]);
  });
});

describe("a document of the clinic's own", () => {
  test("may have rules of its own in its style element", () => {
    expect(
      faultsOf(change(DOCUMENT, "{{{styles}}}", "{{{styles}}} p > b { color: red }"), "document"),
    ).toEqual([]);
  });

  test("has no second style element", () => {
    const [fault] = faultsOf(
      change(DOCUMENT, "</head>", "<style>p { color: red }</style></head>"),
      "document",
    );
    expect(fault?.message).toBe(STYLE);
    expect(fault?.hint).toContain("after {{{styles}}}");
  });

  test.each(["policy", "styles", "body", "scripts"])("prints %s", (word) => {
    const [fault] = faultsOf(change(DOCUMENT, `{{{${word}}}}`, ""), "document");
    expect(fault?.message).toBe(`The document does not print ${word}.`);
    expect(fault?.place).toEqual({ file: "own.hbs", line: 1, column: 1 });
  });
});

/** Pieces that HTML can be taken apart in the wrong place by. */
const PIECES = [
  "<p",
  "<b ",
  "<!--",
  "-->",
  ">",
  "/",
  "=",
  " ",
  "\n",
  '"',
  "'",
  "a",
  "class",
  "style",
  " style=",
  'style="x"',
  " onclick",
  "onclick='y'",
  "<script",
  "<style>",
  "</style>",
  "!",
  "<svg>",
];

test("a text in which a browser finds something inline is refused", {
  timeout: 60_000,
}, async () => {
  const texts = fc.sample(
    fc
      .array(fc.constantFrom(...PIECES), { minLength: 2, maxLength: 14 })
      .map((pieces) => pieces.join("")),
    { numRuns: 10_000, seed: 7 },
  );
  const read = `(texts) => texts.map((text) => {
    const page = new DOMParser().parseFromString("<body>" + text, "text/html");
    const has = (name) => [...page.querySelectorAll("[" + name + "]")].some((one) => one.getAttribute(name) !== "");
    return has("style") || has("onclick") || page.querySelector("script, style") !== null;
  })`;
  const inline = (await withBrowser(found, (browser) =>
    browser.usePage((page) => page.evaluate(`(${read})(${JSON.stringify(texts)})`)),
  )) as boolean[];
  const missed = texts.filter((text, index) => inline[index] && faultsOf(text).length === 0);
  expect(missed).toEqual([]);
  expect(inline.filter(Boolean).length).toBeGreaterThan(1000);
});
