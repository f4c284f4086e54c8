/** Booklets of the demo as the companion gets them, and small sessions made by hand. */
import { makeBooklet, makeProgram } from "../../src/booklet.ts";
import type { Booklet } from "../../src/compose/model.ts";
import type { SessionBout } from "../../src/compose/session-model.ts";
import type { Diary } from "../../src/diary/entry.ts";
import type { PlannedSession } from "../../src/phone/day/data.ts";
import { asSigned } from "../support/signed.ts";
import { DAY, DEMO, demoClinic, english } from "../support/world.ts";

/** The booklet of a plan of the demo clinic, with these files over it. */
export function demoBooklet(
  plan: "achilles" | "shoulder",
  files: Readonly<Record<string, string>> = {},
): Booklet {
  const workspace = demoClinic(files);
  const { value } = makeProgram(workspace, `${DEMO}/${plan}.md`);
  if (!value) throw new Error(`the demo plan ${plan} has errors`);
  return makeBooklet(asSigned(value), workspace, english(), DAY);
}

/** A booklet with every exercise as a test wants it. */
export const withBouts = (booklet: Booklet, change: Partial<SessionBout>): Booklet => ({
  ...booklet,
  sessions: booklet.sessions.map((session) => ({
    ...session,
    bouts: session.bouts.map((bout) => ({ ...bout, ...change })),
  })),
});

/** A bout with what a test says of it. */
export function bout(change: Partial<SessionBout> = {}): SessionBout {
  return {
    key: "phase/rise",
    card: "rise",
    anchor: "exercise-rise",
    title: "Rise up",
    when: undefined,
    side: "left",
    sideWords: "Left leg",
    needsGoodDay: false,
    running: false,
    sets: 3,
    reps: Array.from({ length: change.sets ?? 3 }, () => ({ low: 8, high: 10 })),
    holdS: undefined,
    timeS: undefined,
    distanceM: undefined,
    turns: undefined,
    tempo: { lower: 3, bottom: 0, lift: 3, top: 0 },
    first: "lift",
    liftWord: "up",
    lowerWord: "down",
    fastS: 1,
    restS: 60,
    restRepsS: undefined,
    effort: 7,
    kg: 8,
    tissues: ["calf", "achilles"],
    recoveryS: 48 * 3600,
    keptClearOf: { before: [], after: [] },
    dose: ["3 sets of 8 to 10", "8 kg"],
    pain: { kind: "monitored", comfortable: 2, during: 5, after: 4 },
    painWords: { rule: "rule", over: "over", after: "after", worse: "worse" },
    ...change,
  };
}

/** A session with one such bout. */
export function session(date: string, change: Partial<PlannedSession> = {}): PlannedSession {
  return {
    week: 1,
    date,
    part: "evening",
    startsAt: 19 * 60,
    minutes: 20,
    short: undefined,
    bouts: [bout()],
    ...change,
  };
}

export const NO_DIARY: Diary = { plan: "p", client: "c", entries: [] };
