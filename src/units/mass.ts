/** Masses in the unit in which a clinic writes them; the program counts in kilograms throughout. */
import { show, tidy } from "./rounding.ts";

/** The units in which loads can be printed. */
export const MASS_UNITS = ["kg", "lb"] as const;
export type MassUnit = (typeof MASS_UNITS)[number];

/** Kilograms in a pound, by definition (avoirdupois, 1959). */
export const KG_PER_LB = 0.45359237;

/** Kilograms of an amount in kg, g or lb. */
export function kilograms(amount: number, unit: string): number {
  if (unit === "lb") return amount * KG_PER_LB;
  return unit === "g" ? amount / 1000 : amount;
}

/** The amount of a mass in a unit, to a hundredth: 11.339809 kg are 25 lb. */
export function inUnit(kg: number, unit: MassUnit): number {
  return tidy(Math.round((unit === "lb" ? kg / KG_PER_LB : kg) * 100) / 100);
}

/** Kilograms to the gram: fine enough to be the same hundredth of a pound again. */
export function toGram(kg: number): number {
  return tidy(Math.round(kg * 1000) / 1000);
}

/** A mass as a clinician reads it: "12.5 kg", "25 lb". */
export function sayMass(kg: number, unit: MassUnit): string {
  return `${show(inUnit(kg, unit))} ${unit}`;
}
