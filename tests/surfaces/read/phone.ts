/** Reads the data that the HTML file gives its script: what the screens of the phone show and count. */

import { addDays } from "../calendar-days.ts";
import { collector, type Fact, type Surface } from "../facts.ts";
import { type Context, readSide, waysOf } from "./context.ts";
import { DOSE_KINDS, doseFacts, NONE, saidByNumbers, weekKey } from "./dose-facts.ts";
import { readLoad, readWork, type SaidDose } from "./dose-words.ts";
import { gateFact } from "./gates.ts";
import { readHow } from "./how-words.ts";
import { plainNumber } from "./numbers.ts";
import { FREE, painFacts, readOver, readPain, sayCallLevel } from "./pain-words.ts";

interface PhoneBout {
  readonly key: string;
  readonly card: string;
  readonly title: string;
  readonly when?: string;
  readonly side: string;
  readonly sideWords?: string;
  readonly sets: number;
  readonly reps?: readonly { readonly low: number; readonly high: number }[];
  readonly holdS?: number;
  readonly timeS?: number;
  readonly distanceM?: number;
  readonly turns?: { readonly work: number; readonly easy: number; readonly times: number };
  readonly tempo?: Readonly<Record<"lower" | "bottom" | "lift" | "top", number | "X">>;
  readonly first: string;
  readonly restS?: number;
  readonly restRepsS?: number;
  readonly effort?: number;
  readonly kg?: number;
  readonly dose: readonly string[];
  readonly pain: {
    readonly kind: string;
    readonly comfortable: number;
    readonly during: number;
    readonly after: number;
  };
  readonly painWords: PainWords;
}

type PainWords = Readonly<Record<"rule" | "over" | "after" | "worse", string>>;

interface PhoneData {
  readonly plan: string;
  readonly client: string;
  readonly made: string;
  readonly language: string;
  readonly clinic: {
    readonly name: string;
    readonly phone: string;
    readonly phoneLink: string;
    readonly emergency: string;
    readonly emergencyLink: string;
  };
  readonly pain: {
    readonly callLevel: number;
    readonly severe: string;
    readonly settle: string;
  };
  readonly units: string;
  /** Minutes from midnight of the client's day. */
  readonly clock: Readonly<Record<string, number>>;
  readonly painWords: readonly PainWords[];
  readonly bouts: readonly (Omit<PhoneBout, "painWords"> & { readonly painWords: number })[];
  readonly kinds: readonly {
    readonly part: string;
    readonly minutes: number;
    readonly bouts: readonly number[];
    readonly short?: {
      readonly minutes: number;
      readonly bouts: readonly { readonly key: string; readonly sets: number }[];
    };
  }[];
  /** Its day, its week and its kind. */
  readonly sessions: readonly (readonly [string, number, number])[];
}

/** Two surfaces: the numbers that the phone counts with, and the words that it shows. */
export function readPhone(text: string, context: Context): Surface[] {
  const data = JSON.parse(text) as PhoneData;
  const words: Fact[] = [];
  const { facts, say } = collector();
  say("plan", "id", data.plan, "plan");
  say("client", "reference", data.client, "client");
  say("made", "", data.made, "made");
  say("language", "", data.language, "language");
  say("clinic", "name", data.clinic.name, "clinic.name");
  say("telephone", "clinic", data.clinic.phone, "clinic.phone");
  say("telephone", "emergency", data.clinic.emergency, "clinic.emergency");
  say("address of telephone", data.clinic.phone, data.clinic.phoneLink, "clinic.phoneLink");
  say(
    "address of telephone",
    data.clinic.emergency,
    data.clinic.emergencyLink,
    "clinic.emergencyLink",
  );
  say("signed", "", "signed", "(the script is there)");
  say("pain to call from", "", plainNumber(data.pain.callLevel), "pain.callLevel");
  sayCallLevel([data.pain.severe], say, "pain.severe", context);
  const short = new Map<string, number>();
  data.sessions.forEach(([date, week, kindAt], at) => {
    const kind = data.kinds[kindAt];
    if (!kind) throw new Error(`sessions[${at}] has no kind`);
    const place = `sessions[${at}] kinds[${kindAt}]`;
    const when = `${date} ${kind.part}`;
    const bouts = kind.bouts.map((n) => ({ n, bout: boutAt(data, n) }));
    say("session", when, "yes", place);
    say("minutes", when, String(kind.minutes), `${place}.minutes`);
    say("start", when, momentAt(date, data.clock[kind.part] ?? 0), "clock");
    say(
      "exercises",
      when,
      bouts
        .map(({ bout }) => bout?.title ?? "?")
        .sort()
        .join(", "),
      `${place}.bouts`,
    );
    const limits: string[] = [];
    for (const { n, bout } of bouts) {
      if (!bout) throw new Error(`${place}.bouts names bouts[${n}], which is not there`);
      const key = weekKey(week, bout.title);
      facts.push(...boutFacts(bout, key, `bouts[${n}]`, data.units, context));
      words.push(...wordFacts(bout, key, `bouts[${n}]`, context));
      limits.push(`${bout.title} ${painOf(bout)}`);
    }
    say("pain in a session", when, [...new Set(limits)].sort().join(", "), `${place}.bouts[].pain`);
    for (const { key, sets } of kind.short?.bouts ?? []) {
      const whole = bouts.find(({ bout }) => bout?.key === key)?.bout;
      if (!whole) say("short version", key, "is not in its session", `${place}.short`);
      else if (sets > whole.sets)
        say("short version", whole.title, `${sets} of ${whole.sets} sets`, `${place}.short`);
      else {
        const name = shortKey(key, whole.title, context);
        short.set(name, Math.max(sets, short.get(name) ?? 0));
      }
    }
  });
  for (const [title, sets] of short) say("short version", title, String(sets), "kinds[].short");
  const all = [
    ...DOSE_KINDS.filter((kind) => kind !== "load"),
    "session",
    "minutes",
    "start",
    "exercises",
    "pain in a session",
    "starts when",
  ];
  return [
    { name: "phone", facts, complete: new Set(all) },
    { name: "phone's words", facts: words, complete: new Set([...DOSE_KINDS, "pain during"]) },
  ];
}

function boutAt({ bouts, painWords }: PhoneData, n: number): PhoneBout | undefined {
  const bout = bouts[n];
  const words = bout && painWords[bout.painWords];
  return words && { ...bout, painWords: words };
}

export const painOf = ({ pain }: Pick<PhoneBout, "pain">): string =>
  pain.during === 0 ? FREE : plainNumber(pain.during);

function boutFacts(
  bout: PhoneBout,
  key: string,
  place: string,
  units: string,
  { cardByTitle }: Context,
): Fact[] {
  const { tempo, reps, pain } = bout;
  const card = cardByTitle(bout.title);
  const tempoText = tempo && [tempo.lower, tempo.bottom, tempo.lift, tempo.top].join("-");
  const said = saidByNumbers(
    {
      ...numbersOf(bout),
      reps: reps?.map(({ low, high }) => [low, high] as const),
      tempo: tempoText,
    },
    card,
  );
  // the phone counts kilograms alone: bands and speeds it only shows
  const load: SaidDose =
    bout.kg === undefined ? {} : { load: bout.kg === 0 ? NONE : massText(bout.kg, units) };
  return [
    ...doseFacts(key, { ...said, ...load }, place).filter(
      ({ kind }) => load.load !== undefined || !kind.startsWith("load"),
    ),
    { kind: "side", key, value: bout.side, place: `${place}.side` },
    gateFact(key, bout.when, `${place}.when`),
    {
      kind: "weight asked for",
      key,
      value: bout.kg === undefined ? "no" : "yes",
      place: `${place}.kg`,
    },
    { kind: "pain during", key: bout.title, value: painOf(bout), place: `${place}.pain` },
    {
      kind: "pain after",
      key: bout.title,
      value: pain.after === 0 ? FREE : plainNumber(pain.after),
      place: `${place}.pain`,
    },
  ];
}

/** What is counted in kilograms, in the unit that screens show; a pound is 0.45359237 kg. */
const massText = (kg: number, units: string): string =>
  units === "lb" ? `lb ${plainNumber(kg / 0.45359237)}` : `kg ${plainNumber(kg)}`;

function numbersOf({ sets, holdS, timeS, distanceM, turns, restS, restRepsS, effort }: PhoneBout) {
  return { sets, holdS, timeS, distanceM, turns, restS, restRepsS, effort };
}

function wordFacts(bout: PhoneBout, key: string, place: string, context: Context): Fact[] {
  const { language } = context;
  const [work = "", ...others] = bout.dose;
  const loads = others.filter((text) => canRead(() => readLoad(text, language)));
  const how = others.filter((text) => !loads.includes(text)).join(" · ");
  const said = {
    ...readWork(work, language),
    ...(loads[0] !== undefined && { load: readLoad(loads[0], language) }),
    ...readHow(how, language, waysOf(context.cardByTitle(bout.title), context)),
  };
  const side = bout.sideWords === undefined ? NONE : readSide(bout.sideWords, context, "side");
  const pain = readPain(bout.painWords.rule, context);
  return [
    ...doseFacts(key, said, `${place}.dose`),
    { kind: "side", key, value: side, place: `${place}.sideWords` },
    ...painFacts(bout.title, pain, `${place}.painWords.rule`),
    ...overFacts(bout, place, context),
  ];
}

/** The date and the clock on the wall, so many minutes after midnight of a day. */
function momentAt(date: string, minutes: number): string {
  const pad = (n: number) => String(n).padStart(2, "0");
  const clock = `${pad(Math.floor((minutes % 1440) / 60))}:${pad(minutes % 60)}`;
  return `${addDays(date, Math.floor(minutes / 1440))}T${clock}`;
}

/** "Phase · title", from the key "phase-id/card-id". */
function shortKey(key: string, title: string, { protocol }: Context): string {
  const phase = protocol.phases.find(({ id }) => key.startsWith(`${id}/`));
  return `${phase?.title} · ${title}`;
}

/** What the phone says to a number over the limit, and what it says of the hours after. */
function overFacts({ title, painWords }: PhoneBout, place: string, context: Context): Fact[] {
  const during = readOver(painWords.over, "over", context);
  const after = readOver(painWords.after, "after", context);
  return [
    { kind: "pain during", key: title, value: during, place: `${place}.painWords.over` },
    { kind: "pain after", key: title, value: after, place: `${place}.painWords.after` },
  ];
}

function canRead(read: () => unknown): boolean {
  try {
    read();
    return true;
  } catch {
    return false;
  }
}
