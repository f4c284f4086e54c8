/** What was recorded is never replaced by a default, and what was done in one tap can be taken back. */
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

/** What the file that is sent would say. */
const told = async (phone: Phone) => (await entriesOf(phone)).map(toldOf);

describe("all done as planned", { timeout: 30_000 }, () => {
  test("keeps a 7 that was recorded, and says so; taken back, the session goes on", async () => {
    await onPhone(browser, url, MONDAY, async (phone) => {
      await phone.tap("Start");
      await phone.tap("Start");
      await phone.tap("It hurts");
      await phone.choose(SIT, 7);
      await phone.tap("Today");
      await phone.tap("All done as planned");
      await phone.sees(`Kept as you wrote it: ${SIT}.`);
      expect(await told(phone)).toEqual([["part 7", "yes"]]);
      await phone.tap("Undo");
      expect(await told(phone)).toEqual([["part 7", "no"]]);
      await phone.tap("Today");
      await phone.sees("Go on where you were");
    });
  });

  test("keeps an exercise that was left out", async () => {
    await onPhone(browser, url, MONDAY, async (phone) => {
      await phone.tap("Start");
      await phone.tap("Leave out this exercise");
      await phone.tap("Next exercise");
      await phone.tap("Today");
      await phone.tap("All done as planned");
      expect(await told(phone)).toEqual([["no", "yes"]]);
    });
  });
});

describe("taken back", { timeout: 30_000 }, () => {
  test("leaving a missed session, which is offered again", async () => {
    await onPhone(browser, url, { at: "2026-12-05T09:00" }, async (phone) => {
      await phone.tap("Leave it out");
      await phone.sees("Left out: Friday.");
      expect(await told(phone)).toEqual([["no", "no"]]);
      await phone.tap("Undo");
      await phone.sees("Nothing is written down for Friday.");
      expect(await phone.text()).not.toContain("Left out");
      await phone.page.reload();
      await phone.sees("Nothing is written down for Friday.");
      await phone.tap("Diary");
      await phone.tap("Bring it back to us");
      await phone.sees("There is nothing in your diary yet.");
    });
  });

  test("leaving an exercise, an answer and a number", async () => {
    await onPhone(browser, url, MONDAY, async (phone) => {
      await phone.tap("Start");
      await phone.tap("Leave out this exercise");
      await phone.sees("How was it?");
      await phone.tap("Undo");
      await phone.sees("Exercise 1 of 2");
      await phone.tap("Leave out this exercise");
      await phone.choose("Did you do it?", "Done");
      await phone.choose("Pain while you did it", 7);
      await phone.tap("Undo");
      expect(await told(phone)).toEqual([["yes", "no"]]);
      await phone.choose("Did you do it?", "Not done");
      await phone.tap("Undo");
      expect(await told(phone)).toEqual([["yes", "no"]]);
    });
  });

  test("a set that was ended, and the exercise with it", async () => {
    await onPhone(browser, url, MONDAY, async (phone) => {
      await phone.tap("Start");
      await phone.tap("Start");
      await phone.sees("Set 1 of 3");
      await phone.tap("Start now");
      await phone.tap("End this set");
      await phone.sees("Rest");
      await phone.tap("Undo");
      await phone.sees("Set 1 of 3");
      await phone.sees("Go on");
      await phone.tap("End this set");
      for (let set = 2; set <= 3; set += 1) {
        for (const label of ["End the rest", "Start now", "End this set"]) await phone.tap(label);
      }
      await phone.sees("The exercise is over.");
      await phone.tap("Undo");
      await phone.sees("Set 3 of 3");
      await phone.tap("It hurts");
      await phone.choose(SIT, 3);
      expect(await told(phone)).toEqual([["part 3", "no"]]);
    });
  });

  test("doing a set again, and ending a rest", async () => {
    await onPhone(browser, url, MONDAY, async (phone) => {
      for (const label of ["Start", "Start", "Start now", "End this set"]) await phone.tap(label);
      await phone.sees("Rest");
      await phone.tap("Do this again");
      await phone.sees("Set 1 of 3");
      await phone.tap("Undo");
      await phone.sees("Rest");
      await phone.tap("End the rest");
      await phone.sees("Set 2 of 3");
      await phone.tap("Undo");
      await phone.sees("Rest");
      expect(await told(phone)).toEqual([["part", "no"]]);
    });
  });

  test("the end of a session, and passing over a morning; not on another screen", async () => {
    await onPhone(browser, url, MONDAY, async (phone) => {
      await phone.tap("Start");
      for (const next of ["Next exercise", "Go on"]) {
        await phone.tap("Leave out this exercise");
        await phone.choose("Did you do it?", "Done");
        await phone.tap(next);
      }
      await phone.tap("Finish the session");
      await phone.sees("Evening: Done");
      await phone.tap("Undo");
      await phone.tap("Go on where you were");
      await phone.sees("Well done.");
      await phone.tap("Finish the session");
      await phone.tap("Diary");
      expect(await phone.text()).not.toContain("Undo");
      await phone.reopen("2026-12-01T08:00");
      await phone.tap("I do not remember");
      await phone.sees("You will not be asked again about Monday.");
      await phone.tap("Undo");
      await phone.sees("How much pain did you have this morning?");
    });
  });
});
