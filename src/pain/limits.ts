/** The limits of pain that hold for an exercise: the plan's own, or the stricter of protocol and card. */
import type { PainRule } from "./rule.ts";

/** Limits of pain on the 0 to 10 scale. A number at its limit is all right, above it is not. */
export interface PainLimits {
  /** `pain-free` where the exercise allows no pain while it is done. */
  readonly kind: "pain-free" | "monitored";
  readonly comfortable: number;
  readonly during: number;
  readonly after: number;
}

/** What monitored pain means in a clinic, 0 to 10. */
export type MonitoredPain = Omit<PainLimits, "kind">;

/**
 * The plan's own rule if it states one; otherwise the stricter of the others (protocol and card). None
 * reaches the level from which a client is to call: what is all right is never a reason for that.
 */
export function painLimits(
  own: PainRule | undefined,
  others: readonly [PainRule, ...PainRule[]],
  monitored: MonitoredPain,
  callLevel: number,
): PainLimits {
  const rules = (own === undefined ? others : [own]).map((rule) => numbersOf(rule, monitored));
  const least = (name: keyof MonitoredPain) =>
    Math.min(mostBelow(callLevel), ...rules.map((one) => one[name]));
  const during = least("during");
  return {
    kind: during === 0 ? "pain-free" : "monitored",
    comfortable: least("comfortable"),
    during,
    after: least("after"),
  };
}

/** The pain, 0 to 10, from which a client is to stop and call: the clinic's, or a lower one of the plan. */
export const callLevel = (ofClinic: number, ofPlan: number | undefined): number =>
  Math.min(ofClinic, ofPlan ?? ofClinic);

/** The largest number of the scale below a level: clients give whole numbers. */
const mostBelow = (level: number): number => Math.ceil(level) - 1;

function numbersOf(rule: PainRule, monitored: MonitoredPain): MonitoredPain {
  if (rule === "pain-free") return { comfortable: 0, during: 0, after: 0 };
  return rule === "monitored" ? monitored : rule;
}
