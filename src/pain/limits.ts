/** The limits of pain that hold for an exercise: the plan's own, or the stricter of protocol and card. */
import type { PainRule } from "./rule.ts";

/** Limits of pain on the 0 to 10 scale. */
export interface PainLimits {
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
  others: readonly PainRule[],
  monitored: MonitoredPain,
): PainLimits {
  if (own !== undefined) return limitsOf(own, monitored);
  const all = others.map((rule) => limitsOf(rule, monitored));
  return {
    kind: all.some((one) => one.kind === "pain-free") ? "pain-free" : "monitored",
    comfortable: Math.min(...all.map((one) => one.comfortable)),
    during: Math.min(...all.map((one) => one.during)),
    after: Math.min(...all.map((one) => one.after)),
  };
}

function limitsOf(rule: PainRule, monitored: MonitoredPain): PainLimits {
  if (rule === "pain-free") return { kind: "pain-free", comfortable: 0, during: 0, after: 0 };
  if (rule === "monitored") return { kind: "monitored", ...monitored };
  return { kind: rule.during === 0 ? "pain-free" : "monitored", ...rule };
}
