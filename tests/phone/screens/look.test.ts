/** Sessions of coming days can be looked at, and only that. */
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { launch, Phone, phoneHtml, saved } from "../phone-page.ts";
import { demoBooklet } from "../support.ts";

const booklet = demoBooklet("achilles");
const url = saved(await phoneHtml(booklet));

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

const buttons = async (phone: Phone) =>
  await phone.page.$$eval("main.phone-main button, main.phone-main input", (all) =>
    all.map(({ textContent }) => textContent),
  );

test("from the diary: every exercise with its dose and its steps, and nothing that begins or writes it", {
  timeout: 60_000,
}, async () => {
  const phone = await Phone.open(browser, url, { at: "2026-12-01T09:00" });
  await phone.tap("Diary");
  // Wednesday's, as the calendar of the booklet has it
  const wednesday = booklet.sessions.find(({ date }) => date === "2026-12-02");
  await phone.tap("Wed 2 Dec, Evening");
  await phone.sees("Wednesday 2 December");
  await phone.sees(`about ${wednesday?.minutes} minutes`);
  const text = await phone.text();
  for (const bout of wednesday?.bouts ?? []) {
    expect(text).toContain(bout.title);
    for (const line of bout.dose) expect(text).toContain(line);
  }
  await phone.tap("How to do it");
  await phone.sees("Lower both heels slowly");
  expect(await buttons(phone)).toEqual(["Back to the diary"]);
  expect(await phone.kept()).toBe("");
  await phone.tap("Back to the diary");
  await phone.sees("Your diary");
});

test("the next session from the first screen; what has passed is written down as ever", {
  timeout: 60_000,
}, async () => {
  const phone = await Phone.open(browser, url, { at: "2026-12-01T09:00" });
  await phone.tap("Look at it");
  await phone.sees("Wednesday 2 December");
  await phone.tap("Diary");
  await phone.tap("Mon 30 Nov, Evening");
  await phone.sees("The whole session");
  expect(phone.complaints).toEqual([]);
});
