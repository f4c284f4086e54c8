/** A clinic's own look: colour, logo, pages, words and templates, and what is refused. */
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { makeBooklet, makeProgram } from "../src/booklet.ts";
import { contrast } from "../src/clinic/contrast.ts";
import { Fault } from "../src/faults/fault.ts";
import { faultsFrom } from "../src/faults/print.ts";
import { loadAssets } from "../src/html/assets.ts";
import { renderHtml } from "../src/html/html.ts";
import { loadWords } from "../src/words/load-words.ts";
import { asSigned } from "./support/signed.ts";
import { change, DAY, DEMO, demoClinic, ROOT, shippedText, textAt } from "./support/world.ts";

const CLINIC = `${DEMO}/clinic.yaml`;
const settings = (look: string) => ({ [CLINIC]: `${shippedText(CLINIC)}look: ${look}\n` });

async function html(files: Record<string, string>): Promise<string> {
  const workspace = demoClinic(files);
  const { value } = makeProgram(workspace, `${DEMO}/achilles.md`);
  if (!value) throw new Error(workspace.faults.map(({ message }) => message).join("\n"));
  const words = loadWords("en", "en-GB", workspace.look.words);
  const assets = await loadAssets(join(ROOT, "templates"), words, workspace.look.templates);
  return renderHtml(makeBooklet(asSigned(value), workspace, words, DAY), assets);
}

const caught = async (files: Record<string, string>): Promise<Fault> => {
  const thrown = await html(files).catch((fault: unknown) => fault);
  if (thrown instanceof Fault) return thrown;
  throw new Error(`no fault: ${String(thrown).slice(0, 200)}`);
};

// WCAG 2.2 technique G18 and its understanding documents: black on white 21, #767676 on white 4.54,
// #777777 on white 4.48: the greys on both sides of 4.5 to 1
test.each([
  ["#000000", "#ffffff", 21],
  ["#ffffff", "#ffffff", 1],
  ["#767676", "#ffffff", 4.54],
  ["#777777", "#ffffff", 4.48],
])("contrast of %s and %s is %d", (a, b, ratio) => {
  expect(contrast(a, b)).toBeCloseTo(ratio, 2);
  expect(contrast(b, a)).toBeCloseTo(ratio, 2);
});

describe("colour", () => {
  test("one that can be read is used on paper and in light", async () => {
    expect(await html(settings('{ colour: "#5a2d0c" }'))).toContain(":root{--main:#5a2d0c}");
  });

  test("one that cannot is refused, with a tone that would do", () => {
    const files = settings('{ colour: "#ff9900" }');
    const { faults } = demoClinic(files);
    const fault = faults.find(({ code }) => code === "low-contrast");
    expect(textAt(files[CLINIC] ?? "", fault?.place)).toMatch(/^"#ff9900"/);
    const [, tone = ""] = /(#[0-9a-f]{6})\.$/.exec(fault?.hint ?? "") ?? [];
    expect(contrast(tone, "#ffffff")).toBeGreaterThanOrEqual(4.5);
    expect(contrast(tone, "#ffffff")).toBeLessThan(5);
  });
});

test("a logo stands on the cover with its words", async () => {
  const files = {
    ...settings("{ logo: { file: mark.svg, alt: A mill wheel } }"),
    [`${DEMO}/mark.svg`]:
      '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><path d="M0 0h9"/></svg>',
  };
  expect(await html(files)).toMatch(
    /<img class="logo" src="data:image\/svg\+xml;base64,[^"]+" alt="A mill wheel">/,
  );
});

test("a logo with a script is refused at its place", () => {
  const files = {
    ...settings("{ logo: { file: mark.svg, alt: x } }"),
    [`${DEMO}/mark.svg`]: "<svg><script>x</script></svg>",
  };
  const fault = demoClinic(files).faults.find(({ code }) => code === "image-wrong");
  expect(fault?.place?.file).toBe(CLINIC);
});

test("own pages stand after the safety page and at the end, in the contents too", async () => {
  const page = await html({
    [`${DEMO}/pages/before/1.md`]: "# How we work\n\nWe *listen* <b>first</b>.\n",
    [`${DEMO}/pages/after/1.md`]: "# Finding us\n\nBy the mill.\n",
  });
  const at = (text: string) => page.indexOf(text);
  expect(at('id="part-stop"')).toBeLessThan(at('id="part-before-1"'));
  expect(at('id="part-before-1"')).toBeLessThan(at('id="part-pain"'));
  expect(at('id="part-questions"')).toBeLessThan(at('id="part-after-1"'));
  expect(page).toContain("We <em>listen</em> &lt;b&gt;first&lt;/b&gt;.");
  expect(page).toContain('href="#part-before-1"');
});

test("a page without a title", () => {
  const { faults } = demoClinic({ [`${DEMO}/pages/before/1.md`]: "Hello\n" });
  expect(faults.map(({ code }) => code)).toEqual(["missing-section"]);
});

describe("words of the clinic's own", () => {
  test("stand in for shipped ones", async () => {
    const page = await html({
      [`${DEMO}/words.yaml`]: 'stop: { call: { fall: "A fall, even a small one" } }\n',
    });
    expect(page).toContain("A fall, even a small one");
    expect(page).not.toContain("A fall, or a new injury");
  });

  test("cannot add to them; the fault knows the place", async () => {
    const fault = await caught({ [`${DEMO}/words.yaml`]: "stop:\n  call:\n    fal: x\n" });
    expect(fault.code).toBe("unknown-field");
    expect(fault.place).toEqual({ file: `${DEMO}/words.yaml`, line: 3, column: 5 });
    expect(fault.hint).toContain("stop.call.fall");
  });
});

describe("templates of the clinic's own", () => {
  const shipped = shippedText("templates/booklet/stop.hbs");
  const own = (text: string, name = "stop") => ({ [`${DEMO}/booklet/${name}.hbs`]: text });

  test("stand in for the shipped ones", async () => {
    const text = change(shipped, 'class="clinic-name">', 'class="clinic-name">Welcome to ');
    expect(await html(own(text))).toContain("Welcome to Brookfold Physiotherapy");
  });

  test.each([
    ["one that is not closed", change(shipped, "{{/each}}", ""), /cannot be read/, undefined],
    [
      "a name that does not exist",
      change(shipped, "{{clinic.hours}}", "{{clinic.hour}}"),
      /nothing called hour/,
      "clinic.hour}}",
    ],
    [
      "a helper that does not exist",
      change(shipped, "{{clinic.hours}}", "{{upper clinic.hours}}"),
      /upper|cannot be read/,
      undefined,
    ],
  ])("%s names file and line", async (_name, text, message, at) => {
    const fault = await caught(own(text));
    expect(fault.code).toBe("template-broken");
    expect(fault.message).toMatch(message);
    expect(fault.place?.file).toBe(`${DEMO}/booklet/stop.hbs`);
    if (at !== undefined) expect(textAt(text, fault.place)).toMatch(new RegExp(`^.{0,9}${at}`));
  });

  test("styles and scripts amid the HTML are refused, each at its place", async () => {
    const heading = '<h2 id="part-stop"';
    const odd = change(shipped, heading, `${heading} style="color: {{colour}}" onclick="go()"`);
    const thrown = await html({
      ...own(`${odd}<script>go()</script>\n`),
      ...own("<style>h2 { color: red }</style>", "goals"),
    }).catch((faults: unknown) => faults);
    const places = faultsFrom(thrown).map(({ code, place }) => [code, place?.file, place?.line]);
    const lines = odd.split("\n").length;
    expect(places).toEqual([
      ["template-broken", `${DEMO}/booklet/goals.hbs`, 1],
      ["template-broken", `${DEMO}/booklet/stop.hbs`, 2],
      ["template-broken", `${DEMO}/booklet/stop.hbs`, 2],
      ["template-broken", `${DEMO}/booklet/stop.hbs`, lines],
    ]);
  });

  test("rules of the clinic's own stand in its document", async () => {
    const rule = ".clinic-name { color: #5a2d0c }";
    const shipped = shippedText("templates/booklet/document.hbs");
    const text = change(shipped, "{{{styles}}}", `{{{styles}}}\n${rule}`);
    expect(await html(own(text, "document"))).toContain(`\n${rule}\n</style>`);
  });

  test("one that stands in for nothing", async () => {
    const fault = await caught(own("x", "stops"));
    expect(fault.hint).toBe("Did you mean stop.hbs?");
  });
});
