/** Invented clients: what a plan may say, drawn from a seed, so that most of the plans can be made. */
import { stringify } from "yaml";
import { addDays } from "./calendar-days.ts";
import { changesOf } from "./client-changes.ts";
import { equipmentFor, flagsFor, type MassUnit, measuresFor } from "./client-kit.ts";
import { changedInItsCourse } from "./client-reissue.ts";
import { weekOf } from "./client-week.ts";
import { CLINICS, type ClinicText } from "./clinics.ts";
import type { PlanText } from "./plan-text.ts";
import { type Random, randomFrom } from "./random.ts";
import { PROTOCOLS, type ProtocolText, weeksOf } from "./shipped.ts";

export interface Client {
  readonly seed: number;
  readonly clinic: ClinicText;
  readonly protocol: ProtocolText;
  readonly edition: "standard" | "large" | "summary";
  /** The day the booklet is made, YYYY-MM-DD. */
  readonly made: string;
  /** What stands in the plan's front matter. */
  readonly plan: PlanText;
  /** The plan's file: its path in the tree, and its text. */
  readonly path: string;
  readonly text: string;
  /** The booklet that the client already has; undefined for the first. */
  readonly before?: { readonly text: string; readonly made: string } | undefined;
}

const NAMES = [
  "Ada Winterbourne",
  "Jürgen Öhlschläger",
  "Siobhán O'Neil & Sons",
  "Łukasz <Nowak>",
  "Maria-Luz Ibáñez",
  "K. Ng",
];
const CLINICIANS = ["Robin Ashdown", "Ilse Lindqvist", "Tomé d'Àvila"];
const GOALS = [
  "Walk the dog round the lake",
  "Die Treppe ohne Geländer gehen",
  "Sleep on my side",
  "Play <two> sets & stay",
];

const PROTOCOL_LIST = [...PROTOCOLS.values()];

/** The client of a seed. Clients whose seeds follow one another go through the protocols in turn. */
export function clientOf(seed: number): Client {
  const random = randomFrom(seed);
  const protocol = PROTOCOL_LIST[seed % PROTOCOL_LIST.length] as ProtocolText;
  const clinic = random.one(CLINICS);
  const edition = random.one(["standard", "standard", "standard", "large", "summary"] as const);
  const unit = clinic.settings.units === "lb" && random.chance(0.6) ? "lb" : "kg";
  const first = planOf(seed, protocol, unit, random);
  const made = addDays(first.starts, -random.whole(0, 9));
  const note = random.chance(0.7)
    ? "A note: *little by little*, and call us if you are unsure.\n"
    : "";
  const textOf = (plan: PlanText) => `---\n${stringify(plan)}---\n\n${note}`;
  const again = random.chance(0.25) ? changedInItsCourse(first, protocol, random) : undefined;
  const plan = again?.plan ?? first;
  return {
    seed,
    clinic,
    protocol,
    edition,
    made: again?.made ?? made,
    plan,
    path: `${clinic.folder}/${plan.id}.md`,
    text: textOf(plan),
    before: again && { text: textOf(first), made },
  };
}

function planOf(seed: number, protocol: ProtocolText, unit: MassUnit, random: Random): PlanText {
  const starts = addDays("2026-10-05", random.whole(0, 480));
  const changes = changesOf(protocol, random);
  const cards = changes.cards;
  const total = weeksOf(protocol);
  const before = addDays(starts, -random.whole(1, 10));
  const side = random.one(["left", "right", "both"] as const);
  const clinician = random.one(CLINICIANS);
  return {
    id: `client-${seed}`,
    client: {
      name: random.one(NAMES),
      reference: `R-${random.whole(1000, 9999)}`,
      body_mass: `${random.whole(48, 112)} kg`,
    },
    clinician,
    protocol: protocol.id,
    starts,
    ...(random.chance(0.3) && { weeks: random.whole(1, total) }),
    side,
    stage: "Able to bear load",
    irritability: random.one(["low", "moderate", "high"]),
    flags: flagsFor(cards, random),
    goals: random.some(GOALS, random.whole(1, 3)).map((what) => ({
      what,
      now: random.whole(0, 5),
      want: random.whole(6, 10),
      on: before,
    })),
    measures: measuresFor(cards, side, before, unit, random),
    equipment: equipmentFor(cards, unit, random),
    week: weekOf(protocol, cards, starts, total, random),
    my_plan: random.chance(0.5)
      ? {
          when: "After the late news",
          where: "On the bottom stair",
          if_then: [{ if: "it rains", do: "do it indoors" }],
        }
      : {},
    ...(random.chance(0.25) && {
      pain: random.one([
        "pain-free",
        "monitored",
        { comfortable: 1, during: 3, after: 2 },
        { comfortable: 2, during: 6, after: 4 },
      ] as const),
    }),
    ...(random.chance(0.1) && { pain_call: random.one([7, 6.5]) }),
    leave_out: changes.leaveOut,
    swap: changes.swap,
    add: changes.add,
    redose: changes.redose,
    // what invented clients own is not made to measure
    accept: cards.flatMap(({ id }) =>
      ["load-short", "load-light", "dose-beyond-measure"].map((code) => ({
        code,
        card: id,
        why: "Seen by us.",
      })),
    ),
    ...(random.chance(0.85) && { signed: { by: clinician, on: before } }),
  };
}
