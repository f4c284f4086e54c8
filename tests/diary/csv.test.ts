/** A diary's CSV: what is written is read again, other programs read the same, and what hands have done to it. */
import { parse } from "csv-parse/sync";
import fc from "fast-check";
import Papa from "papaparse";
import { describe, expect, test } from "vitest";
import { COLUMN_NAMES } from "../../src/diary/columns.ts";
import { diaryCsv, readDiary } from "../../src/diary/csv.ts";
import { change, textAt } from "../support/world.ts";
import { anyDiary, diaryOf, entry, exercise, THREE } from "./fixtures.ts";

const CSV = diaryCsv(THREE);
const UNMARKED = CSV.slice(1);

/** The same cells with another delimiter, and the decimal comma that goes with it. */
const separatedBy = (delimiter: string) =>
  Papa.unparse(
    (parse(UNMARKED) as string[][]).map((row) =>
      row.map((cell) => cell.replace(/^(\d+)\.(\d+)$/, "$1,$2")),
    ),
    { delimiter, newline: "\r\n" },
  );

/** "6 value-wrong kg: 7.5": line, code, column, and what stands at the place. */
const problemsOf = (text: string) =>
  readDiary(text).problems.map(({ code, line, position, column }) => {
    const [at] = textAt(text.replace(/^\uFEFF/, ""), { line, column: position }).split(",");
    return column === undefined ? `${line} ${code}` : `${line} ${code} ${column}: ${at}`;
  });

describe("writing", () => {
  test("a byte order mark, every column, CR LF, and a row an exercise after its session", () => {
    expect(CSV.startsWith(`\uFEFF${COLUMN_NAMES.join(",")}\r\n`)).toBe(true);
    expect(CSV.endsWith("Z\r\n")).toBe(true);
    expect(UNMARKED.split("\r\n")[1]).toBe(
      "1,achilles-demo,R-0417,2026-11-25 3f9a2c,1,2026-12-01,evening,2026-12-01,,,,yes,no,,,,,,,6,,,2,1,no,,2026-12-01T18:30:05Z",
    );
    expect(UNMARKED.split("\r\n")[2]).toBe(
      '1,achilles-demo,R-0417,2026-11-25 3f9a2c,1,2026-12-01,evening,,heel-raise-one-leg-step,"Rise up on one leg, heel over a step",left,yes,,3,12,10,,,,,,,,,,,2026-12-01T18:30:05Z',
    );
  });

  test("a note too long is cut between characters and says so", () => {
    const note = `${"x".repeat(1998)}😀😀`;
    const read = readDiary(diaryCsv(diaryOf(entry({ note }))));
    expect(read.problems).toEqual([]);
    expect(read.diary?.entries[0]?.note).toBe(`${"x".repeat(1998)}…`);
  });

  test("half a character becomes the sign for an unknown one", () => {
    const read = readDiary(diaryCsv(diaryOf(entry({ note: "a\uD83D" }))));
    expect(read.diary?.entries[0]?.note).toBe("a\uFFFD");
  });

  test.each([
    ["=1+1", "'=1+1"],
    ["'=1+1", "''=1+1"],
    ["'''@x", "''''@x"],
    ["-5", "'-5"],
    ["+5", "'+5"],
    ["\tx", "'\tx"],
    ["\rx", "'\rx"],
    ["\nx", "'\nx"],
    [" =x", "' =x"],
    ["＝x", "'＝x"],
    ["a;=1+1", "a;'=1+1"],
    ["a; =1", "a;' =1"],
    ['a;"=1', "a;'\"=1"],
    ["a;'=1", "a;''=1"],
    ["a\n-5 and more", "a\n'-5 and more"],
    ["a\t@x;+", "a\t'@x;'+"],
    ["a; 'tis fine; 1-2", "a; 'tis fine; 1-2"],
    ["'tis fine", "'tis fine"],
    ["1-2", "1-2"],
    ["", ""],
  ])("the note %j stands as %j", (note, cell) => {
    const rows = parse(diaryCsv(diaryOf(entry({ note }))), { bom: true }) as string[][];
    expect(rows[1]?.[COLUMN_NAMES.indexOf("note")]).toBe(cell);
  });
});

describe("round trip", () => {
  test("any diary comes back as it was", () => {
    fc.assert(
      fc.property(anyDiary, (diary) => {
        expect(readDiary(diaryCsv(diary))).toEqual({ diary, problems: [] });
      }),
      { numRuns: 300 },
    );
  });

  test("no cell begins as a formula does", () => {
    fc.assert(
      fc.property(anyDiary, (diary) => {
        for (const row of parse(diaryCsv(diary), { bom: true }) as string[][]) {
          for (const cell of row) expect(cell).not.toMatch(/^\s*[=+\-@]|^[\t\r\n]/);
        }
      }),
      { numRuns: 200 },
    );
  });

  test("nor does one for a reader that splits at semicolons or tabs, whatever it makes of quotation marks", () => {
    const runs = /^["\s]*[=+\-@＝＋－＠]/;
    fc.assert(
      fc.property(anyDiary, (diary) => {
        const csv = diaryCsv(diary).slice(1);
        for (const piece of csv.split(/[;\t\r\n]/)) expect(piece).not.toMatch(runs);
        for (const delimiter of [";", "\t"]) {
          for (const row of Papa.parse<string[]>(csv, { delimiter }).data) {
            for (const cell of row) expect(cell).not.toMatch(runs);
          }
        }
      }),
      { numRuns: 300 },
    );
  });

  test("another CSV library reads the same cells", () => {
    fc.assert(
      fc.property(anyDiary, (diary) => {
        const csv = diaryCsv(diary);
        const others = parse(csv, { bom: true, record_delimiter: "\r\n" }) as string[][];
        const papa = Papa.parse<string[]>(csv.slice(1, -2), { delimiter: ",", newline: "\r\n" });
        expect(papa.data).toEqual(others);
        // what the other library writes is read as the same diary
        const rewritten = others.map((row) =>
          row.map((cell) => `"${cell.replaceAll('"', '""')}"`).join(","),
        );
        expect(readDiary(rewritten.join("\r\n"))).toEqual({ diary, problems: [] });
      }),
      { numRuns: 200 },
    );
  });
});

describe("what mail programs and spreadsheets do is forgiven", () => {
  const rows = parse(UNMARKED) as string[][];
  test.each([
    ["no byte order mark", UNMARKED, THREE],
    ["semicolons and decimal commas", separatedBy(";"), THREE],
    ["tabs and decimal commas", separatedBy("\t"), THREE],
    ["a decimal dot between semicolons", separatedBy(";").replace("7,5", "7.5"), THREE],
    ["LF", CSV.replaceAll("\r\n", "\n"), THREE],
    ["CR", CSV.replaceAll("\r\n", "\r"), THREE],
    ["line ends of several kinds", CSV.replace("\r\n", "\n"), THREE],
    ["empty lines at the end", `${CSV}\r\n\r\n`, THREE],
    ["empty rows in between", CSV.replace("\r\n", `\r\n${",".repeat(25)}\r\n\r\n`), THREE],
    ["no last line end", CSV.trimEnd(), THREE],
    ["every cell in quotation marks", Papa.unparse(rows, { quotes: true }), THREE],
    ["columns in another order", Papa.unparse(rows.map((row) => [...row].reverse())), THREE],
    ["more columns", Papa.unparse(rows.map((row, n) => [n ? "seen" : "by", ...row, "x"])), THREE],
    ["more cells, all empty", CSV.replaceAll("Z\r\n", "Z,,\r\n"), THREE],
    ["capitals in names", change(CSV, "done_on,exercise", "Done_On,EXERCISE"), THREE],
    ["capitals in words", CSV.replaceAll(",yes,", ",YES,").replaceAll(",no,", ",No,"), THREE],
    ["blanks around values", CSV.replaceAll(",2026-12-03,", ", 2026-12-03 ,"), THREE],
    ["rows in another order", Papa.unparse([rows[0] ?? [], ...rows.slice(1).reverse()]), THREE],
  ])("%s", (_name, text, diary) => {
    const read = readDiary(text);
    expect(read.problems).toEqual([]);
    expect({
      ...read.diary,
      entries: read.diary?.entries.map((one) => ({
        ...one,
        exercises: one.exercises.toSorted((a, b) => (a.card < b.card ? 1 : -1)),
      })),
    }).toEqual(diary);
  });
});

describe("a file that cannot be read as a whole is one clear problem", () => {
  test.each([
    ["nothing", "", ["1 not-a-diary"]],
    ["a letter", "Dear clinic,\nall went well.\n", ["1 not-a-diary"]],
    ["another table", "date,pain\n2026-12-01,3\n", ["1 not-a-diary"]],
    ["only names of columns", CSV.split("\r\n")[0] ?? "", ["1 no-rows"]],
    ["a newer version", CSV.replaceAll("\r\n1,", "\r\n2,"), ["2 newer-version paulatim_diary: 2"]],
    [
      "rows of another client",
      change(CSV, /R-0417(?=.*\r\n.*\r\n$)/, "R-0418"),
      ["8 other-client client: R-0418"],
    ],
    [
      "rows of another plan",
      change(CSV, /achilles-demo(?=.*\r\n$)/, "knee"),
      ["9 other-client plan: knee"],
    ],
    [
      "columns taken out",
      change(CSV, "effort,pain_during", "hard,hurt"),
      ["1 column-missing effort: paulatim_diary", "1 column-missing pain_during: paulatim_diary"],
    ],
    [
      "a column twice",
      change(CSV, "effort", "note"),
      ["1 column-missing effort: paulatim_diary", "1 column-twice note: paulatim_diary"],
    ],
    ["more rows than any diary", `${CSV}${"1,a\n".repeat(10_000)}`, ["1 too-many-rows"]],
  ])("%s", (_name, text, problems) => {
    expect(problemsOf(text)).toEqual(problems);
    expect(readDiary(text).diary).toBeUndefined();
  });
});

/** Each change is made in the second session, 2026-12-03, whose rows are on lines 4 (and 5), 6 and 7. */
describe("a row that cannot be read is told, and its session left out", () => {
  const SESSION = "2026-12-03,evening,2026-12-04";
  test.each<readonly [string, string | RegExp, string, readonly string[]]>([
    [
      "a date as a German spreadsheet writes it",
      SESSION,
      "03.12.2026,evening,2026-12-04",
      ["4 date-rewritten date: 03.12.2026"],
    ],
    [
      "a date as an American spreadsheet writes it",
      SESSION,
      "12/3/2026,evening,2026-12-04",
      ["4 date-rewritten date: 12/3/2026"],
    ],
    ["a date as a number", SESSION, "46359,evening,2026-12-04", ["4 date-rewritten date: 46359"]],
    [
      "a day that does not exist",
      SESSION,
      "2026-12-03,evening,2026-11-31",
      ["4 value-wrong done_on: 2026-11-31"],
    ],
    [
      "a part of the day that is none",
      SESSION,
      "2026-12-03,night,2026-12-04",
      ["4 value-wrong part: night"],
    ],
    [
      "an instant that was rewritten",
      "2026-12-05T07:02:41Z",
      "05.12.2026 07:02",
      ["5 date-rewritten written: 05.12.2026 07:02"],
    ],
    [
      "an instant that does not exist",
      "2026-12-05T07:02:41Z",
      "2026-12-05T25:02:41Z",
      ["5 value-wrong written: 2026-12-05T25:02:41Z"],
    ],
    ["pain over ten", "2,10,7.5,,4", "2,10,7.5,,11", ["6 value-wrong pain_during: 11"]],
    ["pain below nought", "2,10,7.5,,4", "2,10,7.5,,-1", ["6 value-wrong pain_during: -1"]],
    ["half a set", "2,10,7.5,,4", "2.5,10,7.5,,4", ["6 value-wrong sets: 2.5"]],
    ["a decimal comma between commas", "2,10,7.5,,4", '2,10,"7,5",,4', ['6 value-wrong kg: "7']],
    ["a number in words", "2,10,7.5,,4", "two,10,7.5,,4", ["6 value-wrong sets: two"]],
    ["a word that is none", ",left,part,", ",left,partly,", ["6 value-wrong done: partly"]],
    [
      "an id that is none",
      "calf-hold-two-legs",
      "calf hold",
      ["7 value-wrong exercise: calf hold"],
    ],
    [
      "effort in the row of an exercise",
      "2,10,7.5,,4",
      "2,10,7.5,8,4",
      ["6 value-misplaced effort: 8"],
    ],
    [
      "sets in the row of the session",
      "part,yes,,,,,,",
      "part,yes,3,,,,,",
      ["4 value-misplaced sets_planned: 3"],
    ],
    ["nothing done or not", ",left,part,", ",left,,", ["6 value-missing done: "]],
    ["no title", "Hold on both legs", "", ["7 value-missing title: "]],
    ["a cell too few", "2,10,7.5,,4,", "2,10,7.5,,4", ["6 row-short"]],
    ["a cell too many", "2,10,7.5,,4,", "2,10,7.5,,4,,", ["6 row-long"]],
    [
      "another week than the session",
      /,1(,2026-12-03,evening,,calf)/,
      ",2$1",
      ["7 value-differs week: 2"],
    ],
  ])("%s", (_name, from, to, problems) => {
    const text = change(CSV, from, to);
    expect(problemsOf(text)).toEqual(problems);
    expect(readDiary(text).diary).toEqual({
      ...THREE,
      entries: [THREE.entries[0], THREE.entries[2]],
    });
  });

  test("a text over its limit", () => {
    const long = `"${"x".repeat(2001)}"`;
    const text = change(CSV, /"Sore[\s\S]*?too\."/, long);
    expect(problemsOf(text)[0]).toMatch(/^4 text-long note: "x+"$/);
    expect(readDiary(text).diary?.entries).toHaveLength(2);
  });

  test("a session twice: neither of the two", () => {
    const row = UNMARKED.split("\r\n")[1];
    expect(problemsOf(`${CSV}${row}\r\n`)).toEqual(["10 session-twice date: 2026-12-01"]);
    expect(readDiary(`${CSV}${row}\r\n`).diary?.entries).toEqual(THREE.entries.slice(1));
  });

  test("exercises without their session's row", () => {
    const text = change(CSV, /1,[^\r]*2026-12-04[\s\S]*?Z\r\n/, "");
    expect(problemsOf(text)).toEqual(["4 session-missing date: 2026-12-03"]);
    expect(readDiary(text).diary?.entries.map(({ date }) => date)).toEqual([
      "2026-12-01",
      "2026-12-05",
    ]);
  });

  test("a session whose day is lost takes its exercises along, and no other", () => {
    const text = change(CSV, /2026-12-03,evening,2026-12-04/, ",evening,2026-12-04");
    expect(problemsOf(text)).toEqual(["4 value-missing date: "]);
    expect(readDiary(text).diary?.entries).toEqual([THREE.entries[0], THREE.entries[2]]);
  });

  test("a file cut off in the middle of a row", () => {
    const text = CSV.slice(0, CSV.indexOf("Hold on both"));
    expect(problemsOf(text)).toEqual(["7 row-short"]);
    expect(readDiary(text).diary?.entries).toEqual([THREE.entries[0]]);
  });

  test("an exercise whose day is lost takes the session above it along", () => {
    const text = change(CSV, "2026-12-03,evening,,calf", ",,,calf");
    expect(problemsOf(text)).toEqual(["7 value-missing date: ", "7 value-missing part: "]);
    expect(readDiary(text).diary?.entries).toHaveLength(2);
  });

  test("a quotation mark that is not closed: nothing from its row on", () => {
    const text = change(CSV, 'knee too."', "knee too.");
    expect(problemsOf(text)).toEqual(["4 quotes-broken"]);
    expect(readDiary(text).diary?.entries).toEqual([]);
  });

  test("all problems in one run, in the order of the file", () => {
    const text = change(change(CSV, "2,10,7.5,,4", "2,x,y,,z"), "2026-12-05,morning", "5.12.,dawn");
    expect(problemsOf(text)).toEqual([
      "6 value-wrong reps: x",
      "6 value-wrong kg: y",
      "6 value-wrong pain_during: z",
      "8 date-rewritten date: 5.12.",
      "8 value-wrong part: dawn",
    ]);
  });

  test("after a hundred problems the others are counted", () => {
    const text = `${CSV.split("\r\n")[0]}\r\n${`1,achilles-demo,R-0417${",".repeat(23)},x\r\n`.repeat(200)}`;
    const { problems } = readDiary(text);
    expect(problems).toHaveLength(101);
    expect(problems.at(-1)).toMatchObject({ code: "more", values: { n: 1300 } });
  });
});

test("a diary without sessions says whose it is", () => {
  expect(diaryCsv(diaryOf())).toContain(`\r\n1,achilles-demo,R-0417${",".repeat(24)}\r\n`);
});

test("two of one card in a session stay two", () => {
  const diary = diaryOf(
    entry({ exercises: [exercise({ side: "left" }), exercise({ side: "right" })] }),
  );
  expect(readDiary(diaryCsv(diary)).diary).toEqual(diary);
});
