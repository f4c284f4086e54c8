/** `paulatim plan PLAN --apply N`: one remedy written into the plan, and no other byte of it touched. */
import {
  chmodSync,
  cpSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeEach, describe, expect, test } from "vitest";
import { applyRemedy } from "../../src/commands/apply.ts";
import { plan } from "../../src/commands/plan.ts";
import { Fault } from "../../src/faults/fault.ts";
import { change, ROOT } from "../support/world.ts";
import { terminalIn } from "./support.ts";

const base = mkdtempSync(join(tmpdir(), "paulatim-apply-"));
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
});

const textNow = () => readFileSync(file, "utf8");
const edit = (from: string | RegExp, to: string) =>
  writeFileSync(file, change(textNow(), from, to));

function shown() {
  const { said, world } = terminalIn(clinic);
  return { status: plan("achilles.md", {}, world), ...said };
}

async function apply(options: Partial<Parameters<typeof applyRemedy>[1]>, answer?: string) {
  const { said, world } = terminalIn(clinic);
  const asked: string[] = [];
  const status = await applyRemedy(
    "achilles.md",
    { apply: "1", ...options },
    world,
    async (question) => {
      asked.push(question);
      return answer;
    },
  );
  return { status, asked, ...said };
}

/** The plan without its swap: it then needs a leg press, which the client does not have. */
const withLegPress = () =>
  edit(/swap:\n {2}- card: heel-press-leg-press\n.*\n.*\n/, "swap: []   # none so far\n");

describe("a swap that is offered", () => {
  test("is numbered by plan, asks for its reason, and is the only thing written", async () => {
    withLegPress();
    writeFileSync(file, textNow().replaceAll("\n", "\r\n"));
    chmodSync(file, 0o600);
    const before = textNow();
    const { status, err } = shown();
    expect(status).toBe(1);
    const offered = /^ {2} {2}1 {2}(\S+) \(.*\) instead of heel-press-leg-press\.$/m.exec(err)?.[1];
    expect(offered).toBeDefined();
    expect(err).toContain("paulatim plan achilles.md --apply NUMBER");
    const { out, asked } = await apply({}, "No leg press: at home.");
    expect(asked).toHaveLength(1);
    const item = `{ card: heel-press-leg-press, to: ${offered}, why: "No leg press: at home." }`;
    expect(textNow()).toBe(change(before, "swap: []   # none", `swap: [${item}]   # none`));
    expect(out).toContain(`- swap: []   # none so far\n+ swap: [${item}]   # none so far\n`);
    expect(statSync(file).mode & 0o777).toBe(0o600);
    expect(shown().err).not.toContain("equipment-missing");
  });

  test.each([
    ["without a reason", { apply: "1" }, undefined, /needs a reason/],
    ["with an empty reason", { apply: "1" }, "  ", /needs a reason/],
    ["with a number that is not there", { apply: "99", why: "x" }, undefined, /no remedy 99/],
    ["with a word", { apply: "first", why: "x" }, undefined, /no remedy first/],
  ])("is not written %s", async (_name, options, answer, says) => {
    withLegPress();
    const before = textNow();
    const thrown = await apply(options, answer).catch((fault: unknown) => fault);
    expect(thrown).toBeInstanceOf(Fault);
    expect([(thrown as Fault).code, (thrown as Fault).message]).toEqual([
      "usage",
      expect.stringMatching(says),
    ]);
    expect(textNow()).toBe(before);
  });
});

describe("free time that would help", () => {
  test("is opened without a question, and the plan is then laid out", async () => {
    edit(
      /free:\n(?: {4}\w.*\n)+/,
      "free: # what she told us\n    mon: { evening: 45 min }\n    wed: { evening: 8 min } # late\n",
    );
    const before = textNow().split("\n");
    const { status, out } = await apply({});
    expect(status).toBe(0);
    const after = textNow().split("\n");
    const taken = before.filter((line) => !after.includes(line));
    const put = after.filter((line) => !before.includes(line));
    expect(put.length).toBeGreaterThan(0);
    for (const line of put) expect(line).toMatch(/^ {4}\w+: \{ .*\d+ min \}( # late)?$/);
    expect(out).toBe(
      `${out.split("\n")[0]}\n${[...taken.map((line) => `- ${line}`), ...put.map((line) => `+ ${line}`)].join("\n")}\n`,
    );
  });
});

test("a file that is no UTF-8 is not written", async () => {
  withLegPress();
  const bytes = Buffer.concat([readFileSync(file), Buffer.from([0xff, 0x0a])]);
  writeFileSync(file, bytes);
  const thrown = await apply({ why: "x" }).catch((fault: unknown) => fault);
  expect((thrown as Fault).code).toBe("file-unreadable");
  expect(readFileSync(file).equals(bytes)).toBe(true);
});

test("plan --json gives the remedies as edits", () => {
  withLegPress();
  const { said, world } = terminalIn(clinic);
  plan("achilles.md", { json: true }, world);
  const [fault] = JSON.parse(said.out).faults as { remedies: unknown[] }[];
  expect(fault?.remedies[0]).toEqual({
    sentence: expect.stringContaining("instead of heel-press-leg-press."),
    needs_why: true,
    edits: [
      {
        kind: "append",
        path: ["swap"],
        value: { card: "heel-press-leg-press", to: expect.any(String), why: null },
      },
    ],
  });
});
