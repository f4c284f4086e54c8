/** Sets that go by while the client is elsewhere are not written down as done, but asked back. */
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Booklet } from "../../../src/compose/model.ts";
import { loadWords } from "../../../src/words/load-words.ts";
import { launch, type Phone, phoneHtml, saved } from "../phone-page.ts";
import { bout, demoBooklet } from "../support.ts";
import { entriesOf, onPhone } from "./support.ts";

/** Three runs of two seconds, and two seconds of walking between. */
const run = bout({
  ...{ key: "back/run", card: "run", title: "In turns" },
  ...{ side: "none", sideWords: undefined, running: true, kg: undefined },
  ...{ sets: 3, reps: undefined, tempo: undefined, timeS: 2, restS: 2 },
});
const demo = demoBooklet("achilles");
const booklet: Booklet = {
  ...demo,
  sessions: demo.sessions.map((session) => ({ ...session, bouts: [run], short: undefined })),
};
const url = saved(await phoneHtml(booklet));
const german = saved(await phoneHtml({ ...booklet, language: "de" }, loadWords("de", "de-DE")));
const MONDAY = { at: "2026-11-30T18:00" };
const ASKS = "The clock went on while you were not on this screen. Did you do all of it?";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

const told = async (phone: Phone) =>
  (await entriesOf(phone)).flatMap(({ exercises }) =>
    exercises.map(({ done, real }) => [done, real.sets]),
  );
const passes = (ms: number) => new Promise((done) => setTimeout(done, ms));

/** Leaves the pace for another screen, and comes back when the last run is over. */
async function away(phone: Phone, leaves: "Run" | "Walk"): Promise<void> {
  await phone.tap("Start");
  await phone.tap("Start");
  await phone.tap("Start now");
  await phone.sees(leaves);
  await phone.tap("Diary");
  await passes(11_000);
  expect((await told(phone)).flat()).not.toContain("yes");
  await phone.tap("Back to your exercise");
  await phone.sees("How was it?");
  await phone.sees(ASKS);
}

describe("sets that went by on another screen", { timeout: 60_000 }, () => {
  test("are written down only when the client says so, which can be taken back", async () => {
    await onPhone(browser, url, MONDAY, async (phone) => {
      await away(phone, "Walk");
      expect(await told(phone)).toEqual([["part", 1]]);
      await phone.page.reload();
      await phone.sees(ASKS);
      await phone.tap("Yes, all of it");
      expect(await phone.text()).not.toContain(ASKS);
      expect(await told(phone)).toEqual([["yes", undefined]]);
      await phone.tap("Undo");
      await phone.sees(ASKS);
      expect(await told(phone)).toEqual([["part", 1]]);
      await phone.tap("No, not all");
      expect(await phone.text()).not.toContain(ASKS);
      expect(await told(phone)).toEqual([["part", 1]]);
      await phone.tap("Go on");
      await phone.tap("Finish the session");
      expect(await told(phone)).toEqual([["part", 1]]);
    });
  });

  test("where nothing was seen there is no number; what the client says is the answer", async () => {
    await onPhone(browser, url, MONDAY, async (phone) => {
      await away(phone, "Run");
      expect(await told(phone)).toEqual([["part", undefined]]);
      await phone.choose("Did you do it?", "Not done");
      expect(await phone.text()).not.toContain(ASKS);
      expect(await told(phone)).toEqual([["no", undefined]]);
      await phone.page.reload();
      await phone.sees("How was it?");
      expect(await phone.text()).not.toContain(ASKS);
    });
  });

  test("are not asked back where all was seen", async () => {
    await onPhone(browser, url, MONDAY, async (phone) => {
      for (const label of ["Start", "Start", "Start now"]) await phone.tap(label);
      await phone.sees("How was it?", 15_000);
      expect(await phone.text()).not.toContain(ASKS);
      expect(await told(phone)).toEqual([["yes", undefined]]);
    });
  });

  test("in German too", async () => {
    await onPhone(browser, german, MONDAY, async (phone) => {
      for (const label of ["Anfangen", "Los", "Gleich anfangen"]) await phone.tap(label);
      await phone.tap("Tagebuch");
      await passes(11_000);
      await phone.tap("Zurück zur Übung");
      await phone.sees("Haben Sie alles gemacht?");
      await phone.tap("Ja, alles");
      expect(await told(phone)).toEqual([["yes", undefined]]);
    });
  });
});
