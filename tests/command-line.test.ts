/** Calls of the command, as a person or a script makes them: output, exit status, and what they leave on disk. */
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import { afterAll, beforeEach, describe, expect, test } from "vitest";
import { runCommand } from "../src/command-line.ts";
import { terminalIn } from "./commands/support.ts";
import { change, DAY, ROOT, shippedText } from "./support/world.ts";

const base = mkdtempSync(join(tmpdir(), "paulatim-cli-"));
afterAll(() => rmSync(base, { recursive: true, force: true }));

let clinic: string;
let count = 0;
beforeEach(() => {
  count += 1;
  clinic = join(base, String(count));
  mkdirSync(clinic);
  for (const file of ["clinic.yaml", "achilles.md", "shoulder.md"]) {
    cpSync(join(ROOT, "templates/demo", file), join(clinic, file));
  }
});

/** A call of the command in the clinic's folder, in this process. */
async function run(args: readonly string[]) {
  const { said, world } = terminalIn(clinic);
  const status = await runCommand(args, world);
  return { status, stdout: said.out, stderr: said.err };
}

const html = (...plans: string[]) =>
  run(["booklet", ...plans, "--formats", "html", "--date", DAY, "--out", "out"]);

const edit = (file: string, from: string | RegExp, to: string) =>
  writeFileSync(join(clinic, file), change(readFileSync(join(clinic, file), "utf8"), from, to));

const written = () => readdirSync(join(clinic, "out")).sort();

describe("exit status", () => {
  test.each([
    ["help", ["--help"], 0, /Usage: paulatim/],
    ["version", ["--version"], 0, /^\d+\.\d+\.\d+/],
    ["a good clinic", ["check", "--date", DAY], 0, /warnings?\./],
    ["warnings that count as errors", ["check", "--strict", "--date", DAY], 1, /warning/],
    ["a path that is not there", ["check", "nowhere"], 1, /no such file/],
    ["a plan that is not there", ["plan", "nobody.md"], 1, /no such plan/],
    ["an unknown command", ["prescribe"], 2, /unknown command/],
    ["an unknown option", ["check", "--loud"], 2, /unknown option/],
    ["a missing argument", ["plan"], 2, /missing required argument/],
    [
      "a format that does not exist",
      ["booklet", "achilles.md", "--formats", "docx"],
      2,
      /no format "docx"/,
    ],
    ["a day that does not exist", ["check", "--date", "2026-02-30"], 2, /not a date/],
    [
      "an exercise that is not in the library",
      ["plan", "achilles.md", "--explain", "hop-one-leg"],
      2,
      /Did you mean hops-one-leg/,
    ],
    [
      "an exercise that is not in the plan",
      ["plan", "achilles.md", "--explain", "hops-one-leg"],
      0,
      /does not have hops-one-leg/,
    ],
    [
      "a browser that is not there",
      ["booklet", "achilles.md", "--browser", "/nowhere/chrome"],
      3,
      /\/nowhere\/chrome/,
    ],
  ] as const)("%s", async (_name, args, status, says) => {
    const done = await run(args);
    expect(`${done.stdout}${done.stderr}`).toMatch(says);
    expect(done.status).toBe(status);
    expect(done.stderr).not.toMatch(/^\s+at /m);
  });

  test("a browser that is not there leaves the HTML and no PDF", async () => {
    await run(["booklet", "achilles.md", "--browser", "/nowhere/chrome", "--out", "out"]);
    expect(written()).toEqual(["achilles-demo.html", "achilles-demo.issued.json"]);
  });
});

describe("check --json", () => {
  test("every problem with its code, place and hint", async () => {
    edit("achilles.md", "side: left\n", "side: lefft\n");
    const done = await run(["check", "--json", "--date", DAY]);
    expect(done.status).toBe(1);
    const faults = JSON.parse(done.stdout);
    expect(faults.filter((fault: { level: string }) => fault.level === "error")).toEqual([
      {
        code: "wrong-value",
        level: "error",
        file: "achilles.md",
        line: 7,
        column: 7,
        message: 'side: "lefft" is not a known word here.',
        hint: "Did you mean left?",
        remedies: [],
      },
    ]);
  });
});

describe("plan --json", () => {
  test("weeks, sessions, bouts and trails", async () => {
    const plan = JSON.parse((await run(["plan", "achilles.md", "--json"])).stdout);
    expect(plan.weeks).toHaveLength(12);
    const session = plan.weeks[0].sessions[0];
    expect(session.bouts[0]).toMatchObject({
      card: "heel-raise-seated-weight",
      side: "both",
      sets: 3,
      reps: 15,
      tempo: "3-0-3-0",
      rest_s: 150,
      equipment: "barbell",
    });
    expect(
      plan.weeks[0].trails["heavy-slow/heel-raise-seated-weight"].load_kg.length,
    ).toBeGreaterThan(3);
    expect(plan.weeks.flatMap((week: { sessions: unknown[] }) => week.sessions)).toHaveLength(34);
  });
});

describe("what a booklet leaves on disk", () => {
  test("HTML for each plan, a record of what was issued, and nothing else", async () => {
    const done = await html("achilles.md", "shoulder.md");
    expect(done.status).toBe(0);
    expect(written()).toEqual([
      "achilles-demo.html",
      "achilles-demo.issued.json",
      "shoulder-demo.html",
      "shoulder-demo.issued.json",
    ]);
    expect(done.stdout).toContain("2 of 2 booklets written.");
  });

  test("an error in one plan leaves the others", async () => {
    edit("shoulder.md", "protocol: shoulder-cuff-lowering", "protocol: none-such");
    const done = await html("achilles.md", "shoulder.md");
    expect(done.status).toBe(1);
    expect(written()).toEqual(["achilles-demo.html", "achilles-demo.issued.json"]);
    expect(done.stdout).toContain("1 of 2 booklets written, 1 not.");
  });

  test("an error writes nothing, not even the folder", async () => {
    edit("achilles.md", "side: left\n", "side: lefft\n");
    expect((await html("achilles.md")).status).toBe(1);
    expect(existsSync(join(clinic, "out"))).toBe(false);
  });

  test("an output that cannot be overwritten", async () => {
    // a folder in the way: unlike permissions, it also stops root
    mkdirSync(join(clinic, "out/achilles-demo.html"), { recursive: true });
    const done = await html("achilles.md");
    expect(done.status).toBe(3);
    expect(done.stderr).toMatch(/output-unwritable/);
    expect(readdirSync(join(clinic, "out"))).toEqual(["achilles-demo.html"]);
  });

  test("a file where the output folder should be", async () => {
    writeFileSync(join(clinic, "out"), "");
    const done = await html("achilles.md");
    expect(done.status).toBe(3);
    expect(done.stderr).toMatch(/output-unwritable/);
  });

  test("two plans of one id", async () => {
    writeFileSync(join(clinic, "again.md"), readFileSync(join(clinic, "achilles.md")));
    const done = await html("achilles.md", "again.md");
    expect(done.status).toBe(1);
    expect(done.stderr).toMatch(/duplicate-id[\s\S]*again\.md/);
    expect((await run(["check", "--date", DAY])).stdout).toMatch(/duplicate-id/);
  });

  test("the same input and day give the same bytes", async () => {
    await html("achilles.md");
    const first = readFileSync(join(clinic, "out/achilles-demo.html"), "utf8");
    rmSync(join(clinic, "out"), { recursive: true });
    await html("achilles.md");
    expect(readFileSync(join(clinic, "out/achilles-demo.html"), "utf8")).toBe(first);
  });
});

describe("a plan issued again", { timeout: 120_000 }, () => {
  const ics = (...options: string[]) =>
    run(["booklet", "achilles.md", "--formats", "ics", "--date", DAY, ...options]);
  const file = (name: string) => readFileSync(join(clinic, "out", name), "utf8");
  const signed = async () => {
    const done = await run([
      "sign",
      "achilles.md",
      "--by",
      "Robin Ashdown",
      "--date",
      DAY,
      "--yes",
    ]);
    expect(done.status).toBe(0);
  };
  const away = () => edit("achilles.md", "away: [", "away: [2027-01-08, ");
  const calm = () => edit("achilles.md", "clear_before: 24 h", "clear_before: 12 h");

  test("on the same day is the same, record and all", async () => {
    await ics();
    const first = ["achilles-demo.ics", "achilles-demo.issued.json"].map(file);
    expect((await ics()).status).toBe(0);
    expect(["achilles-demo.ics", "achilles-demo.issued.json"].map(file)).toEqual(first);
  });

  test("cancels what is gone; plan says the same days", async () => {
    calm();
    await signed();
    await ics();
    away();
    await signed();
    expect((await ics()).status).toBe(0);
    expect(file("achilles-demo.ics")).toMatch(/UID:achilles-demo-2027-01-08-evening@paulatim/);
    expect(file("achilles-demo.ics").match(/STATUS:CANCELLED/g)).toHaveLength(1);
    const plan = JSON.parse((await run(["plan", "achilles.md", "--json"])).stdout);
    const dates = plan.weeks.flatMap((week: { sessions: { date: string }[] }) =>
      week.sessions.map(({ date }) => date),
    );
    const record = JSON.parse(file("achilles-demo.issued.json"));
    expect(dates).toEqual(record.sessions.map(({ date }: { date: string }) => date));
  });

  test("a plan changed after it was signed is a draft, and says what changed", async () => {
    calm();
    await signed();
    await ics();
    const before = file("achilles-demo.issued.json");
    away();
    const done = await ics();
    expect(done.status).toBe(0);
    expect(done.stderr).toMatch(/warning {2}signature-stale\n.*Changed: week › away: /);
    expect(file("achilles-demo.issued.json")).toBe(before);
    expect(file("achilles-demo.ics")).not.toMatch(/CANCELLED|CONFIRMED/);
  });

  test("a draft writes no record and leaves that of the signed booklet alone", async () => {
    await ics();
    const before = file("achilles-demo.issued.json");
    edit("achilles.md", /^signed:.*$/m, "");
    expect((await ics()).status).toBe(0);
    expect(file("achilles-demo.issued.json")).toBe(before);
    expect(file("achilles-demo.ics")).not.toMatch(/CANCELLED|CONFIRMED/);
  });

  test("a broken record stops it at its place, and none begins anew", async () => {
    await ics();
    writeFileSync(join(clinic, "out/achilles-demo.issued.json"), '{ "issued": 1,');
    const done = await ics();
    expect(done.status).toBe(1);
    expect(done.stderr).toMatch(/out\/achilles-demo\.issued\.json:1:\d+ {2}error {2}issued-broken/);
    expect(done.stderr).not.toMatch(/^\s+at /m);
    const anew = await ics("--issued", "none");
    expect(anew.status).toBe(0);
    expect(anew.stderr).toMatch(/warning {2}issued-broken/);
    expect(JSON.parse(file("achilles-demo.issued.json")).sessions).toHaveLength(34);
  });

  test("--issued names another record; one that is not there is begun, and said", async () => {
    const done = await ics("--issued", "mine.json");
    expect(done.status).toBe(0);
    expect(done.stderr).toMatch(/mine\.json:1:1 {2}warning {2}issued-unread/);
    expect(written()).toEqual(["achilles-demo.ics"]);
    expect((await ics("--issued", "mine.json")).stderr).not.toContain("issued");
    expect((await html("achilles.md", "shoulder.md")).status).toBe(0);
    const both = await run(["booklet", "achilles.md", "shoulder.md", "--issued", "mine.json"]);
    expect(both.status).toBe(2);
  });
});

describe("editions and formats", () => {
  test.each([
    ["large", "achilles-demo-large.html", 'class="edition-large '],
    ["summary", "achilles-demo-summary.html", 'class="edition-summary '],
  ])("the %s edition has a file of its own", async (edition, file, sign) => {
    await run([
      "booklet",
      "achilles.md",
      "--formats",
      "html",
      "--edition",
      edition,
      "--out",
      "out",
    ]);
    expect(written()).toEqual([file, "achilles-demo.issued.json"]);
    expect(readFileSync(join(clinic, "out", file), "utf8")).toContain(sign);
  });

  test("an edition that does not exist", async () => {
    expect((await run(["booklet", "achilles.md", "--edition", "pocket"])).status).toBe(2);
  });

  test("a calendar file alone starts no browser", async () => {
    const done = await run([
      "booklet",
      "achilles.md",
      "--formats",
      "ics",
      "--browser",
      "/nowhere",
      "--out",
      "out",
    ]);
    expect(done.status).toBe(0);
    expect(written()).toEqual(["achilles-demo.ics", "achilles-demo.issued.json"]);
  });
});

describe("a password", () => {
  const lock = async (text: string | undefined, ...options: string[]) => {
    if (text !== undefined) writeFileSync(join(clinic, "password.txt"), text);
    const words = ["booklet", "achilles.md", "--password-file", "password.txt", "--out", "out"];
    return run([...words, ...options]);
  };

  test("locks the PDF, the only file written", async () => {
    expect((await lock("the third bench\r\nnot this line\n")).status).toBe(0);
    expect(readdirSync(join(clinic, "out"))).toEqual(["achilles-demo.pdf"]);
    const file = readFileSync(join(clinic, "out/achilles-demo.pdf"));
    const open = (password: string) =>
      getDocument({ data: new Uint8Array(file), password, verbosity: 0 }).promise;
    await expect(open("")).rejects.toThrow(/password/i);
    await expect(open("the third bench\r")).rejects.toThrow(/password/i);
    expect((await open("the third bench")).numPages).toBeGreaterThan(10);
    expect(file.includes("Edda")).toBe(false);
  });

  test.each([
    ["an empty first line", "\nbench\n", [], 2],
    ["one too long", "é".repeat(64), [], 2],
    ["a file that is something else", "x".repeat(5000), [], 2],
    ["no file", undefined, [], 1],
    ["HTML beside it, which cannot be locked", "bench", ["--formats", "html,pdf"], 2],
  ])("%s: nothing is written", async (_name, text, options, status) => {
    const done = await lock(text, ...options);
    expect(done.status).toBe(status);
    expect(done.stderr).toMatch(/usage|file-unreadable/);
    expect(existsSync(join(clinic, "out"))).toBe(false);
  });
});

describe("library figures", () => {
  test("a sheet with every card's picture and words", async () => {
    expect((await run(["library", "figures", "--formats", "html", "--out", "out"])).status).toBe(0);
    const sheet = readFileSync(join(clinic, "out/figures.html"), "utf8");
    expect(
      sheet.match(/<img src="data:image\/svg\+xml,[^"]+" alt="[^"]{20,}"/g)?.length,
    ).toBeGreaterThan(70);
    expect(sheet).not.toContain("No figure.");
    expect(sheet).not.toMatch(/<script|https?:\/\/(?!www\.w3\.org)/);
  });

  test("as PDF it is as open to screen readers as a booklet", async () => {
    expect((await run(["library", "figures", "--formats", "pdf", "--out", "out"])).status).toBe(0);
    expect(readFileSync(join(clinic, "out/figures.pdf"), "latin1")).toContain("<pdfuaid:part>1<");
  }, 60_000);
});

describe("a card whose figure cannot be drawn", () => {
  test("is an error at its angle, and the booklet has no wrong picture", async () => {
    const folder = join(clinic, "exercises/calf-and-achilles");
    mkdirSync(folder, { recursive: true });
    const card = shippedText("exercises/calf-and-achilles/calf-stretch.md");
    const own = change(
      change(card, "id: calf-stretch", "id: own-stretch"),
      /knee right: -?\d+/,
      "knee right: 175",
    );
    writeFileSync(join(folder, "own-stretch.md"), own);
    const done = await run(["check", "--date", DAY]);
    expect(done.status).toBe(1);
    expect(done.stdout).toMatch(/own-stretch\.md:\d+:\d+ {2}error {2}figure-wrong/);
    const lines = [...done.stdout.matchAll(/own-stretch\.md:(\d+)/g)].map(
      ([, line]) => own.split("\n")[Number(line) - 1] ?? "",
    );
    expect(lines.some((line) => line.includes("175"))).toBe(true);
  });
});

describe("files from elsewhere", () => {
  test("a card that is a link out of the folder is refused", async () => {
    mkdirSync(join(clinic, "exercises"));
    writeFileSync(join(base, "secret.md"), "---\nid: secret\n---\n");
    symlinkSync(join(base, "secret.md"), join(clinic, "exercises/secret.md"));
    const done = await run(["check"]);
    expect(done.status).toBe(1);
    expect(done.stdout).toMatch(/exercises\/secret\.md:1:1 {2}error {2}outside-folder/);
  });

  test("a folder that is a link to itself ends", async () => {
    mkdirSync(join(clinic, "exercises"));
    symlinkSync(join(clinic, "exercises"), join(clinic, "exercises/again"));
    expect((await run(["check"])).status).toBe(1);
  });

  test("a plan that is a link out of the folder is refused", async () => {
    cpSync(join(clinic, "achilles.md"), join(base, "elsewhere.md"));
    symlinkSync(join(base, "elsewhere.md"), join(clinic, "linked.md"));
    const done = await run(["plan", "linked.md"]);
    expect(done.status).toBe(1);
    expect(done.stderr).toMatch(/outside-folder/);
  });

  test("a card of 50 MB is refused before it is read", async () => {
    mkdirSync(join(clinic, "exercises"));
    writeFileSync(join(clinic, "exercises/big.md"), Buffer.alloc(50 * 1024 * 1024, "a"));
    const done = await run(["check"]);
    expect(done.status).toBe(1);
    expect(done.stdout).toMatch(/file-too-large[\s\S]*50\.0 MB/);
  });
});

describe("new", () => {
  test("nothing is ever replaced", async () => {
    const done = await run(["new", "clinic", "."]);
    expect(done.status).toBe(3);
    expect(readFileSync(join(clinic, "clinic.yaml"), "utf8")).toBe(
      shippedText("templates/demo/clinic.yaml"),
    );
  });

  test.each([
    ["an unknown kind", ["new", "diagnosis", "x"]],
    ["a name that cannot be an id", ["new", "card", "Heel Raise"]],
  ])("%s", async (_name, args) => expect((await run(args)).status).toBe(2));

  test("a clinic, a card, a protocol and a plan that pass once filled in", async () => {
    const folder = join(clinic, "own");
    expect((await run(["new", "clinic", "own"])).status).toBe(0);
    expect((await run(["new", "card", "own/exercises/calf-and-achilles/my-raise"])).status).toBe(0);
    expect((await run(["new", "protocol", "own/protocols/my-course"])).status).toBe(0);
    expect((await run(["new", "plan", "own/jo"])).status).toBe(0);
    const before = await run(["check", "own"]);
    expect(before.status).toBe(1);
    const fill = (file: string, values: Record<string, string>) => {
      let text = readFileSync(join(folder, file), "utf8");
      for (const [field, value] of Object.entries(values)) {
        const key = new RegExp(`(^|[{ -])${field}:[ ]*(#.*)?(?=$|[,}])`, "m");
        text = change(text, key, `$1${field}: ${value}`);
      }
      writeFileSync(join(folder, file), text);
    };
    fill("clinic.yaml", {
      name: "Own Clinic",
      phone: "01632 960 100",
      hours: "Monday to Friday",
      out_of_hours: "Call the line.",
      emergency: '"112"',
    });
    fill("exercises/calf-and-achilles/my-raise.md", {
      title: "Rise up",
      clinical: "Heel raise",
      why: "It helps.",
      trains: "strength",
      limb: "leg",
      side: "both",
      demand: "3",
      kind: "none",
      sets: "3",
      reps: "12",
      per_week: "3",
      recovery: "48 h",
      pain: "monitored",
      cite: "common practice",
      for: "all",
      by: "A. Tester",
      again: "2030-01-01",
    });
    const card = join(folder, "exercises/calf-and-achilles/my-raise.md");
    let text = change(readFileSync(card, "utf8"), "tissues: []", "tissues: [calf]");
    text = text.replaceAll(/^(## .*)$/gm, "$1\n\nWords.");
    writeFileSync(card, text);
    fill("protocols/my-course.md", {
      title: "A course",
      clinical: "A course",
      condition: "Weak calf",
      standing: "Untested.",
      pain: "monitored",
      aim: "Get strong.",
      weeks: "4",
      card: "my-raise",
      cite: "common practice",
      for: "all",
      by: "A. Tester",
      again: "2030-01-01",
    });
    const course = join(folder, "protocols/my-course.md");
    let words = readFileSync(course, "utf8");
    words = change(words, /^ {4}title:.*$/m, "    title: First");
    words = change(words, /^ {6}- {11}#.*$/m, "      - You can do it all.");
    writeFileSync(course, words);
    fill("jo.md", {
      name: "Jo Tester",
      reference: "T-1",
      born: "1980-05-16",
      body_mass: "70 kg",
      clinician: "A. Tester",
      protocol: "my-course",
      starts: "2026-12-01",
      side: "left",
      stage: "Late",
      irritability: "low",
      what: "Walk",
      now: "3",
      want: "8",
    });
    const plan = join(folder, "jo.md");
    writeFileSync(
      plan,
      change(
        readFileSync(plan, "utf8"),
        "free: {}",
        "free: { mon: { evening: 40 min }, wed: { evening: 40 min }, fri: { evening: 40 min } }",
      ),
    );
    const after = await run(["check", "own", "--date", DAY]);
    expect(after.stdout).not.toMatch(/ {2}error {2}/);
    expect(after.status).toBe(0);
    const booklet = await run(["booklet", "own/jo.md", "--formats", "html", "--out", "out"]);
    expect(booklet.status).toBe(0);
  });
});
