/** On a real phone: a call that was made ends what it was for, and a third bad morning running is said again. */
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { launch, Phone, phoneHtml, saved } from "../phone-page.ts";
import { demoBooklet } from "../support.ts";

const url = saved(await phoneHtml(demoBooklet("achilles")));
const RUNNING = "Pain over your limit that has not settled by the next morning, two times running";

let browser: Browser;
let phone: Phone;
beforeAll(async () => {
  browser = await launch();
  phone = await Phone.open(browser, url, { at: "2026-11-30T19:00" });
});
afterAll(() => browser?.close());

const did = async (day: string) => {
  await phone.reopen(`${day}T19:00`);
  await phone.tap("All done as planned");
  await phone.tap("Finish");
};
const woke = async (day: string, usual: "Yes" | "No, worse") => {
  await phone.reopen(`${day}T08:00`);
  await phone.choose("Was that back to your usual?", usual);
};
/** A busy machine takes its time to draw a screen again. */
const PATIENCE = { timeout: 15_000 };
const heads = async () =>
  (await phone.page.evaluate(
    `[...document.querySelectorAll(".advice-head")].map((one) => one.textContent)`,
  )) as string[];

describe.sequential("bad mornings running", { timeout: 60_000 }, () => {
  test("the first asks for less, the second for a call", async () => {
    await did("2026-11-30");
    await woke("2026-12-01", "No, worse");
    await expect.poll(heads, PATIENCE).toEqual(["That was too much"]);
    await did("2026-12-02");
    await woke("2026-12-03", "No, worse");
    await expect.poll(heads, PATIENCE).toEqual(["Call us today"]);
    await phone.sees(RUNNING);
    await phone.tap("I have called");
    await expect.poll(heads, PATIENCE).not.toContain("Call us today");
  });

  test("after the call the next session has the page's advice to do less", async () => {
    await phone.reopen("2026-12-04T18:00");
    await expect.poll(heads, PATIENCE).toEqual(["That was too much"]);
    await phone.sees("More pain the next morning than before? Do less next time");
    await did("2026-12-04");
  });

  test("the third asks for a call again on its own day, and until that one is made", async () => {
    await woke("2026-12-05", "No, worse");
    await expect.poll(heads, PATIENCE).toEqual(["Call us today"]);
    await phone.sees(RUNNING);
    await phone.reopen("2026-12-06T12:00");
    await expect.poll(heads, PATIENCE).toEqual(["Call us today"]);
    await phone.tap("I have called");
    await expect.poll(heads, PATIENCE).not.toContain("Call us today");
  });

  test("a good morning ends the row: the next bad one is a first", async () => {
    await did("2026-12-07");
    await woke("2026-12-08", "Yes");
    await expect.poll(heads, PATIENCE).toEqual([]);
    await did("2026-12-09");
    await woke("2026-12-10", "No, worse");
    await expect.poll(heads, PATIENCE).toEqual(["That was too much"]);
    expect(phone.complaints).toEqual([]);
  });
});
