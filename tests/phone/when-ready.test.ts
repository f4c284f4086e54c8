/** On a real phone: an exercise that waits for a sign comes into the session with the tick, stays, and goes with it. */
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { makeBooklet } from "../../src/booklet.ts";
import { shippedCourse } from "../support/shipped.ts";
import { DAY, demoClinic, english } from "../support/world.ts";
import { launch, Phone, phoneHtml, saved } from "./phone-page.ts";

const SIGN = "You can do ten rises on your sore leg on the floor.";
const WAITS = "Rise up on both legs with your heels over a step";

const { made } = shippedCourse("achilles-four-phases");
const booklet = makeBooklet(made, demoClinic(), english(), DAY);
const first = booklet.sessions.find(({ bouts }) => bouts.some(({ when }) => when === SIGN));
const url = saved(await phoneHtml(booklet));

let browser: Browser;
let phone: Phone;
beforeAll(async () => {
  browser = await launch();
  phone = await Phone.open(browser, url, { at: `${first?.date}T06:00` });
});
afterAll(() => browser?.close());

/** Titles of the exercises of today's sessions. */
const today = async (): Promise<string[]> =>
  (await phone.page.evaluate(
    `[...document.querySelectorAll(".exercises h3")].map((one) => one.textContent)`,
  )) as string[];

test("it is offered, and no part of the session before the sign is there", {
  timeout: 60_000,
}, async () => {
  await phone.sees("When you are ready");
  await phone.sees(SIGN);
  expect(await phone.text()).toContain(WAITS);
  expect(await today()).not.toContain(WAITS);
});

test("with the tick it is, also after the page is loaded anew", { timeout: 60_000 }, async () => {
  await phone.tap(SIGN);
  expect(await today()).toContain(WAITS);
  await phone.page.reload();
  await phone.sees("When you are ready");
  expect(await today()).toContain(WAITS);
});

test("the tick can be taken back", { timeout: 60_000 }, async () => {
  await phone.tap(SIGN);
  expect(await today()).not.toContain(WAITS);
  expect(phone.complaints).toEqual([]);
});
