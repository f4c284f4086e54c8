/** Walking and running in turns, with the phone in a pocket: the intervals go on by themselves. */
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { Booklet } from "../../src/compose/model.ts";
import { readDiary } from "../../src/diary/csv.ts";
import { launch, Phone, phoneHtml, saved } from "./phone-page.ts";
import { bout, demoBooklet } from "./support.ts";

/** Three runs of four seconds, and three seconds of walking between. */
const run = bout({
  key: "back/run",
  card: "run",
  title: "Walk and run in turns",
  side: "none",
  sideWords: undefined,
  running: true,
  sets: 3,
  reps: undefined,
  tempo: undefined,
  timeS: 4,
  restS: 3,
  kg: undefined,
  dose: ["3 times 4 seconds", "Walk 3 seconds in between"],
});

const demo = demoBooklet("achilles");
const booklet: Booklet = {
  ...demo,
  sessions: demo.sessions.map((session) => ({ ...session, bouts: [run], short: undefined })),
};

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

test("runs and walks follow each other to the end, also while the screen is locked", {
  timeout: 60_000,
}, async () => {
  const phone = await Phone.open(browser, saved(await phoneHtml(booklet)), {
    at: "2026-11-30T18:00",
    before: `
      window.seen = [];
      const look = () => {
        const what = document.querySelector(".pace-what")?.textContent;
        if (what && what !== window.seen.at(-1)) window.seen.push(what);
        requestAnimationFrame(look);
      };
      requestAnimationFrame(look);`,
  });
  await phone.tap("Start");
  await phone.tap("Start");
  await phone.sees("Run", 9000);
  await phone.sees("Walk", 9000);
  await phone.page.evaluate(`Object.defineProperty(document, "visibilityState", { value: "hidden", configurable: true });
    document.dispatchEvent(new Event("visibilitychange"))`);
  await phone.sees("Set 2 of 3", 9000);
  await phone.page.evaluate(
    `delete document.visibilityState; document.dispatchEvent(new Event("visibilitychange"))`,
  );
  await phone.sees("How was it?", 20_000);
  expect(await phone.page.evaluate("window.seen")).toEqual([
    "Get ready",
    "Run",
    "Walk",
    "Run",
    "Walk",
    "Run",
  ]);
  // one run went by while the screen was locked: whether it was run, only the client knows
  await phone.sees("The clock went on while you were not on this screen.");
  await phone.tap("Yes, all of it");
  const [entry] = readDiary(await phone.kept()).diary?.entries ?? [];
  expect(entry?.exercises.map(({ done, real }) => [done, real.sets])).toEqual([["yes", undefined]]);
  expect(phone.complaints).toEqual([]);
});
