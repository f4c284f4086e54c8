/** The comparison sees a printed booklet that states another fact: each row prints one booklet with one changed. */
import { beforeAll, describe, expect, test } from "vitest";
import { stringify } from "yaml";
import type { Booklet } from "../../src/compose/model.ts";
import { change } from "../support/world.ts";
import { pdfSurfaces, surfacesOf } from "./check.ts";
import type { Client } from "./clients.ts";
import { demoClient } from "./demo-client.ts";
import { compare, disagreementText } from "./facts.ts";
import { type Outputs, outputsOf, printAll } from "./outputs.ts";
import { readPdf } from "./read/pdf.ts";
import { protocolIn } from "./shipped.ts";

/** Six goals in large print, which fill more than a page. */
function withGoals(client: Client): Client {
  const goals = Array.from({ length: 6 }, (_, at) => ({
    what: `Walk round ${at + 1} lakes with my sister and her two dogs`,
    now: at,
    want: 10,
    on: "2026-11-23",
  }));
  const lines = goals.map((goal) => `  - ${JSON.stringify(goal)}\n`);
  return {
    ...client,
    edition: "large",
    plan: { ...client.plan, goals },
    text: change(client.text, /goals:\n(?: {2}- .*\n)+/, `goals:\n${lines.join("")}`),
  };
}

/** Turns of work and rest in large print: the longest words of a dose, beside a load and how often. */
function withTurns(client: Client): Client {
  const protocol = protocolIn("hamstring-lowering-480-in-eight-weeks", "en");
  const card = protocol.phases[0]?.exercises[0]?.card ?? "";
  const plan = {
    ...client.plan,
    protocol: protocol.id,
    measures: [],
    equipment: ["mat", "soft-pad", "ankle-hold", "pillow"],
    swap: [],
    leave_out: [],
    redose: [
      {
        card,
        why: "In turns.",
        dose: { sets: 2, turns: { work: "40 s", easy: "20 s", times: 4 } },
      },
    ],
  };
  return { ...client, edition: "large", protocol, plan, text: `---\n${stringify(plan)}---\n` };
}

const ROWS: readonly (readonly [string, (booklet: Booklet) => Booklet, string])[] = [
  [
    "the last goal",
    ({ cover, ...booklet }) => {
      const goals = cover.goals.map((goal) => ({
        ...goal,
        words: goal.words.replace("Now 5 out of 10", "Now 4 out of 10"),
      }));
      return { ...booklet, cover: { ...cover, goals } };
    },
    "goal",
  ],
  [
    "the clinic's telephone",
    (booklet) => ({ ...booklet, clinic: { ...booklet.clinic, phone: "01632 960 471" } }),
    "telephone",
  ],
];

let whole: Outputs;
let turns: Outputs;

beforeAll(async () => {
  whole = await made(withGoals(demoClient("achilles")));
  turns = await made(withTurns(demoClient("achilles")));
});

async function made(client: Client): Promise<Outputs> {
  const outputs = await outputsOf(client);
  if ("faults" in outputs) throw outputs.faults[0];
  return outputs;
}

/** Holds the files against a print of the booklet. */
async function compared(files: Outputs, booklet: Booklet = files.booklet) {
  let pages: ReturnType<typeof pdfSurfaces> = [];
  await printAll([{ ...files, booklet }], async ({ client }, pdf) => {
    pages = pdfSurfaces(client, await readPdf(pdf));
  });
  return compare([...surfacesOf(files), ...pages]).disagreements;
}

describe("a printed booklet", { timeout: 120_000 }, () => {
  test("agrees with the files, also where goals fill more than a page", async () => {
    expect((await compared(whole)).map(disagreementText)).toEqual([]);
  });

  test("agrees with the files, also where the words of a dose are long in large print", async () => {
    expect(turns.html).toContain("go for 40 seconds");
    expect((await compared(turns)).map(disagreementText)).toEqual([]);
  });

  test.each(ROWS)("is seen where it states another fact: %s", async (_name, broken, kind) => {
    const seen = await compared(whole, broken(whole.booklet));
    expect(seen.map((one) => one.kind)).toContain(kind);
  });
});
