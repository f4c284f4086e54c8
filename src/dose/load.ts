/** Training load: effort × minutes, how even a week is, how it changes. A description, never a forecast of injury. */
import { tidy } from "../units/rounding.ts";

export type Deviation = "population" | "sample";

/** Effort (0 to 10) × minutes, in arbitrary units (Foster 1998, Med Sci Sports Exerc 30:1164). */
export function sessionLoad(effort: number, minutes: number): number {
  return tidy(effort * minutes);
}

export interface WeekLoad {
  readonly total: number;
  readonly mean: number;
  readonly deviation: number;
  /** Mean of the daily loads by their deviation; undefined where the days are nearly the same. */
  readonly monotony: number | undefined;
  /** Total × monotony; undefined where monotony is. */
  readonly strain: number | undefined;
}

/**
 * Above this monotony the days are the same but for a tenth of their mean, and the quotient says
 * nothing more: 300 and 301 by turns would give 600. Foster 1998 has no such week; that a quotient by
 * a deviation near 0 is not given is common practice, the bound of 10 is ours.
 */
const MOST_MONOTONY = 10;

/**
 * Total, monotony and strain of the days of a week, rest days as 0 (Foster 1998, Med Sci Sports
 * Exerc 30:1164). The paper does not say which deviation is meant: a setting of the clinic.
 * Six equal days and one of rest give √6 with the population's, whatever the load.
 */
export function weekLoad(days: readonly number[], deviation: Deviation): WeekLoad {
  const total = sum(days);
  const mean = days.length === 0 ? 0 : total / days.length;
  const divisor = deviation === "sample" ? days.length - 1 : days.length;
  const squares = sum(days.map((day) => (day - mean) ** 2));
  const spread = divisor > 0 ? Math.sqrt(squares / divisor) : 0;
  const even = spread * MOST_MONOTONY <= mean;
  const monotony = even ? undefined : mean / spread;
  return {
    total,
    mean,
    deviation: even ? 0 : spread,
    monotony,
    strain: monotony === undefined ? undefined : total * monotony,
  };
}

/** Growth from one week to the next as a share (0.3 is 30 % more); undefined after a week of nothing. */
export function growth(before: number, now: number): number | undefined {
  return before > 0 ? now / before - 1 : undefined;
}

export interface AcuteChronic {
  readonly acute: number;
  readonly chronic: number;
  /** Undefined where the chronic load is 0 or there are too few days. */
  readonly ratio: number | undefined;
}

/**
 * Mean of the last 7 days by the mean of the last 28 (coupled), or of the 21 days before them
 * (uncoupled). A description only: bands of “safe” ratios are not supported (Impellizzeri 2020).
 */
export function acuteChronic(days: readonly number[], kind: "coupled" | "uncoupled"): AcuteChronic {
  const last = days.slice(-28);
  const acute = mean(last.slice(-7));
  const chronic = mean(kind === "coupled" ? last : last.slice(0, -7));
  return { acute, chronic, ratio: days.length >= 28 ? ratioOf(acute, chronic) : undefined };
}

/**
 * Exponentially weighted mean of daily loads: λ × today + (1 − λ) × yesterday's mean, with
 * λ = 2/(days + 1) (Williams 2017, Br J Sports Med 51:209). It starts from the first day's load.
 */
export function weightedMean(loads: readonly number[], days: number): number {
  const weight = 2 / (days + 1);
  const [first = 0, ...rest] = loads;
  return rest.reduce((before, today) => weight * today + (1 - weight) * before, first);
}

/** Acute (7 days) and chronic (28 days) load by weighted means. It needs about 28 days to settle. */
export function weightedAcuteChronic(loads: readonly number[]): AcuteChronic {
  const acute = weightedMean(loads, 7);
  const chronic = weightedMean(loads, 28);
  return { acute, chronic, ratio: loads.length >= 28 ? ratioOf(acute, chronic) : undefined };
}

function ratioOf(acute: number, chronic: number): number | undefined {
  return chronic > 0 ? acute / chronic : undefined;
}

function mean(values: readonly number[]): number {
  return values.length === 0 ? 0 : sum(values) / values.length;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
