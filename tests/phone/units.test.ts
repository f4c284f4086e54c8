/** A clinic in pounds on the phone: the client writes pounds, the diary keeps kilograms. */
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { readDiary } from "../../src/diary/csv.ts";
import { launch, Phone, phoneHtml, saved } from "./phone-page.ts";
import { demoBooklet } from "./support.ts";

const url = saved(await phoneHtml({ ...demoBooklet("achilles"), units: "lb" }));

let browser: Browser;
let phone: Phone;
beforeAll(async () => {
  browser = await launch();
  phone = await Phone.open(browser, `${url}#/write/2026-11-30-evening`, { at: "2026-11-30T20:00" });
});
afterAll(() => browser?.close());

const written = async () => readDiary(await phone.kept()).diary?.entries[0]?.exercises[0];

describe.sequential("a load in pounds", { timeout: 60_000 }, () => {
  // 37.5 kg are 82.67 lb; one pound less is 81.67 lb, 37.045 kg.
  test("is shown and taken in pounds, and kept in kilograms to the gram", async () => {
    await phone.choose("Did you do it?", "Done");
    await phone.tap("Something was different");
    await phone.sees("Weight in lb");
    expect(await phone.text()).not.toContain("Weight in kg");
    await phone.tap("Weight in lb: less");
    expect(await written()).toMatchObject({ planned: { kg: 37.5 }, real: { kg: 37.045 } });
  });
  test("back at what was planned nothing is different", async () => {
    await phone.tap("Weight in lb: more");
    expect((await written())?.real.kg).toBeUndefined();
  });
});
