/** The calendar file, read back by another library: every session at its time. */
import ICAL from "ical.js";
import { afterEach, describe, expect, test } from "vitest";
import { change } from "../support/world.ts";
import { issuedBooklet } from "./support.ts";

const file = (edit?: (text: string) => string): string => issuedBooklet({ edit }).ics;

const events = (text: string) =>
  new ICAL.Component(ICAL.parse(text))
    .getAllSubcomponents("vevent")
    .map((component) => new ICAL.Event(component));

const zone = process.env.TZ;
afterEach(() => {
  if (zone === undefined) delete process.env.TZ;
  else process.env.TZ = zone;
});

describe("a session of the calendar", () => {
  test("there are as many as in the plan, each with its own identifier", () => {
    const all = events(file());
    expect(all).toHaveLength(34);
    expect(new Set(all.map(({ uid }) => uid)).size).toBe(34);
  });

  test("time, length and what is done", () => {
    const [first] = events(file());
    expect(first?.startDate.toString()).toBe("2026-11-30T19:00:00");
    expect(first?.startDate.zone.tzid).toBe("floating");
    expect(first?.duration.toSeconds()).toBe(24 * 60);
    expect(first?.description).toContain("3 × 15, 1 kg (Left leg)");
    expect(first?.description).toContain("01632 960 214");
  });

  test("the client's own clock times", () => {
    const own = file((text) => change(text, "  away:", '  hours: { evening: "20:15" }\n  away:'));
    expect(events(own)[0]?.startDate.toString()).toBe("2026-11-30T20:15:00");
  });

  test.each(["UTC", "Europe/London", "America/New_York", "Asia/Kathmandu", "Pacific/Apia"])(
    "the same bytes on a machine in %s",
    (tz) => {
      const here = file();
      process.env.TZ = tz;
      expect(file()).toBe(here);
    },
  );
});

test("lines are no longer than 75 bytes and end as RFC 5545 asks", () => {
  const lines = file().split("\r\n");
  expect(lines.every((line) => Buffer.byteLength(line) <= 75)).toBe(true);
  expect(file()).not.toMatch(/[^\r]\n/);
});

test("a draft is only pencilled in", () => {
  const draft = file((text) => change(text, /^signed:.*$/m, ""));
  expect(draft).toContain("STATUS:TENTATIVE");
  expect(file()).toContain("STATUS:CONFIRMED");
});

test("a name cannot add lines of its own", () => {
  const odd = file((text) => change(text, "name: Edda Marlowe", 'name: "x\\\\nEND:VEVENT;,"'));
  expect(events(odd)).toHaveLength(34);
});
