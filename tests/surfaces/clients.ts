/** Invented clients: what a plan may say, drawn from a seed, so that most of the plans can be made. */
import { stringify } from "yaml";
import { addDays, WEEKDAY_IDS } from "./calendar-days.ts";
import { CLINICS, type ClinicText } from "./clinics.ts";
import { type Random, randomFrom } from "./random.ts";
import {
  CARDS,
  type CardText,
  type DoseText,
  dosesOf,
  PROTOCOLS,
  type ProtocolText,
} from "./shipped.ts";

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
}

/** A plan's front matter as an author writes it. */
export interface PlanText {
  readonly id: string;
  readonly client: {
    readonly name: string;
    readonly reference: string;
    readonly body_mass: string;
  };
  readonly clinician: string;
  readonly protocol: string;
  readonly starts: string;
  readonly weeks?: number;
  readonly side: "left" | "right" | "both";
  readonly flags: readonly string[];
  readonly goals: readonly {
    readonly what: string;
    readonly now: number;
    readonly want: number;
    readonly on: string;
  }[];
  readonly measures: readonly unknown[];
  readonly equipment: readonly unknown[];
  readonly week: WeekText;
  readonly pain?: CardText["pain"];
  readonly leave_out: readonly { readonly card: string; readonly why: string }[];
  readonly swap: readonly { readonly card: string; readonly to: string; readonly why: string }[];
  readonly add: readonly {
    readonly card: string;
    readonly phase?: string;
    readonly why: string;
    readonly dose: DoseText;
  }[];
  readonly redose: readonly {
    readonly card: string;
    readonly weeks?: string;
    readonly why: string;
    readonly dose: DoseText;
  }[];
  readonly signed?: { readonly by: string; readonly on: string };
  readonly [field: string]: unknown;
}

export interface WeekText {
  readonly free: Readonly<Record<string, Readonly<Record<string, string>>>>;
  readonly away: readonly (string | { readonly from: string; readonly to: string })[];
  readonly events: readonly EventText[];
  readonly hours: Readonly<Record<"morning" | "midday" | "evening", string>> | undefined;
  readonly [field: string]: unknown;
}

export interface EventText {
  readonly what: string;
  readonly day?: string;
  readonly on?: readonly string[];
  readonly part: string;
  readonly [field: string]: unknown;
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
const EVENTS = ["Choir", "Football", "Long walk", "Nachtdienst", "Tennis & tea"];
const GOALS = [
  "Walk the dog round the lake",
  "Die Treppe ohne Geländer gehen",
  "Sleep on my side",
  "Play <two> sets & stay",
];
const WHY = "Agreed with the client.";

/** Hours of clients who do not keep the usual ones; they rise within a day that may begin in the evening. */
const HOURS = [
  { morning: "05:40", midday: "11:15", evening: "17:30" },
  { morning: "08:30", midday: "14:05", evening: "21:10" },
  { morning: "10:00", midday: "15:30", evening: "20:45" },
  { morning: "22:00", midday: "02:00", evening: "06:00" },
  { morning: "18:45", midday: "23:50", evening: "05:15" },
];

const PROTOCOL_LIST = [...PROTOCOLS.values()];

/** The client of a seed. Clients whose seeds follow one another go through the protocols in turn. */
export function clientOf(seed: number): Client {
  const random = randomFrom(seed);
  const protocol = PROTOCOL_LIST[seed % PROTOCOL_LIST.length] as ProtocolText;
  const clinic = random.one(CLINICS);
  const edition = random.one(["standard", "standard", "standard", "large", "summary"] as const);
  const plan = planOf(seed, protocol, random);
  return {
    seed,
    clinic,
    protocol,
    edition,
    made: addDays(plan.starts, -random.whole(0, 9)),
    plan,
    path: `${clinic.folder}/${plan.id}.md`,
    text: `---\n${stringify(plan)}---\n\n${random.chance(0.7) ? "A note: *little by little*, and call us if you are unsure.\n" : ""}`,
  };
}

function planOf(seed: number, protocol: ProtocolText, random: Random): PlanText {
  const starts = addDays("2026-10-05", random.whole(0, 480));
  const changes = changesOf(protocol, random);
  const cards = changes.cards;
  const total = Math.max(...protocol.phases.map((_, at) => lastWeekOf(protocol, at)));
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
    measures: measuresFor(cards, side, before, random),
    equipment: equipmentFor(cards, random),
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
    leave_out: changes.leaveOut,
    swap: changes.swap,
    add: changes.add,
    redose: changes.redose,
    ...(random.chance(0.85) && { signed: { by: clinician, on: before } }),
  };
}

/** The last week of the course that a phase reaches, counted from 1. */
function lastWeekOf({ phases }: ProtocolText, at: number): number {
  const phase = phases[at];
  if (!phase) return 0;
  return (phase.from_week ?? lastWeekOf({ phases } as ProtocolText, at - 1) + 1) + phase.weeks - 1;
}

function changesOf(protocol: ProtocolText, random: Random) {
  const named = [
    ...new Set(protocol.phases.flatMap(({ exercises }) => exercises.map(({ card }) => card))),
  ];
  const tied = new Set(
    protocol.phases.flatMap(({ exercises }) =>
      exercises.flatMap((one) => (one.same_session_as ? [one.card, one.same_session_as] : [])),
    ),
  );
  const free = named.filter((card) => !tied.has(card));
  const leaveOut =
    named.length > 1 && free.length > 0 && random.chance(0.25) ? [random.one(free)] : [];
  const kept = free.filter((card) => !leaveOut.includes(card));
  const others = (card: string): string[] => {
    const { alternatives = [], easier = [], harder = [] } = cardOf(card);
    return [...alternatives, ...[...easier, ...harder].map(({ to }) => to)].filter(
      (to) => !named.includes(to) && CARDS.has(to),
    );
  };
  const swapped = kept.filter((card) => others(card).length > 0);
  const swap =
    swapped.length > 0 && random.chance(0.25)
      ? [random.one(swapped)].map((card) => ({ card, to: random.one(others(card)), why: WHY }))
      : [];
  const region = cardOf(named[0] ?? "").region;
  const taken = new Set([...named, ...swap.map(({ to }) => to)]);
  const near = [...CARDS.values()].filter(
    (card) => card.region === region && !taken.has(card.id) && card.load.kind !== "speed",
  );
  const add =
    near.length > 0 && random.chance(0.25)
      ? [random.one(near)].map(({ id }) => ({
          card: id,
          ...(random.chance(0.5) && { phase: random.one(protocol.phases).id }),
          why: WHY,
          dose: random.chance(0.4) ? { per_week: random.whole(1, 3) } : {},
        }))
      : [];
  const left = named.filter(
    (card) => !leaveOut.includes(card) && !swap.some((one) => one.card === card),
  );
  const redose =
    left.length > 0 && random.chance(0.35)
      ? [random.one(left)].map((card) => redoseOf(card, protocol, random))
      : [];
  const cards = [...left, ...swap.map(({ to }) => to), ...add.map(({ card }) => card)].map(cardOf);
  return { leaveOut: leaveOut.map((card) => ({ card, why: WHY })), swap, add, redose, cards };
}

/** A dose that differs, of the shape that the protocol states. */
function redoseOf(card: string, protocol: ProtocolText, random: Random) {
  const stated = protocol.phases.flatMap(({ exercises }) =>
    exercises.filter((one) => one.card === card).flatMap((one) => dosesOf(one)),
  );
  const own = cardOf(card).dose;
  const counted =
    stated.some((dose) => "reps" in dose) ||
    (!stated.some((dose) => "time" in dose || "distance" in dose || "hold" in dose) &&
      "reps" in own);
  const holds = stated.some((dose) => "hold" in dose) || "hold" in own;
  const choices: DoseText[] = [
    { rest: random.one(["45 s", "90 s", "2 min", "2.5 min"]) },
    { effort: random.one([3, 4.5, 6, 7]) },
    ...(counted && !holds
      ? [
          { sets: 3, reps: [12, 10, 8] },
          { sets: 2, reps: "6-8" },
          { sets: 1, reps: random.whole(1, 20) },
          { tempo: "2-1-X-0" },
        ]
      : []),
    ...(counted && !holds ? [{ time: "60 s" }, { sets: 3, time: "90 s" }] : []),
    ...(holds ? [{ hold: "7 s" }, { hold: "1 min" }] : []),
    ...(holds && counted
      ? [
          { sets: 3, reps: [5, 3, 2] },
          { sets: 2, reps: "4-6" },
        ]
      : []),
    ...(counted && !holds
      ? [
          { sets: 3, distance: "20 m" },
          { sets: 2, reps: 5, distance: "80 m" },
          { sets: 2, turns: { work: "40 s", easy: "20 s", times: 4 } },
        ]
      : []),
  ];
  return { card, why: WHY, dose: random.one(choices) };
}

function cardOf(id: string): CardText {
  const card = CARDS.get(id);
  if (!card) throw new Error(`no card ${id}`);
  return card;
}

/** Flags that ask for care and rule nothing out. */
function flagsFor(cards: readonly CardText[], random: Random): string[] {
  if (random.chance(0.5)) return [];
  const out = new Set(cards.flatMap(({ not_for = [] }) => not_for.map(({ flag }) => flag)));
  const careful = new Set(cards.flatMap(({ care = [] }) => care.map(({ flag }) => flag)));
  return random.some(
    [...careful].filter((flag) => !out.has(flag)),
    random.whole(1, 3),
  );
}

function measuresFor(
  cards: readonly CardText[],
  side: PlanText["side"],
  on: string,
  random: Random,
) {
  const sidesOf = (card: CardText) =>
    card.side === "each" ? (["left", "right"] as const) : (["both"] as const);
  return cards.flatMap((card): unknown[] => {
    const { kind, add } = card.load;
    if (kind === "weight" || add === "weight") {
      const load = card.region === "shoulder" ? random.whole(2, 6) : random.whole(8, 45);
      return sidesOf(card).map((tested) => ({
        test: "repetitions",
        card: card.id,
        side: tested,
        load: `${load + (tested === side ? 0 : 1)} kg`,
        reps: random.whole(6, 10),
        on,
      }));
    }
    if (kind === "hold" || "hold" in card.dose)
      return sidesOf(card).map((tested) => ({
        test: "hold",
        card: card.id,
        side: tested,
        time: `${random.whole(20, 60)} s`,
        on,
      }));
    if (kind === "speed")
      return [{ test: "speed", card: card.id, speed: `${random.whole(14, 26)} km/h`, on }];
    return [];
  });
}

function equipmentFor(cards: readonly CardText[], random: Random): unknown[] {
  const things = new Set(cards.flatMap(({ equipment = [] }) => equipment));
  const makers = cards.flatMap(({ load }) => {
    const { kind, add, with: options = [] } = load;
    if (options.length === 0 || (kind === "body" && add !== undefined && random.chance(0.2)))
      return [];
    return [random.one(options)];
  });
  for (const maker of makers) things.delete(maker);
  return [...things, ...[...new Set(makers)].map((have) => makerOf(have, random))];
}

function makerOf(have: string, random: Random): unknown {
  if (have === "band")
    return random.chance(0.2)
      ? have
      : { have, levels: random.one([[1, 2, 3], [1, 3], [2], [1, 2, 4, 6]]) };
  if (have.endsWith("machine"))
    return { have, from: "5 kg", up_to: "180 kg", steps: random.one(["2.5 kg", "5 kg", "10 kg"]) };
  if (have === "barbell")
    return {
      have,
      bar: random.one(["7.5 kg", "10 kg", "20 kg"]),
      plates: ["1.25 kg", "2.5 kg", "5 kg", "10 kg", "15 kg"],
    };
  if (have === "filled-bottle") return { have, from: "0.5 kg", up_to: "2 kg", steps: "0.5 kg" };
  if (random.chance(0.1)) return have;
  return random.one([
    { have, from: "1 kg", up_to: "40 kg", steps: random.one(["0.5 kg", "1 kg"]) },
    { have, from: "2 kg", up_to: "40 kg", steps: "4 kg" },
    { have, loads: ["1 kg", "2 kg", "3 kg", "4 kg", "6 kg", "8 kg", "10 kg", "12 kg", "16 kg"] },
    { have, loads: ["2.25 kg", "4.5 kg", "9 kg", "18 kg"] },
  ]);
}

const PARTS = ["morning", "midday", "evening"] as const;

function weekOf(
  protocol: ProtocolText,
  cards: readonly CardText[],
  starts: string,
  total: number,
  random: Random,
): WeekText {
  const doses = [
    ...protocol.phases.flatMap(({ exercises }) => exercises.flatMap((one) => dosesOf(one))),
    ...cards.map(({ dose }) => dose),
  ];
  const often = Math.max(1, ...doses.map((dose) => Number(dose.per_day ?? 1)));
  const daily = doses.some((dose) => dose.per_day !== undefined || dose.per_week === 7);
  const minutes = () => `${random.whole(9, 16) * 10} min`;
  const free = Object.fromEntries(
    WEEKDAY_IDS.filter(() => daily || random.chance(0.9)).map((day) => {
      const parts = random.some(PARTS, Math.max(often, random.whole(1, 3)));
      return [
        day,
        Object.fromEntries(
          (often > 1 ? (often > 2 ? PARTS : (["morning", "evening"] as const)) : parts).map(
            (part) => [part, minutes()],
          ),
        ),
      ];
    }),
  );
  const days = total * 7;
  const away = [
    ...(random.chance(0.3) ? [addDays(starts, random.whole(0, days))] : []),
    ...(random.chance(0.12)
      ? [random.whole(0, days)].map((at) => ({
          from: addDays(starts, at),
          to: addDays(starts, at + 1),
        }))
      : []),
    ...(random.chance(0.12)
      ? [random.whole(0, Math.max(0, total - 1))].map((at) => ({
          from: addDays(starts, at * 7),
          to: addDays(starts, at * 7 + 6),
        }))
      : []),
  ];
  const tissues = [...new Set(cards.flatMap((card) => card.tissues))];
  const events = random
    .some(EVENTS, random.chance(0.5) ? random.whole(1, 2) : 0)
    .map((what): EventText => {
      const weekly = random.chance(0.6);
      return {
        what,
        ...(weekly
          ? { day: random.one(WEEKDAY_IDS) }
          : { on: [...new Set([1, 2].map(() => addDays(starts, random.whole(0, days - 1))))] }),
        part: random.one(PARTS),
        ...(random.chance(0.4) && {
          hard: true,
          tissues: random.some(tissues, 2),
          ...(!daily &&
            random.chance(0.6) && {
              [random.one(["clear_before", "clear_after"])]: random.one(["12 h", "24 h"]),
            }),
        }),
        ...(!daily && random.chance(0.25) && { blocks: true }),
      };
    });
  return {
    free,
    away,
    events,
    prefer: random.some(WEEKDAY_IDS, random.whole(0, 3)),
    ...(random.chance(0.4) && { few_minutes: random.one(["5 min", "8 min", "15 min"]) }),
    hours: random.chance(0.4) ? random.one(HOURS) : undefined,
  };
}
