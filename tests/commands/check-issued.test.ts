/** `paulatim check` says of a plan what `booklet` says of it, also where the client already has one. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { booklet } from "../../src/commands/booklet.ts";
import { check } from "../../src/commands/check.ts";
import { sign } from "../../src/commands/sign.ts";
import { change, ROOT } from "../support/world.ts";

const base = mkdtempSync(join(tmpdir(), "paulatim-check-"));
afterAll(() => rmSync(base, { recursive: true, force: true }));

const PLAN = "achilles.md";
const RECORD = "achilles-demo.issued.json";
/** A Thursday in the course's third week. */
const LATER = "2026-12-17";

let said = "";
const terminal = () => {
  said = "";
  const out = (text: string) => {
    said += `${text}\n`;
  };
  const colour = { out: false, err: false };
  return { cwd: base, env: {}, platform: "linux" as const, today: LATER, out, err: out, colour };
};

/** Codes of what is said, in their order, and the exit status. */
const codes = (status: number) => [
  status,
  [...said.matchAll(/(?:error|warning) {2}([a-z-]+)$/gm)].map(([, code]) => code).sort(),
];
const edit = (file: string, from: string | RegExp, to: string) =>
  writeFileSync(join(base, file), change(readFileSync(join(base, file), "utf8"), from, to));

async function both(options: { issued?: string; out?: string; date?: string } = {}) {
  // what is laid out is signed as it is with this record: else it is a draft, which issues nothing
  await sign(PLAN, { by: "Robin Ashdown", yes: true, ...options }, terminal());
  const checked = codes(await check([PLAN], options, terminal()));
  const text = said;
  const record = options.out ?? "out";
  const made = codes(
    await booklet([PLAN], { formats: "ics", out: record, ...options }, terminal()),
  );
  return { checked, made, text };
}

test("check and booklet agree", { timeout: 300_000 }, async () => {
  for (const file of ["clinic.yaml", PLAN]) {
    cpSync(join(ROOT, "templates/demo", file), join(base, file));
  }
  const first = await both({ date: "2026-11-25" });
  expect(first.checked).toEqual(first.made);

  // other work for weeks that are past, and for those to come
  const issued = readFileSync(join(base, "out", RECORD), "utf8");
  const reset = () => writeFileSync(join(base, "out", RECORD), issued);
  edit(
    PLAN,
    "redose:\n",
    "redose:\n  - { card: heel-raise-seated-weight, weeks: 2, why: x, dose: { sets: 2 } }\n",
  );
  const again = await both();
  expect(again.checked).toEqual(again.made);
  expect(again.checked.flat()).toContain("issued-kept");

  reset();
  const elsewhere = await both({ out: "elsewhere" });
  expect(elsewhere.checked).toEqual(elsewhere.made);
  expect(elsewhere.checked.flat()).not.toContain("issued-kept");

  const named = await both({ issued: `out/${RECORD}`, out: "third" });
  expect(named.checked).toEqual(named.made);
  expect(named.checked.flat()).toContain("issued-kept");

  // a record that is broken stops the booklet
  writeFileSync(join(base, "out", RECORD), "{}");
  const broken = await both();
  expect(broken.checked).toEqual(broken.made);
  expect(broken.checked[0]).toBe(1);
  const anew = await both({ issued: "none" });
  expect(anew.checked).toEqual(anew.made);
  expect(anew.checked[0]).toBe(0);
});
