/** The policy of a booklet in a real browser: its own styles, fonts, pictures and script work, nothing else does. */

import { createHash } from "node:crypto";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import puppeteer, { type Browser, type Page } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { makeBooklet, makeProgram } from "../../src/booklet.ts";
import { withBrowser } from "../../src/browser/browser.ts";
import type { Booklet } from "../../src/compose/model.ts";
import { type BookletAssets, loadAssets } from "../../src/html/assets.ts";
import { type HtmlOptions, renderHtml } from "../../src/html/html.ts";
import type { TemplateFile } from "../../src/html/template-file.ts";
import { printPdf } from "../../src/pdf/print.ts";
import { loadWords } from "../../src/words/load-words.ts";
import { openWorkspace } from "../../src/workspace.ts";
import { freshFolder } from "../files/support.ts";
import { achilles } from "../support/fixture-booklet.ts";
import { found } from "../support/render.ts";
import { change, DAY, ROOT, shippedText, worldWith } from "../support/world.ts";

const WORDS = { en: loadWords("en", "en-GB"), de: loadWords("de", "de-DE") };
const templates = join(ROOT, "templates");
const ASSETS = {
  en: await loadAssets(templates, WORDS.en),
  de: await loadAssets(templates, WORDS.de),
};

function demo(clinicFolder: string, plan: string, language: keyof typeof WORDS): Booklet {
  const tree = worldWith();
  const workspace = openWorkspace({ tree, clinicFolder, shipped: ".", today: DAY });
  const { value, faults } = makeProgram(workspace, `${clinicFolder}/${plan}.md`);
  if (!value) throw new Error(faults.map(({ message }) => message).join("\n"));
  return makeBooklet(value, workspace, WORDS[language], DAY);
}

/** A clinic's own picture may be drawn with styles of its own; they are within the picture. */
const STYLED = `<svg xmlns="http://www.w3.org/2000/svg" width="90" height="40"><style>rect{fill:#c00}</style>
<rect width="40" height="40"/><circle cx="65" cy="20" r="20" style="fill:#00c"/></svg>`;

const folder = freshFolder();
let browser: Browser;
beforeAll(async () => {
  browser = await puppeteer.launch({
    executablePath: found.path,
    args: [...found.args],
    env: { ...process.env, ...found.env },
    headless: "shell",
    pipe: true,
  });
});
afterAll(() => browser?.close());

interface Seen<Found> {
  /** Directive and what it kept out (of an address the origin), of every violation. */
  readonly violations: readonly string[];
  /** Errors and warnings of the console. */
  readonly complaints: readonly string[];
  readonly found: Found;
}

const LISTEN = `
  window.violations = [];
  window.addEventListener("securitypolicyviolation", ({ effectiveDirective, blockedURI }) =>
    window.violations.push(effectiveDirective + " " + blockedURI.replace(/(?<=:9)\\/.*/, "")));`;

let count = 0;

/** Opens a booklet as its reader does: a file, with scripts on. */
async function open<Found>(
  html: string,
  look: (page: Page) => Promise<Found>,
): Promise<Seen<Found>> {
  count += 1;
  const file = join(folder, `${count}.html`);
  writeFileSync(file, html);
  const page = await browser.newPage();
  const complaints: string[] = [];
  page.on("console", (message) => {
    if (message.type() !== "log") complaints.push(message.text());
  });
  page.on("pageerror", (error) => complaints.push(String(error)));
  await page.evaluateOnNewDocument(LISTEN);
  await page.goto(pathToFileURL(file).href, { waitUntil: "load" });
  const seen = await look(page);
  // a violation is told of in a task of its own
  await page.evaluate("new Promise((resolve) => setTimeout(resolve, 50))");
  const violations = (await page.evaluate("window.violations")) as string[];
  await page.close();
  return { violations, complaints, found: seen };
}

const script = (code: string, data: unknown = {}): HtmlOptions => ({
  script: { code, data: JSON.stringify(data) },
});

describe.each([
  ["the Achilles demo", demo("templates/demo", "achilles", "en"), ASSETS.en],
  ["the shoulder demo", demo("templates/demo", "shoulder", "en"), ASSETS.en],
  ["the German demo", demo("templates/demo-de", "achilles", "de"), ASSETS.de],
  [
    "the demo with a logo that holds styles",
    {
      ...demo("templates/demo", "achilles", "en"),
      logo: { url: `data:image/svg+xml,${encodeURIComponent(STYLED)}`, alt: "A mark" },
    },
    ASSETS.en,
  ],
  [
    "the demo in large print",
    { ...demo("templates/demo", "achilles", "en"), edition: "large" } as const,
    ASSETS.en,
  ],
  [
    "the summary of the demo",
    { ...demo("templates/demo", "achilles", "en"), edition: "summary" } as const,
    ASSETS.en,
  ],
])("%s", (_name, booklet, assets) => {
  const LOOK = `(async () => {
    const faces = await Promise.all([...document.fonts].map((face) => face.load()));
    const pictures = [...document.images];
    await Promise.all(pictures.map((picture) => picture.decode()));
    return {
      colour: getComputedStyle(document.querySelector("h1")).color,
      page: getComputedStyle(document.querySelector("[data-page=summary], [data-page=cover]")).page,
      fonts: faces.every(({ status }) => status === "loaded") && faces.length > 1,
      pictures: pictures.every(({ naturalWidth }) => naturalWidth > 0) && pictures.length > 1,
      ran: document.documentElement.dataset.ran ?? "",
    };
  })()`;
  const look = (page: Page) => page.evaluate(LOOK);
  const wanted = {
    colour: "rgb(21, 69, 90)",
    page: booklet.edition === "summary" ? "summary" : "cover",
    fonts: true,
    pictures: true,
  };

  test("has its styles, fonts and pictures, and no script", async () => {
    const html = renderHtml(booklet, assets);
    expect(await open(html, look)).toEqual({
      violations: [],
      complaints: [],
      found: { ...wanted, ran: "" },
    });
    expect(html).not.toMatch(/<script|script-src/);
  });

  test("has its script too where it has one", async () => {
    const read = `JSON.parse(document.getElementById("booklet-data").textContent).title`;
    const code = `document.documentElement.dataset.ran = ${read};`;
    const html = renderHtml(booklet, assets, script(code, { title: booklet.title }));
    expect(await open(html, look)).toEqual({
      violations: [],
      complaints: [],
      found: { ...wanted, ran: booklet.title },
    });
  });

  test("looks as without a policy", async () => {
    const html = renderHtml(booklet, assets);
    const free = change(html, /<meta http-equiv="Content-Security-Policy"[^>]*>/, "");
    const shots = async (page: Page) => {
      await page.setViewport({ width: 700, height: 7000 });
      await page.evaluate(LOOK);
      return Buffer.from(await page.screenshot()).toString("base64");
    };
    const [strict, open_] = [await open(html, shots), await open(free, shots)];
    expect(strict.found === open_.found).toBe(true);
  });
});

test("the policy says the hashes of the only style and the only script", () => {
  const code = "document.title;";
  const html = renderHtml(achilles, ASSETS.en, script(code));
  const hash = (text = "") => `'sha256-${createHash("sha256").update(text).digest("base64")}'`;
  const [, style] = /<style>([\s\S]*?)<\/style>/.exec(html) ?? [];
  const [, policy] = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(html) ?? [];
  expect(policy).toBe(
    `default-src 'none'; style-src ${hash(style)}; script-src ${hash(code)}; img-src data:; font-src data:; base-uri 'none'; form-action 'none'`,
  );
  expect(html.endsWith(`<script>${code}</script>\n</body>\n</html>\n`)).toBe(true);
});

describe("kept out", () => {
  const OUTSIDE = "http://127.0.0.1:9";
  const PIXEL = "data:image/gif;base64,R0lGODlhAQABAAAAACwAAAAAAQABAAA=";
  const run = (code: string) => script(`try { ${code} } catch {}`);
  /** What is put into the booklet, or what its own script does; what says that it was kept out. */
  const ROWS: [string, string, HtmlOptions, string][] = [
    ["a script", "<script>window.got = 1</script>", {}, "script-src-elem inline"],
    [
      "a script beside our own",
      "<script>window.got = 1</script>",
      run(""),
      "script-src-elem inline",
    ],
    [
      "a script of a module",
      `<script type="module">window.got = 1</script>`,
      run(""),
      "script-src-elem inline",
    ],
    [
      "a script from outside",
      `<script src="${OUTSIDE}/a.js"></script>`,
      run(""),
      `script-src-elem ${OUTSIDE}`,
    ],
    [
      "a script in data",
      `<script src="data:text/javascript,window.got=1"></script>`,
      run(""),
      "script-src-elem data",
    ],
    ["a handler", `<img src="${PIXEL}" onload="window.got = 1">`, {}, "script-src-attr inline"],
    [
      "a handler beside our script",
      `<img src="${PIXEL}" onload="window.got = 1">`,
      run(""),
      "script-src-attr inline",
    ],
    [
      "an address that is a script",
      `<a id="go" href="javascript:window.got=1">x</a>`,
      run("document.getElementById('go').click()"),
      "script-src-elem inline",
    ],
    ["text run as a script", "", run("eval('window.got = 1')"), "script-src eval"],
    [
      "a script that our own adds",
      "",
      run(
        "const one = document.createElement('script'); one.textContent = 'window.got = 1'; document.body.append(one)",
      ),
      "script-src-elem inline",
    ],
    ["a style attribute", `<p id="odd" style="color: red">x</p>`, {}, "style-src-attr inline"],
    [
      "a style element",
      "<style>#odd { color: red }</style><p id=odd>x</p>",
      {},
      "style-src-elem inline",
    ],
    [
      "a style sheet",
      `<link rel="stylesheet" href="${OUTSIDE}/a.css">`,
      {},
      `style-src-elem ${OUTSIDE}`,
    ],
    [
      "a style sheet in data",
      `<link rel="stylesheet" href="data:text/css,%23odd{color:red}"><p id=odd>x</p>`,
      {},
      "style-src-elem data",
    ],
    ["a picture from outside", `<img src="${OUTSIDE}/a.png">`, {}, `img-src ${OUTSIDE}`],
    ["a picture beside the file", `<img src="a.png">`, {}, "img-src file"],
    [
      "a picture within a drawing",
      `<svg><image href="${OUTSIDE}/a.png"/></svg>`,
      {},
      `img-src ${OUTSIDE}`,
    ],
    ["a frame", `<iframe src="${OUTSIDE}/"></iframe>`, {}, `frame-src ${OUTSIDE}`],
    ["an object", `<object data="${OUTSIDE}/a.svg"></object>`, {}, `object-src ${OUTSIDE}`],
    ["a sound", `<audio src="${OUTSIDE}/a.mp3"></audio>`, {}, `media-src ${OUTSIDE}`],
    ["another base of addresses", `<base href="${OUTSIDE}/">`, {}, `base-uri ${OUTSIDE}`],
    ["fetch", "", run(`fetch("${OUTSIDE}/").catch(() => undefined)`), `connect-src ${OUTSIDE}`],
    ["a beacon", "", run(`navigator.sendBeacon("${OUTSIDE}/", "x")`), `connect-src ${OUTSIDE}`],
    ["a socket", "", run(`new WebSocket("ws://127.0.0.1:9/")`), "connect-src ws://127.0.0.1:9"],
    ["a worker", "", run("new Worker(URL.createObjectURL(new Blob(['1'])))"), "worker-src blob"],
    [
      "a form",
      `<form id="go" action="${OUTSIDE}/"><input name="a"></form>`,
      run("document.getElementById('go').submit()"),
      `form-action ${OUTSIDE}`,
    ],
  ];

  test.each(ROWS)("%s", async (_name, added, options, violation) => {
    const html = renderHtml(achilles, ASSETS.en, options).replace("</main>", (end) => added + end);
    const { violations, found: got } = await open(html, async (page) => {
      const odd = `document.getElementById("odd")`;
      return await page.evaluate(`({
        address: location.protocol,
        got: window.got ?? 0,
        red: ${odd} !== null && getComputedStyle(${odd}).color === "rgb(255, 0, 0)",
      })`);
    });
    expect(new Set(violations)).toEqual(new Set([violation]));
    expect(got).toEqual({ address: "file:", got: 0, red: false });
  });
});

describe("the script's data", () => {
  test.each([
    ["the end of a script", "</script><script>window.got = 1</script>"],
    ["the start of a comment and a script", "<!--<script>"],
    ["separators of lines", "a\u2028b\u2029c\r\nd\0e"],
    ["what is escaped already", "\\u003c & &lt; \" ' \\"],
  ])("%s arrives as it was", async (_name, text) => {
    const code = `document.documentElement.dataset.ran = JSON.parse(document.getElementById("booklet-data").textContent).text;`;
    const html = renderHtml(achilles, ASSETS.en, script(code, { text }));
    const seen = await open(html, (page) =>
      page.evaluate(`[document.documentElement.dataset.ran, window.got ?? 0]`),
    );
    expect(seen).toEqual({ violations: [], complaints: [], found: [text, 0] });
  });
});

describe("a script", () => {
  test.each(["'</script>'", "'</SCRIPT '", "a<!--b"])("that holds %s is refused", (code) => {
    expect(() => renderHtml(achilles, ASSETS.en, script(code))).toThrow(
      /would end its own element/,
    );
  });

  test("with other line ends and odd letters runs", async () => {
    const code = 'window.got = "ä\u2028😀" + `\r\n`;\r\n// \0\r';
    const html = renderHtml(achilles, ASSETS.en, script(code));
    const seen = await open(html, (page) => page.evaluate("window.got"));
    expect(seen).toEqual({ violations: [], complaints: [], found: "ä\u2028😀\n" });
  });
});

describe("styles apply", () => {
  const colour = (page: Page) =>
    page.evaluate("getComputedStyle(document.querySelector('h1')).color");
  const shipped = shippedText("templates/booklet/document.hbs");
  const own = (text: string): Promise<BookletAssets> => {
    const file: TemplateFile = { file: "document.hbs", text };
    return loadAssets(templates, WORDS.en, new Map([["document", file]]));
  };

  test("with other line ends in the sheets", async () => {
    const styles = ASSETS.en.styles.replaceAll("\n", "\r\n");
    const html = renderHtml(achilles, { ...ASSETS.en, styles });
    const seen = await open(html, colour);
    expect(seen).toEqual({ violations: [], complaints: [], found: "rgb(21, 69, 90)" });
  });

  test.each([
    ["with no space around them", "<style>{{{styles}}}</style>"],
    ["with other line ends around them", "<STYLE media='all'>\r\n\r\n {{{styles}}}\r\n</STYLE >"],
  ])("in a clinic's own document, %s", async (_name, element) => {
    const assets = await own(change(shipped, /<style>[\s\S]*<\/style>/, element));
    const seen = await open(renderHtml(achilles, assets), colour);
    expect(seen).toEqual({ violations: [], complaints: [], found: "rgb(21, 69, 90)" });
  });

  test("with a clinic's own rules after them", async () => {
    const assets = await own(
      change(shipped, "{{{styles}}}", "{{{styles}}}\nh1 { color: #010203 }"),
    );
    const seen = await open(renderHtml(achilles, assets), colour);
    expect(seen).toEqual({ violations: [], complaints: [], found: "rgb(1, 2, 3)" });
  });

  test("on a page that has printed another booklet", async () => {
    const other = { ...achilles, clinic: { ...achilles.clinic, name: "Another clinic" } };
    const [first, second] = [renderHtml(other, ASSETS.en), renderHtml(achilles, ASSETS.en)];
    const print = (...documents: string[]) =>
      withBrowser(found, (browser) =>
        browser.usePage(async (page) => {
          let pdf: Uint8Array = new Uint8Array();
          for (const html of documents) pdf = await printPdf(page, html, { paper: "A4" });
          return [pdf.length, await colour(page)];
        }),
      );
    const alone = await print(second);
    expect(await print(first, second)).toEqual(alone);
    expect(alone.at(1)).toBe("rgb(21, 69, 90)");
  });
});
