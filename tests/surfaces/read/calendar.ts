/** Reads the calendar file with a reader of its own (ical.js). */
import ICAL from "ical.js";
import { daysBetween, isoDate } from "../calendar-days.ts";
import { collector, type Fact, type Surface } from "../facts.ts";
import { type Context, clientDay, partAt, readSide } from "./context.ts";
import { NONE, SHORT_KINDS, shortFacts, weekKey } from "./dose-facts.ts";
import { readShort } from "./dose-words.ts";
import { gateFact, withoutGate } from "./gates.ts";
import {
  callLevelIn,
  painFacts as painOf,
  readException,
  readPain,
  type SaidPain,
} from "./pain-words.ts";

const OWN_CLOCK = "the client's own";

/**
 * What the client's calendar shows after it has taken in the file, and before it the one that came with
 * an earlier booklet. A part of the day follows from the hour at which an event begins.
 */
export function readCalendar(text: string, before: string | undefined, context: Context): Surface {
  const calendar = new ICAL.Component(ICAL.parse(text));
  const { facts, say } = collector();
  say(
    "title",
    "",
    String(
      calendar.getFirstPropertyValue("x-wr-calname") ?? calendar.getFirstPropertyValue("name"),
    ),
    "X-WR-CALNAME",
  );
  const language = /\/\/([A-Z]{2})$/.exec(String(calendar.getFirstPropertyValue("prodid")))?.[1];
  say("language", "", (language ?? NONE).toLowerCase(), "PRODID");
  say("clock", "", OWN_CLOCK, "floating times");
  for (const component of takenIn([...(before === undefined ? [] : [before]), text])) {
    const event = new ICAL.Event(component);
    const { startDate, endDate, uid } = event;
    const wall = isoDate(startDate.year, startDate.month, startDate.day);
    const start = `${String(startDate.hour).padStart(2, "0")}:${String(startDate.minute).padStart(2, "0")}`;
    const part = partAt(start, context.hours);
    const date = part ? clientDay(wall, part, context) : wall;
    // an identifier belongs to one moment, and every moment is on the client's own clock
    say("identifier", uid, `${wall}T${start}`, uid);
    const floats = startDate.zone === ICAL.Timezone.localTimezone;
    say("clock", "", floats ? OWN_CLOCK : `of a zone: ${uid}`, uid);
    const when = `${date} ${part ?? `at ${start}`}`;
    const minutes = String((endDate.toUnixTime() - startDate.toUnixTime()) / 60);
    say("session", when, "yes", uid);
    say("start", when, `${wall}T${start}`, `${uid} DTSTART`);
    say("minutes", when, minutes, `${uid} DTEND`);
    const [titled] = context.filled("session.title", event.summary) ?? [];
    say("minutes", when, titled ?? event.summary, `${uid} SUMMARY`);
    say(
      "signed",
      "",
      component.getFirstPropertyValue("status") === "TENTATIVE" ? "draft" : "signed",
      `${uid} STATUS`,
    );
    facts.push(...linesOf(event.description, when, date, uid, context));
  }
  return {
    name: "calendar",
    facts,
    complete: new Set([
      ...SHORT_KINDS,
      "starts when",
      "session",
      "start",
      "minutes",
      "exercises",
      "side",
    ]),
  };
}

/**
 * Events after files were taken in, one after the other: of two with one identifier the later holds,
 * but never with a lower sequence, nor with an equal one where it differs (RFC 5546, 2.1.5). Cancelled
 * ones are not shown.
 */
function takenIn(files: readonly string[]): ICAL.Component[] {
  let shown: ICAL.Component[] = [];
  for (const text of files) {
    const had = new Map(shown.map((event) => [uidOf(event), event]));
    const events = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents("vevent");
    const taken = events.filter((event) => isNewer(event, had.get(uidOf(event))));
    const replaced = new Set(taken.map(uidOf));
    shown = [...shown.filter((event) => !replaced.has(uidOf(event))), ...taken];
  }
  return shown.filter((event) => event.getFirstPropertyValue("status") !== "CANCELLED");
}

const uidOf = (event: ICAL.Component) => String(event.getFirstPropertyValue("uid"));

function isNewer(event: ICAL.Component, had: ICAL.Component | undefined): boolean {
  const sequence = (one: ICAL.Component) => Number(one.getFirstPropertyValue("sequence") ?? 0);
  const saying = (one: ICAL.Component) =>
    ["dtstart", "dtend", "summary", "description", "status"]
      .map((name) => String(one.getFirstPropertyValue(name)))
      .join("\n");
  if (had === undefined || sequence(event) > sequence(had)) return true;
  return sequence(event) === sequence(had) && saying(event) === saying(had);
}

function linesOf(
  description: string,
  when: string,
  date: string,
  uid: string,
  context: Context,
): Fact[] {
  const week = Math.floor(daysBetween(context.starts, date) / 7) + 1;
  const facts: Fact[] = [];
  const titles: string[] = [];
  const others: string[] = [];
  for (const [at, line] of (description ?? "").split("\n").entries()) {
    const place = `${uid} DESCRIPTION line ${at + 1}`;
    const gated = withoutGate(line, context);
    const found = readException(line, context)
      ? undefined
      : exerciseLine(gated.sign === NONE ? line : gated.text.replace(/\.$/, ""), context);
    if (!found) {
      others.push(line);
      continue;
    }
    titles.push(found.title);
    const key = weekKey(week, found.title);
    facts.push(...shortFacts(key, readShort(found.dose, context.language), place));
    facts.push({ kind: "side", key, value: found.side, place }, gateFact(key, gated.sign, place));
  }
  facts.push({
    kind: "exercises",
    key: when,
    value: titles.sort().join(", "),
    place: `${uid} DESCRIPTION`,
  });
  facts.push(...painFacts(others, titles, when, uid, context));
  const clinic = others.at(-1) ?? "";
  const cut = clinic.lastIndexOf(", ");
  facts.push({
    kind: "clinic",
    key: "name",
    value: clinic.slice(0, cut),
    place: `${uid} DESCRIPTION`,
  });
  facts.push({
    kind: "telephone",
    key: "clinic",
    value: clinic.slice(cut + 2),
    place: `${uid} DESCRIPTION`,
  });
  return facts;
}

/** "Title: dose (side)", where a card has this title. */
function exerciseLine(line: string, context: Context) {
  for (let cut = line.indexOf(": "); cut >= 0; cut = line.indexOf(": ", cut + 1)) {
    const title = line.slice(0, cut);
    if (!context.isTitle(title)) continue;
    const rest = line.slice(cut + 2);
    const sided = /^(.*) \(([^()]+)\)$/.exec(rest);
    // a dose may end in brackets of its own, as in "4 × (40 s + 20 s)"
    if (!sided || sided[2]?.includes(" + ")) return { title, dose: rest, side: NONE };
    return { title, dose: sided[1] ?? "", side: readSide(sided[2] ?? "", context, "side") };
  }
  return undefined;
}

/** What pain is all right in a session: one line for all its exercises, and one for each that has another rule. */
function painFacts(
  lines: readonly string[],
  titles: readonly string[],
  when: string,
  uid: string,
  context: Context,
): Fact[] {
  const place = `${uid} DESCRIPTION`;
  const exceptions = new Map(
    lines
      .flatMap((line) => readException(line, context) ?? [])
      .map(({ title, pain }) => [title, pain]),
  );
  const levels = lines.flatMap((line) => callLevelIn(line, context) ?? []);
  const general = lines
    .map((line) => generalPain(line, context))
    .find((pain) => pain !== undefined);
  const said = [...new Set(titles)].map((title) => ({
    title,
    pain: exceptions.get(title) ?? general,
  }));
  const value = said
    .map(({ title, pain }) => `${title} ${pain?.during ?? NONE}`)
    .sort()
    .join(", ");
  return [
    { kind: "pain in a session", key: when, value, place },
    { kind: "pain to call from", key: "", value: levels.join(" and ") || NONE, place },
    ...said.flatMap(({ title, pain }) => (pain ? painOf(title, pain, place) : [])),
  ];
}

function generalPain(line: string, context: Context): SaidPain | undefined {
  try {
    return readPain(line, context);
  } catch {
    return undefined;
  }
}
