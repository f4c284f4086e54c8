/** What a client may expect of a course: said for every shipped one, from its own sources, and printed. */
import { describe, expect, test } from "vitest";
import { PROTOCOLS, partsOf, shippedCourse, textOf } from "../support/shipped.ts";
import { change, DEMO, demoClinic, shippedText } from "../support/world.ts";

describe.each(PROTOCOLS)("%s", (protocol) => {
  const { html, workspace } = shippedCourse(protocol);
  const value = workspace.texts.protocols.get(protocol)?.value;
  const page = textOf(partsOf(html, "my-plan").join(""));
  const printed = page.slice(page.indexOf("What to expect"));

  test("says how long it takes, what is known, what is not, and what else there is", () => {
    const { takes, known, unknown, instead } = value?.outlook ?? {};
    for (const text of [takes, known, unknown, instead]) {
      expect(text?.length).toBeGreaterThan(20);
      expect(printed).toContain(text);
    }
    expect(printed).toContain("Ask us");
  });

  test("names where that comes from", () => {
    const from = value?.outlook?.from ?? [];
    expect(printed).toContain(`From: ${from.join("; ")}`);
    const cites = value?.sources.map(({ cite }) => cite);
    expect(from.filter((cite) => !cites?.includes(cite))).toEqual([]);
  });
});

const FILE = "templates/protocols/achilles-heavy-slow-resistance.md";
const text = shippedText(FILE);
const OWN = `${DEMO}/protocols/achilles-heavy-slow-resistance.md`;

test.each([
  [
    "a source that the protocol does not cite",
    change(text, '    - "Beyer et al. 2015, Am', '    - "Beyer et al. 2014, Am'),
    "wrong-value",
    /Beyer et al\. 2014.* is not among the sources/,
  ],
  [
    "no source",
    change(text, / {2}from:\n {4}- .*\n/, "  from: []\n"),
    "wrong-value",
    /outlook|from/,
  ],
  ["a part left out", change(text, / {2}takes: .*\n/, ""), "missing-field", /takes/],
])("%s is told at its place", (_name, broken, code, message) => {
  const { faults } = demoClinic({ [OWN]: broken });
  const fault = faults.find((one) => one.place?.file === OWN && one.code === code);
  expect(fault?.message).toMatch(message);
  expect(fault?.place?.line).toBeGreaterThan(5);
});
