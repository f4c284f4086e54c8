/** The demo's booklets as they are issued one after the other, and a calendar that takes them in. */
import ICAL from "ical.js";
import { type MadeProgram, makeBooklet, makeProgram } from "../../src/booklet.ts";
import { calendarFile } from "../../src/calendar/calendar-file.ts";
import { issue } from "../../src/calendar/issue.ts";
import type { Booklet } from "../../src/compose/model.ts";
import type { Fault } from "../../src/faults/fault.ts";
import type { IssuedRecord } from "../../src/issued/record.ts";
import { asSigned } from "../support/signed.ts";
import { DAY, DEMO, demoClinic, english, shippedText } from "../support/world.ts";

const FILE = `${DEMO}/achilles.md`;

export interface IssuedBooklet {
  readonly made: MadeProgram;
  readonly booklet: Booklet;
  readonly record: IssuedRecord;
  readonly ics: string;
  readonly faults: readonly Fault[];
}

/** The Achilles demo with its plan edited, made on a day after an earlier booklet of it. */
export function issuedBooklet({
  edit = (text) => text,
  day = DAY,
  before,
}: {
  readonly edit?: ((text: string) => string) | undefined;
  readonly day?: string;
  readonly before?: IssuedRecord;
} = {}): IssuedBooklet {
  const workspace = demoClinic({ [FILE]: edit(shippedText(FILE)) });
  const recordOf = () => ({ value: before, faults: [] });
  const { value: made, faults } = makeProgram(workspace, FILE, { today: day, recordOf });
  if (!made) throw new Error(faults.map(({ message }) => message).join("\n"));
  const booklet = makeBooklet(asSigned(made), workspace, english(), day);
  const { value: record, faults: kept } = issue(booklet, made.program, before);
  const ics = calendarFile(booklet, record);
  return { made, booklet, record, ics, faults: [...faults, ...kept] };
}

export interface Appointment {
  readonly uid: string;
  readonly sequence: number;
  readonly stamp: string;
  readonly start: string;
  readonly minutes: number;
  readonly text: string;
  readonly status: string;
}

/** The appointments of a calendar file. */
export function appointments(ics: string): Appointment[] {
  return new ICAL.Component(ICAL.parse(ics)).getAllSubcomponents("vevent").map((component) => {
    const event = new ICAL.Event(component);
    return {
      uid: event.uid,
      sequence: event.sequence,
      stamp: String(component.getFirstPropertyValue("dtstamp")),
      start: event.startDate.toString(),
      minutes: event.duration.toSeconds() / 60,
      text: `${event.summary}\n${event.description ?? ""}`,
      status: String(component.getFirstPropertyValue("status")),
    };
  });
}

/**
 * What a calendar holds that takes in these files in turn, by the rules of RFC 5546, 2.1.5: of one
 * UID the higher SEQUENCE stands, of the same the later DTSTAMP; what is cancelled is gone.
 */
export function calendarOf(...files: readonly string[]): Appointment[] {
  const held = new Map<string, Appointment>();
  for (const one of files.flatMap(appointments)) {
    const known = held.get(one.uid);
    const older =
      known !== undefined &&
      (one.sequence < known.sequence ||
        (one.sequence === known.sequence && one.stamp <= known.stamp));
    if (!older) held.set(one.uid, one);
  }
  return [...held.values()]
    .filter(({ status }) => status !== "CANCELLED")
    .sort((a, b) => (a.start < b.start ? -1 : 1));
}
