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

/** The plan's own rule if it states one; otherwise the stricter of the others (protocol and card). */
export function painLimits(
  own: PainRule | undefined,
  others: readonly [PainRule, ...PainRule[]],
  monitored: MonitoredPain,
): PainLimits {
  const rules = (own === undefined ? others : [own]).map((rule) => numbersOf(rule, monitored));
  const during = Math.min(...rules.map((one) => one.during));
  return {
    kind: during === 0 ? "pain-free" : "monitored",
    comfortable: Math.min(...rules.map((one) => one.comfortable)),
    during,
    after: Math.min(...rules.map((one) => one.after)),
  };
}

function numbersOf(rule: PainRule, monitored: MonitoredPain): MonitoredPain {
  if (rule === "pain-free") return { comfortable: 0, during: 0, after: 0 };
  return rule === "monitored" ? monitored : rule;
}
