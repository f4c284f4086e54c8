/** What differs between a plan as it was signed and as it is now, in words for the clinician. */
import { isDeepStrictEqual } from "node:util";
import { isGroup } from "../edits/edit.ts";
import { spansOf, weekSpanText } from "../units/week-span.ts";
import type { SignedContent } from "./content.ts";

type Fields = Readonly<Record<string, unknown>>;

/** So many changes are named of the plan's own statements, and of what they come to. */
const MOST_OF_PLAN = 3;
const MOST_OF_WEEKS = 3;

/**
 * The first few changes, those of the plan before those that they come to, and how many more there are:
 * "week 4, Seated heel raise: load 45 kg, signed 42.5 kg".
 *
 * @param nameOf the name of an exercise, given its key
 */
export function changesInWords(
  signed: SignedContent,
  now: SignedContent,
  nameOf: (key: string) => string,
): { readonly named: readonly string[]; readonly more: number } {
  const plan = [
    ...statementChanges(signed.statement, now.statement),
    ...(signed.note === now.note ? [] : ["the note to the client"]),
  ];
  const weeks = [...doseChanges(signed, now, nameOf), ...sessionChanges(signed, now)];
  const named = [...plan.slice(0, MOST_OF_PLAN), ...weeks.slice(0, MOST_OF_WEEKS)];
  return { named, more: plan.length + weeks.length - named.length };
}

/** Fields of the plan by the way to them: "week › free › mon › evening: 45 min, signed 30 min". */
function statementChanges(signed: unknown, now: unknown, path: readonly string[] = []): string[] {
  if (isDeepStrictEqual(signed, now)) return [];
  const alike =
    Array.isArray(signed) && Array.isArray(now) && signed.length === now.length && !isPlain(now);
  if ((isGroup(signed) && isGroup(now)) || alike) {
    const names = [...new Set([...Object.keys(now as object), ...Object.keys(signed as object)])];
    return names.flatMap((name) =>
      statementChanges((signed as Fields)[name], (now as Fields)[name], [
        ...path,
        alike ? String(Number(name) + 1) : name,
      ]),
    );
  }
  return [`${path.join(" › ")}: ${valueText(now)}, signed ${valueText(signed)}`];
}

/** Doses, each change once for all its weeks. */
function doseChanges(
  signed: SignedContent,
  now: SignedContent,
  nameOf: (key: string) => string,
): string[] {
  const found = new Map<string, { readonly key: string; readonly weeks: number[] }>();
  for (const week of weeksOf(signed, now)) {
    const [before, after] = [weekOf(signed, week)?.doses ?? {}, weekOf(now, week)?.doses ?? {}];
    for (const key of new Set([...Object.keys(after), ...Object.keys(before)])) {
      for (const words of ofDose(before[key], after[key])) {
        const change = found.get(`${key} ${words}`) ?? { key, weeks: [] };
        found.set(`${key} ${words}`, change);
        change.weeks.push(week);
      }
    }
  }
  return [...found].map(([words, { key, weeks }]) => {
    return `${weekWords(weeks)}, ${nameOf(key)}: ${words.slice(key.length + 1)}`;
  });
}

function ofDose(signed: Fields | undefined, now: Fields | undefined): string[] {
  if (signed === undefined) return ["not signed"];
  if (now === undefined) return ["signed, and no longer there"];
  return Object.keys(LABELS)
    .concat([...Object.keys(now), ...Object.keys(signed)].filter((name) => !(name in LABELS)))
    .filter(
      (name, at, all) => all.indexOf(name) === at && !isDeepStrictEqual(signed[name], now[name]),
    )
    .filter((name) => !(name === "load_kg" && now.load !== signed.load))
    .map(
      (name) =>
        `${LABELS[name] ?? plainName(name)} ${ofField(name, now)}, signed ${ofField(name, signed)}`,
    );
}

/** Sessions of a week that are at other times, and what else is said of them. */
function sessionChanges(signed: SignedContent, now: SignedContent): string[] {
  return weeksOf(signed, now).flatMap((number) => {
    const [before, after] = [weekOf(signed, number), weekOf(now, number)];
    const [had, has] = [before?.sessions ?? {}, after?.sessions ?? {}];
    const [gone, come] = [without(had, has), without(has, had)];
    const moved =
      gone.length + come.length === 0
        ? []
        : [`sessions ${come.join(", ") || "none"}, signed ${gone.join(", ") || "none"}`];
    const about = statementChanges(before?.about, after?.about);
    const others = Object.keys(has)
      .filter((key) => key in had)
      .flatMap((key) => statementChanges(had[key], has[key], [key]));
    return [...moved, ...about, ...others].map((words) => `week ${number}: ${words}`);
  });
}

const weekOf = ({ weeks }: SignedContent, number: number) =>
  weeks.find(({ week }) => week === number);

const weeksOf = (...all: readonly SignedContent[]): number[] =>
  [...new Set(all.flatMap(({ weeks }) => weeks.map(({ week }) => week)))].sort((a, b) => a - b);

const without = (all: Fields, others: Fields): string[] =>
  Object.keys(all).filter((key) => !(key in others));

/** "week 4", "weeks 4-6, 9". */
function weekWords(weeks: readonly number[]): string {
  return `week${weeks.length === 1 ? "" : "s"} ${spansOf(weeks).map(weekSpanText).join(", ")}`;
}

/** Fields of a dose in the order in which they are read. */
const LABELS: Readonly<Record<string, string>> = {
  sets: "sets",
  reps: "repetitions",
  reps_by_set: "repetitions",
  hold_s: "hold",
  time_s: "time",
  distance_m: "distance",
  load: "load",
  load_kg: "load",
  band_level: "band",
  speed_km_h: "speed",
  rest_s: "rest",
  rest_reps_s: "rest between repetitions",
};

const UNITS: readonly (readonly [RegExp, string])[] = [
  [/_s$/, " s"],
  [/_m$/, " m"],
  [/_kg$/, " kg"],
  [/_km_h$/, " km/h"],
];

function ofField(name: string, dose: Fields): string {
  const value = dose[name];
  if (value === undefined) return "none";
  const unit =
    name === "load" ? ` ${dose.load_unit ?? ""}` : UNITS.find(([end]) => end.test(name))?.[1];
  return `${valueText(value)}${unit ?? ""}`;
}

const plainName = (name: string): string => name.replaceAll("_", " ");

function valueText(value: unknown): string {
  if (value === undefined) return "none";
  if (Array.isArray(value)) {
    return isPlain(value)
      ? value.map(String).join(", ")
      : `${value.length} ${value.length === 1 ? "entry" : "entries"}`;
  }
  if (!isGroup(value)) return String(value);
  return Object.entries(value)
    .map(([name, one]) => `${plainName(name)} ${valueText(one)}`)
    .join(", ");
}

const isPlain = (list: readonly unknown[]): boolean =>
  list.every((one) => typeof one !== "object" || one === null);
