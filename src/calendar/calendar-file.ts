/** The sessions that a booklet issues as a calendar file (RFC 5545) for the client's own calendar. */
import ical, { ICalEventStatus } from "ical-generator";
import type { Booklet } from "../compose/model.ts";
import { byPlan } from "../diary/entry.ts";
import { type IssuedRecord, isIssued } from "../issued/record.ts";

/**
 * The calendar file. Times float: they are the client's clock times wherever the client is, on the date
 * that a calendar on the wall has then. A session
 * is named by its plan, planned day and part of the day, as in every diary, and its revision rises
 * when it changes; one that is gone comes once more, cancelled (RFC 5545, 3.8.1.11, 3.8.4.7, 3.8.7.4).
 * So a calendar that takes in one file after another holds what the last one says.
 */
export function calendarFile(
  { title, language, draft, printed }: Booklet,
  { plan, sessions, cancelled }: IssuedRecord,
): string {
  const calendar = ical({
    name: title,
    prodId: { company: "Paulatim", product: "booklet", language: language.toUpperCase() },
  });
  const stamp = new Date(`${printed.date}T00:00:00Z`);
  const status = draft ? ICalEventStatus.TENTATIVE : ICalEventStatus.CONFIRMED;
  for (const session of [...sessions, ...cancelled].sort(byPlan)) {
    // floating times are written from the UTC parts of a date
    const start = new Date(`${session.start}:00Z`);
    calendar.createEvent({
      id: `${plan}-${session.date}-${session.part}@paulatim`,
      sequence: session.sequence,
      stamp,
      start,
      end: new Date(start.getTime() + session.minutes * 60_000),
      floating: true,
      summary: session.title,
      ...(isIssued(session)
        ? { description: session.text.join("\n"), status }
        : { status: ICalEventStatus.CANCELLED }),
    });
  }
  return calendar.toString();
}
