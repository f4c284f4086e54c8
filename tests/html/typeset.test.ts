/** Where printed lines may break, and which blanks stay. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bindNumbers, typeset } from "../../src/html/typeset.ts";

/** Blanks that do not break, made visible. */
const shown = (text: string) => text.replaceAll("\u00a0", "~");

test.each([
  ["Should feel 8 out of 10.", "Should feel 8~out~of~10."],
  ["3 sets of 15", "3 sets of~15"],
  ["Weeks 4 to 5", "Weeks 4~to~5"],
  ["Rest 2 min 30 s between sets", "Rest 2~min 30~s between sets"],
  ["2.5 kg in each hand", "2.5~kg in each hand"],
  ["20 m in 4.5 seconds", "20~m in 4.5~seconds"],
  ["Anstrengung: 8 von 10", "Anstrengung: 8~von~10"],
  ["3 Sekunden hoch, je 10 Mal", "3~Sekunden hoch, je 10~Mal"],
  ["Week 3 starts here", "Week 3 starts here"],
  ["nothing to bind out of here", "nothing to bind out of here"],
])("%s", (text, bound) => {
  expect(shown(bindNumbers(text))).toBe(bound);
});

describe("a document", () => {
  test.each([
    ["attributes stay", '<p title="8 kg">8 kg</p>', '<p title="8 kg">8~kg</p>'],
    [
      "so do styles",
      "<style>a { b: 8 kg }</style><p>8 kg</p>",
      "<style>a { b: 8 kg }</style><p>8~kg</p>",
    ],
    [
      "and pictures",
      "<svg><text>8 kg</text></svg><p>8 kg</p>",
      "<svg><text>8 kg</text></svg><p>8~kg</p>",
    ],
    ["a title", "<title>In 8 weeks or 8 min</title>", "<title>In 8 weeks or 8 min</title>"],
    [
      "blanks at the edges of a block go",
      "<p>\n  one\n  <b>two</b> </p>\n<p>three</p>",
      "<p>one <b>two</b></p><p>three</p>",
    ],
    [
      "between words of one line they stay",
      "<p><b>one</b> <i>two</i></p>",
      "<p><b>one</b> <i>two</i></p>",
    ],
  ])("%s", (_name, html, set) => {
    expect(shown(typeset(html))).toBe(set);
  });

  test("loses no letter, and is the same when set again", () => {
    const word = fc.stringMatching(/^[a-z0-9äöü.%]{1,6}$/);
    const html = fc
      .array(fc.array(word, { minLength: 1, maxLength: 8 }), { minLength: 1, maxLength: 5 })
      .map((lines) => lines.map((words) => `<p>${words.join(" ")}</p>`).join("\n"));
    fc.assert(
      fc.property(html, (text) => {
        const set = typeset(text);
        expect(set.replace(/\s/g, "")).toBe(text.replace(/\s/g, ""));
        expect(typeset(set)).toBe(set);
      }),
    );
  });
});
