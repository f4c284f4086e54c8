/** Requirements in words: one plain English sentence each. */
import { WEEKDAY_NAMES } from "../search/dates.ts";
import {
  DAYS,
  dayOf,
  partOf,
  type Slot,
  type Times,
  type WeekEvent,
  type WeekExercise,
  type WeekProblem,
} from "../search/problem.ts";

const TIMES = [
  "never",
  "once",
  "twice",
  "three times",
  "four times",
  "five times",
  "six times",
  "seven times",
];

/** "three times" and the like. */
export function timesWord(count: number): string {
  return TIMES[count] ?? `${count} times`;
}

function nameOf(one: WeekExercise): string {
  return one.name ?? one.id;
}

function dayName(day: number, firstWeekday = 0): string {
  return WEEKDAY_NAMES[(((day + firstWeekday) % 7) + 7) % 7] ?? "";
}

export function listed(words: readonly string[], last = "and"): string {
  if (words.length < 2) return words[0] ?? "";
  return `${words.slice(0, -1).join(", ")} ${last} ${words.at(-1)}`;
}

/** Times a week, bouts a day, days between, or days of the week, as the kind of times says. */
export function amountOf(times: Times): number {
  if ("perWeek" in times) return times.perWeek;
  if ("perDay" in times) return times.perDay;
  if ("everyDays" in times) return times.everyDays;
  return times.onDays.length;
}

export function times(one: WeekExercise, firstWeekday?: number): string {
  const { times: how } = one;
  const name = nameOf(one);
  if ("perWeek" in how)
    return `${name} is done ${timesWord(how.perWeek)} a week, at most once a day.`;
  if ("perDay" in how) {
    const often = `${name} is done ${timesWord(how.perDay)}`;
    if (how.days === undefined) return `${often} on each day with free time.`;
    if (how.days.length === DAYS) return `${often} a day, every day.`;
    return `${often} a day, in this week on ${daysListed(how.days, firstWeekday)}.`;
  }
  if ("everyDays" in how) return `${name} is done every ${how.everyDays} days.`;
  const days = daysListed(how.onDays, firstWeekday);
  return how.every === undefined
    ? `${name} falls on ${days} of this week.`
    : `${name} is done every ${how.every === 2 ? "second day" : `${how.every} days`}, in this week on ${days}.`;
}

function daysListed(days: readonly number[], firstWeekday = 0): string {
  return listed(days.map((day) => dayName(day, firstWeekday)));
}

export function recovery(one: WeekExercise): string {
  return `${nameOf(one)} needs ${one.recoveryHours} hours from one bout to the next.`;
}

export function clearBefore(one: WeekExercise, problem: WeekProblem): string {
  const clear = (one.clearBefore ?? []).filter((each) => each.hours > 0);
  const parts = clear.map(({ hours, events }) => {
    const meant = problem.events.filter((event) => {
      if (events === "any") return true;
      if (events === "touching") return event.groups.some((group) => one.groups.includes(group));
      return events.includes(event.id);
    });
    const names = meant.map((event) => eventName(event, problem.firstWeekday));
    return `${hours} hours before ${names.length > 0 ? listed(names) : "events"}`;
  });
  return `${nameOf(one)} keeps clear of the ${listed(parts)}.`;
}

function eventName(event: WeekEvent, firstWeekday: number | undefined): string {
  return `${dayName(event.day, firstWeekday)}’s ${event.name}`;
}

/** What keeps clear of an event; undefined where nothing of this week does. */
export function eventClear(
  event: WeekEvent,
  exercises: readonly WeekExercise[],
  firstWeekday: number | undefined,
): string | undefined {
  const name = eventName(event, firstWeekday);
  if (event.statesWork) return statedClear(event, exercises, name);
  const what = event.groups.length > 0 ? `Hard work for the ${listed(event.groups)}` : "Hard work";
  const spans = [
    ...((event.clearBeforeHours ?? 0) > 0 ? [`${event.clearBeforeHours} hours before`] : []),
    ...((event.clearAfterHours ?? 0) > 0 ? [`${event.clearAfterHours} hours after`] : []),
  ];
  return `${what} keeps clear of the ${listed(spans)} ${name}.`;
}

/** Of an event that says itself which work it means: what that is of this week, and on which side. */
function statedClear(
  event: WeekEvent,
  exercises: readonly WeekExercise[],
  name: string,
): string | undefined {
  const meant = (side: "before" | "after") =>
    exercises.filter((one) => one.keptClearOf?.[side].includes(event.id));
  const spans = (["before", "after"] as const).flatMap((side) => {
    const hours = side === "before" ? event.clearBeforeHours : event.clearAfterHours;
    return (hours ?? 0) > 0 && meant(side).length > 0 ? [`${hours} hours ${side}`] : [];
  });
  const names = exercises
    .filter((one) => [...meant("before"), ...meant("after")].includes(one))
    .map(nameOf);
  const keep = names.length === 1 ? "keeps" : "keep";
  return spans.length === 0
    ? undefined
    : `${listed(names)} ${keep} clear of the ${listed(spans)} ${name}.`;
}

export function sameSession(one: WeekExercise, all: readonly WeekExercise[]): string {
  return `${nameOf(one)} is done in the same session as ${named(one.sameSessionAs ?? "", all)}.`;
}

export function after(one: WeekExercise, all: readonly WeekExercise[]): string {
  return `${nameOf(one)} comes after ${listed((one.after ?? []).map((id) => named(id, all)))}.`;
}

function named(id: string, all: readonly WeekExercise[]): string {
  const found = all.find((one) => one.id === id);
  return found === undefined ? id : nameOf(found);
}

export function groupHours(group: string, hours: number): string {
  return `Hard bouts for the ${group} in different sessions are at least ${hours} hours apart.`;
}

export function hardDays(most: number, events: readonly WeekEvent[], first?: number): string {
  const hard = events.filter((event) => event.hard).map((event) => eventName(event, first));
  const counted = hard.length > 0 ? `, counting ${listed(hard)}` : "";
  return most === 1
    ? `No two days in a row may be hard${counted}.`
    : `At most ${most} days in a row may be hard${counted}.`;
}

export function weekBefore(): string {
  return "The weeks before and after keep their bouts too.";
}

export function sessionMinutes(problem: WeekProblem): string {
  const open = problem.freeMinutes
    .filter((free) => free > 0)
    .map((free) => free - (problem.changeoverMinutes ?? 0));
  const least = Math.min(...open);
  const most = Math.max(...open);
  if (open.length === 0) return "There are no free minutes.";
  return least === most
    ? `A session takes at most the ${most} minutes that are free.`
    : `A session takes at most the ${least} to ${most} minutes that are free.`;
}

/** "Only Monday evening, Tuesday evening and Wednesday evening are open." */
export function openSlots(open: readonly Slot[], firstWeekday?: number): string {
  if (open.length === 0) return "No part of any day is open.";
  const parts = [...new Set(open.map(partOf))];
  const texts = parts.map((part) => {
    const days = open
      .filter((slot) => partOf(slot) === part)
      .map((slot) => dayName(dayOf(slot), firstWeekday));
    return days.length === 7 ? `every ${part}` : `${listed(days)} ${part}`;
  });
  const several = open.length > 1 && !(texts.length === 1 && texts[0]?.startsWith("every"));
  return `Only ${texts.join("; ")} ${several ? "are" : "is"} open.`;
}
