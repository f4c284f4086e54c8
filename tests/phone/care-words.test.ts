/** Words of care for a client's health flags: on the phone where the exercise is done, as on its page. */
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { launch, Phone, phoneHtml, saved } from "./phone-page.ts";
import { demoBooklet } from "./support.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

// the shoulder's client has a high blood pressure, the heel cord's has nothing
test.each([
  ["shoulder", true, "07:00"],
  ["achilles", false, "19:00"],
] as const)("%s: before the first set, and among the steps", async (plan, cared, hour) => {
  const booklet = demoBooklet(plan);
  const [first] = booklet.sessions;
  const url = saved(await phoneHtml(booklet));
  const phone = await Phone.open(browser, url, { at: `${first?.date}T${hour}` });
  const words = /Take care\s+Breathe out as you push\. Do not hold your breath\./;
  await phone.tap("How to do it");
  expect(words.test(await phone.text())).toBe(cared);
  await phone.tap("Start");
  const ready = await phone.text();
  expect(words.test(ready)).toBe(cared);
  expect(ready).not.toContain("Set 1 of");
  expect(phone.complaints).toEqual([]);
});
