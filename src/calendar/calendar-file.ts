/** The sessions of a booklet as a calendar file (RFC 5545) for the client's own calendar. */
import ical, { ICalEventStatus } from "ical-generator";
import type { Booklet } from "../compose/model.ts";
import { dayNumber } from "../units/dates.ts";

/**
 * The calendar file. Times float: they are the client's clock times wherever the client is. A
 * re-issued plan keeps the identifiers of its sessions and counts its revisions by the day it is
 * made, so that a calendar updates what it has and adds nothing twice.
 */
export function calendarFile(booklet: Booklet): string {
  const calendar = ical({
    name: booklet.title,
    prodId: { company: "Paulatim", product: "booklet", language: booklet.language.toUpperCase() },
  });
  const stamp = new Date(`${booklet.printed.date}T00:00:00Z`);
  for (const session of booklet.sessions) {
    // floating times are written from the UTC parts of a date
    const start = new Date(`${session.date}T${session.start}:00Z`);
    calendar.createEvent({
      id: `${session.id}@paulatim`,
      sequence: Math.max(0, dayNumber(booklet.printed.date) - FIRST_DAY),
      stamp,
      start,
      end: new Date(start.getTime() + session.minutes * 60_000),
      floating: true,
      summary: session.title,
      description: [
        ...session.exercises,
        ...session.pain,
        `${booklet.clinic.name}, ${booklet.clinic.phone}`,
      ].join("\n"),
      status: booklet.draft ? ICalEventStatus.TENTATIVE : ICalEventStatus.CONFIRMED,
    });
  }
  return calendar.toString();
}

/** Revisions are counted in days from here, 2020-01-01: they only have to grow. */
const FIRST_DAY = 18262;
