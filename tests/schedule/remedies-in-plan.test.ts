/** What a fault offers, written into the plan file as its reader would, lets the plan be laid out. */
import { describe, expect, test } from "vitest";
import { makeProgram } from "../../src/booklet.ts";
import { withReason } from "../../src/edits/edit.ts";
import type { Fault } from "../../src/faults/fault.ts";
import { numberedRemedies } from "../../src/faults/print.ts";
import { spliceFrontMatter } from "../../src/read/splice.ts";
import { change, DEMO, demoClinic, shippedText } from "../support/world.ts";

const ACHILLES = `${DEMO}/achilles.md`;
const SHOULDER = `${DEMO}/shoulder.md`;
const DAYS = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"];
const TIMES: Readonly<Record<string, number>> = { once: 1, twice: 2, "three times": 3 };

const evenings = (text: string, days: readonly string[], minutes: number) => {
  const free = days.map((day) => `    ${day}: { evening: ${minutes} min }\n`).join("");
  return change(text, /free:\n(?: {4}\w.*\n)+/, `free:\n${free}`);
};
const everyDay = DAYS.map((day) => day.slice(0, 3).toLowerCase());
const plain = change(
  change(shippedText(ACHILLES), / {2}away:.*\n/, ""),
  /redose:[\s\S]*?(?=signed:)/,
  "",
);
const everySecondDay = change(
  plain,
  "signed:",
  `redose:\n${["heel-raise-seated-weight", "heel-raise-one-leg-step-weight"]
    .map((card) => `  - { card: ${card}, why: x, dose: { every: 2 days } }\n`)
    .join("")}signed:`,
);

function made(file: string, text: string, files: Readonly<Record<string, string>> = {}) {
  return makeProgram(demoClinic({ ...files, [file]: text }), file);
}

/** Each remedy that a hint prints. */
function printed(hint: string): string[] {
  const sentences = hint.match(/(?:Open|Allow|Do) [^.]*\./g) ?? [];
  return sentences.filter((one) => !one.startsWith("Open and"));
}

/** The plan with a printed remedy; throws where it cannot be written. */
function withRemedy(text: string, sentence: string, cards: ReadonlyMap<string, string>): string {
  const parts = sentence
    .replace(/\.$/, "")
    .split(/(?:, | and )(?=(?:do|open|allow) )/i)
    .map((part) => part.replace(/^\w/, (letter) => letter.toLowerCase()));
  return parts.reduce((plan, part) => withChange(plan, part, cards), text);
}

function withChange(text: string, part: string, cards: ReadonlyMap<string, string>): string {
  const open = /^open (\w+) (\w+) for (\d+) minutes$/.exec(part);
  if (open) {
    const [, day = "", when, minutes] = open;
    const key = day.slice(0, 3).toLowerCase();
    const line = new RegExp(`^( {4}${key}: \\{.*?) \\}`, "m");
    return line.test(text)
      ? change(text, line, `$1, ${when}: ${minutes} min }`)
      : change(text, "  free:\n", `  free:\n    ${key}: { ${when}: ${minutes} min }\n`);
  }
  const more = /^allow (\d+) minutes more on (\w+) (\w+)$/.exec(part);
  if (more) {
    const [, minutes, day = "", when] = more;
    const key = day.slice(0, 3).toLowerCase();
    const line = new RegExp(`^( {4}${key}: \\{.*?${when}: )(\\d+) min`, "m");
    const now = Number(line.exec(text)?.[2]);
    return change(text, line, `$1${now + Number(minutes)} min`);
  }
  const each = /^allow (\d+) minutes more each time$/.exec(part);
  if (each) {
    const block = /free:\n(?: {4}\w.*\n)+/.exec(text)?.[0] ?? "";
    return change(
      text,
      block,
      block.replace(/(\d+) min/g, (_, now) => `${Number(now) + Number(each[1])} min`),
    );
  }
  const often = /^do “(.+?)” (once|twice|three times) a (week|day)(?: in weeks? (.+))?$/.exec(part);
  if (often) {
    const [, title = "", times = "", span, weeks] = often;
    return redosed(text, cards.get(title), `per_${span}: ${TIMES[times]}`, weeks);
  }
  const sets = /^do (\d+) sets? of “(.+?)”(?: in weeks? (.+))?$/.exec(part);
  if (sets) return redosed(text, cards.get(sets[2] ?? ""), `sets: ${sets[1]}`, sets[3]);
  throw new Error(`not a change: ${part}`);
}

function redosed(text: string, card: string | undefined, dose: string, weeks?: string): string {
  if (card === undefined) throw new Error("no such exercise");
  const span = weeks === undefined ? "" : ` weeks: ${weeks.replace(" to ", "-")},`;
  const entry = `  - { card: ${card},${span} why: No time., dose: { ${dose} } }\n`;
  const known = new RegExp(
    `( {2}- \\{? ?card: ${card}[\\s\\S]*?dose: \\{ )([^}]*?)(every|per_day|per_week): [^,}]*?( \\})`,
  );
  const has = /redose:[\s\S]*?(?=signed:)/.exec(text)?.[0] ?? "";
  if (known.test(has) && weeks === undefined)
    return text.replace(has, has.replace(known, `$1$2${dose}$4`));
  return has === ""
    ? change(text, "signed:", `redose:\n${entry}signed:`)
    : change(text, has, `${has}${entry}`);
}

/** Plans whose sessions have no place in the week. */
const COLLIDING: readonly (readonly [string, string, string])[] = [
  ["three evenings in a row", ACHILLES, evenings(plain, ["mon", "tue", "wed"], 45)],
  ["evenings that are too short", ACHILLES, evenings(plain, ["mon", "wed", "fri"], 8)],
  ["twice a day with the evenings alone", SHOULDER, evenings(shippedText(SHOULDER), everyDay, 60)],
  ["every second day on two evenings", ACHILLES, evenings(everySecondDay, ["mon", "thu"], 45)],
];

const OTHER_WEEKS = `  other_weeks:
    - from: 2026-12-14
      free:
        mon: { evening: 45 min }
        tue: { evening: 45 min }
        wed: { evening: 45 min }`;
const ROTA = `  rota:
    on: 4
    off: 3
    from: 2026-12-14
    free_off: { evening: 45 min }`;

describe("every remedy, taken as the edits it is", () => {
  const tight = evenings(plain, ["mon", "tue", "wed"], 45);
  const weeksAway = change(
    tight,
    "  events:",
    "  away: [{ from: 2026-12-14, to: 2026-12-27 }]\n  events:",
  );
  const slow = "templates/protocols/achilles-heavy-slow-resistance.md";
  const growing = (text: string) => ({
    [slow]: shippedText(slow).replaceAll(/^( +)weeks:\n/gm, `$1grows: ${text}\n$1weeks:\n`),
  });
  const lightBar = change(plain, /bar: 10 kg, plates: .*\]/, "bar: 10 kg, plates: [10 kg]");
  const inWeek = (text: string) => change(tight, "  events:", `${text}\n  events:`);
  const plans: typeof COLLIDING = [
    ...COLLIDING,
    ["other weeks from the third on", ACHILLES, inWeek(OTHER_WEEKS)],
    ["a rota from the third week on", ACHILLES, inWeek(ROTA)],
    ["a rota whose days are too short", ACHILLES, inWeek(change(ROTA, "45 min", "8 min"))],
    ["weeks away before and after", ACHILLES, weeksAway],
    ["a bar that ends too early", ACHILLES, lightBar],
    ["a bar that ends too early, and a course that lets more grow", ACHILLES, lightBar],
    ["no band", SHOULDER, change(shippedText(SHOULDER), / {2}- \{ have: band.*\n/, "")],
    [
      "a flag that rules out",
      ACHILLES,
      change(plain, "flags: none", "flags: [tendon-rupture-recent]"),
    ],
    [
      "a swap to what needs a machine",
      ACHILLES,
      change(plain, "to: heel-raise-one-leg-step-weight", "to: heel-press-leg-press"),
    ],
  ];
  test.each(plans)("%s", { timeout: 240_000 }, (name, file, text) => {
    const files = name.includes("lets more grow") ? growing("{ reps: 20, tempo: 6-0-6-0 }") : {};
    const found = made(file, text, files).faults.filter(({ remedies }) => remedies.length > 0);
    const remedies = numberedRemedies(found);
    expect(remedies).not.toEqual([]);
    for (const { sentence, edits } of remedies) {
      const spliced = spliceFrontMatter(text, withReason(edits, "No time: work, and a move."));
      expect([sentence, spliced?.reprinted]).toEqual([sentence, []]);
      const { faults } = made(file, spliced?.text ?? "", files);
      const mended = found.filter(({ remedies }) => remedies.some((one) => one.edits === edits));
      const left = faults.filter(({ code, message }) =>
        mended.some((one) => one.code === code && (isOfWeek(one) || one.message === message)),
      );
      expect([sentence, left.map(({ message }) => message)]).toEqual([sentence, []]);
    }
  });

  test.each([
    ["the usual week alone", tight, []],
    ["other weeks", inWeek(OTHER_WEEKS), ["the usual week", "the other weeks from 2026-12-14 on"]],
    [
      "a rota",
      inWeek(change(ROTA, "45 min", "8 min")),
      ["the usual week", "every day off of the rota"],
    ],
  ])("more free time is written into %s, and that is said", (_name, text, places) => {
    const [fault] = made(ACHILLES, text).faults.filter(({ code }) => code === "week-impossible");
    const times = (fault?.remedies ?? []).filter(({ edits }) =>
      edits.some(({ path }) => path[0] === "week"),
    );
    expect(times).not.toEqual([]);
    const said = times.map(({ sentence }) => sentence).join("\n");
    expect(said.includes("This is written for")).toBe(places.length > 0);
    for (const place of places) expect(said).toContain(place);
  });

  test.each([
    ["nothing may grow", undefined, []],
    // with 9.3 % of 68 kg of body, 51.3 kg ten times is a 1RM of 68.4 kg (Epley 1985): 36.3 kg are a 26 RM
    ["to 20", "{ reps: 20 }", [{ reps: 20, target: "30 kg" }]],
    ["to 40", "{ reps: 40 }", [{ reps: 26, target: "30 kg" }]],
    ["no further than the weeks ask for already", "{ reps: 6 }", []],
    ["a slower tempo", "{ tempo: 6-0-6-0 }", [{ tempo: "6-0-6-0", target: "30 kg" }]],
    ["a tempo that is no slower", "{ tempo: 2-0-2-0 }", []],
    [
      "both",
      "{ reps: 20, tempo: 6-0-6-0 }",
      [
        { reps: 20, target: "30 kg" },
        { tempo: "6-0-6-0", target: "30 kg" },
      ],
    ],
  ])("in place of a load that there is not: %s", (_name, grows, doses) => {
    const files = grows === undefined ? {} : growing(grows);
    const { value, faults } = made(ACHILLES, lightBar, files);
    expect(value).toBeUndefined();
    const short = faults.find(
      ({ code, message }) => code === "load-short" && message.includes("heel-raise-seated-weight"),
    );
    const edits = (short?.remedies ?? []).flatMap((one) => one.edits);
    const redoses = edits.filter(({ path }) => path[0] === "redose");
    expect(redoses.map(({ value }) => value)).toEqual(
      doses.map((dose) => ({
        card: "heel-raise-seated-weight",
        phase: "heavy-slow",
        weeks: "1-12",
        why: null,
        dose,
      })),
    );
  });

  test("a dose is changed in its own weeks, counted as the course counts them", () => {
    const [fault] = made(ACHILLES, weeksAway).faults.filter(
      ({ code }) => code === "week-impossible",
    );
    const edits = (fault?.remedies ?? []).flatMap((remedy) => remedy.edits);
    const redoses = edits.filter(({ path }) => path[0] === "redose");
    expect(redoses).not.toEqual([]);
    for (const { value } of redoses) expect(value).toMatchObject({ why: null });
  });
});

const isOfWeek = ({ code }: Fault): boolean => code.startsWith("week-");

describe("every printed remedy, written into the plan", () => {
  test.each(COLLIDING)("%s", { timeout: 120_000 }, (_name, file, text) => {
    const before = made(file, text);
    const hint = before.faults.find(({ code }) => code === "week-impossible")?.hint ?? "";
    const shipped = made(file, shippedText(file)).value;
    const cards = new Map(
      shipped?.program.phases.flatMap(({ exercises }) =>
        exercises.map(({ card }) => [card.card.title, card.card.id] as const),
      ),
    );
    const remedies = printed(hint);
    expect(remedies).not.toEqual([]);
    for (const remedy of remedies) {
      const { value, faults } = made(file, withRemedy(text, remedy, cards));
      const errors = faults.filter(({ level }) => level === "error");
      expect([remedy, errors.map(({ message }) => message)]).toEqual([remedy, []]);
      expect(value).toBeDefined();
    }
  });
});
