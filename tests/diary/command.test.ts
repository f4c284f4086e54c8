/** `paulatim diary` as a clinic calls it: what it prints, writes and refuses, and its exit status. */
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeEach, describe, expect, test } from "vitest";
import { type DiaryOptions, diary } from "../../src/commands/diary.ts";
import { diaryCodes } from "../../src/diary/code.ts";
import { LARGEST } from "../../src/diary/columns.ts";
import { diaryCsv } from "../../src/diary/csv.ts";
import type { Terminal } from "../../src/terminal/terminal.ts";
import { COMMAND } from "../support/world.ts";
import { diaryOf, entry, THREE } from "./fixtures.ts";

const base = mkdtempSync(join(tmpdir(), "paulatim-diary-"));
afterAll(() => rmSync(base, { recursive: true, force: true }));

let folder: string;
let count = 0;
beforeEach(() => {
  count += 1;
  folder = join(base, String(count));
  mkdirSync(folder);
});

const put = (name: string, content: string | Uint8Array) =>
  writeFileSync(join(folder, name), content);

async function run(paths: readonly string[], options: DiaryOptions = {}, typed?: string) {
  const [out, err]: [string[], string[]] = [[], []];
  const terminal: Terminal = {
    cwd: folder,
    env: {},
    platform: "linux",
    today: "2026-12-08",
    out: (text) => out.push(text),
    err: (text) => err.push(text),
    colour: { out: false, err: false },
  };
  async function* keys() {
    for (const key of typed ?? "") yield Buffer.from(key);
  }
  const input = Object.assign(keys(), { isTTY: true });
  const status = await diary(paths, options, terminal, input);
  return { status, out: out.join("\n"), err: err.join("\n") };
}

describe("reading", () => {
  test("a diary as it was sent", async () => {
    put("a.csv", diaryCsv(THREE));
    const { status, out, err } = await run(["a.csv"]);
    expect([status, err]).toEqual([0, ""]);
    expect(out).toMatch(/^R-0417, achilles-demo: 3 sessions written down\n\nWeek 1\n {2}Tue/);
  });

  test("codes in a file, and codes typed by a scanner", async () => {
    const codes = diaryCodes(THREE);
    put("codes.txt", `${codes.join("\r\n")}\r\n`);
    const fromFile = await run(["codes.txt"]);
    const typed = await run(["-"], {}, codes.map((code) => `${code.toLowerCase()}\n`).join(""));
    expect([fromFile.status, typed.status]).toEqual([0, 0]);
    expect(typed.out).toBe(fromFile.out);
    expect(typed.err).toBe("Scan the codes, then press Ctrl-D.");
  });

  test("a diary as a spreadsheet saves it in UTF-16", async () => {
    put("a.txt", Buffer.from(diaryCsv(THREE), "utf16le"));
    expect((await run(["a.txt"])).status).toBe(0);
  });

  test("several files of one client as one diary, whatever their order", async () => {
    const later = entry({ note: "seen again", written: "2026-12-02T08:00:00Z" });
    put("a.csv", diaryCsv(THREE));
    put("b.csv", diaryCsv(diaryOf(later, entry({ date: "2026-12-08", week: 2 }))));
    const [one, two] = [await run(["a.csv", "b.csv"]), await run(["b.csv", "a.csv", "b.csv"])];
    expect(one.out).toBe(two.out);
    expect(one.out).toContain("4 sessions");
    expect(one.out).toContain("Note: seen again");
  });

  test("--json", async () => {
    put("a.csv", diaryCsv(THREE));
    const { status, out, err } = await run(["a.csv"], { json: true });
    expect([status, err]).toEqual([0, ""]);
    const json = JSON.parse(out);
    expect(json).toMatchObject({ version: 1, plan: "achilles-demo", client: "R-0417" });
    expect(json.sessions).toHaveLength(3);
  });
});

describe("the built command", () => {
  const built = (args: readonly string[], input = "") =>
    spawnSync(process.execPath, [COMMAND, "diary", ...args], {
      cwd: folder,
      input,
      encoding: "utf8",
    });

  test.each([
    ["codes on standard input", ["-"], diaryCodes(THREE).join("\n"), 0, /^R-0417, achilles-demo/],
    ["a damaged code", ["-"], "PAULATIM1:1/1:00000000:", 1, /standard input:1:1 {2}error/],
    ["no file", [], "", 2, /missing required argument/],
    ["a folder that is not there", ["a.csv", "--csv", "no/x.csv"], "", 3, /no\/x\.csv cannot be/],
  ] as const)("%s", (_name, args, input, status, says) => {
    put("a.csv", diaryCsv(THREE));
    const done = built(args, input);
    expect(`${done.stdout}${done.stderr}`).toMatch(says);
    expect(done.status).toBe(status);
    expect(done.stderr).not.toMatch(/^\s+at /m);
  });
});

describe("--csv", () => {
  test("writes the diaries as one, and says where", async () => {
    put("a.csv", diaryCsv(diaryOf(entry({ date: "2026-12-08" }))));
    put("b.csv", diaryCsv(THREE));
    const { status, out } = await run(["a.csv", "b.csv"], { csv: "all.csv" });
    expect(status).toBe(0);
    expect(out.endsWith(`\n${join(folder, "all.csv")}`)).toBe(true);
    expect(readFileSync(join(folder, "all.csv"), "utf8")).toBe(
      diaryCsv(diaryOf(...THREE.entries, entry({ date: "2026-12-08" }))),
    );
    expect(readdirSync(folder)).toEqual(["a.csv", "all.csv", "b.csv"]);
  });

  test("writes nothing when something could not be read", async () => {
    put("a.csv", diaryCsv(THREE).replace("2026-12-03,evening", "3/12/2026,evening"));
    const { status, err } = await run(["a.csv"], { csv: "all.csv" });
    expect(status).toBe(1);
    expect(err).toContain("all.csv was not written.");
    expect(readdirSync(folder)).toEqual(["a.csv"]);
  });

  test("a folder that is not there is a fault of the machine", async () => {
    put("a.csv", diaryCsv(THREE));
    await expect(run(["a.csv"], { csv: "no/all.csv" })).rejects.toMatchObject({
      code: "output-unwritable",
      exit: 3,
    });
  });
});

describe("what cannot be read", () => {
  test.each<readonly [string, string | Uint8Array, string, RegExp]>([
    [
      "another table",
      "date,pain\n",
      "diary-unreadable",
      /neither a column paulatim_diary nor codes/,
    ],
    ["a picture", Buffer.of(0x89, 0x50, 0x4e, 0x47), "diary-unreadable", /not text in UTF-8/],
    ["a huge file", "x".repeat(LARGEST + 1), "file-too-large", /more than 2 MB/],
    [
      "a newer diary",
      diaryCsv(THREE).replaceAll("\r\n1,", "\r\n2,"),
      "diary-unreadable",
      /has version 2; versions up to 1/,
    ],
    [
      "columns taken out",
      diaryCsv(THREE).replace("effort", "x"),
      "diary-unreadable",
      /column effort is missing/,
    ],
    [
      "two clients in one file",
      diaryCsv(THREE) + diaryCsv({ ...THREE, client: "R-9" }).split("\r\n")[1],
      "diaries-mixed",
      /client: "R-9" is not "R-0417"/,
    ],
    [
      "a part missing",
      diaryCodes(THREE).slice(1).join("\n"),
      "diary-code-broken",
      /parts are there: 1 missing/,
    ],
    [
      "codes among other lines",
      `${diaryCodes(THREE).join("\n")}\n40063`,
      "diary-code-broken",
      /"40063" is no code of a diary/,
    ],
  ])("%s", async (_name, content, code, says) => {
    put("a.csv", content);
    const { status, out, err } = await run(["a.csv"]);
    expect([status, out]).toEqual([1, ""]);
    expect(err).toMatch(new RegExp(`^a\\.csv:\\d+:\\d+ {2}error {2}${code}\n`));
    expect(err).toMatch(says);
  });

  test.each([
    ["a file that is not there", "no.csv", /no such file/],
    ["a folder", ".", /cannot be read/],
  ])("%s", async (_name, path, says) => {
    const { status, err } = await run([path]);
    expect(status).toBe(1);
    expect(err).toMatch(says);
  });

  test("each problem with its place, the row, and what to do; what is sound is shown", async () => {
    const text = diaryCsv(THREE).replace("2,10,7.5,,4", "2,10,7.5,,11");
    put("a.csv", text.replace(/\t/g, " "));
    const { status, out, err } = await run(["a.csv"]);
    expect(status).toBe(1);
    expect(out).toContain("2 sessions");
    const column = (text.split(/\r?\n/)[5] ?? "").indexOf(",11,") + 2;
    expect(err).toContain(`a.csv:6:${column}  error  diary-broken`);
    expect(err).toContain('pain_during: "11" cannot stand here.');
    expect(err).toMatch(/\n {2}> 6 \| 1,achilles-demo/);
    expect(err).toContain("Here stands a number from 0 to 10.");
    expect(err).toContain("1 error");
  });

  test("a rewritten date is told from a wrong one", async () => {
    put("a.csv", diaryCsv(THREE).replaceAll("2026-12-05,morning", "5.12.2026,morning"));
    const { err } = await run(["a.csv"]);
    expect(err.match(/a spreadsheet has probably changed it/g)).toHaveLength(2);
  });

  test("as JSON, on standard output", async () => {
    put("a.csv", diaryCsv(THREE).replace("2,10,7.5,,4", "2,10,7.5,,11"));
    const { status, out, err } = await run(["a.csv"], { json: true });
    expect([status, err]).toEqual([1, ""]);
    const { sessions, problems } = JSON.parse(out);
    expect(sessions).toHaveLength(2);
    expect(problems).toMatchObject([{ code: "diary-broken", file: "a.csv", line: 6 }]);
  });
});

describe("diaries of two", () => {
  test.each([
    ["clients", { ...THREE, client: "R-0418" }],
    ["plans", { ...THREE, plan: "knee" }],
    ["clients whose names look the same", { ...THREE, client: "R-0417 " }],
  ])("%s are refused, both named, and nothing is shown", async (_name, other) => {
    put("a.csv", diaryCsv(THREE));
    put("b.csv", diaryCsv(other));
    const { status, out, err } = await run(["a.csv", "b.csv"], { csv: "all.csv" });
    expect([status, out]).toEqual([1, ""]);
    expect(err).toMatch(/b\.csv:1:1 {2}error {2}diaries-mixed/);
    expect(err).toContain('a.csv is that of "R-0417" with the plan achilles-demo.');
    expect(readdirSync(folder)).toEqual(["a.csv", "b.csv"]);
  });
});

test("no text of a client acts on the terminal: not in the table, not in a problem, not as a file's name", async () => {
  const acts = "\u001b[2J\u009b31m\u0007";
  const bad = diaryCsv({ ...diaryOf(entry({ note: acts })), client: `R${acts}` });
  put("a.csv", bad);
  put(`b${acts}.csv`, bad.replace(",evening,", `,night${acts},`));
  put("c.txt", `PAULATIM1:1/1:x\n${acts}`);
  for (const json of [false, true]) {
    const { out, err } = await run(["a.csv", `b${acts}.csv`, "c.txt"], { json });
    expect(`${out}${err}`).not.toMatch(/(?!\n)\p{Cc}/u);
    expect(`${out}${err}`).toContain("night");
  }
});
