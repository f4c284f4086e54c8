/** What the authors wrote, as one more surface: the plan, the clinic's settings, the protocol, the frame's words. */

import { addDays, daysBetween, WEEKDAY_IDS, weekdayOf } from "../calendar-days.ts";
import type { Client } from "../clients.ts";
import type { ClinicText } from "../clinics.ts";
import { collector, type Say, type Surface } from "../facts.ts";
import type { PlanText } from "../plan-text.ts";
import {
  CARDS,
  cardIn,
  labels,
  type PainText,
  type SignText,
  signWords,
  weeksOf,
} from "../shipped.ts";
import type { Context } from "./context.ts";
import { NONE } from "./dose-facts.ts";
import { plainNumber } from "./numbers.ts";
import { BLEEDING } from "./urgent.ts";
import { withoutSpaces } from "./weeks-page.ts";

export function readSources({ plan, clinic, made }: Client, context: Context): Surface {
  const { facts, say } = collector();
  const { settings } = clinic;
  say("plan", "id", plan.id, "plan: id");
  say("client", "name", plan.client.name, "plan: client.name");
  say("client", "reference", plan.client.reference, "plan: client.reference");
  say("course", "first day", plan.starts, "plan: starts");
  if (plan.weeks !== undefined)
    say("course", "weeks", String(onCalendar(plan, plan.weeks)), "plan: weeks, away");
  say("clinician", "", plan.clinician, "plan: clinician");
  say("signed", "", plan.signed ? "signed" : "draft", "plan: signed");
  if (plan.signed) say("signed on", "", plan.signed.on, "plan: signed.on");
  say("course title", "", context.protocol.title, "protocol: title");
  say("language", "", clinic.language, "clinic: language");
  say("made", "", made, "the day of printing");
  say("paper", "", String(settings.paper ?? "A4"), "clinic: paper");
  say("clinic", "name", String(settings.name), "clinic: name");
  say("telephone", "clinic", String(settings.phone), "clinic: phone");
  say("telephone", "emergency", String(settings.emergency), "clinic: emergency");
  say("telephone", "when closed", String(settings.out_of_hours), "clinic: out_of_hours");
  const { phone_page: page } = settings;
  say("phone page", "", page === undefined ? NONE : String(page), "clinic: phone_page");
  for (const number of [settings.phone, settings.emergency]) {
    say(
      "address of telephone",
      String(number),
      `tel:${String(number).replace(/(?!^\+)\D/g, "")}`,
      "clinic",
    );
  }
  signFacts(plan, clinic, context, say);
  const left = new Set(plan.leave_out.map(({ card }) => card));
  for (const { title, exercises, move_on, go_back = [] } of context.protocol.phases) {
    // a phase may have no week left in a course that is cut, or no exercise
    if (isCut(plan) || exercises.every(({ card }) => left.has(card))) continue;
    // what names an exercise is said in other words where the client has another
    for (const sign of move_on.filter((one) => isForAll(one, plan.flags)))
      say("move on", `${title} · ${signWords(sign)}`, "said", "protocol: move_on");
    for (const sign of go_back.filter((one) => !one.includes("{")))
      say("go back", `${title} · ${sign}`, "said", "protocol: go_back");
  }
  plan.goals.forEach(({ what, now, want }, at) => {
    say("goal", String(at + 1), `${what}: ${now} to ${want}`, `plan: goals[${at}]`);
  });
  noteFacts(plan, context, say);
  painFacts(plan, clinic, context, say);
  return { name: "what was written", facts, complete: new Set(["note of a day"]) };
}

/** Whether a sign to move on is said as it stands, whatever exercises the client has. */
function isForAll(sign: SignText, flags: readonly string[]): boolean {
  if (signWords(sign).includes("{")) return false;
  if (typeof sign === "string") return true;
  return sign.of === undefined && !(sign.not_for ?? []).some((flag) => flags.includes(flag));
}

/** The frame's signs, and those of a client who bleeds with ease: one more emergency, and a fall in other words. */
function signFacts(plan: PlanText, clinic: ClinicText, context: Context, say: Say): void {
  const { flags } = plan;
  const { language, label } = context;
  const level = plainNumber(callLevelOf(plan, clinic));
  const severe = label("stop.severe").replace(
    "{level}",
    language === "de" ? level.replace(".", ",") : level,
  );
  const bleeds = flags.some((flag) => BLEEDING.includes(flag));
  const fall = labels(language, "stop.call").indexOf(label("stop.call.fall"));
  const calls = labels(language, "stop.call").map((sign, at) =>
    bleeds && at === fall ? label("stop.bleeding.call.fall") : sign,
  );
  const urgent = bleeds ? [label("stop.bleeding.emergency.head")] : [];
  const emergency = [...urgent, ...labels(language, "stop.emergency")];
  say("stop signs", "", [severe, ...calls].join(" | "), "words: stop.call");
  say("emergency signs", "", emergency.join(" | "), "words: stop.emergency");
  for (const sign of urgent) say("sign for a flag", sign, "said", "plan: flags");
}

/** From which pain on to call: 8 where the clinic says nothing else, or what the plan says. */
const callLevelOf = ({ pain_call }: PlanText, { settings }: ClinicText): number =>
  pain_call ?? { call: 8, ...(settings.pain as object) }.call;

/** Whether weeks of the course are never done, so that what only they hold is nowhere in the booklet. */
const isCut = ({ weeks, week }: PlanText): boolean =>
  weeks !== undefined || week.away.some((one) => typeof one !== "string" && one.then === "skip");

/** What the plan knows of each day: days away, and events on their dates. */
function noteFacts(
  { week, weeks }: Client["plan"],
  { starts, label, protocol }: Context,
  say: Say,
): void {
  const total = onCalendar({ week, starts }, weeks ?? weeksOf(protocol));
  const away = daysAway(week);
  for (let at = 0; at < total * 7; at += 1) {
    const date = addDays(starts, at);
    const weekday = WEEKDAY_IDS[weekdayOf(date)];
    const events = week.events.filter(({ day, on }) => day === weekday || on?.includes(date));
    const notes = [
      ...(away.has(date) ? [label("weeks.away")] : []),
      ...events.map(({ what }) => what),
    ];
    if (notes.length > 0) say("note of a day", date, withoutSpaces(notes.join("")), "plan: week");
  }
}

const daysAway = (week: Client["plan"]["week"]): ReadonlySet<string> =>
  new Set(
    week.away.flatMap((one) => (typeof one === "string" ? [one] : datesFrom(one.from, one.to))),
  );

/**
 * Weeks on the calendar for so many of a course: one more for each whose days away leave no free time,
 * unless most of its days away say that the course goes on without the client.
 */
function onCalendar(
  { week, starts }: Pick<Client["plan"], "week" | "starts">,
  ofCourse: number,
): number {
  const away = daysAway(week);
  const isFree = (date: string) => {
    const day = WEEKDAY_IDS[weekdayOf(date)] ?? "";
    const taken = week.events
      .filter((event) => event.hard || event.blocks)
      .filter((event) => event.day === day || event.on?.includes(date))
      .map(({ part }) => String(part));
    const parts = Object.keys(week.free[day] ?? {}).filter((part) => !taken.includes(part));
    return !away.has(date) && parts.length > 0;
  };
  let weeks = 0;
  for (let done = 0; done < ofCourse; weeks += 1) {
    const dates = Array.from({ length: 7 }, (_, at) => addDays(starts, 7 * weeks + at));
    const gone = dates.filter((date) => away.has(date));
    const waits = gone.filter((date) => saysOf(date, week).includes("shift"));
    const skips = gone.filter((date) => saysOf(date, week).includes("skip"));
    if (dates.some(isFree) || gone.length === 0 || skips.length > waits.length) done += 1;
  }
  return weeks;
}

/** What a plan's days away say of a date: shift where they do not say. */
const saysOf = (date: string, { away }: Client["plan"]["week"]): string[] =>
  away.flatMap((one) => {
    if (typeof one === "string") return one === date ? ["shift"] : [];
    return date >= one.from && date <= one.to ? [one.then ?? "shift"] : [];
  });

const datesFrom = (from: string, to: string): string[] =>
  Array.from({ length: daysBetween(from, to) + 1 }, (_, at) => addDays(from, at));

/** The plan's own rule, else the stricter of protocol and card: what every surface has to say. */
function painFacts(plan: PlanText, clinic: ClinicText, context: Context, say: Say): void {
  const monitored = { comfortable: 2, during: 5, after: 5, ...(clinic.settings.pain as object) };
  const limits = (rule: PainText) =>
    rule === "pain-free"
      ? { during: 0, after: 0, free: true }
      : { free: false, ...(rule === "monitored" ? monitored : rule) };
  const cards = new Set(
    context.protocol.phases.flatMap(({ exercises }) => exercises.map(({ card }) => card)),
  );
  const ruleOf = (id: string) => {
    const { title, pain } = cardIn(id, context.language);
    const rules = (plan.pain === undefined ? [pain, context.protocol.pain] : [plan.pain]).map(
      limits,
    );
    const most = (which: "during" | "after") =>
      rules.some(({ free }) => free)
        ? "free"
        : plainNumber(Math.min(...rules.map((one) => one[which])));
    return { title, during: most("during"), after: most("after") };
  };
  const place = "card, protocol, plan and clinic: pain";
  say("pain to call from", "", plainNumber(callLevelOf(plan, clinic)), "plan and clinic: call");
  for (const id of CARDS.keys()) {
    const { title, during, after } = ruleOf(id);
    say("pain of an easier move", title, `${during}, then ${after}`, place);
  }
  for (const id of cards) {
    if (plan.leave_out.some(({ card }) => card === id) || plan.swap.some(({ card }) => card === id))
      continue;
    const { title, during, after } = ruleOf(id);
    if (!isCut(plan)) {
      say("pain during", title, during, place);
      say("pain after", title, after, place);
    }
  }
}
