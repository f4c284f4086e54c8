/** `paulatim sign`: what is open is shown and asked about, and only the signature is written. */
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeEach, describe, expect, test } from "vitest";
import { plan } from "../../src/commands/plan.ts";
import { sign } from "../../src/commands/sign.ts";
import { diaryCsv } from "../../src/diary/csv.ts";
import type { Diary } from "../../src/diary/entry.ts";
import { Fault } from "../../src/faults/fault.ts";
import { change, DAY, ROOT } from "../support/world.ts";
import { terminalIn } from "./support.ts";

const base = mkdtempSync(join(tmpdir(), "paulatim-sign-"));
afterAll(() => rmSync(base, { recursive: true, force: true }));

let clinic: string;
let file: string;
let count = 0;
beforeEach(() => {
  clinic = join(base, String(count++));
  for (const name of ["clinic.yaml", "achilles.md"]) {
    cpSync(join(ROOT, "templates/demo", name), join(clinic, name));
  }
  file = join(clinic, "achilles.md");
  edit(/^signed:.*\n/m, "");
});

const textNow = () => readFileSync(file, "utf8");
const edit = (from: string | RegExp, to: string) =>
  writeFileSync(file, change(textNow(), from, to));

/** A clinic that lets work grow by no more than the demo's does: one thing is open. */
const strict = () => {
  const settings = join(clinic, "clinic.yaml");
  const more = "  session: 45 min\n  week_growth: 10 %";
  writeFileSync(settings, change(readFileSync(settings, "utf8"), "  session: 45 min", more));
};

async function signed(options: Partial<Parameters<typeof sign>[1]> = {}, answer?: string) {
  const { said, world } = terminalIn(clinic);
  const asked: string[] = [];
  try {
    const status = await sign(
      "achilles.md",
      { by: "Robin Ashdown", ...options },
      world,
      async (one) => {
        asked.push(one);
        return answer;
      },
    );
    return { status, asked, ...said };
  } catch (thrown) {
    if (!(thrown instanceof Fault)) throw thrown;
    return { status: thrown.exit, asked, ...said, fault: thrown };
  }
}

const isSigned = () => {
  const { said, world } = terminalIn(clinic);
  plan("achilles.md", { json: true }, world);
  return JSON.parse(said.out).signed as boolean;
};

describe("a plan", () => {
  test("is signed for the day given, and nothing else of its file changes", async () => {
    writeFileSync(file, textNow().replaceAll("\n", "\r\n"));
    const before = textNow();
    expect(await signed({ on: "2026-11-29" })).toMatchObject({ status: 0, asked: [], err: "" });
    const line = /signed: \{ by: Robin Ashdown, on: 2026-11-29, digest: 1-[0-9a-f]{32} \}\r\n/;
    expect(textNow()).toMatch(line);
    expect(textNow().replace(line, "")).toBe(before);
    expect(isSigned()).toBe(true);
    expect(existsSync(join(clinic, "achilles.signed.json"))).toBe(true);
  });

  test("is signed again after a change, and today where no day is given", async () => {
    await signed();
    edit("load: 45 kg", "load: 42.5 kg");
    expect(isSigned()).toBe(false);
    expect(await signed({ by: "Ilse Lindqvist" })).toMatchObject({ status: 0, asked: [] });
    expect(textNow()).toContain(`signed: { by: Ilse Lindqvist, on: ${DAY}, digest: 1-`);
    expect(isSigned()).toBe(true);
  });

  test("with an error is not signed, whatever is said", async () => {
    edit("protocol: achilles", "protocol: akilles");
    const before = textNow();
    expect(await signed({ yes: true }, "yes")).toMatchObject({
      status: 1,
      asked: [],
      err: expect.stringMatching(
        /unknown-protocol[\s\S]*achilles\.md is not signed: its errors come first\./,
      ),
    });
    expect(textNow()).toBe(before);
  });

  test.each<[string, Partial<Parameters<typeof sign>[1]>]>([
    ["by nobody", { by: "  " }],
    ["on no day", { on: "tomorrow" }],
  ])("is not signed %s", async (_name, options) => {
    expect(await signed({ yes: true, ...options })).toMatchObject({ status: 2, out: "" });
    expect(existsSync(join(clinic, "achilles.signed.json"))).toBe(false);
  });
});

describe("what is open is shown first", () => {
  test.each<[string, string | undefined, boolean, number]>([
    ["yes", "yes", false, 0],
    ["no", "no", false, 1],
    ["nothing", "", false, 1],
    ["nobody there", undefined, false, 2],
    ["nobody there, with --yes", undefined, true, 0],
  ])("and asked about: %s", async (_name, answer, yes, status) => {
    strict();
    const before = textNow();
    const result = await signed({ yes }, answer);
    expect([result.status, result.err]).toEqual([status, expect.stringContaining("ramp-steep")]);
    expect(result.err).not.toContain("not-signed");
    expect(result.asked.length).toBe(yes ? 0 : 1);
    expect(textNow() !== before).toBe(status === 0);
  });

  test.each([
    ["flags: none", "flags: []", true],
    ["flags: none", "# no flags", true],
    ["flags: none", "flags: [none]", false],
    ["flags: none", "flags: [diabetes-neuropathy]", false],
  ])("%s changed to %s: flags are open, %s", async (from, to, open) => {
    edit(from, to);
    const { err } = await signed({}, "no");
    expect(err.includes("flags-not-asked")).toBe(open);
  });

  const diary = (name: string, plan: string, written: string) => {
    const entry = {
      date: "2026-12-02",
      part: "evening",
      week: 1,
      booklet: "1",
      done: "no",
      doneOn: undefined,
      short: false,
      effort: undefined,
      painAfter: undefined,
      painMorning: undefined,
      worseMorning: undefined,
      note: "",
      exercises: [],
      written,
    } as const;
    const whole: Diary = { plan, client: "BF-0417", entries: [entry] };
    writeFileSync(join(clinic, name), diaryCsv(whole));
  };

  test("a diary that lies beside the plan", async () => {
    diary("edda.csv", "achilles-demo", "2026-12-02T18:30:05Z");
    const { err, status } = await signed({}, "no");
    expect(status).toBe(1);
    expect(err).toContain("edda.csv:1:1  warning  diary-unread");
    expect(err).toContain("paulatim diary edda.csv");
  });

  test("but not one of another plan, one that is older than the signature, or any other table", async () => {
    await signed({ on: "2026-12-10" });
    diary("other.csv", "shoulder-demo", "2026-12-12T18:30:05Z");
    diary("old.csv", "achilles-demo", "2026-12-02T18:30:05Z");
    writeFileSync(join(clinic, "loads.csv"), "a,b\n1,2\n");
    expect(await signed({ on: "2026-12-20" })).toMatchObject({ status: 0, err: "" });
  });
});
