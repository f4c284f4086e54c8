/** The comparison sees a surface that is broken: each row changes one statement of one output. */
import { beforeAll, describe, expect, test } from "vitest";
import { data, filesOf, inText, page } from "./breaking.ts";
import { checkClient, type Files } from "./check.ts";
import { demoClient } from "./demo-client.ts";
import { disagreementText } from "./facts.ts";

let whole: Files;

beforeAll(async () => {
  whole = await filesOf(demoClient("achilles"));
});

const SEATED = "exercise-heel-raise-seated-weight";
const ONE_LEG = "exercise-heel-raise-one-leg-step-weight";
const TICK = '<td class="tick"></td>';

/** What is broken, in which output, how, and the kind of fact by which it is seen. */
/** What the diary says of a clinic that has a page on booklets for the phone. */
const PHONE_PAGE = `phone, too. Fill in one of the two. How to get it: <span class="address">harrow.example</span></p>
<svg role="img" aria-label="Code for the address harrow.example"></svg><p>`;

const ROWS: readonly (readonly [
  string,
  "html" | "ics" | "json" | "table",
  (text: string) => string,
  string,
])[] = [
  [
    "cover: the client's name",
    "html",
    inText("program for Edda Marlowe <", "program for Ada Marlowe <"),
    "client",
  ],
  [
    "first session: its day",
    "html",
    inText("Monday, 30 November 2026 ·", "Tuesday, 1 December 2026 ·"),
    "session",
  ],
  ["first session: its minutes", "html", inText("about 24 minutes", "about 34 minutes"), "minutes"],
  [
    "first session: a weight",
    "html",
    inText("3 sets of 15 · 37.5 kg", "3 sets of 15 · 47.5 kg"),
    "load in short",
  ],
  ["first session: a side", "html", inText("(Left leg)", "(Right leg)"), "side"],
  [
    "first session: when it hurts too much",
    "html",
    inText("Pain over 5 out of 10?", "Pain over 6 out of 10?"),
    "pain during",
  ],
  [
    "cover: the last day",
    "html",
    inText("Sunday, 21 February 2027 <", "Sunday, 28 February 2027 <"),
    "course",
  ],
  [
    "cover: a goal",
    "html",
    inText("Now 4 out of 10. Your aim: 8", "Now 4 out of 10. Your aim: 9"),
    "goal",
  ],
  [
    "stop page: a sign is lost",
    "html",
    page("part-stop", "<li>New numbness, tingling or weakness</li>", ""),
    "stop signs",
  ],
  [
    "stop page: a digit of the telephone",
    "html",
    page("part-stop", ">01632 960 417<", ">01632 960 471<"),
    "telephone",
  ],
  [
    "stop page: a digit of what is dialled",
    "html",
    page("part-stop", "tel:01632960417", "tel:01632960471"),
    "address of telephone",
  ],
  [
    "stop page: the clinic",
    "html",
    page("part-stop", /clinic-name">[^<]*</, `clinic-name">Brook<`),
    "clinic",
  ],
  [
    "stop page: the emergency number",
    "html",
    page("part-stop", "Call 999 at once", "Call 998 at once"),
    "telephone",
  ],
  [
    "pain page: the limit",
    "html",
    page("part-pain", "pain up to 5 out of 10", "pain up to 6 out of 10"),
    "pain during",
  ],
  [
    "pain page: when to call",
    "html",
    page("part-pain", "Pain of 8 out of 10 or more", "Pain of 9 out of 10 or more"),
    "pain to call from",
  ],
  [
    "exercise page: when to call",
    "html",
    page(ONE_LEG, "Pain of 8 out of 10 or more", "Pain of 9 out of 10 or more"),
    "pain to call from",
  ],
  [
    "weeks page: a part of the day",
    "html",
    page("part-weeks", '<span class="time">Evening</span>', '<span class="time">Midday</span>'),
    "session",
  ],
  [
    "weeks page: minutes",
    "html",
    page("part-weeks", "</span> 24 min", "</span> 25 min"),
    "minutes",
  ],
  [
    "weeks page: a date",
    "html",
    page("part-weeks", '<span class="day">2</span>', '<span class="day">3</span>'),
    "day of the month",
  ],
  ["weeks page: a day away", "html", page("part-weeks", "Away", "Choir"), "note of a day"],
  [
    "phase page: its weeks",
    "html",
    page("phase-heavy-slow", "Weeks 1 to 12:", "Weeks 2 to 12:"),
    "phase weeks",
  ],
  [
    "phase page: a load",
    "html",
    page("phase-heavy-slow", "37.5 kg (bar)", "38.5 kg (bar)"),
    "load",
  ],
  [
    "phase page: a side",
    "html",
    page("phase-heavy-slow", '"side">Left leg', '"side">Right leg'),
    "side",
  ],
  [
    "phase page: how often",
    "html",
    page("phase-heavy-slow", "3 days a week", "4 days a week"),
    "often",
  ],
  [
    "phase page: repetitions",
    "html",
    page("phase-heavy-slow", "3 sets of 12", "3 sets of 15"),
    "reps",
  ],
  [
    "phase page: a row is lost",
    "html",
    page("phase-heavy-slow", /<tr><th scope="row">Weeks 6 to 8<.*?<\/tr>/, ""),
    "sets",
  ],
  [
    "phase page: a sign to move on",
    "html",
    page("phase-heavy-slow", /<ul class="checks"><li>.*?<\/li>/, '<ul class="checks">'),
    "move on",
  ],
  ["exercise page: sets", "html", page(SEATED, "4 sets of 10", "5 sets of 10"), "sets"],
  ["exercise page: pace", "html", page(SEATED, "3 seconds up,", "2 seconds up,"), "pace"],
  ["exercise page: rest", "html", page(SEATED, "2 min 30 s", "2 min 3 s"), "rest"],
  ["exercise page: effort", "html", page(SEATED, "8 out of 10", "9 out of 10"), "effort"],
  [
    "exercise page: the side",
    "html",
    page(ONE_LEG, "with your left leg", "with your right leg"),
    "side",
  ],
  ["exercise page: pain", "html", page(ONE_LEG, "Pain up to 5", "Pain up to 7"), "pain during"],
  [
    "exercise page: the whole page is gone",
    "html",
    page(ONE_LEG, "Exercise 2: ", "Something: "),
    "sets",
  ],
  [
    "progress: the last load",
    "html",
    page("part-progress", "to 50 kg in week 12", "to 60 kg in week 12"),
    "first and last load",
  ],
  ["diary: a tick is lost", "html", page("part-diary", TICK, "<td>–</td>"), "exercises"],
  [
    "diary: a load",
    "html",
    page("part-diary", "3 × 15, 37.5 kg", "3 × 15, 47.5 kg"),
    "load in short",
  ],
  ["diary: a date", "html", page("part-diary", "<b>Wed</b> 2 Dec", "<b>Wed</b> 3 Dec"), "session"],
  [
    "diary: an exercise has another's name",
    "html",
    page("part-diary", "</span> Sit and rise", "</span> Stand and rise"),
    "starts when",
  ],
  [
    "diary: another phase",
    "html",
    page(
      "part-diary",
      '<span class="phase-name">Slow and heavy',
      '<span class="phase-name">Phase 1 of 2: Slow and heavy',
    ),
    "phase label",
  ],
  [
    "diary: a weight is not asked for",
    "html",
    page("part-diary", ">Weight 2 (kg)</th>", ">Weight</th>"),
    "weight asked for",
  ],
  ["diary: the whole diary is gone", "html", page("part-diary", "Your diary", "Notes"), "session"],
  [
    "last page: the day of printing",
    "html",
    inText("Printed on Tuesday, 24", "Printed on Wednesday, 25"),
    "made",
  ],
  ["phone: a load", "html", data('"kg":37.5', '"kg":3.75'), "load"],
  ["phone: a load in words", "html", data('"37.5 kg (bar)"', '"35.5 kg (bar)"'), "load"],
  ["phone: the clock", "html", data('"evening":1140', '"evening":1080'), "start"],
  ["phone: rest", "html", data('"restS":150', '"restS":15'), "rest"],
  ["phone: a limit of pain", "html", data('"during":5', '"during":8'), "pain during"],
  [
    "phone: the level to call from",
    "html",
    data('"callLevel":8', '"callLevel":9'),
    "pain to call from",
  ],
  [
    "phone: the sign to call for",
    "html",
    data("Pain of 8 out of 10 or more", "Pain of 9 out of 10 or more"),
    "pain to call from",
  ],
  [
    "phone: what is said over the limit",
    "html",
    data("Pain over 5 out of 10", "Pain over 6 out of 10"),
    "pain during",
  ],
  ["phone: a side", "html", data('"side":"left"', '"side":"right"'), "side"],
  ["phone: a session is lost", "html", data('["2026-12-02",1,0],', ""), "session"],
  [
    "calendar file: an hour",
    "ics",
    inText("DTSTART:20261202T190000", "DTSTART:20261202T180000"),
    "session",
  ],
  [
    "calendar file: a day",
    "ics",
    inText("DTSTART:20261202T190000", "DTSTART:20261203T190000"),
    "session",
  ],
  [
    "calendar file: the end",
    "ics",
    inText("DTEND:20261130T192400", "DTEND:20261130T193400"),
    "minutes",
  ],
  ["calendar file: a side", "ics", inText("(Left leg)", "(Right leg)"), "side"],
  ["calendar file: sets", "ics", inText("3 × 15", "2 × 15"), "sets"],
  ["calendar file: when to call", "ics", inText("Pain of 8", "Pain of 9"), "pain to call from"],
  ["calendar file: pain", "ics", inText("Pain up to 5", "Pain up to 4"), "pain in a session"],
  [
    "calendar file: one event twice",
    "ics",
    inText("achilles-demo-2026-12-02-evening", "achilles-demo-2026-11-30-evening"),
    "identifier",
  ],
  [
    "calendar file: a time zone",
    "ics",
    inText("DTSTART:20261130T190000", "DTSTART:20261130T190000Z"),
    "clock",
  ],
  ["calendar file: not confirmed", "ics", inText("STATUS:CONFIRMED", "STATUS:TENTATIVE"), "signed"],
  ["JSON: a load", "json", inText(/"load": 37.5/, '"load": 40'), "load"],
  ["JSON: minutes", "json", inText('"minutes": 24', '"minutes": 42'), "minutes"],
  [
    "JSON: a part of the day",
    "json",
    inText(/("date": "2026-11-30",\s*)"part": "evening"/, '$1"part": "morning"'),
    "session",
  ],
  [
    "diary: an address for the phone that the clinic does not have",
    "html",
    page("part-diary", "phone, too: ask us. Fill in one of the two.", PHONE_PAGE),
    "phone page",
  ],
  ["JSON: a tempo", "json", inText('"tempo": "3-0-3-0"', '"tempo": "3-1-3-0"'), "pace"],
  ["JSON: how often", "json", inText('"per_week": 3', '"per_week": 2'), "often"],
  ["JSON: draft", "json", inText('"signed": true', '"signed": false'), "signed"],
  ["terminal: a load", "table", inText("45 kg (bar)", "54 kg (bar)"), "load"],
  [
    "terminal: sessions of a week",
    "table",
    inText("Mon Wed Fri evening 24 min", "Mon Fri evening 24 min"),
    "week sessions",
  ],
  [
    "terminal: the phase's weeks",
    "table",
    inText("Weeks 1 to 12:", "Weeks 1 to 11:"),
    "phase weeks",
  ],
];

describe("a broken surface is seen", () => {
  test("and none is seen where none is broken", () => {
    expect(checkClient(whole).disagreements.map(disagreementText)).toEqual([]);
  });

  test.each(ROWS)("%s", (_name, output, broken, kind) => {
    const files = { ...whole, [output]: broken(whole[output]) };
    const seen = checkClient(files).disagreements.map((one) => one.kind);
    expect(seen).toContain(kind);
  });
});
