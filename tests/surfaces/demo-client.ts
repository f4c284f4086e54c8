/** A client of the demo clinic's files, to look at closely. */
import { parse } from "yaml";
import { shippedText } from "../support/world.ts";
import type { Client } from "./clients.ts";
import { CLINICS, type ClinicText } from "./clinics.ts";
import type { PlanText } from "./plan-text.ts";
import { PROTOCOLS } from "./shipped.ts";

export function demoClient(name: string): Client {
  const text = shippedText(`templates/demo/${name}.md`);
  const plan = parse(/^---\n([\s\S]*?)\n---/.exec(text)?.[1] ?? "") as PlanText;
  const clinic = CLINICS[0] as ClinicText;
  const protocol = PROTOCOLS.get(plan.protocol);
  if (!protocol) throw new Error(`no protocol ${plan.protocol}`);
  const whole = {
    ...plan,
    // "none" is the answer of a client who was asked and has none
    flags: Array.isArray(plan.flags) ? plan.flags : [],
    leave_out: plan.leave_out ?? [],
    swap: plan.swap ?? [],
  };
  return {
    seed: 0,
    clinic,
    protocol,
    edition: "standard",
    made: plan.signed?.on ?? plan.starts,
    plan: {
      ...whole,
      week: { ...plan.week, away: plan.week.away ?? [], events: plan.week.events ?? [] },
    },
    path: `${clinic.folder}/${name}.md`,
    text,
  };
}
