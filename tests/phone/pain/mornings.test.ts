/** On a real phone, two sessions a day: the next morning is one question, and two bad ones ask for a call. */
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { makeBooklet } from "../../../src/booklet.ts";
import { readDiary } from "../../../src/diary/csv.ts";
import { shippedCourse } from "../../support/shipped.ts";
import { DAY, demoClinic, english } from "../../support/world.ts";
import { launch, Phone, phoneHtml, saved } from "../phone-page.ts";

const QUESTION = "How much pain did you have this morning?";

const { made } = shippedCourse("achilles-lowering-twice-daily");
const booklet = makeBooklet(made, demoClinic(), english(), DAY);
const days = [...new Set(booklet.sessions.map(({ date }) => date))];
const [first = "", second = "", third = ""] = days;
const url = saved(await phoneHtml(booklet));

let browser: Browser;
let phone: Phone;
beforeAll(async () => {
  browser = await launch();
  phone = await Phone.open(browser, url, { at: `${first}T07:30` });
});
afterAll(() => browser?.close());

/** Both sessions of the day are written down as done. */
async function doBoth(): Promise<void> {
  for (let n = 0; n < 2; n += 1) {
    await phone.tap("All done as planned");
    await phone.tap("Finish");
  }
}

const answers = async () =>
  readDiary(await phone.kept()).diary?.entries.map(({ date, painMorning }) => [date, painMorning]);

describe.sequential("two sessions a day", { timeout: 60_000 }, () => {
  test("the morning is asked once, and a bad one asks for less", async () => {
    expect(days.slice(0, 3)).toEqual(["2027-01-04", "2027-01-05", "2027-01-06"]);
    await doBoth();
    await phone.reopen(`${second}T07:30`);
    await phone.choose(QUESTION, 6);
    await phone.sees("That was too much");
    await phone.reopen(`${second}T07:40`);
    expect(await phone.text()).not.toContain(QUESTION);
  });

  test("opened at either session, it is the same answer and no second bad night", async () => {
    for (const part of ["morning", "evening"]) {
      await phone.page.evaluate(`location.hash = "#/write/${first}-${part}"`);
      await phone.choose("Pain the next morning", 6);
      await phone.sees("That was too much");
      expect(await phone.text()).not.toContain("Call us today");
    }
    expect((await answers())?.filter(([, pain]) => pain !== undefined)).toEqual([[first, 6]]);
    await phone.page.evaluate(`location.hash = "#/today"`);
  });

  test("the morning after the next day is the second: it asks for a call", async () => {
    await doBoth();
    await phone.reopen(`${third}T07:30`);
    await phone.choose(QUESTION, 6);
    await phone.sees("Call us today");
    await phone.sees("two times running");
    expect(phone.complaints).toEqual([]);
  });
});
