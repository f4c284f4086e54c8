/** Doses of every shape, chosen at random: each surface carries every stated number, read back from it. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { makeBooklet } from "../../src/booklet.ts";
import { phoneData } from "../../src/html/phone.ts";
import { segmentsOf } from "../../src/phone/pace/segments.ts";
import { planJson } from "../../src/plan-text/json.ts";
import { planTable } from "../../src/plan-text/table.ts";
import { asSigned } from "../support/signed.ts";
import { madeSmall } from "../support/small-course.ts";
import { DAY, english } from "../support/world.ts";

/** A dose as it is stated, and as it is read back: times in seconds, lengths in metres. */
interface Stated {
  readonly sets: number;
  /** Low and high of each set. */
  readonly reps?: readonly (readonly [number, number])[];
  readonly hold?: number;
  readonly time?: number;
  readonly distance?: number;
  readonly turns?: { readonly work: number; readonly easy: number; readonly times: number };
}

const sets = fc.integer({ min: 1, max: 4 });
const hold = fc.integer({ min: 2, max: 59 });
const time = fc.oneof(
  fc.integer({ min: 2, max: 119 }),
  fc.integer({ min: 2, max: 20 }).map((n) => n * 30),
);
const short = fc.oneof(fc.integer({ min: 2, max: 119 }), fc.constantFrom(120, 150, 180, 240));
const distance = fc.oneof(
  fc.integer({ min: 5, max: 999 }),
  fc.integer({ min: 10, max: 30 }).map((n) => n * 100),
);

/** A number, a range, or one number a set. */
const counted = fc
  .tuple(
    sets,
    fc.constantFrom("number", "range", "each"),
    fc.array(fc.integer({ min: 2, max: 15 }), { minLength: 5, maxLength: 5 }),
  )
  .map(([n, kind, [low = 1, more = 1, ...rest]]) => {
    const pair = (a: number, b: number) => [a, b] as const;
    if (kind === "each" && n > 1) {
      return { sets: n, reps: [low, low + 1, ...rest].slice(0, n).map((each) => pair(each, each)) };
    }
    const high = kind === "range" ? low + more : low;
    return { sets: n, reps: Array.from({ length: n }, () => pair(low, high)) };
  });

const SHAPES: Readonly<Record<string, fc.Arbitrary<Stated>>> = {
  repetitions: counted,
  "a hold": fc.record({ sets, hold }),
  holds: fc.tuple(counted, hold).map(([dose, each]) => ({ ...dose, hold: each })),
  time: fc.record({ sets, time }),
  distance: fc.record({ sets, distance }),
  distances: fc
    .tuple(counted, fc.integer({ min: 5, max: 300 }))
    .map(([dose, each]) => ({ ...dose, distance: each })),
  turns: fc.record({
    sets,
    turns: fc.record({ work: short, easy: short, times: fc.integer({ min: 2, max: 9 }) }),
  }),
};

/** As an author writes it. */
function written({ sets: n, reps, hold: held, time: timed, distance: far, turns }: Stated): string {
  const each = reps?.map(([low, high]) => (low === high ? `${low}` : `${low}-${high}`));
  const stated = each && (new Set(each).size > 1 ? `[${each.join(", ")}]` : each[0]);
  return `{ ${[
    `sets: ${n}`,
    stated && `reps: ${stated}`,
    held && `hold: ${held} s`,
    timed && `time: ${timed} s`,
    far && `distance: ${far} m`,
    turns && `turns: { work: ${turns.work} s, easy: ${turns.easy} s, times: ${turns.times} }`,
    "per_week: 1",
  ]
    .filter(Boolean)
    .join(", ")} }`;
}

const TIME = String.raw`(?:\d+ (?:seconds?|minutes?|min|s)|\d+ min \d+ s)`;

function secondsIn(text: string): number {
  const [, minutes = "0"] = /(\d+) min/.exec(text) ?? [];
  const [, seconds = "0"] = /(\d+) s/.exec(text) ?? [];
  return Number(minutes) * 60 + Number(seconds);
}

const metresIn = (text: string): number =>
  text.endsWith("km") ? Math.round(Number.parseFloat(text) * 1000) : Number.parseFloat(text);

/** "12", "6 to 8", "6–8" and "12, 10, 8" for so many sets. */
function repsIn(text: string, n: number): readonly (readonly [number, number])[] {
  const list = text.split(", ").map((part) => {
    const [low = Number.NaN, high = low] = part.split(/ to |–/).map(Number);
    return [low, high] as const;
  });
  return list.length === 1 ? Array.from({ length: n }, () => list[0] ?? [0, 0]) : list;
}

/** The page's words, read by a reader who knows nothing but English. */
function readWords(text: string): Stated {
  const turns = new RegExp(
    `^(?:(\\d+) sets: )?[Gg]o for (${TIME}), ease off for (${TIME}), (\\d+) times$`,
  ).exec(text);
  if (turns) {
    const [, n = "1", work = "", easy = "", times = ""] = turns;
    const parts = { work: secondsIn(work), easy: secondsIn(easy), times: Number(times) };
    return { sets: Number(n), turns: parts };
  }
  const holds = new RegExp(`^(\\d+) holds? of (${TIME})$`).exec(text);
  if (holds) return { sets: Number(holds[1]), hold: secondsIn(holds[2] ?? "") };
  const plain = /^(?:(\d+) times )?([\d.]+ (?:km|m))$/.exec(text);
  if (plain) return { sets: Number(plain[1] ?? 1), distance: metresIn(plain[2] ?? "") };
  const timed = new RegExp(`^(?:(\\d+) times )?(${TIME})$`).exec(text);
  if (timed) return { sets: Number(timed[1] ?? 1), time: secondsIn(timed[2] ?? "") };
  const counts = new RegExp(
    `^(\\d+) sets?(?: of|:) ([\\d, ]+?(?: to \\d+)?)(?: holds?, (${TIME}) each| times? ([\\d.]+ k?m))?$`,
  ).exec(text);
  if (!counts) throw new Error(`not understood: ${text}`);
  const [, n = "", list = "", held, far] = counts;
  return {
    sets: Number(n),
    reps: repsIn(list, Number(n)),
    ...(held && { hold: secondsIn(held) }),
    ...(far && { distance: metresIn(far) }),
  };
}

/** The short form that the diary has: signs for what they say plainly, words for all else. */
function readShort(text: string): Stated {
  const [, n, amount = ""] = /^(\d+) × (.+)$/.exec(text) ?? [];
  if (n === undefined) return readWords(text);
  const sets = Number(n);
  if (/^[\d–]+$/.test(amount)) return { sets, reps: repsIn(amount, sets) };
  return amount.endsWith("m")
    ? { sets, distance: metresIn(amount) }
    : { sets, hold: secondsIn(amount) };
}

/** What the companion counts: one entry a set, from the parts that it leads through. */
function readPace(segments: ReturnType<typeof segmentsOf>): Stated {
  const numbers = [...new Set(segments.map(({ set }) => set))];
  const inSet = (set: number) => segments.filter((one) => one.set === set && one.kind !== "ready");
  const [first, second] = inSet(1);
  const enough = numbers.map((set) => {
    const { enough: low = 0, reps: high = 0 } = inSet(set)[0] ?? {};
    return [low, high] as const;
  });
  const reps = first?.reps === undefined ? {} : { reps: enough };
  if (second?.kind === "easy") {
    const turns = { work: first?.seconds ?? 0, easy: second.seconds ?? 0, times: first?.reps ?? 0 };
    return { sets: numbers.length, turns };
  }
  if (first?.kind === "hold") return { sets: numbers.length, ...reps, hold: first.seconds ?? 0 };
  if (first?.kind === "work" && first.seconds !== undefined) {
    return { sets: numbers.length, time: first.seconds };
  }
  return { sets: numbers.length, ...reps };
}

/** The amounts of a bout as the machine form promises them. */
interface JsonBout {
  readonly sets: number;
  readonly reps: number | readonly number[] | null;
  readonly reps_by_set: readonly (number | readonly number[])[] | null;
  readonly hold_s: number | null;
  readonly time_s: number | null;
  readonly distance_m: number | null;
  readonly turns: {
    readonly work_s: number;
    readonly easy_s: number;
    readonly times: number;
  } | null;
}

/** A time and a single hold are written alike where it is short: both are a number of seconds a set. */
const asShort = ({ time: timed, ...rest }: Stated): Stated =>
  timed === undefined ? rest : { ...rest, hold: timed };

/** How far is said beside the pace; the client ends a distance. */
const asPaced = ({ distance: _far, ...rest }: Stated): Stated => rest;

describe.each(Object.entries(SHAPES))("%s", (_name, shape) => {
  const doses = fc.sample(shape, { numRuns: 24, seed: 11 });
  // a card whose own dose no hold could be mistaken to continue
  const card = "{ sets: 1, distance: 1 m, per_week: 1 }";
  const { made, workspace } = madeSmall({ card, doses: doses.map(written) });
  const words = english();
  const booklet = makeBooklet(asSigned(made), workspace, words, DAY);

  test("the page of its phase", () => {
    const read = booklet.phases.map(({ rows }) => readWords(rows[0]?.doses[0]?.work ?? ""));
    expect(read).toEqual(doses);
  });

  test("the terminal", () => {
    const lines = planTable(made, workspace.cards.library, words).split("\n");
    const work = lines.flatMap((line) => /^ {4}Week \d+ {2,}(.*?) {2,}/.exec(line)?.[1] ?? []);
    expect(work.map(readWords)).toEqual(doses);
  });

  test("the diary", () => {
    let last = "";
    const rows = booklet.diary
      .flatMap(({ weeks }) => weeks)
      .map(({ doses }) => {
        last = doses[0]?.dose ?? last;
        return last;
      });
    expect(rows.map((text) => asShort(readShort(text)))).toEqual(doses.map(asShort));
  });

  test("the machine form", () => {
    const json = JSON.parse(JSON.stringify(planJson(made, [])));
    const read = json.weeks.map((week: { sessions: { bouts: JsonBout[] }[] }) => {
      const bout = week.sessions[0]?.bouts[0];
      if (!bout) throw new Error("a week without its bout");
      const { turns } = bout;
      const list =
        bout.reps_by_set ?? (bout.reps === null ? undefined : Array(bout.sets).fill(bout.reps));
      return {
        sets: bout.sets,
        ...(list && {
          reps: list.map((each: number | readonly number[]) =>
            Array.isArray(each) ? each : [each, each],
          ),
        }),
        ...(bout.hold_s !== null && { hold: bout.hold_s }),
        ...(bout.time_s !== null && { time: bout.time_s }),
        ...(bout.distance_m !== null && { distance: bout.distance_m }),
        ...(turns && { turns: { work: turns.work_s, easy: turns.easy_s, times: turns.times } }),
      };
    });
    expect(read).toEqual(doses);
  });

  test("the phone: its words and what it counts", () => {
    const data = JSON.parse(JSON.stringify(phoneData(booklet, words)));
    const bouts = data.sessions.map(
      ([, , kind]: [string, number, number]) => data.bouts[data.kinds[kind].bouts[0]],
    );
    expect(bouts.map((bout: { dose: string[] }) => readWords(bout.dose[0] ?? ""))).toEqual(doses);
    expect(bouts.map((bout: never) => readPace(segmentsOf(bout)))).toEqual(doses.map(asPaced));
  });
});

test("a run in turns is run and walked", () => {
  const dose = "{ sets: 1, turns: { work: 3 min, easy: 2 min, times: 6 }, per_week: 3 }";
  const { made, workspace } = madeSmall({ trains: "running", card: dose });
  const booklet = makeBooklet(asSigned(made), workspace, english(), DAY);
  expect(booklet.phases[0]?.rows[0]?.doses[0]?.work).toBe("Run 3 minutes, walk 2 minutes, 6 times");
  expect(booklet.sessions[0]?.minutes).toBe(30);
});
