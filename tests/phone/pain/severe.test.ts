/** On a real phone: pain of 8 or more asks for a call at once, whenever it is given, with the number to tap. */
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { readDiary } from "../../../src/diary/csv.ts";
import { launch, Phone, phoneHtml, saved } from "../phone-page.ts";
import { demoBooklet } from "../support.ts";

const SIT = "Sit and rise up on your toes with a heavy weight";
const SAYS = "Pain of 8 out of 10 or more, or sudden pain";
const url = saved(await phoneHtml(demoBooklet("achilles")));

let browser: Browser;
let phone: Phone;
beforeAll(async () => {
  browser = await launch();
  phone = await Phone.open(browser, url, { at: "2026-11-30T19:00" });
});
afterAll(() => browser?.close());

async function asksForCall(): Promise<void> {
  await phone.sees("Call us today");
  await phone.sees(SAYS);
  expect(await phone.page.evaluate(`document.querySelector(".advice-call a.button").href`)).toBe(
    "tel:01632960214",
  );
}

describe.sequential("pain of 8 or more", { timeout: 60_000 }, () => {
  test("in the middle of an exercise: 7 stops it, 8 and 10 ask for a call", async () => {
    await phone.tap("Start");
    await phone.tap("Start");
    await phone.tap("It hurts");
    await phone.choose(SIT, 7);
    await phone.sees("Stop this exercise");
    expect(await phone.text()).not.toContain("Call us today");
    for (const pain of [8, 10]) {
      await phone.choose(SIT, pain);
      await asksForCall();
      expect(await phone.text()).not.toContain("Go on");
    }
    await phone.page.evaluate(`location.hash = "#/today"`);
    await asksForCall();
    expect(await phone.text()).not.toContain("Back to your exercise");
  });

  test("after a session", async () => {
    await phone.page.evaluate(`location.hash = "#/write/2026-11-30-evening"`);
    await phone.choose("Did you do it?", "Done");
    await phone.choose("Pain now, after it", 8);
    await asksForCall();
  });

  test("the next morning", async () => {
    await phone.reopen("2026-12-01T08:00");
    await phone.choose("How much pain did you have this morning?", 9);
    await asksForCall();
    expect(phone.complaints).toEqual([]);
  });
});

test("pain that came suddenly asks for a call too, within the limit, and is kept", {
  timeout: 60_000,
}, async () => {
  const context = await browser.createBrowserContext();
  const other = await Phone.open(context, url, { at: "2026-11-30T19:00" });
  await other.tap("Start");
  await other.tap("Start");
  await other.tap("It hurts");
  await other.choose(SIT, 2);
  await other.sees("That is within your limit.");
  await other.choose("Did the pain come suddenly?", "Yes");
  await other.sees("Call us today");
  await other.sees(SAYS);
  expect(await other.text()).not.toContain("Go on");
  const [entry] = readDiary(await other.kept()).diary?.entries ?? [];
  expect(entry?.exercises[0]).toMatchObject({ pain: 2, sudden: true });
  await other.page.reload();
  await other.sees("Call us today");
  await other.choose("Did the pain come suddenly?", "No");
  expect(await other.text()).not.toContain("Call us today");
  expect(other.complaints).toEqual([]);
  await context.close();
});
