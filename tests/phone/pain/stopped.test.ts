/** On a real phone: after a stop, the next exercise of the same tissue is only offered to be left out. */
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { readDiary } from "../../../src/diary/csv.ts";
import { launch, Phone, phoneHtml, saved } from "../phone-page.ts";
import { demoBooklet } from "../support.ts";

const SIT = "Sit and rise up on your toes with a heavy weight";
const url = saved(await phoneHtml(demoBooklet("achilles")));

let browser: Browser;
let phone: Phone;
beforeAll(async () => {
  browser = await launch();
  phone = await Phone.open(browser, url, { at: "2026-11-30T19:00" });
});
afterAll(() => browser?.close());

const buttons = async () =>
  (await phone.page.evaluate(
    `[...document.querySelectorAll(".phone-main button")].map((one) => one.textContent)`,
  )) as string[];

test("pain of 7 in the first exercise leaves the second out, with the reason", {
  timeout: 60_000,
}, async () => {
  await phone.tap("Start");
  await phone.tap("Start");
  await phone.tap("It hurts");
  await phone.choose(SIT, 7);
  await phone.tap("End this exercise");
  await phone.tap("Next exercise");
  await phone.sees("Exercise 2 of 2");
  await phone.sees("Leave this one out today");
  await phone.sees(`You have stopped “${SIT}” today, since it hurt too much.`);
  await phone.sees("This one works the same part of you.");
  expect(await buttons()).toEqual(["Leave out this exercise"]);
});

test("the same after the page is loaded anew, and it is written down as not done", {
  timeout: 60_000,
}, async () => {
  await phone.page.reload();
  await phone.sees("Exercise 2 of 2");
  expect(await buttons()).toEqual(["Leave out this exercise"]);
  await phone.tap("Leave out this exercise");
  await phone.tap("Go on");
  await phone.tap("Finish the session");
  const [entry] = readDiary(await phone.kept()).diary?.entries ?? [];
  expect(entry?.exercises.map(({ done, pain }) => [done, pain])).toEqual([
    ["part", 7],
    ["no", undefined],
  ]);
});

test("another day it is offered again", { timeout: 60_000 }, async () => {
  await phone.reopen("2026-12-02T19:00");
  await phone.tap("Start");
  await phone.sees("Exercise 1 of 2");
  expect(await buttons()).toContain("Start");
  expect(phone.complaints).toEqual([]);
});
