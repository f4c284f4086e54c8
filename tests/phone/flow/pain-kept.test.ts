/** A number for pain is kept the moment it is tapped, wherever the client goes next. */
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { launch, type Phone, phoneHtml, saved } from "../phone-page.ts";
import { demoBooklet } from "../support.ts";
import { entriesOf, onPhone, SIT, toldOf } from "./support.ts";

const url = saved(await phoneHtml(demoBooklet("achilles")));
const MONDAY = { at: "2026-11-30T18:00" };

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

const hurt = async (phone: Phone) => {
  await phone.tap("Start");
  await phone.tap("Start");
  await phone.tap("It hurts");
};
const told = async (phone: Phone) => (await entriesOf(phone)).map(toldOf);

describe("pain in the middle of an exercise", { timeout: 30_000 }, () => {
  test("is kept when the advice's own link is followed, and going on is not offered after it", async () => {
    await onPhone(browser, url, MONDAY, async (phone) => {
      await hurt(phone);
      await phone.choose(SIT, 7);
      await phone.tap("See when to stop and whom to call");
      await phone.sees("Call 999 at once if:");
      expect(await told(phone)).toEqual([["part 7", "no"]]);
      await phone.page.goBack();
      await phone.sees("Stop this exercise");
      expect(await phone.text()).not.toContain("Go on");
      await phone.page.reload();
      await phone.sees("Stop this exercise");
      await phone.choose(SIT, 3);
      await phone.sees("Go on");
      expect(await told(phone)).toEqual([["part 3", "no"]]);
    });
  });

  test("is still asked for after a reload and on the way back, until it is gone on with", async () => {
    await onPhone(browser, url, MONDAY, async (phone) => {
      const question = "How much does it hurt?";
      await hurt(phone);
      await phone.sees(question);
      await phone.page.reload();
      await phone.sees(question);
      await phone.choose(SIT, 4);
      await phone.tap("Today");
      await phone.reopen("2026-11-30T18:20");
      await phone.tap("Go on where you were");
      await phone.sees(question);
      await phone.tap("Go on");
      await phone.page.reload();
      await phone.sees("Set 1 of 3");
      expect(await phone.text()).not.toContain(question);
      await phone.tap("It hurts");
      await phone.tap("End this exercise");
      await phone.tap("Next exercise");
      await phone.tap("Start");
      await phone.sees("Set 1 of");
      expect(await phone.text()).not.toContain(question);
      expect(await told(phone)).toEqual([["part 4", "no"]]);
    });
  });

  test("within the limit it is kept too, and the most of an exercise holds", async () => {
    await onPhone(browser, url, MONDAY, async (phone) => {
      await hurt(phone);
      await phone.choose(SIT, 4);
      await phone.tap("Go on");
      expect(await told(phone)).toEqual([["part 4", "no"]]);
      await phone.tap("It hurts");
      await phone.choose(SIT, 2);
      expect(await told(phone)).toEqual([["part 4", "no"]]);
      await phone.choose(SIT, 5);
      await phone.tap("End this exercise");
      expect(await told(phone)).toEqual([["part 5", "no"]]);
      const [monday] = await entriesOf(phone);
      expect([monday?.done, monday?.doneOn]).toEqual(["part", "2026-11-30"]);
    });
  });
});
