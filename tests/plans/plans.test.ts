/**
 * Random plans: a fault of level error, or what is printed is what was asked: every session, nothing that
 * is ruled out, no bout in a time kept clear, and numbers that the calendar adds up to. `npm run plans`
 * makes 20,000. PLANS_COUNT says how many, PLANS_SEED which is the first.
 */
import { expect, test, vi } from "vitest";
import { wrongIn } from "./check.ts";
import { planOf } from "./draw.ts";
import { outputsOf } from "./outputs.ts";
import type { Printed } from "./printed.ts";
import { Tally } from "./tally.ts";

/** What would help a week that cannot be laid out takes seconds to find; it has tests of its own. */
vi.mock(import("../../src/week/explain/explain.ts"), () => ({
  explainProgram: () => ({ collision: [], least: [], larger: [], complete: false }),
}));

const COUNT = Number(process.env.PLANS_COUNT ?? 150);
const SEED = Number(process.env.PLANS_SEED ?? 1);
/** Of one made plan in so many the booklet is read, too. */
const BOOKLETS = 3;
/** From so many plans on, this share of the made ones has to be of every kind; of fewer plans, one. */
const MANY = 2000;
const LEAST_SHARE = 0.01;
/** At least so many of all plans have to be made. */
const MADE_SHARE = 0.6;
const SHOWN = 40;
const HOURS_MS = 8 * 3_600_000;

test(`${COUNT} plans from seed ${SEED} on`, { timeout: HOURS_MS }, () => {
  const tally = new Tally();
  for (let seed = SEED; seed < SEED + COUNT; seed += 1) {
    const random = planOf(seed);
    const printed = outputsOf(random, tally.made % BOOKLETS === 0);
    if ("faults" in printed) tally.stopped(seed, printed.faults);
    else tally.take(random, printed, wrongOf(random, printed));
    if (seed % 500 === 0) report(`plan ${seed}: ${tally.made} made, ${tally.wrong.length} wrong`);
  }
  report(tally.summary(COUNT));
  expect.soft(tally.wrong.slice(0, SHOWN)).toEqual([]);
  expect.soft(tally.made, "most plans can be made").toBeGreaterThan(MADE_SHARE * COUNT);
  const least = COUNT >= MANY ? LEAST_SHARE : 0;
  expect.soft(tally.rare(least), "plans of every kind are made").toEqual([]);
});

function wrongOf(random: ReturnType<typeof planOf>, printed: Printed): string[] {
  try {
    return wrongIn(random, printed);
  } catch (error) {
    return [`it cannot be read: ${String(error)}`];
  }
}

/** What a long run tells on its way. */
function report(text: string): void {
  if (COUNT >= MANY) process.stderr.write(`${text}\n`);
}
