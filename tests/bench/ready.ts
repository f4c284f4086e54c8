/** How soon a booklet's file shows the day's session, and how well the beats of an exercise keep their time, on a slow phone. */
import { build } from "esbuild";
import type { Browser } from "puppeteer-core";
import type { SessionBout } from "../../src/compose/session-model.ts";
import { cuesBetween } from "../../src/phone/pace/cues.ts";
import { begin } from "../../src/phone/pace/run.ts";
import { segmentsOf } from "../../src/phone/pace/segments.ts";

/** As browsers' own tools imitate a phone of the cheaper kind, and one that does much else meanwhile. */
const SLOWER = 4;
const BUSY = 6;

/** What the page of the tests of beats writes down, in milliseconds. */
interface Watched {
  readonly startMs: number;
  readonly notesMs: readonly number[];
}

/** Sets the page's clock to an hour of a day, and notes when the first button of it is laid out. */
const watchOn = (hour: string) => `
  const RealDate = Date;
  const lead = new RealDate("${hour}").getTime() - RealDate.now();
  window.Date = class extends RealDate {
    constructor(...parts) { parts.length > 0 ? super(...parts) : super(RealDate.now() + lead); }
    static now() { return RealDate.now() + lead; }
  };
  const look = () => {
    const button = document.querySelector(".phone-main button");
    if (button && button.getClientRects().length > 0) window.readyMs = performance.now();
    else requestAnimationFrame(look);
  };
  requestAnimationFrame(look);`;

/** Milliseconds from opening the file until a session can be begun there, each of some openings on its day. */
export async function readyTimes(
  browser: Browser,
  url: string,
  day: string,
  openings = 7,
): Promise<number[]> {
  const all: number[] = [];
  for (let n = 0; n < openings; n += 1) {
    const context = await browser.createBrowserContext();
    const page = await context.newPage();
    await page.setViewport({ width: 360, height: 740, deviceScaleFactor: 2, isMobile: true });
    await page.emulateCPUThrottling(SLOWER);
    await page.evaluateOnNewDocument(watchOn(`${day}T07:00`));
    await page.goto(url, { waitUntil: "load" });
    await page.waitForFunction("window.readyMs !== undefined");
    all.push(Number(await page.evaluate("window.readyMs")));
    await context.close();
  }
  return all;
}

/** Milliseconds by which each beat of an exercise that is heard misses its time. */
export async function beatsOff(browser: Browser, exercise: SessionBout): Promise<number[]> {
  const { outputFiles } = await build({
    entryPoints: ["tests/phone/drift-page.ts"],
    bundle: true,
    format: "iife",
    write: false,
  });
  const segments = segmentsOf(exercise, exercise.sets, { readyS: 2 });
  const seconds = segments.reduce((sum, { seconds: one = 0 }) => sum + one, 0);
  const page = await browser.newPage();
  await page.setContent("<button>Start</button>");
  await page.addScriptTag({ content: outputFiles[0]?.text ?? "" });
  await page.emulateCPUThrottling(BUSY);
  await page.evaluate(
    `document.querySelector("button").addEventListener("click", () => window.lead(${JSON.stringify(exercise)}))`,
  );
  await page.click("button");
  await new Promise((done) => setTimeout(done, (seconds + 3) * 1000));
  const watched = (await page.evaluate("window.watched")) as Watched;
  await page.close();
  const cues = cuesBetween(begin(segments, 0), 1, Number.POSITIVE_INFINITY).map(({ at }) => at);
  return cues.map((at) =>
    Math.min(...watched.notesMs.map((one) => Math.abs(one - watched.startMs - at))),
  );
}
