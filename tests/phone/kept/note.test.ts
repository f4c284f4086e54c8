/** A note on a real phone at the end of a program: no key touches what is kept, and no word of it is lost. */
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { diaryCsv, readDiary } from "../../../src/diary/csv.ts";
import type { DiaryEntry } from "../../../src/diary/entry.ts";
import { phoneData } from "../../../src/html/phone.ts";
import { plannedSessions } from "../../../src/phone/day/data.ts";
import { emptyEntry, withAll } from "../../../src/phone/day/entries.ts";
import { english } from "../../support/world.ts";
import { launch, Phone, phoneHtml, saved } from "../phone-page.ts";
import { demoBooklet } from "../support.ts";

const booklet = demoBooklet("achilles");
const url = saved(await phoneHtml(booklet));
const data = phoneData(booklet, english());
const entries = plannedSessions(data).map(
  (session): DiaryEntry => ({
    ...withAll(
      emptyEntry(session, data.booklet, false, `${session.date}T20:00:00Z`),
      "yes",
      session.date,
    ),
    note: "Went well.",
  }),
);
const last = entries.at(-1);
const FULL = diaryCsv({ plan: data.plan, client: data.client, entries });
const name = `paulatim ${data.plan} ${data.client} diary`;

/** Counts the touches of what is kept. */
const COUNT = `
  window.touched = [];
  for (const what of ["getItem", "setItem", "removeItem"]) {
    const real = Storage.prototype[what];
    Storage.prototype[what] = function (...given) { window.touched.push(what); return real.apply(this, given); };
  }`;

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

/** A phone on which every session is written down, at the note of the last one. */
async function atNote(use: (phone: Phone) => Promise<void>): Promise<void> {
  const context = await browser.createBrowserContext();
  const phone = await Phone.open(context, url, { at: `${last?.date}T21:00`, before: COUNT });
  await phone.page.evaluate(
    `localStorage.setItem(${JSON.stringify(name)}, ${JSON.stringify(FULL)})`,
  );
  await phone.reopen(`${last?.date}T21:00`);
  // on a busy machine the page may not yet listen
  await phone.page.waitForFunction(
    `location.hash = "#/write/${last?.date}-${last?.part}", !!document.querySelector("textarea")`,
    { timeout: 15_000, polling: 100 },
  );
  await phone.sees("A note, if you like");
  await phone.page.evaluate(`document.querySelector("textarea").select(); window.touched = []`);
  await use(phone);
  expect(phone.complaints).toEqual([]);
  await context.close();
}

const TEXT = "Slow today; warm, not sore";
const typed = (phone: Phone) =>
  phone.page.evaluate(
    `for (const letter of ${JSON.stringify(TEXT)}) document.execCommand("insertText", false, letter)`,
  );
const keptNotes = async (phone: Phone) =>
  readDiary(await phone.kept()).diary?.entries.map(({ note }) => note);
const WANTED = [...entries.slice(0, -1).map(({ note }) => note), TEXT];

test("a key touches nothing that is kept; the pause after the last one keeps the note", async () => {
  await atNote(async (phone) => {
    await typed(phone);
    await phone.settled();
    expect(await phone.page.evaluate("window.touched")).toEqual([]);
    expect(await phone.page.evaluate(`document.querySelector("textarea").value`)).toBe(TEXT);
    await phone.page.waitForFunction("window.touched.includes('setItem')");
    expect(await keptNotes(phone)).toEqual(WANTED);
    expect(await phone.page.evaluate(`document.querySelector("textarea").value`)).toBe(TEXT);
  });
});

test.each([
  ["another field", (phone: Phone) => phone.choose("How hard was it?", 4)],
  ["the end of the screen", (phone: Phone) => phone.tap("Finish")],
  ["another screen", (phone: Phone) => phone.tap("Diary")],
  ["another page", (phone: Phone) => phone.page.goto("about:blank")],
  ["a reload", (phone: Phone) => phone.page.reload()],
])("%s right after the last key loses no word of it", async (_, go) => {
  await atNote(async (phone) => {
    await typed(phone);
    await go(phone);
    if (phone.page.url() === "about:blank") await phone.page.goto(url);
    await phone.page.waitForFunction(
      `(localStorage.getItem(${JSON.stringify(name)}) ?? "").includes(${JSON.stringify(TEXT)})`,
      { timeout: 3000 },
    );
    expect(await keptNotes(phone)).toEqual(WANTED);
  });
});
