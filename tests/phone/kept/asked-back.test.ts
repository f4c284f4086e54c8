/** Sums that cannot be, on a real phone: asked back once before they are written, and kept where they are right. */
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { readDiary } from "../../../src/diary/csv.ts";
import { loadWords } from "../../../src/words/load-words.ts";
import { launch, Phone, phoneHtml, saved } from "../phone-page.ts";
import { demoBooklet } from "../support.ts";

const booklet = demoBooklet("achilles");
const url = saved(await phoneHtml(booklet));

let browser: Browser;
let phone: Phone;
beforeAll(async () => {
  browser = await launch();
  phone = await Phone.open(browser, url, { at: "2026-11-30T18:00" });
  await phone.tap("All done as planned");
  await phone.tap("Something was different");
});
afterAll(() => browser?.close());

/** Types a number over what stands in the first field of this name. */
async function put(label: string, value: number): Promise<void> {
  await phone.page.evaluate(`(() => {
    const label = [...document.querySelectorAll(".count label")].find((one) => one.textContent === ${JSON.stringify(label)});
    document.getElementById(label.htmlFor).select();
  })()`);
  await phone.page.keyboard.type(String(value));
  await phone.page.keyboard.press("Enter");
  await phone.settled();
}

const field = (label: string) =>
  phone.page.evaluate(`(() => {
    const label = [...document.querySelectorAll(".count label")].find((one) => one.textContent === ${JSON.stringify(label)});
    return document.getElementById(label.htmlFor).value;
  })()`);
const first = async () => readDiary(await phone.kept()).diary?.entries[0]?.exercises[0];

test("400 kg against 37.5 planned: no leaves what stood there, yes keeps it and asks no more", async () => {
  await put("Weight in kg", 400);
  await phone.sees("You wrote 400 kg; 37.5 kg were planned. Is that right?");
  expect((await first())?.real.kg).toBeUndefined();
  await phone.tap("No, take it back");
  expect(await field("Weight in kg")).toBe("37.5");
  expect((await first())?.real.kg).toBeUndefined();

  await put("Weight in kg", 400);
  await phone.tap("Yes, keep it");
  expect((await first())?.real.kg).toBe(400);
  await phone.tap("Weight in kg: more");
  expect(await phone.text()).not.toContain("Is that right?");
  expect((await first())?.real.kg).toBe(400.5);
  await put("Weight in kg", 37.5);
  expect((await first())?.real.kg).toBeUndefined();
});

test("0 sets of what is done, and repetitions far over the plan", async () => {
  await put("Sets", 0);
  await phone.sees("It says 0 sets, but also that you did the exercise. Is that right?");
  await phone.tap("No, take it back");
  await put("Repetitions in a set", 150);
  await phone.sees("You wrote 150 repetitions in a set. Planned: 15. Is that right?");
  await phone.choose("Pain while you did it", 2);
  await phone.tap("Yes, keep it");
  expect(await first()).toMatchObject({
    done: "yes",
    pain: 2,
    real: { sets: undefined, reps: 150 },
  });
  expect(phone.complaints).toEqual([]);
});

test("German asks in German", async () => {
  const german = saved(await phoneHtml(booklet, loadWords("de", "de-DE")));
  const context = await browser.createBrowserContext();
  phone = await Phone.open(context, german, { at: "2026-11-30T18:00" });
  await phone.page.evaluate(`location.hash = "#/write/2026-11-30-evening"`);
  await phone.tap("Gemacht");
  await phone.tap("Etwas war anders");
  await put("Gewicht in kg", 400);
  await phone.sees("Sie haben 400 kg geschrieben");
  await context.close();
});
