/** Nothing that is printed names an exercise that a flag, a thing the client lacks or the plan rules out. */
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { makeBooklet } from "../../src/booklet.ts";
import { phoneData } from "../../src/html/phone.ts";
import { PROTOCOLS, shippedCourse, textOf } from "../support/shipped.ts";
import { DAY, demoClinic, english, ROOT, shippedText } from "../support/world.ts";

/** A card as its author wrote it. */
interface Written {
  readonly id: string;
  readonly title: string;
  readonly trains: string;
  readonly demand: number;
  readonly equipment?: readonly string[];
  readonly load: { readonly kind: string; readonly with?: readonly string[] };
  readonly easier?: readonly { readonly to: string }[];
  readonly not_for?: readonly { readonly flag: string }[];
}

const CARDS: ReadonlyMap<string, Written> = new Map(
  readdirSync(join(ROOT, "exercises"), { recursive: true, encoding: "utf8" })
    .filter(
      (name) => name.includes("/") && /[a-z]\.md$/.test(name) && !/\.[a-z]{2}\.md$/.test(name),
    )
    .map((name) => parse(shippedText(`exercises/${name}`).split(/^---$/m)[1] ?? "") as Written)
    .map((card) => [card.id, card]),
);

const HOME: ReadonlySet<string> = new Set(
  Object.entries(
    (
      parse(shippedText("exercises/vocabulary.yaml")) as {
        equipment: Record<string, { home?: boolean }>;
      }
    ).equipment,
  ).flatMap(([id, { home }]) => (home ? [id] : [])),
);

const cardsOf = (protocol: string): string[] =>
  [
    ...shippedText(`templates/protocols/${protocol}.md`).matchAll(
      /^\s+- (?:\{ )?card: ([a-z0-9-]+)/gm,
    ),
  ].map(([, id = ""]) => id);

/** Everything down the ladder from these cards, they themselves not. */
function below(ids: readonly string[]): Written[] {
  const found = new Set<string>();
  const open = [...ids];
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    for (const { to } of CARDS.get(id)?.easier ?? []) {
      if (!found.has(to)) open.push(to);
      found.add(to);
    }
  }
  return [...found].filter((id) => !ids.includes(id)).flatMap((id) => CARDS.get(id) ?? []);
}

const flagsOf = ({ not_for = [] }: Written) => not_for.map(({ flag }) => flag);
const thingsOf = ({ equipment = [], load }: Written) => [
  ...equipment.filter((thing) => !HOME.has(thing)),
  ...(load.kind === "band" ? (load.with ?? []) : []),
];

const EVERYTHING = [
  "step",
  "handrail",
  "ball",
  "balance-board",
  "door-anchor",
  "strap",
  "low-box",
  "high-bench",
  "helper",
  "ankle-hold",
  "{ have: backpack, from: 1 kg, up_to: 60 kg, steps: 1 kg }",
  "{ have: barbell, bar: 20 kg, plates: [1.25 kg, 2.5 kg, 5 kg, 10 kg, 15 kg, 20 kg] }",
  "{ have: dumbbells, loads: [1 kg, 2 kg, 3 kg, 4 kg] }",
  "{ have: leg-press-machine, from: 20 kg, up_to: 400 kg, steps: 5 kg }",
  "{ have: hack-squat-machine, from: 20 kg, up_to: 300 kg, steps: 5 kg }",
  "{ have: ankle-weights, from: 1 kg, up_to: 10 kg, steps: 0.5 kg }",
  "{ have: band, levels: [1, 2, 3, 4, 5] }",
];
const withOnly = (thing: string) =>
  EVERYTHING.filter((one) => one !== thing && !one.startsWith(`{ have: ${thing},`));

/** All that a client reads of a course, on paper and on the phone. */
function printed(protocol: string, client: Parameters<typeof shippedCourse>[1]): string {
  const { html, print, made } = shippedCourse(protocol, client);
  const booklet = makeBooklet(made, demoClinic(), english(), DAY);
  return [
    textOf(html),
    textOf(print(DAY, "summary")),
    JSON.stringify(phoneData(booklet, english())),
  ].join("\n");
}

/** The cards that a text names: a title inside a longer one is that one's. */
function named(text: string): string[] {
  let rest = text;
  return [...CARDS.values()]
    .sort((a, b) => b.title.length - a.title.length)
    .flatMap(({ id, title }) => {
      const there = rest.includes(title);
      rest = rest.replaceAll(title, "…");
      return there ? [id] : [];
    });
}

interface Case {
  readonly protocol: string;
  readonly what: string;
  readonly client: Parameters<typeof shippedCourse>[1];
  readonly isOut: (card: Written) => boolean;
}

/** A case for each flag and each thing that an easier card needs and that the course itself does not. */
const CASES: Case[] = PROTOCOLS.flatMap((protocol) => {
  const own = cardsOf(protocol).flatMap((id) => CARDS.get(id) ?? []);
  const lower = below(own.map(({ id }) => id));
  const except = (all: readonly string[], not: readonly string[]) =>
    [...new Set(all)].filter((one) => !not.includes(one));
  const flags = except(lower.flatMap(flagsOf), own.flatMap(flagsOf));
  const things = except(lower.flatMap(thingsOf), own.flatMap(thingsOf));
  const out = own.length > 1 ? own.slice(0, 1) : [];
  return [
    ...flags.map(
      (flag): Case => ({
        protocol,
        what: flag,
        client: { more: `flags: [${flag}]`, things: EVERYTHING },
        isOut: (card) => flagsOf(card).includes(flag),
      }),
    ),
    ...things.map(
      (thing): Case => ({
        protocol,
        what: `no ${thing}`,
        client: { things: withOnly(thing) },
        isOut: (card) => thingsOf(card).includes(thing),
      }),
    ),
    ...out.map(
      ({ id }): Case => ({
        protocol,
        what: `without ${id}`,
        client: { more: `leave_out: [{ card: ${id}, why: Agreed. }]`, things: EVERYTHING },
        isOut: (card) => card.id === id,
      }),
    ),
  ];
});

test("there are such cases, of each kind", () => {
  for (const kind of [/^no /, /^without /, /^[a-z]+-[a-z-]+$/]) {
    expect(CASES.filter(({ what }) => kind.test(what)).length).toBeGreaterThan(2);
  }
});

test.each(CASES.map((one) => [one.protocol, one.what, one] as const))(
  "%s, %s",
  (protocol, _, { client, isOut }) => {
    const wrong = named(printed(protocol, client)).filter((id) => {
      const card = CARDS.get(id);
      return card !== undefined && isOut(card);
    });
    expect(wrong).toEqual([]);
  },
);

describe("on a bad day", () => {
  test.each(PROTOCOLS)("%s has nothing quick and nothing of the highest demand", (protocol) => {
    const { made } = shippedCourse(protocol);
    const booklet = makeBooklet(made, demoClinic(), english(), DAY);
    const short = booklet.sessions.flatMap(({ short: version }) => version?.bouts ?? []);
    const ids = [
      ...short.map(({ key }) => key.split("/")[1] ?? ""),
      ...booklet.phases.flatMap(
        ({ badDay }) => badDay?.version.bouts.map(({ key }) => key.split("/")[1] ?? "") ?? [],
      ),
    ];
    for (const id of new Set(ids)) {
      const card = CARDS.get(id);
      expect(["power", "running"], id).not.toContain(card?.trains);
      expect(card?.demand, id).toBeLessThan(8);
    }
  });
});
