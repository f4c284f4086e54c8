/** Below a call that is due, and after a stop of the same tissue, no road leads on with an exercise that is begun. */
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { launch, type Phone, phoneHtml, saved } from "../phone-page.ts";
import { demoBooklet } from "../support.ts";
import { entriesOf, onPhone, SIT, toldOf } from "./support.ts";

const url = saved(await phoneHtml(demoBooklet("achilles")));
const WEDNESDAY = { at: "2026-12-02T18:00" };
const SESSION = "#/session/2026-12-02-evening";
/** All that begins an exercise or goes on with it. */
const ON = [
  "Start",
  "Go on",
  "Pause",
  "Start now",
  "Go on where you were",
  "Back to your exercise",
];

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

const to = async (phone: Phone, hash: string) => {
  await phone.page.evaluate(`location.hash = ${JSON.stringify(hash)}`);
  await phone.settled();
};

/** What can be pressed and would go on. */
const waysOn = async (phone: Phone) =>
  (await phone.page.evaluate(
    `[...document.querySelectorAll(".phone-main button, .phone-main a, nav .to-pace")].map((one) => one.textContent.trim()).filter((one) => ${JSON.stringify(ON)}.includes(one))`,
  )) as string[];

const STATES: readonly [string, (phone: Phone) => Promise<void>][] = [
  ["before its exercise is begun", async () => {}],
  ["while it is paced", (phone) => phone.tap("Start")],
  [
    "while it is paused",
    async (phone) => {
      await phone.tap("Start");
      await phone.tap("Pause");
    },
  ],
  [
    "in a rest, which ends by itself",
    async (phone) => {
      await phone.tap("Start");
      await phone.tap("Start now");
      await phone.tap("End this set");
    },
  ],
  [
    "with how to do it open",
    async (phone) => {
      await phone.tap("Start");
      await phone.tap("How to do it");
    },
  ],
  [
    "while it is asked how much it hurts",
    async (phone) => {
      await phone.tap("Start");
      await phone.tap("It hurts");
      await phone.choose(SIT, 2);
    },
  ],
];

describe("a session that was begun before a call came due", { timeout: 60_000 }, () => {
  test.each(STATES)("%s", async (_, reach) => {
    await onPhone(browser, url, WEDNESDAY, async (phone) => {
      await phone.tap("Start");
      await phone.sees("Exercise 1 of 2");
      await reach(phone);
      // Monday is written down now, with a pain to call for
      await to(phone, "#/write/2026-11-30-evening");
      await phone.choose("Did you do it?", "Done");
      await phone.choose("Pain now, after it", 8);
      await phone.sees("Call us today");
      const roads: readonly [string, () => Promise<unknown>][] = [
        ["the address", () => to(phone, SESSION)],
        ["a reload", () => phone.page.reload()],
        ["the first screen", () => to(phone, "#/today")],
        ["the way back", () => phone.page.goBack()],
        ["the file opened anew", () => phone.reopen("2026-12-02T18:30")],
        ["the address in a page opened anew", () => to(phone, SESSION)],
      ];
      for (const [road, go] of roads) {
        await go();
        await phone.sees("Call us today");
        await phone.settled();
        expect([road, await waysOn(phone)]).toEqual([road, []]);
      }
      await phone.tap("I have called");
      await phone.settled();
      expect(await waysOn(phone)).not.toEqual([]);
    });
  });
});

test("a call that comes due while a rest goes on out of sight lets nothing sound or go on", {
  timeout: 60_000,
}, async () => {
  await onPhone(browser, url, WEDNESDAY, async (phone) => {
    for (const label of ["Start", "Start", "Start now", "End this set"]) await phone.tap(label);
    await phone.sees("Rest");
    await to(phone, "#/write/2026-11-30-evening");
    await phone.choose("Did you do it?", "Done");
    await phone.choose("Pain now, after it", 8);
    await to(phone, SESSION);
    await phone.tap("I have called");
    await phone.sees("Set 1 of 3");
    await phone.sees("Go on");
  });
});

test("an exercise that is paced waits when another of the same tissue is stopped meanwhile", {
  timeout: 60_000,
}, async () => {
  await onPhone(browser, url, WEDNESDAY, async (phone) => {
    await phone.tap("Start");
    await phone.tap("Leave out this exercise");
    await phone.tap("Next exercise");
    await phone.tap("Start");
    await phone.sees("Set 1 of");
    await to(phone, "#/write/2026-12-02-evening");
    await phone.choose("Did you do it?", "Part of it");
    await phone.choose("Pain while you did it", 7);
    await to(phone, SESSION);
    await phone.sees("Leave this one out today");
    expect(await waysOn(phone)).toEqual([]);
    await phone.page.reload();
    await phone.sees("Leave this one out today");
    expect(await waysOn(phone)).toEqual([]);
    await phone.tap("End this exercise");
    expect((await entriesOf(phone)).map(toldOf)).toEqual([["part 7", "no"]]);
  });
});
