/**
 * One fact, read back from every surface: HTML, PDF, phone, calendar file, JSON and terminal say the
 * same for every shipped protocol and many invented clients. `npm run surfaces` looks at thousands;
 * SURFACES_CLIENTS, SURFACES_SEED and SURFACES_PDFS say how many, from which seed on, how many printed.
 */
import { describe, expect, test } from "vitest";
import { checkClient, pdfSurfaces, surfacesOf } from "./check.ts";
import { type Client, clientOf } from "./clients.ts";
import { compare } from "./facts.ts";
import { type Outputs, outputsOf, printAll } from "./outputs.ts";
import { readPdf } from "./read/pdf.ts";
import { PROTOCOLS } from "./shipped.ts";
import { Tally } from "./tally.ts";

const whole = (name: string, usual: number): number => Number(process.env[name] ?? usual);

const CLIENTS = whole("SURFACES_CLIENTS", 30);
const SEED = whole("SURFACES_SEED", 1);
const PDFS = whole("SURFACES_PDFS", 4);
/** From so many clients on every kind of them has to be there. */
const MANY = 100;
/** So many booklets are kept in memory until they are printed. */
const BATCH = 20;
const HOURS_MS = 8 * 3_600_000;

/** Kinds of facts, and how often at least each is held against another surface for one client. */
const LEAST: Readonly<Record<string, number>> = {
  "address of telephone": 2,
  client: 4,
  clinic: 2,
  clinician: 0.5,
  course: 4,
  "course title": 0.8,
  distance: 20,
  effort: 10,
  "emergency signs": 0.5,
  exercises: 30,
  goal: 1,
  "go back": 0.3,
  hold: 20,
  language: 1,
  "lengths in the week": 5,
  load: 20,
  "load in short": 20,
  made: 0.4,
  minutes: 50,
  "move on": 0.3,
  "note of a day": 0.5,
  often: 10,
  pace: 20,
  "pain after": 2,
  "pain during": 4,
  "pain in a session": 10,
  "pain to call from": 5,
  paper: 0.8,
  "phase lengths": 0.5,
  "phase weeks": 0.5,
  plan: 1,
  reps: 20,
  rest: 20,
  "rest between repetitions": 10,
  seconds: 20,
  session: 50,
  sets: 20,
  "short version": 0.1,
  side: 20,
  signed: 3,
  "signed on": 0.4,
  start: 30,
  "stop signs": 0.5,
  telephone: 5,
  time: 20,
  "times in the week": 10,
  title: 0.8,
  turns: 20,
  "week dates": 10,
  "week phases": 3,
  "week sessions": 5,
};

describe("every surface states the same facts", () => {
  test(`for ${CLIENTS} clients from seed ${SEED} on`, { timeout: HOURS_MS }, async () => {
    const tally = new Tally((text) => report(`a disagreement: ${text}`));
    let toPrint: Outputs[] = [];
    const print = async () => {
      await comparePrinted(toPrint, tally);
      toPrint = [];
    };
    // plans that cannot be made do not count
    for (let seed = SEED; tally.made < CLIENTS && tally.impossible <= CLIENTS; seed += 1) {
      const outputs = await compared(clientOf(seed), tally);
      if (outputs && (tally.made * PDFS) % CLIENTS < PDFS) toPrint.push(outputs);
      if (toPrint.length === BATCH) await print();
      progress(tally, seed);
    }
    await print();
    report(tally.summary());

    const few = Object.entries(LEAST).filter(
      ([kind, n]) => (tally.compared.get(kind) ?? 0) < n * tally.made,
    );
    expect.soft(tally.disagreements().join("\n\n")).toBe("");
    expect.soft(tally.unplaced, "a plan that cannot be made is told at its place").toEqual([]);
    expect.soft(tally.impossible, "most plans can be made").toBeLessThan(CLIENTS / 2);
    expect
      .soft(tally.protocols.size, "every protocol is there")
      .toBe(Math.min(PROTOCOLS.size, CLIENTS));
    expect.soft(tally.printed, "booklets are printed").toBe(Math.min(PDFS, tally.made));
    expect.soft(few, "facts of every kind are compared").toEqual([]);
    const without = [...tally.traits].filter(([, n]) => n === 0).map(([trait]) => trait);
    if (CLIENTS >= MANY) expect.soft(without, "clients of every kind are there").toEqual([]);
  });
});

/** Compares a client's files; undefined where the plan cannot be made. */
async function compared(client: Client, tally: Tally): Promise<Outputs | undefined> {
  const outputs = await outputsOf(client);
  if ("faults" in outputs) {
    tally.stopped(client, outputs.faults);
    return undefined;
  }
  tally.begin(outputs);
  try {
    tally.take(client, checkClient(outputs), outputs.json.length);
  } catch (error) {
    tally.unread(client, "files", error);
  }
  return outputs;
}

async function comparePrinted(toPrint: readonly Outputs[], tally: Tally): Promise<void> {
  await printAll(toPrint, async (outputs, pdf) => {
    const { client } = outputs;
    tally.printed += 1;
    try {
      const printed = pdfSurfaces(client, await readPdf(pdf));
      tally.take(client, compare([...surfacesOf(outputs), ...printed]), outputs.json.length);
    } catch (error) {
      tally.unread(client, "PDF", error);
    }
    progress(tally, client.seed);
  });
}

function progress({ made, impossible, printed, patterns }: Tally, seed: number): void {
  if ((made + impossible + printed) % 50 !== 0) return;
  report(
    `client ${seed}: ${made} compared, ${impossible} not possible, ${printed} printed, ${patterns.size} disagreements`,
  );
}

/** What a long run tells on its way. */
function report(text: string): void {
  if (CLIENTS >= MANY) process.stderr.write(`${text}\n`);
}
