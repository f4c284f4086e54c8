/** Kinds of clients that a proof has to hold for, and which of them a client is. */
import type { Outputs } from "./outputs.ts";

type Looked = Pick<Outputs, "client" | "html" | "json">;

const has =
  (text: string) =>
  ({ json }: Looked): boolean =>
    json.includes(text);

const thenIs =
  (then: "shift" | "skip") =>
  ({ client, json }: Looked): boolean =>
    has('"away": true')({ client, json, html: "" }) &&
    client.plan.week.away.some((one) => typeof one !== "string" && (one.then ?? "shift") === then);

const KINDS: Readonly<Record<string, (looked: Looked) => boolean>> = {
  "in English": ({ client }) => client.clinic.language === "en",
  "in German": ({ client }) => client.clinic.language === "de",
  "on A4": ({ client }) => client.clinic.settings.paper !== "Letter",
  "on Letter": ({ client }) => client.clinic.settings.paper === "Letter",
  "standard edition": ({ client }) => client.edition === "standard",
  "large print": ({ client }) => client.edition === "large",
  summary: ({ client }) => client.edition === "summary",
  "left side": ({ client }) => client.plan.side === "left",
  "right side": ({ client }) => client.plan.side === "right",
  "both sides": ({ client }) => client.plan.side === "both",
  "a clinic of kilograms": ({ client }) => client.clinic.settings.units !== "lb",
  "a clinic of pounds": ({ client }) => client.clinic.settings.units === "lb",
  "equipment in pounds": ({ client }) => JSON.stringify(client.plan.equipment).includes(' lb"'),
  "hours of the client's own": ({ client }) => client.plan.week.hours !== undefined,
  "work at night": ({ client: { plan } }) =>
    plan.week.hours !== undefined && plan.week.hours.evening < plan.week.hours.morning,
  "a week away, the course waits": thenIs("shift"),
  "a week away, the course goes on": thenIs("skip"),
  "a first week back": has('"first_back": true'),
  "two events or more": ({ client }) => client.plan.week.events.length > 1,
  "an exercise left out": ({ client }) => client.plan.leave_out.length > 0,
  "an exercise swapped": ({ client }) => client.plan.swap.length > 0,
  "an exercise added": ({ client }) => client.plan.add.length > 0,
  "another dose": ({ client }) => client.plan.redose.length > 0,
  "turns of work and rest": has('"turns": {'),
  "a hold": ({ json }) => /"hold_s": \d/.test(json),
  "another number of holds in each set": ({ json }) =>
    /"reps_by_set": \[[^\]]*\],\s*"hold_s": [\d.]+/.test(json),
  "a distance": ({ json }) => /"distance_m": \d/.test(json),
  "bands by their level": ({ json }) => /"band_level": \d/.test(json),
  "a page of easier moves": ({ html }) => html.includes('id="part-easier"'),
  "a flag": ({ client }) => client.plan.flags.length > 0,
  "a pain rule of the client's own": ({ client }) => client.plan.pain !== undefined,
  "a level of pain to call from of the client's own": ({ client }) =>
    client.plan.pain_call !== undefined,
  "a course cut short": ({ client }) => client.plan.weeks !== undefined,
  "a draft": ({ client }) => client.plan.signed === undefined,
  "a second booklet in the course": ({ client }) => client.before !== undefined,
};

/** The names of all kinds. */
export const TRAITS = Object.keys(KINDS);

/** Which kinds a client is of. */
export const traitsOf = (looked: Looked): string[] =>
  TRAITS.filter((name) => KINDS[name]?.(looked));
