/** What a signature covers: whatever is changed in a signed plan makes it a draft that says what changed. */
import { beforeAll, describe, expect, test } from "vitest";
import { type MadeProgram, makeBooklet, makeProgram } from "../../src/booklet.ts";
import type { Edition } from "../../src/compose/model.ts";
import type { Fault } from "../../src/faults/fault.ts";
import { planJson } from "../../src/plan-text/json.ts";
import { contentOf, digestOf } from "../../src/signature/content.ts";
import { keptPath, keptText } from "../../src/signature/kept.ts";
import { loadWords } from "../../src/words/load-words.ts";
import {
  change,
  DAY,
  DEMO,
  demoClinic,
  english,
  shippedText,
  worldWith,
} from "../support/world.ts";

const ACHILLES = `${DEMO}/achilles.md`;
const SHOULDER = `${DEMO}/shoulder.md`;
const CLINIC = `${DEMO}/clinic.yaml`;

interface Made {
  readonly made: MadeProgram;
  readonly stale: Fault | undefined;
}

const SHIPPED = demoClinic();

/** The clinic with these files over it; read anew only where its settings are among them. */
const clinicWith = (files: Readonly<Record<string, string>>) =>
  CLINIC in files ? demoClinic(files) : { ...SHIPPED, tree: worldWith(files) };

function made(file: string, files: Readonly<Record<string, string>>): Made {
  const { value, faults } = makeProgram(clinicWith(files), file);
  if (!value) throw new Error(faults.map(({ message }) => message).join("\n"));
  return { made: value, stale: faults.find(({ code }) => code === "signature-stale") };
}

const edited = (file: string, from: string | RegExp, to: string) =>
  made(file, { [file]: change(shippedText(file), from, to) });

describe("the demos are signed as they are", () => {
  test.each([ACHILLES, SHOULDER])("%s; else: npm run demo:sign", (file) => {
    const { made: program, stale } = made(file, {});
    expect(stale?.message).toBeUndefined();
    expect(program.signedOff).toEqual({ by: "Robin Ashdown", on: expect.any(String) });
    expect(planJson(program, []).signed).toBe(true);
  });
});

describe("one thing changed in a signed plan makes it a draft", () => {
  test.each<[string, string, string | RegExp, string, RegExp]>([
    [
      "a measure",
      ACHILLES,
      "load: 45 kg, reps: 10",
      "load: 50 kg, reps: 10",
      /measures › 1 › load: 50 kg, signed 45 kg/,
    ],
    [
      "and what it comes to",
      ACHILLES,
      "load: 45 kg, reps: 10",
      "load: 50 kg, reps: 10",
      /weeks? \d[^;]*, Bilateral seated heel raise[^;:]*: load \d+(\.\d)? kg, signed \d+(\.\d)? kg/,
    ],
    [
      "repetitions of a measure",
      SHOULDER,
      "load: 3 kg, reps: 9",
      "load: 3 kg, reps: 8",
      /measures › 1 › reps: 8, signed 9/,
    ],
    [
      "free time",
      ACHILLES,
      "sat: { evening: 60 min }",
      "sat: { evening: 50 min }",
      /week › free › sat › evening: 50 min, signed 1 h/,
    ],
    ["a goal", ACHILLES, "now: 4, want: 8", "now: 4, want: 7", /goals › 1 › want: 7, signed 8/],
    [
      "a dose",
      ACHILLES,
      "dose: { per_week: 2 }",
      "dose: { per_week: 1 }",
      /redose › 1 › dose › per_week: 1, signed 2/,
    ],
    [
      "a flag",
      ACHILLES,
      "flags: none",
      "flags: [diabetes-neuropathy]",
      /flags: diabetes-neuropathy, signed none/,
    ],
    ["one change fewer", SHOULDER, /leave_out:\n.*\n.*\n/, "", /leave_out: none, signed 1 entry/],
    [
      "the first day",
      SHOULDER,
      "starts: 2026-12-02",
      "starts: 2026-12-09",
      /starts: 2026-12-09, signed 2026-12-02/,
    ],
    [
      "the client's name",
      ACHILLES,
      "Edda Marlowe",
      "Edda Marlow",
      /client › name: Edda Marlow, signed Edda Marlowe/,
    ],
    [
      "the note",
      ACHILLES,
      "as long as it comes slowly",
      "if it comes slowly",
      /the note to the client/,
    ],
  ])("%s", (_name, file, from, to, says) => {
    const { made: program, stale } = edited(file, from, to);
    expect(program.signedOff).toBeUndefined();
    expect(stale?.level).toBe("warning");
    expect(stale?.message).toMatch(says);
    expect(stale?.message).toMatch(/^The plan is not what Robin Ashdown signed on 2026-11-2[45]:/);
    expect(stale?.hint).toContain(`paulatim sign ${file}`);
  });

  test("a change of the clinic that comes out in a dose", () => {
    const { made: program, stale } = made(ACHILLES, {
      [CLINIC]: change(
        shippedText(CLINIC),
        "  session: 45 min",
        "  session: 45 min\n  load_step: 2 %",
      ),
    });
    expect(program.signedOff).toBeUndefined();
    expect(stale?.message).toMatch(/Changed: weeks? \d.*: load .* kg, signed .* kg/);
  });

  test("only the first few are named, with how many more there are", () => {
    const { stale } = edited(SHOULDER, "load: 3 kg, reps: 9", "load: 3 kg, reps: 4");
    expect(stale?.message.split("; ").length).toBeLessThanOrEqual(7);
    const two = edited(SHOULDER, "starts: 2026-12-02", "starts: 2026-12-09").stale?.message;
    expect(two).toMatch(/; and \d+ more\.$/);
  });

  test("on every page, and without a companion", () => {
    const files = { [ACHILLES]: change(shippedText(ACHILLES), "load: 45 kg", "load: 42 kg") };
    const { made: program } = made(ACHILLES, files);
    const booklet = makeBooklet(program, SHIPPED, english(), DAY);
    expect([booklet.draft, booklet.signed, booklet.signedOn]).toEqual([true, undefined, undefined]);
    expect(planJson(program, []).signed).toBe(false);
  });
});

describe("what does not touch the plan leaves it signed", () => {
  test.each<[string, Readonly<Record<string, string>>]>([
    ["another paper", { [CLINIC]: change(shippedText(CLINIC), "paper: A4", "paper: Letter") }],
    [
      "another language",
      { [CLINIC]: change(shippedText(CLINIC), "locale: en-GB", "language: de\nlocale: de-DE") },
    ],
    [
      "another telephone",
      { [CLINIC]: change(shippedText(CLINIC), /phone: .*/, 'phone: "01632 960 001"') },
    ],
    ["other line ends", { [ACHILLES]: shippedText(ACHILLES).replaceAll("\n", "\r\n") }],
    [
      "comments",
      { [ACHILLES]: change(shippedText(ACHILLES), "clinician:", "# seen on Monday\nclinician:") },
    ],
    [
      "a default written out",
      { [ACHILLES]: change(shippedText(ACHILLES), "week:\n", "add: []\nweek:\n  prefer: []\n") },
    ],
    [
      "fields in another order",
      {
        [ACHILLES]: change(
          change(shippedText(ACHILLES), "side: left\n", ""),
          "stage:",
          "side: left\nstage:",
        ),
      },
    ],
  ])("%s", (_name, files) => {
    const { made: program, stale } = made(ACHILLES, files);
    expect(stale?.message).toBeUndefined();
    expect(program.signedOff?.by).toBe("Robin Ashdown");
  });

  test("another place of the file", () => {
    const moved = `${DEMO}/clients/e-m.md`;
    const { made: program } = made(moved, { [moved]: shippedText(ACHILLES) });
    expect(program.signedOff?.by).toBe("Robin Ashdown");
  });

  test.each<Edition>(["standard", "large", "summary"])("edition %s, on any day", (edition) => {
    const { made: program } = made(ACHILLES, {});
    const words = loadWords("de", "de-DE");
    const booklet = makeBooklet(program, SHIPPED, words, "2027-02-01", edition);
    expect(booklet.draft).toBe(false);
  });
});

describe("what was signed is kept beside the plan", () => {
  const text = change(shippedText(ACHILLES), "load: 45 kg", "load: 42 kg");
  const kept = keptPath(ACHILLES);

  test.each([
    ["nothing", { exists: false, text: "" }],
    ["no JSON", { exists: true, text: "{" }],
    ["other JSON", { exists: true, text: '{ "signed": 1 }' }],
    ["what was signed another time", { exists: true, text: shippedText(keptPath(SHOULDER)) }],
    [
      "a file that was edited",
      { exists: true, text: change(shippedText(kept), '"want":8', '"want":9') },
    ],
  ])("with %s there it is a draft, and says that no more can be said", (_name, beside) => {
    const workspace = clinicWith({ [ACHILLES]: text });
    const { tree } = workspace;
    const { value, faults } = makeProgram(
      {
        ...workspace,
        tree: {
          list: (folder, ending) => tree.list(folder, ending),
          readBytes: (path) => tree.readBytes(path),
          read: (path) => (path === kept ? { text: beside.text } : tree.read(path)),
          exists: (path) => (path === kept ? beside.exists : tree.exists(path)),
        },
      },
      ACHILLES,
    );
    expect(value?.signedOff).toBeUndefined();
    const stale = faults.find(({ code }) => code === "signature-stale");
    expect(stale?.message).toContain("is not kept beside it");
  });

  test("with a line for each dose and session, to be read and compared", () => {
    const lines = shippedText(kept).split("\n");
    const doses = lines.filter((line) => line.includes('"load_kg"'));
    expect(doses.length).toBeGreaterThan(20);
    for (const dose of doses) expect(dose).toMatch(/^ +"[a-z0-9-]+\/[a-z0-9-]+": \{.*\},?$/);
    expect(lines.filter((line) => /^ +"2026-12-0\d evening": \{/.test(line)).length).toBe(4);
  });
});

describe("a signature without a digest", () => {
  test.each([
    [
      "of a name and a day",
      "signed: { by: Robin Ashdown, on: 2026-11-24 }",
      'paulatim sign templates/demo/achilles.md --by "Robin Ashdown"',
    ],
    ["of nobody", "", 'paulatim sign templates/demo/achilles.md --by "NAME"'],
  ])("%s makes a draft, and is told how to sign", (_name, signed, hint) => {
    const text = change(shippedText(ACHILLES), /^signed:.*$/m, signed);
    const { value, faults } = makeProgram(clinicWith({ [ACHILLES]: text }), ACHILLES);
    expect(value?.signedOff).toBeUndefined();
    const [fault, ...more] = faults.filter(({ code }) => code === "not-signed");
    expect([fault?.level, fault?.hint, more]).toEqual([
      "warning",
      `When a clinician has checked it: ${hint}`,
      [],
    ]);
  });
});

describe("the digest", () => {
  let content: ReturnType<typeof contentOf>;
  beforeAll(() => {
    const { made: program } = made(ACHILLES, {});
    content = contentOf(program, program.plan.note);
  });

  test("does not hang on the order in which fields come", () => {
    const { statement, weeks, note } = content;
    const turned = Object.fromEntries(Object.entries(statement).reverse());
    expect(digestOf({ note, weeks, statement: turned })).toBe(digestOf(content));
  });

  test("differs wherever a single value does", () => {
    const seen = new Set([digestOf(content)]);
    let changes = 0;
    for (const variant of variants(content)) {
      changes += 1;
      seen.add(digestOf(variant as typeof content));
    }
    expect(changes).toBeGreaterThan(500);
    expect(seen.size).toBe(changes + 1);
  });

  test("is that of the file beside the plan, read back", () => {
    const signed = { by: "Robin Ashdown", on: "2026-11-24", digest: digestOf(content) };
    const { signed: _, ...read } = JSON.parse(keptText(signed, content));
    expect(digestOf(read)).toBe(signed.digest);
  });
});

/** The data with one value changed, for each of its values. */
function variants(value: unknown): unknown[] {
  if (Array.isArray(value)) {
    return value.flatMap((one, at) => variants(one).map((other) => value.with(at, other)));
  }
  if (typeof value === "object" && value !== null) {
    return Object.entries(value).flatMap(([name, one]) =>
      variants(one).map((other) => ({ ...value, [name]: other })),
    );
  }
  return [
    typeof value === "number" ? value + 1 : typeof value === "boolean" ? !value : `${value}x`,
  ];
}
