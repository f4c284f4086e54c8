/** The record of what was issued: what is written is read again, and what is broken is named at its place. */
import { describe, expect, test } from "vitest";
import { issuedRecord, readRecord, recordText } from "../../src/issued/record.ts";
import { change, textAt } from "../support/world.ts";

const record = issuedRecord({
  plan: "one",
  made: "2026-11-25",
  prefer: ["tue"],
  sessions: [
    {
      date: "2026-11-30",
      part: "evening",
      start: "2026-11-30T19:00",
      minutes: 24,
      sequence: 2520,
      title: "Exercises: 24 min",
      text: ['3 × 15, 8 kg "slow"', "# pain: 5", "Ärztin\u2028x"],
      bouts: [{ exercise: "heavy/raise", recovery_h: 48, tissues: ["calf"] }],
    },
  ],
  cancelled: [
    {
      date: "2026-12-02",
      part: "morning",
      start: "2026-12-02T07:00",
      minutes: 24,
      sequence: 2521,
      title: "Exercises",
    },
  ],
});
const text = recordText(record);

test("what is written is JSON, and is read as it was", () => {
  expect(JSON.parse(text)).toEqual(record);
  expect(readRecord("a.issued.json", text, "one")).toEqual({ value: record, faults: [] });
  const { value } = readRecord("a.issued.json", text, "one");
  expect(value && recordText(value)).toBe(text);
  expect(text.split("\n").filter((line) => line.includes('"date"'))).toHaveLength(2);
});

describe("what is broken stands at its place, with what to do", () => {
  test.each<[string, string, string, string, string]>([
    ["another plan's", "two", text, "issued-broken", '"one"'],
    ["cut off", "one", text.slice(0, 300), "issued-broken", ""],
    ["empty", "one", "", "missing-field", ""],
    ["no object", "one", "[1]", "wrong-value", "[1]"],
    ["a later form", "one", change(text, '"issued": 1', '"issued": 2'), "wrong-value", "2"],
    [
      "a day that is none",
      "one",
      change(text, '"2026-11-30"', '"2026-11-31"'),
      "wrong-value",
      '"2026-11-31"',
    ],
    [
      "a time that is none",
      "one",
      change(text, "T19:00", "T29:00"),
      "wrong-value",
      '"2026-11-30T29',
    ],
    ["a part that is none", "one", change(text, '"evening"', '"night"'), "wrong-value", '"night"'],
    [
      "a field too many",
      "one",
      change(text, '"minutes"', '"x":1,"minutes"'),
      "unknown-field",
      '"x"',
    ],
    [
      "a session twice",
      "one",
      change(text, '"2026-12-02"', '"2026-11-30"').replace('"morning"', '"evening"'),
      "issued-broken",
      '"2026-11-30"',
    ],
  ])("%s", (_name, plan, given, code, at) => {
    const { value, faults } = readRecord("a.issued.json", given, plan);
    expect(value).toBeUndefined();
    expect(faults.map((fault) => fault.code)).toContain(code);
    const [fault] = faults;
    expect(fault?.place?.file).toBe("a.issued.json");
    expect(textAt(given, fault?.place).startsWith(at)).toBe(true);
    expect(fault?.hint).toContain("--issued none");
  });
});
