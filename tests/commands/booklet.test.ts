/** Booklets whose PDF did not come out well: what is written all the same, what is said, the exit status. */
import {
  cpSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeEach, describe, expect, test } from "vitest";
import { booklet } from "../../src/commands/booklet.ts";
import { Fault } from "../../src/faults/fault.ts";
import type { PrintBooklet, PrintResult } from "../../src/pdf/booklet-pdf.ts";
import { change, DAY, ROOT } from "../support/world.ts";

const base = mkdtempSync(join(tmpdir(), "paulatim-booklet-"));
afterAll(() => rmSync(base, { recursive: true, force: true }));

let clinic: string;
let said: string;
let count = 0;
beforeEach(() => {
  clinic = join(base, String(count++));
  said = "";
  for (const file of ["clinic.yaml", "achilles.md", "shoulder.md"]) {
    cpSync(join(ROOT, "templates/demo", file), join(clinic, file));
  }
});

/** A printer that gives these results in turn. */
const giving =
  (...results: readonly PrintResult[]): PrintBooklet =>
  async (jobs, _bookletOf, _made, take) => {
    let at = 0;
    for (const job of jobs) {
      const result = results[at++];
      if (result) await take(job, result);
    }
  };

const say = (text: string) => {
  said += `${text}\n`;
};

const make = (plans: readonly string[], options: object, print: PrintBooklet) =>
  booklet(
    plans,
    { date: DAY, out: "out", ...options },
    {
      cwd: clinic,
      env: {},
      platform: "linux",
      today: DAY,
      out: say,
      err: say,
      colour: { out: false, err: false },
    },
    print,
  );

const written = () => (existsSync(join(clinic, "out")) ? readdirSync(join(clinic, "out")) : []);

const broken = new Fault("pdf-broken", "The printed PDF cannot be read. It is odd.");
const odd: PrintResult = { pdf: Buffer.from("%PDF-odd"), broken };
const good: PrintResult = { pdf: Buffer.from("%PDF-good"), gaps: [] };
const gone: PrintResult = { faults: [new Fault("browser-failed", "The browser stopped.")] };
const glyph: PrintResult = { faults: [new Fault("glyph-missing", "A character is missing.")] };

describe("a PDF that cannot be read", () => {
  test("is written as the browser made it, beside the HTML, and said", async () => {
    expect(await make(["achilles.md"], { formats: "html,pdf,ics" }, giving(odd))).toBe(0);
    expect(written().filter((file) => !file.endsWith(".json"))).toEqual([
      "achilles-demo.html",
      "achilles-demo.ics",
      "achilles-demo.pdf",
    ]);
    expect(readFileSync(join(clinic, "out/achilles-demo.pdf"), "utf8")).toBe("%PDF-odd");
    expect(said).toMatch(/warning {2}pdf-unfinished\n.*It is odd\..*as the browser made it/);
  });

  test("leaves the HTML alone where warnings count as errors", async () => {
    // with this the plan itself has no warning
    const file = join(clinic, "clinic.yaml");
    const settings = readFileSync(file, "utf8");
    writeFileSync(file, change(settings, "limits:\n", "limits:\n  week_growth: 60 %\n"));
    expect(await make(["achilles.md"], { strict: true }, giving(odd))).toBe(70);
    expect(written().filter((file) => !file.endsWith(".json"))).toEqual(["achilles-demo.html"]);
    expect(said).toMatch(/error {2}pdf-broken/);
  });

  test("is never written open in place of a locked one", async () => {
    writeFileSync(join(clinic, "password.txt"), "the third bench\n");
    expect(await make(["achilles.md"], { passwordFile: "password.txt" }, giving(odd))).toBe(70);
    expect(written()).toEqual([]);
    expect(said).toMatch(/error {2}pdf-broken\n.*It cannot be locked with the password/);
  });
});

describe("a PDF that did not come at all", () => {
  test("leaves the HTML, and the other plans as they are", async () => {
    const plans = ["achilles.md", "shoulder.md"];
    expect(await make(plans, { formats: "html,pdf" }, giving(gone, good))).toBe(3);
    expect(written().filter((file) => !file.endsWith(".json"))).toEqual([
      "achilles-demo.html",
      "shoulder-demo.html",
      "shoulder-demo.pdf",
    ]);
    expect(said).toContain("browser-failed");
  });

  test("leaves nothing where only a PDF was asked for", async () => {
    expect(await make(["achilles.md"], { formats: "pdf" }, giving(gone))).toBe(3);
    expect(written()).toEqual([]);
  });

  test("leaves nothing where the plan's own text is at fault", async () => {
    expect(await make(["achilles.md"], {}, giving(glyph))).toBe(1);
    expect(written()).toEqual([]);
  });
});
