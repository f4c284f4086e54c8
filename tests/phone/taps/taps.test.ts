/**
 * Clients who tap at random for twelve weeks, on the built companion in a real browser: no number tapped is lost,
 * advice is what the page says, and nothing offered breaks recovery or a time kept clear. `npm run taps` lets
 * 10,000 tap. TAPS_CLIENTS says how many, TAPS_SEED which is the first.
 */
import { availableParallelism } from "node:os";
import { expect, test, vi } from "vitest";
import { type Issued, programOfSlot, SLOTS } from "./booklets.ts";
import { Tapping } from "./browser.ts";
import { Tally } from "./tally.ts";

/** What would help a week that cannot be laid out takes seconds to find; it has tests of its own. */
vi.mock(import("../../../src/week/explain/explain.ts"), () => ({
  explainProgram: () => ({ collision: [], least: [], larger: [], complete: false }),
}));

const { TAPS_CLIENTS, TAPS_SEED } = process.env;
/** Without a number of clients: two each of three programs that are quickly made. */
const SAMPLE = [1, 4, 5].flatMap((slot) => [slot, slot + SLOTS]);
const COUNT = Number(TAPS_CLIENTS ?? SAMPLE.length);
const SEED = Number(TAPS_SEED ?? 1);
const CLIENTS =
  TAPS_CLIENTS === undefined && TAPS_SEED === undefined
    ? SAMPLE
    : Array.from({ length: COUNT }, (_, n) => SEED + n);
/** From so many clients on it is told how far they are; of fewer, what is tapped is drawn and seen as well. */
const MANY = 300;
const EACH = 250;
const SHOWN = 20;
const HOURS_MS = 8 * 3_600_000;

test(`${COUNT} clients from seed ${CLIENTS[0]} on`, { timeout: HOURS_MS }, async () => {
  const tally = new Tally();
  const began = Date.now();
  const slots = [...new Set(CLIENTS.map((seed) => seed % SLOTS))];
  const work = async () => {
    const tapping = await Tapping.begin({ drawn: COUNT < MANY });
    for (let slot = slots.shift(); slot !== undefined; slot = slots.shift()) {
      const at = slot;
      const issued: Issued = await programOfSlot(at);
      const seeds = CLIENTS.filter((seed) => seed % SLOTS === at);
      await tapping.through(issued, seeds, (outcome) => {
        tally.take(outcome);
        if (tally.clients % EACH === 0) report(speed(tally.clients, Date.now() - began));
        if (outcome.wrong.length > 0) report(`client ${outcome.seed}: ${outcome.wrong[0]}`);
      });
    }
    await tapping.end();
  };
  await Promise.all(Array.from({ length: COUNT < MANY ? 1 : availableParallelism() }, work));
  report(tally.summary());
  report(tally.replay());
  expect.soft(tally.wrong().slice(0, SHOWN), tally.replay()).toEqual([]);
  expect.soft(tally.clients).toBe(COUNT);
  expect.soft(tally.rare(), "everything is tried").toEqual([]);
});

const speed = (clients: number, ms: number): string =>
  `${clients} clients, ${Math.round((clients * 60_000) / ms)} a minute`;

/** What a long run tells on its way. */
function report(text: string): void {
  if (COUNT >= MANY) process.stderr.write(`${text}\n`);
}
