/** A session begun before midnight goes on after it, belongs to its day, and its morning is asked for in the morning. */
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { launch, phoneHtml, saved } from "../phone-page.ts";
import { demoBooklet } from "../support.ts";
import { entriesOf, onPhone, SIT, toldOf } from "./support.ts";

const url = saved(await phoneHtml(demoBooklet("achilles")));
const LATE = { at: "2026-11-30T23:50" };
const QUESTION = "How much pain did you have this morning?";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

test("it goes on, and the morning waits", { timeout: 60_000 }, async () => {
  await onPhone(browser, url, LATE, async (phone) => {
    await phone.tap("Start");
    await phone.tap("Start");
    await phone.sees("Set 1 of 3");
    await phone.reopen("2026-12-01T00:10");
    await phone.sees("Tuesday 1 December");
    await phone.sees("Evening: about 24 minutes");
    await phone.tap("Go on where you were");
    await phone.tap("It hurts");
    await phone.choose(SIT, 4);
    await phone.tap("End this exercise");
    await phone.tap("Next exercise");
    await phone.tap("Leave out this exercise");
    await phone.choose("Did you do it?", "Done");
    await phone.tap("Go on");
    await phone.choose("Pain now, after it", 2);
    expect(await phone.text()).not.toContain("Pain the next morning");
    await phone.tap("Finish the session");
    const [monday] = await entriesOf(phone);
    expect(monday && toldOf(monday)).toEqual(["part 4", "yes"]);
    expect([monday?.date, monday?.doneOn]).toEqual(["2026-11-30", "2026-11-30"]);
    expect(await phone.text()).not.toContain(QUESTION);
    await phone.reopen("2026-12-01T03:30");
    await phone.sees("Tuesday 1 December");
    expect(await phone.text()).not.toContain(QUESTION);
    await phone.reopen("2026-12-01T06:30");
    await phone.sees(QUESTION);
  });
});

test("left for good, it has what was done of it", { timeout: 60_000 }, async () => {
  await onPhone(browser, url, LATE, async (phone) => {
    await phone.tap("Start");
    await phone.tap("Start");
    await phone.sees("Up", 9000);
    // two parts of a repetition: the set has begun
    await phone.sees("2 of 15", 15_000);
    await phone.tap("End this set");
    await phone.reopen("2026-12-01T09:00");
    await phone.sees("Tuesday 1 December");
    expect(await phone.text()).not.toContain("Go on where you were");
    const [monday] = await entriesOf(phone);
    const [sit] = monday?.exercises ?? [];
    expect([sit?.done, sit?.real.sets, monday?.doneOn]).toEqual(["part", 1, "2026-11-30"]);
    await phone.sees(QUESTION);
  });
});
