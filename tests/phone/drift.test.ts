/** In a real browser, seen and hidden: every sound and every change on its time, over ten minutes. */
import { build } from "esbuild";
import puppeteer, { type Browser, type Page } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { SessionBout } from "../../src/compose/session-model.ts";
import { cuesBetween } from "../../src/phone/pace/cues.ts";
import { begin } from "../../src/phone/pace/run.ts";
import { segmentsOf } from "../../src/phone/pace/segments.ts";
import { found } from "../support/render.ts";
import type { Watched } from "./drift-page.ts";
import { bout, reps } from "./pace/support.ts";

const FULL = process.env.PAULATIM_FULL_TESTS !== undefined;

/** Milliseconds by which a sound or a change may miss its time. */
const MOST_MS = 50;

/** Repetitions of 6 s, seen all the time; runs and walks, hidden: 20 s, or ten minutes. */
const raises = bout({
  reps: reps(1, FULL ? 100 : 3),
  tempo: { lower: 3, bottom: 0, lift: 2, top: 1 },
});
const runs = FULL
  ? bout({ running: true, sets: 7, timeS: 45, restS: 45 })
  : bout({ running: true, sets: 2, timeS: 7, restS: 6 });

let browser: Browser;
let script: string;

beforeAll(async () => {
  const { outputFiles } = await build({
    entryPoints: [new URL("drift-page.ts", import.meta.url).pathname],
    bundle: true,
    format: "iife",
    write: false,
  });
  script = outputFiles[0]?.text ?? "";
  // as a client's browser: nothing that keeps hidden pages as quick as seen ones
  browser = await puppeteer.launch({
    executablePath: found.path,
    ignoreDefaultArgs: true,
    args: ["--headless", "--remote-debugging-pipe", "--no-first-run", ...found.args],
    pipe: true,
    waitForInitialPage: false,
    env: { ...process.env, ...found.env },
  });
});

afterAll(() => browser?.close());

/** Opens a page and starts the exercise in it with a tap, as browsers ask for before they give sound. */
async function started(exercise: SessionBout): Promise<Page> {
  const page = await browser.newPage();
  await page.setContent("<button>Start</button>");
  await page.addScriptTag({ content: script });
  await page.evaluate((given) => {
    document.querySelector("button")?.addEventListener("click", () => window.lead(given));
  }, exercise);
  await page.click("button");
  return page;
}

/** Puts another page before it, or where pages have a window each, its window away. */
async function hide(page: Page): Promise<void> {
  const other = await browser.newPage();
  await other.bringToFront();
  if (await page.evaluate(() => document.hidden)) return;
  const session = await page.createCDPSession();
  const { windowId } = await session.send("Browser.getWindowForTarget");
  await session.send("Browser.setWindowBounds", { windowId, bounds: { windowState: "minimized" } });
}

async function watched(page: Page): Promise<Watched> {
  const seen = await page.evaluate(() => window.watched);
  if (!seen) throw new Error("nothing was started");
  return seen;
}

const segmentsIn = (exercise: SessionBout) => segmentsOf(exercise, exercise.sets, { readyS: 2 });
const secondsOf = (exercise: SessionBout): number =>
  segmentsIn(exercise).reduce((sum, { seconds = 0 }) => sum + seconds, 0);

/** For every due instant, milliseconds after the start, how far the nearest of the others is off. */
function offBy(dueMs: readonly number[], startMs: number, others: readonly number[]): number[] {
  return dueMs.map((due) => Math.min(...others.map((at) => Math.abs(at - startMs - due))));
}

function report(what: string, off: readonly number[]): { median: number; most: number } {
  const sorted = off.toSorted((a, b) => a - b);
  const [median = 0, most = 0] = [sorted[Math.floor(sorted.length / 2)], sorted.at(-1)];
  const says = `off by ${median.toFixed(2)} ms (median), ${most.toFixed(2)} ms (most)`;
  process.stdout.write(`${what}: ${off.length}, ${says}\n`);
  return { median, most };
}

const until = (seconds: number) => new Promise((resolve) => setTimeout(resolve, seconds * 1000));

describe("an exercise in a browser", () => {
  const time = Math.max(secondsOf(raises), secondsOf(runs)) + 2;

  test("keeps its pace, seen and hidden", { timeout: (time + 40) * 1000 }, async () => {
    const seen = await started(raises);
    const hidden = await started(runs);
    await until(2.5);
    await hide(hidden);
    await until(time);

    const front = await watched(seen);
    const back = await watched(hidden);
    const sounds = [
      report("sounds, seen", offBy(cues(raises), front.startMs, front.notesMs)),
      report("sounds, hidden", offBy(cues(runs), back.startMs, back.notesMs)),
    ];
    const changes = [
      report("changes, seen", offBy(starts(raises), front.startMs, beginnings(front))),
      report("changes, hidden", offBy(starts(runs), back.startMs, beginnings(back))),
    ];
    const late = report("shown late, seen", lateness(front));
    report("shown late, hidden", lateness(back));
    process.stdout.write(`longest sleep, hidden: ${back.longestMs.toFixed(0)} ms\n`);

    expect([front.hidden, front.changes.length]).toEqual([0, segmentsIn(raises).length + 1]);
    expect(back.hidden).toBeGreaterThan(0);
    expect(back.changes.at(-1)?.kind).toBe("over");
    expect(Math.max(...[...sounds, ...changes].map(({ most }) => most))).toBeLessThan(MOST_MS);
    // the screen follows as soon as a busy machine lets it
    expect(late.median).toBeLessThan(MOST_MS);
  });
});

const beginnings = ({ changes }: Watched) => changes.map(({ beganMs }) => beganMs);
const lateness = ({ changes }: Watched) => changes.map(({ atMs, beganMs }) => atMs - beganMs);

/** When every cue is due. The first, at the tap itself, waits until the browser has its sound on. */
function cues(exercise: SessionBout): number[] {
  const all = cuesBetween(begin(segmentsIn(exercise), 0), 1, Number.POSITIVE_INFINITY);
  return all.map(({ at }) => at);
}

/** When every segment begins, and the end, added up from their lengths. */
function starts(exercise: SessionBout): number[] {
  const all = [0];
  for (const { seconds = 0 } of segmentsIn(exercise)) all.push((all.at(-1) ?? 0) + seconds * 1000);
  return all;
}
