/** An entry of a day that has passed can be corrected, and each tap of the correction be taken back. */
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { launch, type Phone, phoneHtml, saved } from "../phone-page.ts";
import { demoBooklet } from "../support.ts";
import { entriesOf, onPhone } from "./support.ts";

const url = saved(await phoneHtml(demoBooklet("achilles")));

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

const KINDS: readonly [string, (phone: Phone) => Promise<void>][] = [
  ["whether an exercise was done", (phone) => phone.choose("Did you do it?", "Part of it")],
  ["its pain", (phone) => phone.choose("Pain while you did it", 4)],
  ["its sets", (phone) => phone.tap("Sets: less")],
  ["its repetitions", (phone) => phone.tap("Repetitions in a set: less")],
  ["its weight", (phone) => phone.tap("Weight in kg: less")],
  ["how hard the session was", (phone) => phone.choose("How hard was it?", 7)],
  ["the pain after it", (phone) => phone.choose("Pain now, after it", 5)],
  ["the pain of the next morning", (phone) => phone.choose("Pain the next morning", 5)],
  [
    "whether the morning was as usual",
    (phone) => phone.choose("Was that back to your usual?", "No, worse"),
  ],
];

test("every kind of answer, each with its undo", { timeout: 60_000 }, async () => {
  await onPhone(browser, url, { at: "2026-11-30T19:00" }, async (phone) => {
    await phone.tap("All done as planned");
    await phone.tap("Finish");
    await phone.reopen("2026-12-02T12:00");
    await phone.page.evaluate(`location.hash = "#/write/2026-11-30-evening"`);
    await phone.sees("Pain the next morning");
    await phone.page.evaluate(
      `for (const fold of document.querySelectorAll("details")) fold.open = true`,
    );
    const said = async () => (await entriesOf(phone)).map((entry) => ({ ...entry, written: "" }));
    const before = await said();
    for (const [kind, correct] of KINDS) {
      await correct(phone);
      expect([kind, await said()]).not.toEqual([kind, before]);
      await phone.tap("Undo");
      expect([kind, await said()]).toEqual([kind, before]);
    }
  });
});
