/** A start is offered only where the plan's own rules leave room for it; else the screen says why, and when. */
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { makeBooklet } from "../../../src/booklet.ts";
import { shippedCourse } from "../../support/shipped.ts";
import { DAY, demoClinic, english } from "../../support/world.ts";
import { launch, type Phone, phoneHtml, saved } from "../phone-page.ts";
import { demoBooklet } from "../support.ts";
import { onPhone } from "./support.ts";

const url = saved(await phoneHtml(demoBooklet("achilles")));
const { made } = shippedCourse("achilles-lowering-twice-daily");
const twice = saved(await phoneHtml(makeBooklet(made, demoClinic(), english(), DAY)));

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

const starts = async (phone: Phone) =>
  Number(
    await phone.page.evaluate(
      `[...document.querySelectorAll("button")].filter((one) => one.textContent === "Start").length`,
    ),
  );

test("a missed session is not offered the day before the long walk", {
  timeout: 60_000,
}, async () => {
  await onPhone(browser, url, { at: "2026-12-05T12:00" }, async (phone) => {
    await phone.sees("You can still do it today.");
    expect(await starts(phone)).toBe(1);
    await phone.reopen("2026-12-05T14:00");
    await phone.sees("Nothing is written down for Friday. That happens.");
    await phone.sees("Not now. The time before “Long walk” on Sunday is kept free.");
    await phone.sees("Leave this one out, and go on with the next session.");
    expect(await starts(phone)).toBe(0);
  });
});

test("today's own session waits for its rest, and says until when", {
  timeout: 60_000,
}, async () => {
  await onPhone(browser, url, { at: "2026-11-30T19:00" }, async (phone) => {
    await phone.tap("All done as planned");
    await phone.reopen("2026-12-02T08:00");
    await phone.sees("your body still needs its rest");
    await phone.sees("You can start it from here on: Wednesday, Evening.");
    expect(await starts(phone)).toBe(0);
    await phone.reopen("2026-12-02T18:00");
    await phone.sees("Evening: about");
    expect(await starts(phone)).toBe(1);
  });
});

test("in the evening the evening's start stands first", { timeout: 60_000 }, async () => {
  await onPhone(browser, twice, { at: "2027-01-04T07:30" }, async (phone) => {
    const order = async () => {
      const text = await phone.text();
      return text.indexOf("Morning: about") < text.indexOf("Evening: about");
    };
    await phone.sees("Morning: about");
    expect(await order()).toBe(true);
    await phone.reopen("2027-01-04T19:30");
    await phone.sees("Evening: about");
    expect(await order()).toBe(false);
    await phone.sees("Not now. It would come too close to the next session: Monday, Evening.");
    expect(await starts(phone)).toBe(1);
  });
});

test("a bad day in the middle of a session goes on where it is", { timeout: 60_000 }, async () => {
  await onPhone(browser, url, { at: "2026-11-30T18:00" }, async (phone) => {
    await phone.tap("Start");
    await phone.tap("Leave out this exercise");
    await phone.choose("Did you do it?", "Done");
    await phone.tap("Next exercise");
    await phone.sees("Exercise 2 of 2");
    await phone.tap("Today");
    await phone.tap("Bad day?");
    await phone.tap("Go on where you were");
    expect(await phone.text()).not.toContain("Exercise 1 of");
    await phone.tap("Today");
    await phone.tap("Back to the whole session");
    await phone.tap("Go on where you were");
    expect(await phone.text()).not.toContain("Exercise 1 of");
  });
});
