/** A plan changed and issued again: what the client's calendar then holds, and what stays as it was. */
import { describe, expect, test } from "vitest";
import { isError } from "../../src/faults/fault.ts";
import { recordText } from "../../src/issued/record.ts";
import { change } from "../support/world.ts";
import { type Appointment, appointments, calendarOf, issuedBooklet } from "./support.ts";

/** With Saturday evenings open for what moves. */
const base = (text: string) => change(text, "clear_before: 24 h", "clear_before: 12 h");
const first = issuedBooklet({ edit: base });

const issued = ({
  edit,
  ...more
}: Parameters<typeof issuedBooklet>[0] & { edit: (text: string) => string }) =>
  issuedBooklet({ edit: (text) => edit(base(text)), ...more });

/** What an appointment says, whatever its revision. */
const said = ({ uid, start, minutes, text }: Appointment) => ({ uid, start, minutes, text });

const day = ({ start }: { readonly start: string }) => start.slice(0, 10);

const awayOn = (date: string) => (text: string) => change(text, "away: [", `away: [${date}, `);

/** Changes of the plan, and the days that differ in the calendar: gone, new or changed. */
const CHANGES: readonly [string, (text: string) => string, (date: string) => boolean][] = [
  ["nothing", (text) => text, () => false],
  [
    "a day away in week 6",
    awayOn("2027-01-08"),
    (date) => date > "2027-01-03" && date < "2027-01-11",
  ],
  [
    "a dose in weeks 9 to 12",
    (text) =>
      change(
        text,
        "redose:",
        "redose:\n  - { card: heel-raise-seated-weight, weeks: 9-12, why: Less., dose: { sets: 2 } }",
      ),
    (date) => date >= "2027-01-25",
  ],
  [
    "a bout a week fewer from week 10 on",
    (text) =>
      change(
        text,
        "redose:",
        [
          "redose:",
          "  - { card: heel-raise-seated-weight, weeks: 10-12, why: Less., dose: { per_week: 2 } }",
          "  - { card: heel-raise-one-leg-step-weight, weeks: 10-12, why: Less., dose: { per_week: 2 } }",
        ].join("\n"),
      ),
    (date) => date >= "2027-02-01",
  ],
  [
    "another hour",
    (text) => change(text, "  away:", '  hours: { evening: "20:15" }\n  away:'),
    () => true,
  ],
];

describe("a calendar that takes in both files holds what the second says", () => {
  test.each(CHANGES)("%s", (_name, edit, differs) => {
    const again = issued({ edit, before: first.record });
    const held = calendarOf(first.ics, again.ics);
    const own = appointments(again.ics).filter(({ status }) => status !== "CANCELLED");
    expect(held.map(said)).toEqual(own.map(said));
    expect(held).toHaveLength(again.booklet.sessions.length);
    const before = appointments(first.ics);
    for (const one of appointments(again.ics)) {
      const known = before.find(({ uid }) => uid === one.uid);
      if (known === undefined) continue;
      const same = JSON.stringify(said(known)) === JSON.stringify(said(one));
      expect(one.sequence - known.sequence).toBe(same && one.status !== "CANCELLED" ? 0 : 1);
    }
    const text = (one: Appointment) => JSON.stringify(said(one));
    const odd = [
      ...before.filter((one) => !own.some((other) => text(other) === text(one))),
      ...own.filter((one) => !before.some((other) => text(other) === text(one))),
    ];
    expect(odd.map(day).filter((date) => !differs(date))).toEqual([]);
  });
});

test("a session that is gone is cancelled under its own name, and can come back", () => {
  const away = issued({ edit: awayOn("2027-01-08"), before: first.record });
  const gone = appointments(away.ics).filter(({ status }) => status === "CANCELLED");
  expect(gone.map(({ uid }) => uid)).toContain("achilles-demo-2027-01-08-evening@paulatim");
  const back = issued({ edit: awayOn("2027-01-04"), before: away.record });
  const held = calendarOf(first.ics, away.ics, back.ics);
  expect(held.map(said)).toEqual(
    appointments(back.ics)
      .filter(({ status }) => status !== "CANCELLED")
      .map(said),
  );
});

test("names are the planned day and part of the day, each once", () => {
  const uids = appointments(first.ics).map(({ uid }) => uid);
  expect(uids[0]).toBe("achilles-demo-2026-11-30-evening@paulatim");
  expect(new Set(uids).size).toBe(34);
});

test("made again on the same day, nothing changes", () => {
  const edit = awayOn("2027-01-08");
  const second = issued({ edit, before: first.record });
  const third = issued({ edit, before: second.record });
  expect(third.ics).toBe(second.ics);
  expect(recordText(third.record)).toBe(recordText(second.record));
  expect(third.booklet).toEqual(second.booklet);
});

describe("past days", () => {
  const on = "2026-12-16";
  const past = (one: Appointment) => day(one) < on;

  test("keep their sessions whatever the plan now says, and the plan is told", () => {
    const edit = (text: string) =>
      change(text, "fri: { morning: 45 min, evening: 45 min }", "fri: { morning: 45 min }").replace(
        "reps: 10, on: 2026-11-23 }",
        "reps: 5, on: 2026-11-23 }",
      );
    const again = issued({ edit, before: first.record, day: on });
    const [then, now] = [appointments(first.ics), appointments(again.ics)];
    expect(now.filter(past).map(({ stamp, ...one }) => one)).toEqual(
      then.filter(past).map(({ stamp, ...one }) => one),
    );
    const dates = (sessions: readonly { date: string; part: string }[]) =>
      sessions.filter(({ date }) => date < on).map(({ date, part }) => `${date} ${part}`);
    expect(dates(again.booklet.sessions)).toEqual(dates(first.booklet.sessions));
    const fridays = (all: readonly Appointment[]) =>
      all.filter((one) => new Date(day(one)).getUTCDay() === 5 && one.start.includes("T19"));
    expect(fridays(then).some((one) => !past(one))).toBe(true);
    expect(
      fridays(now)
        .filter(({ status }) => status === "CONFIRMED")
        .every(past),
    ).toBe(true);
    const [kept] = again.faults.filter(({ code }) => code === "issued-kept");
    expect(kept?.message).toMatch(/On 2026-11-30 \(evening\) was issued: “[^”]*37\.5 kg/);
    expect(kept?.level).toBe("warning");
    expect(again.faults.some(isError)).toBe(false);
  });

  test("keep the exercise that was swapped since; the new one takes its times", () => {
    const edit = (text: string) =>
      change(
        text,
        "    to: heel-raise-one-leg-step-weight",
        "    to: heel-raise-one-leg-step",
      ).replace(/ {2}- card: heel-raise-one-leg-step-weight\n {4}weeks: 4-5\n.*\n.*\n/, "");
    const again = issued({ edit, before: first.record, day: on });
    const times = (all: readonly Appointment[]) => all.map(({ start }) => start).slice(0, 8);
    expect(times(appointments(again.ics))).toEqual(times(appointments(first.ics)));
    const text = (ics: string, date: string) =>
      appointments(ics).find((one) => day(one) === date)?.text;
    expect(text(again.ics, "2026-12-14")).toBe(text(first.ics, "2026-12-14"));
    expect(text(again.ics, "2026-12-16")).not.toBe(text(first.ics, "2026-12-16"));
    expect(again.faults.map(({ code }) => code)).toContain("issued-kept");
  });

  test("of a week begun keep theirs, and what has no room in the rest is named", () => {
    const edit = (text: string) =>
      change(text, "away: [", "away: [{ from: 2026-12-16, to: 2026-12-20 }, ");
    const again = issued({ edit, before: first.record, day: on });
    const week = again.booklet.sessions.filter(({ week }) => week === 3);
    expect(week.map(({ date }) => date)).toEqual(["2026-12-14"]);
    const [lost] = again.faults.filter(({ code }) => code === "bouts-lost");
    expect(lost?.message).toMatch(/week 3 .*“Sit and rise up[^”]*” 2 times/);
    const later = ({ date }: { readonly date: string }) => date > "2026-12-20";
    expect(again.booklet.sessions.filter(later).map(({ date }) => date)).toEqual(
      first.booklet.sessions.filter(later).map(({ date }) => date),
    );
  });
});

test("days that are liked better move nothing, and that is said once", () => {
  const edit = (text: string) => change(text, "  free:", "  prefer: [tue, thu]\n  free:");
  const again = issued({ edit, before: first.record });
  expect(again.booklet.sessions).toEqual(first.booklet.sessions);
  const said = ({ faults }: typeof again) => faults.filter(({ code }) => code === "issued-kept");
  expect(said(again).map(({ message }) => message)).toEqual([
    expect.stringContaining("were none and are now tue, thu"),
  ]);
  expect(said(issued({ edit, before: again.record }))).toEqual([]);
});

describe("a draft", () => {
  const unsigned = (text: string) => change(text, /^signed:.*$/m, "");

  test("is only pencilled in, below every signed revision, and cancels nothing", () => {
    const edit = (text: string) => unsigned(awayOn("2027-01-08")(text));
    const draft = issued({ edit, before: first.record });
    expect(new Set(appointments(draft.ics).map(({ status }) => status))).toEqual(
      new Set(["TENTATIVE"]),
    );
    const held = calendarOf(first.ics, draft.ics);
    const kept = appointments(first.ics);
    expect(held.filter(({ status }) => status === "CONFIRMED")).toEqual(kept);
  });

  test("shows the schedule that the signed booklet will have", () => {
    const edit = awayOn("2027-01-08");
    const draft = issued({ edit: (text) => unsigned(edit(text)), before: first.record });
    const signed = issued({ edit, before: first.record });
    expect(draft.booklet.sessions).toEqual(signed.booklet.sessions);
  });
});

test("where the record is lost, what is issued later stands above what was issued before", () => {
  const edit = (text: string) => change(text, "  away:", '  hours: { evening: "20:15" }\n  away:');
  const again = issued({ edit, day: "2026-11-27" });
  const held = calendarOf(first.ics, again.ics);
  expect(held.map(said)).toEqual(appointments(again.ics).map(said));
});
