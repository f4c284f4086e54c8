/** A demo booklet as PDF, opened and read by other programs: text, pages, outline, tags, same bytes. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { getDocument, type PDFDocumentProxy } from "pdfjs-dist/legacy/build/pdf.mjs";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { makeBooklet, makeProgram } from "../src/booklet.ts";
import type { Booklet } from "../src/compose/model.ts";
import { loadAssets } from "../src/html/assets.ts";
import { printerFor } from "../src/pdf/booklet-pdf.ts";
import { asSigned } from "./support/signed.ts";
import { change, DAY, DEMO, demoClinic, english, ROOT, shippedText } from "./support/world.ts";

const words = english();
const assets = await loadAssets(join(ROOT, "templates"), words);
const folder = mkdtempSync(join(tmpdir(), "paulatim-pdf-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function booklet(
  name: string,
  edit: (text: string) => string = (text) => text,
  clinic = {},
): Booklet {
  const file = `${DEMO}/${name}.md`;
  const workspace = demoClinic({ [file]: edit(shippedText(file)), ...clinic });
  const { value, faults } = makeProgram(workspace, file);
  if (!value) throw new Error(faults.map(({ message }) => message).join("\n"));
  return makeBooklet(asSigned(value), workspace, words, DAY);
}

/** PDFs of several booklets, printed one after the other by one browser. */
async function print(booklets: readonly Booklet[]): Promise<Uint8Array[]> {
  const printer = await printerFor({ env: process.env, platform: process.platform });
  const pdfs: Uint8Array[] = [];
  const jobs = booklets.map((_, index) => index);
  await printer(
    jobs,
    (index) => booklets[index] as Booklet,
    { assets, day: DAY },
    async (index, result) => {
      if ("faults" in result) throw result.faults[0];
      pdfs[index] = result.pdf;
    },
  );
  return pdfs;
}

const plans = {
  achilles: booklet("achilles"),
  shoulder: booklet("shoulder"),
  draft: booklet("achilles", (text) => change(text, /^signed:.*$/m, "")),
  letter: booklet("achilles", (text) => text, {
    [`${DEMO}/clinic.yaml`]: change(
      shippedText(`${DEMO}/clinic.yaml`),
      "paper: A4",
      "paper: Letter",
    ),
  }),
};

let pdf: Record<keyof typeof plans | "again", Uint8Array>;
let document: PDFDocumentProxy;

beforeAll(async () => {
  const names = Object.keys(plans) as (keyof typeof plans)[];
  const printed = await print([...names.map((name) => plans[name]), plans.achilles]);
  pdf = Object.fromEntries(
    [...names, "again"].map((name, index) => [name, printed[index]]),
  ) as typeof pdf;
  document = await open(pdf.achilles);
}, 120_000);

const open = (bytes: Uint8Array): Promise<PDFDocumentProxy> =>
  getDocument({ data: bytes.slice(), verbosity: 0 }).promise;

async function pageTexts(doc: PDFDocumentProxy): Promise<string[]> {
  const pages: string[] = [];
  for (let n = 1; n <= doc.numPages; n += 1) {
    const { items } = await (await doc.getPage(n)).getTextContent();
    pages.push(
      items
        .map((item) => ("str" in item ? item.str : ""))
        .join(" ")
        .replace(/\s+/g, " "),
    );
  }
  return pages;
}

describe("the booklet of the Achilles demo", () => {
  test("title, language, pages", async () => {
    const { info } = (await document.getMetadata()) as {
      info: { Title?: string; Language?: string };
    };
    expect(info.Title).toContain("Edda Marlowe");
    expect(info.Language).toBe("en");
    expect(document.numPages).toBeGreaterThanOrEqual(12);
    expect(document.numPages).toBeLessThanOrEqual(12);
  });

  test("outline: stop, pain, weeks, phase, each exercise, questions, diary, in this order", async () => {
    const titles = ((await document.getOutline()) ?? []).flatMap(function flat(item): string[] {
      return [item.title, ...item.items.flatMap(flat)];
    });
    const expected = [
      "When to stop and whom to call",
      "How much pain is all right",
      "Your weeks at a glance",
      "Slow and heavy",
      "Sit and rise up on your toes with a heavy weight",
      "Rise up on one leg over a step with a weight",
      "Your questions for next time",
      "Your diary",
    ];
    const places = expected.map((title) => titles.findIndex((found) => found.includes(title)));
    expect(places.every((place) => place >= 0)).toBe(true);
    expect([...places].sort((a, b) => a - b)).toEqual(places);
  });

  test("the numbers in the contents are the pages on which the headings stand", async () => {
    const pages = await pageTexts(document);
    const at = pages.findIndex((text) => text.includes("What is in this booklet"));
    const rows = [
      ["When to stop and whom to call", "Call 999 at once"],
      ["How much pain is all right", "No pain"],
      ["Your weeks at a glance", "Each row is one week"],
      ["Your diary", "A row is a day"],
      ["Your questions for next time", "Bring this page"],
    ] as const;
    for (const [title, sign] of rows) {
      const [, number] = new RegExp(`${title}\\s+(\\d+)`).exec(pages[at] ?? "") ?? [];
      const page = pages.findIndex(
        (text, index) => index !== at && text.includes(title) && text.includes(sign),
      );
      expect(Number(number)).toBe(page + 1);
    }
  });

  test("every page but the cover says whose it is and which of how many", async () => {
    const pages = await pageTexts(document);
    pages.forEach((text, index) => {
      expect(text).toContain(`Page ${index + 1} of ${pages.length}`);
      if (index > 0) expect(text).toContain("BF-0417");
    });
  });

  test("what has to be read is there, in the client's words", async () => {
    const all = (await pageTexts(document)).join(" ");
    for (const needed of [
      "Edda Marlowe",
      "01632 960 214",
      "Call 999",
      "Do this with your left leg.",
      "Lower your left heel slowly below the step.",
      "4 sets of 6",
      "50 kg (bar)",
      "Walk the Sunday round with my sister",
      "Night shift",
      "Long walk",
      "30 Nov",
    ]) {
      expect(all).toContain(needed);
    }
    expect(all).not.toMatch(/undefined|NaN|\[object|\{side\}|\{other\}|For the clinician/);
  });

  test("each exercise has one page", async () => {
    const pages = await pageTexts(document);
    for (const n of [1, 2]) {
      expect(
        pages.filter(
          (text) =>
            new RegExp(`BF-0417 Exercise ${n} `).test(text) || text.includes(`Exercise ${n}:`),
        ),
      ).toHaveLength(1);
    }
  });

  test("tags: headings, lists, tables with heads, and alternative texts of the drawings", async () => {
    const roles = new Set<string>();
    const alts: string[] = [];
    const visit = (node: { role?: string; alt?: string; children?: unknown[] }) => {
      if (node.role) roles.add(node.role);
      if (node.alt) alts.push(node.alt);
      for (const child of node.children ?? []) visit(child as typeof node);
    };
    for (let n = 1; n <= document.numPages; n += 1) {
      visit((await (await document.getPage(n)).getStructTree()) as object);
    }
    for (const role of ["H1", "H2", "H3", "L", "LI", "Table", "TR", "TH", "TD", "Figure"]) {
      expect([...roles]).toContain(role);
    }
    expect(alts.some((alt) => alt.includes("Pain ruler from 0"))).toBe(true);
    expect(alts.some((alt) => alt.includes("Now 4 out of 10"))).toBe(true);
  });

  test("the same booklet on the same day is the same file, on whichever page it is printed", () => {
    expect(Buffer.from(pdf.again).equals(Buffer.from(pdf.achilles))).toBe(true);
  });

  test("it claims PDF/UA-1, which `npm run conformance` has an outside checker confirm", () => {
    expect(Buffer.from(pdf.achilles).includes("<pdfuaid:part>1<")).toBe(true);
  });
});

test("a plan that is not signed off is a draft on every page", async () => {
  const pages = await pageTexts(await open(pdf.draft));
  for (const text of pages) expect(text).toContain("DRAFT");
  expect((await pageTexts(document)).join("")).not.toContain("DRAFT");
});

test.each([
  ["A4", "achilles", 595, 842],
  ["Letter", "letter", 612, 792],
] as const)("paper %s", async (_name, which, width, height) => {
  const page = await (await open(pdf[which])).getPage(1);
  const [, , w = 0, h = 0] = page.view;
  expect(Math.abs(w - width)).toBeLessThan(1);
  expect(Math.abs(h - height)).toBeLessThan(1);
});

test("the shoulder booklet: right arm, twice a day, then once", async () => {
  const all = (await pageTexts(await open(pdf.shoulder))).join(" ");
  for (const needed of [
    "Do this with your right arm.",
    "Twice every day",
    "Once every day",
    "Phase 1 of 2",
    "Band, level 2",
    "Breathe",
  ]) {
    expect(all).toContain(needed);
  }
});

describe.each(["achilles", "shoulder", "letter"] as const)("%s, seen by other programs", (name) => {
  const has = (tool: string) => spawnSync(tool, ["--version"]).error === undefined;

  // apt-get install qpdf
  test.skipIf(!has("qpdf"))("qpdf finds nothing wrong (needs qpdf)", () => {
    const file = join(folder, `${name}.pdf`);
    writeFileSync(file, pdf[name]);
    const done = spawnSync("qpdf", ["--check", file], { encoding: "utf8" });
    expect(`${done.stdout}${done.stderr}`).toContain("No syntax or stream encoding errors");
    expect(done.status).toBe(0);
  });

  // apt-get install poppler-utils
  test.skipIf(!has("pdffonts"))(
    "only the booklet's own typeface, embedded (needs poppler-utils)",
    () => {
      const file = join(folder, `${name}-fonts.pdf`);
      writeFileSync(file, pdf[name]);
      const lines = spawnSync("pdffonts", [file], { encoding: "utf8" })
        .stdout.trim()
        .split("\n")
        .slice(2);
      expect(lines.length).toBeGreaterThan(0);
      for (const line of lines) expect(line).toMatch(/OpenSans[\s\S]*yes yes yes/);
    },
  );
});

test("a character that no typeface has is an error that names it", async () => {
  const odd = booklet("achilles", (text) => change(text, "Dear Edda,", "Dear Edda \u{13000},"));
  await expect(print([odd])).rejects.toMatchObject({
    code: "glyph-missing",
    message: expect.stringContaining("(U+13000)"),
  });
});
