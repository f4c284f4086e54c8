/** What was issued to a client: the sessions of the last signed booklet, as a small file beside it. */
import * as z from "zod";
import { sessionKey } from "../diary/entry.ts";
import { Fault, type WithFaults } from "../faults/fault.ts";
import { parseYaml } from "../read/front-matter.ts";
import { validate } from "../read/validate.ts";
import { isDate } from "../units/dates.ts";
import { PARTS, WEEKDAYS } from "../units/day-parts.ts";

const date = z.string().refine(isDate, { error: "write a date as YYYY-MM-DD" });
const time = z
  .string()
  .refine(
    (text) => isDate(text.slice(0, 10)) && /^T([01]\d|2[0-3]):[0-5]\d$/.test(text.slice(10)),
    {
      error: "write a day and clock time as YYYY-MM-DDTHH:MM",
    },
  );
const whole = z.number().int().min(0);

const session = z.strictObject({
  date: date.describe("The planned day; with the part of the day it names the session."),
  part: z.enum(PARTS).describe("Part of the day."),
  start: time.describe("The day and clock time at which it begins."),
  minutes: whole.describe("How long it takes."),
  sequence: whole.describe("Its revision in the calendar file (RFC 5545, SEQUENCE)."),
  title: z.string().describe("What the calendar calls it."),
  text: z.array(z.string()).describe("What the calendar says of it, line by line."),
  bouts: z
    .array(
      z.strictObject({
        exercise: z.string().describe("The exercise's key: phase, a slash, card."),
        recovery_h: z.number().min(0).describe("Hours to the next bout of it."),
        tissues: z.array(z.string()).describe("What it loads."),
      }),
    )
    .describe("The exercises, in their order."),
});

const FORMAT = 1;

const record = z.strictObject({
  issued: z.literal(FORMAT).describe("The form of this file."),
  plan: z.string().describe("The plan's id."),
  made: date.describe("The day on which the booklet was made."),
  prefer: z.array(z.enum(WEEKDAYS)).describe("The days that were liked best."),
  sessions: z.array(session).describe("Every session the client has, past ones too."),
  cancelled: z
    .array(session.omit({ bouts: true, text: true }))
    .describe("Sessions to come that an earlier booklet had and this one has not."),
});

export type IssuedRecord = Readonly<z.infer<typeof record>>;
export type IssuedSession = IssuedRecord["sessions"][number];
type CancelledSession = IssuedRecord["cancelled"][number];

/** Whether a session is one to be done, not one that is cancelled. */
export function isIssued(session: IssuedSession | CancelledSession): session is IssuedSession {
  return "bouts" in session;
}

/** A record of these parts. */
export function issuedRecord(parts: Omit<IssuedRecord, "issued">): IssuedRecord {
  return { issued: FORMAT, ...parts };
}

/** The file's text: one line a session, so that two of them can be compared line by line. */
export function recordText({ sessions, cancelled, ...others }: IssuedRecord): string {
  const list = (name: string, items: readonly unknown[]) => {
    const lines = items.map((one) => `    ${JSON.stringify(one)}`);
    return items.length === 0 ? `  "${name}": []` : `  "${name}": [\n${lines.join(",\n")}\n  ]`;
  };
  const { issued, plan, made, prefer } = others;
  const head = Object.entries({ issued, plan, made, prefer }).map(
    ([name, value]) => `  ${JSON.stringify(name)}: ${JSON.stringify(value)}`,
  );
  const ordered = sessions.map(({ title, text, bouts, ...one }) => ({
    ...inOrder(one),
    title,
    text,
    bouts: bouts.map(({ exercise, recovery_h, tissues }) => ({ exercise, recovery_h, tissues })),
  }));
  const gone = cancelled.map(({ title, ...one }) => ({ ...inOrder(one), title }));
  return `{\n${[...head, list("sessions", ordered), list("cancelled", gone)].join(",\n")}\n}\n`;
}

const inOrder = ({
  date,
  part,
  start,
  minutes,
  sequence,
}: Omit<CancelledSession, "title">): Omit<CancelledSession, "title"> => {
  return { date, part, start, minutes, sequence };
};

/**
 * Reads a record of the plan with this id. Faults, each at its place: `issued-broken` for a file that
 * is no record or that of another plan, and those of `validate`.
 */
export function readRecord(
  file: string,
  text: string,
  plan: string,
): WithFaults<IssuedRecord | undefined> {
  const { source, data, faults } = parseYaml(file, text, text.replace(/^\uFEFF/, ""));
  const broken = (message: string, place = source.at()) =>
    new Fault("issued-broken", message, { place, frame: source.frame(place), hint: HINT });
  if (faults.length > 0) {
    const place = faults[0]?.place;
    return { value: undefined, faults: [broken("This is no record of what was issued.", place)] };
  }
  const checked = validate(record, data, source);
  if (checked.value === undefined) {
    const withHint = checked.faults.map(
      ({ code, message, place, frame, hint }) =>
        new Fault(code, message, {
          place,
          frame,
          hint: hint === undefined ? HINT : `${hint} ${HINT}`,
        }),
    );
    return { value: undefined, faults: withHint };
  }
  if (checked.value.plan !== plan) {
    const message = `This is the record of the plan ${checked.value.plan}, not of ${plan}.`;
    return { value: undefined, faults: [broken(message, source.at(["plan"]))] };
  }
  const { sessions, cancelled } = checked.value;
  const keys = [...sessions, ...cancelled].map(sessionKey);
  const twice = keys.findIndex((key, at) => keys.indexOf(key) !== at);
  if (twice >= 0) {
    const path =
      twice < sessions.length ? ["sessions", twice] : ["cancelled", twice - sessions.length];
    const message = `The session ${keys[twice]} is in it twice.`;
    return { value: undefined, faults: [broken(message, source.at([...path, "date"]))] };
  }
  return { value: checked.value, faults: [] };
}

const HINT = "Name another file with --issued FILE, or begin a new record with --issued none.";
