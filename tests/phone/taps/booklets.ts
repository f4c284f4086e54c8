/** The booklets that a client gets in turn: the first, and re-issues in the middle of the course, some with other times. */
import { stringify } from "yaml";
import { addDays } from "../../surfaces/calendar-days.ts";
import { changedInItsCourse } from "../../surfaces/client-reissue.ts";
import { type Client, clientOf } from "../../surfaces/clients.ts";
import { type InTurn, issuedInTurn } from "../../surfaces/outputs.ts";
import type { PlanText } from "../../surfaces/plan-text.ts";
import { type Random, randomFrom } from "../../surfaces/random.ts";

/** A program that several clients tap through. */
export interface Issued {
  /** Of its plan. */
  readonly seed: number;
  readonly files: readonly string[];
}

/** So many programs there are: every client of a seed has the same one, however many tap. */
export const SLOTS = 60;
/** Plans are tried one after the other, from here on. */
const APART = 7;
const MOST_TRIED = 100;

/** The program of a slot: of the first plan from its own on that can be made and issued anew. */
export async function programOfSlot(slot: number): Promise<Issued> {
  for (let seed = slot * APART + 1; seed < slot * APART + MOST_TRIED; seed += 1) {
    const issued = await bookletsOf(seed);
    if (issued) return issued;
  }
  throw new Error(`no program can be made for slot ${slot}`);
}

/** Another part of the day for each, so that every session moves. */
const MOVED: Readonly<Record<string, string>> = {
  morning: "evening",
  midday: "morning",
  evening: "midday",
};

/** The booklets of a seed; undefined where that plan is a draft, or one of them cannot be made. */
async function bookletsOf(seed: number): Promise<Issued | undefined> {
  const client = clientOf(seed);
  if (client.before || !client.plan.signed || client.edition === "summary") return undefined;
  const { weeks: _, ...plan } = client.plan;
  const random = randomFrom(seed + 500_000);
  const all = inTurn(plan, client, random);
  const files = await issuedInTurn(client, all);
  if (files === undefined) return undefined;
  return { seed, files };
}

function inTurn(first: PlanText, { made, protocol }: Client, random: Random): InTurn[] {
  const all: InTurn[] = [{ text: textOf(first), made }];
  let [plan, last] = [first, addDays(first.starts, random.whole(4, 20))];
  for (let n = random.whole(1, 2); n > 0; n -= 1) {
    const changed = changedInItsCourse(plan, protocol, random);
    const moved = random.chance(0.5);
    const reference = random.chance(0.2)
      ? { ...plan.client, reference: `${plan.client.reference}7` }
      : plan.client;
    const day = changed && changed.made > last ? changed.made : last;
    plan = { ...(changed?.made === day ? changed.plan : plan), client: reference };
    if (moved) plan = withOtherTimes(plan);
    all.push({ text: textOf(plan), made: day, anew: moved });
    last = addDays(day, random.whole(5, 30));
  }
  return all;
}

const textOf = (plan: PlanText): string => `---\n${stringify(plan)}---\n\nA note.\n`;

function withOtherTimes(plan: PlanText): PlanText {
  const free = Object.fromEntries(
    Object.entries(plan.week.free).map(([day, parts]) => {
      const moved = Object.entries(parts).map(([part, time]) => [MOVED[part] ?? part, time]);
      return [day, Object.fromEntries(moved)];
    }),
  );
  return { ...plan, week: { ...plan.week, free } };
}
