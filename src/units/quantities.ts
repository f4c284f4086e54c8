/** Quantities as people write them in front matter ("2 min", "10 kg", "3-0-3-0") and as the program counts them. */
import * as z from "zod";
import { isDate } from "./dates.ts";
import { kilograms } from "./mass.ts";
import { readWeekSpan, WEEK_SPAN, type WeekSpan } from "./week-span.ts";

const SECONDS: Record<string, number> = { s: 1, min: 60, h: 3600, days: 86400, weeks: 604800 };
const UNIT_OF_TIME = "(s|min|h|days?|weeks?)";
const NUMBER = String.raw`(\d+(?:\.\d+)?)`;

/** A quantity written as number, space, unit; comes out as a number in the base unit. */
function quantity(pattern: string, base: (amount: number, unit: string) => number, say: string) {
  const regex = new RegExp(`^${pattern}$`);
  return z
    .string({ error: say })
    .regex(regex, { error: say })
    .transform((text) => {
      const [, amount, unit = ""] = regex.exec(text) ?? [];
      return base(Number(amount), unit);
    });
}

/** A time; comes out in seconds. */
export const time = quantity(
  `${NUMBER} ?${UNIT_OF_TIME}`,
  (amount, unit) => amount * (SECONDS[unit] ?? SECONDS[`${unit}s`] ?? 1),
  "write a time with its unit, such as 30 s, 2 min, 48 h or 6 weeks",
);

/** A mass; comes out in kilograms. */
export const mass = quantity(
  `${NUMBER} ?(kg|g|lb)`,
  kilograms,
  "write a mass with its unit, such as 12.5 kg or 25 lb",
);

/** A length; comes out in metres. */
export const distance = quantity(
  `${NUMBER} ?(m|km|cm)`,
  (amount, unit) => (unit === "km" ? amount * 1000 : unit === "cm" ? amount / 100 : amount),
  "write a distance with its unit, such as 20 m or 1.5 km",
);

/** A speed; comes out in metres a second. */
export const speed = quantity(
  `${NUMBER} ?(km/h|m/s)`,
  (amount, unit) => (unit === "km/h" ? amount / 3.6 : amount),
  "write a speed with its unit, such as 9 km/h",
);

/** A share written in percent; comes out as a fraction (30 % is 0.3). */
export const percent = quantity(
  `${NUMBER} ?%`,
  (amount) => amount / 100,
  "write a share in percent, such as 30 %",
);

/** A calendar date, YYYY-MM-DD, that exists; stays a string. */
export const date = z
  .string({ error: "write a date as YYYY-MM-DD" })
  .regex(/^\d{4}-\d{2}-\d{2}$/, { error: "write a date as YYYY-MM-DD" })
  .refine(isDate, { error: "this date does not exist" });

/**
 * Seconds of lowering, of the pause at the bottom, of lifting and of the pause at the top.
 * The order begins with the lowering (eccentric) part even where the lift comes first;
 * "X" means as fast as is safe. Common practice; see the notation in DEVELOPERS.md.
 */
export const tempo = z
  .string({ error: TEMPO_HELP() })
  .regex(/^(\d{1,2}|X)-(\d{1,2}|X)-(\d{1,2}|X)-(\d{1,2}|X)$/, { error: TEMPO_HELP() })
  .transform((text): Tempo => {
    const [lower = "", bottom = "", lift = "", top = ""] = text.split("-");
    return { lower: part(lower), bottom: part(bottom), lift: part(lift), top: part(top) };
  });

function TEMPO_HELP(): string {
  return "write a tempo as four numbers of seconds, lowering first, such as 3-0-3-0 (X: as fast as is safe)";
}

const part = (text: string): number | "X" => (text === "X" ? "X" : Number(text));

export interface Tempo {
  readonly lower: number | "X";
  readonly bottom: number | "X";
  readonly lift: number | "X";
  readonly top: number | "X";
}

/** A tempo as it is written: "3-0-3-0". */
export function tempoText({ lower, bottom, lift, top }: Tempo): string {
  return [lower, bottom, lift, top].join("-");
}

const WEEKS_HELP = "write weeks as 3 or 2-5";

/** A span of whole weeks, "3" or "2-5", counted from 1; stays as it is written. */
export const weekSpanKey = z
  .union([z.number(), z.string()], { error: WEEKS_HELP })
  .transform(String)
  .pipe(
    z
      .string()
      .regex(WEEK_SPAN, { error: WEEKS_HELP, abort: true })
      .refine((text) => readWeekSpan(text) !== undefined, {
        error: "the first week comes after the last",
      }),
  );

/** A span of whole weeks; comes out as first and last. */
export const weekSpan = weekSpanKey.transform((text) => readWeekSpan(text) as WeekSpan);

/** An identifier: small letters, digits and hyphens. Numbers are taken as text. */
export const id = z
  .union([z.string(), z.number()], { error: ID_HELP() })
  .transform(String)
  .pipe(
    z
      .string()
      .regex(/^[a-z0-9]+(?:-[a-z0-9]+)*$/, { error: ID_HELP() })
      .max(80),
  );

function ID_HELP(): string {
  return "write an id in small letters, digits and hyphens, such as heel-raise-one-leg";
}

/** A sentence or title: one line, not empty. */
export const line = z
  .string({ error: "write a line of text" })
  .trim()
  .min(1, { error: "write a line of text, not an empty one" })
  .max(400)
  .regex(/^[^\r\n]*$/, { error: "keep this on one line" });
