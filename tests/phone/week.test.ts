/** A whole week on a phone: sessions, the pace, pain over the limit, a reload, mornings, and the diary brought back. */
import { existsSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import jsqr from "jsqr";
import { PNG } from "pngjs";
import type { Browser, ElementHandle } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { readCodes } from "../../src/diary/code.ts";
import { diaryCsv, readDiary } from "../../src/diary/csv.ts";
import { eventually, freshFolder } from "../files/support.ts";
import { change, DEMO, shippedText } from "../support/world.ts";
import { launch, Phone, phoneHtml, saved } from "./phone-page.ts";
import { demoBooklet } from "./support.ts";

// the package is CommonJS: its types and what a bundler makes of it name the default differently
const readQr = ("default" in jsqr ? jsqr.default : jsqr) as typeof jsqr.default;

const SIT = "Sit and rise up on your toes with a heavy weight";
const html = await phoneHtml(demoBooklet("achilles"));
const url = saved(html, "home-program.html");

let browser: Browser;
let phone: Phone;
beforeAll(async () => {
  browser = await launch();
  phone = await Phone.open(browser, url, { at: "2026-11-30T18:00" });
});
afterAll(() => browser?.close());

/** From the exercise's first screen through its sets, as fast as the buttons go. */
async function doExercise(sets: number): Promise<void> {
  await phone.tap("Start");
  for (let set = 1; set <= sets; set += 1) {
    await phone.sees(`Set ${set} of ${sets}`);
    // the getting ready, and the rest before it, are skipped; then the set is ended
    await phone.tap("Start now");
    await phone.tap("End this set");
    if (set < sets) await phone.tap("End the rest");
  }
}

const entries = async () => readDiary(await phone.kept()).diary?.entries ?? [];

describe.sequential("a week", { timeout: 120_000 }, () => {
  test("opens on the session of the day", async () => {
    await phone.sees("Monday 30 November");
    await phone.sees("Evening: about 24 minutes");
    await phone.sees("37.5 kg (bar)");
    expect(await phone.text()).not.toContain("Home program for Edda Marlowe");
  });

  test("in the middle of a set the page is loaded anew: nothing is lost, and it waits", async () => {
    await phone.tap("Start");
    await phone.tap("Start");
    await phone.sees("Up", 9000);
    await phone.page.reload();
    await phone.sees("You were away");
    await phone.sees("Set 1 of 3 · 1 of 15");
    await phone.tap("Go on");
    await phone.sees("Get ready");
    await phone.sees("Up");
  });

  test("another app in front stops the work; coming back counts it in", async () => {
    const other = await browser.newPage();
    await other.bringToFront();
    await phone.page.evaluate(`Object.defineProperty(document, "visibilityState", { value: "hidden", configurable: true });
      document.dispatchEvent(new Event("visibilitychange"))`);
    await other.close();
    await phone.page.bringToFront();
    await phone.page.evaluate(`delete document.visibilityState;
      document.dispatchEvent(new Event("visibilitychange"))`);
    await phone.sees("Get ready");
    await phone.sees("1 of 15");
  });

  test("the sets are done, written down as they were, and the other exercise after them", async () => {
    await phone.sees("Up");
    await phone.tap("End this set");
    for (const set of [2, 3]) {
      await phone.tap("End the rest");
      await phone.sees(`Set ${set} of 3`);
      await phone.tap("Start now");
      await phone.tap("End this set");
    }
    await phone.sees("How was it?");
    await phone.choose(`Did you do it? ${SIT}`, "Done");
    await phone.choose("Pain while you did it", 2);
    await phone.tap("Next exercise");
    await doExercise(3);
    await phone.choose("Did you do it?", "Part of it");
    await phone.tap("Something was different");
    await phone.tap("Weight in kg: less");
    await phone.choose("Pain while you did it", 3);
    await phone.tap("Go on");
    await phone.choose("How hard was it?", 7);
    await phone.choose("Pain now, after it", 3);
    await phone.type("textarea", 'Ünder the "stairs", =1+1; done');
    await phone.tap("Finish the session");
    await phone.sees("Evening: Part of it");
    const [monday] = await entries();
    expect(monday).toMatchObject({
      date: "2026-11-30",
      part: "evening",
      done: "part",
      doneOn: "2026-11-30",
      effort: 7,
      painAfter: 3,
      note: 'Ünder the "stairs", =1+1; done',
    });
    expect(monday?.exercises.map(({ done, pain }) => [done, pain])).toEqual([
      ["yes", 2],
      ["part", 3],
    ]);
    const [, second] = monday?.exercises ?? [];
    expect(second?.real.kg).toBe((second?.planned.kg ?? 0) - 0.5);
  });

  test("asks the next morning, and is content with a good one", async () => {
    await phone.reopen("2026-12-01T08:00");
    await phone.sees("The morning after Monday");
    await phone.choose("How much pain did you have this morning?", 1);
    await phone.choose("Was that back to your usual?", "Yes");
    await phone.sees("Kept on this phone.");
    expect(await phone.text()).not.toContain("That was too much");
    await phone.sees("No exercises today.");
  });

  test("pain over the limit in the middle of a set stops the exercise, with the plan's own words", async () => {
    await phone.reopen("2026-12-02T19:00");
    await phone.tap("Start");
    await phone.tap("Start");
    await phone.tap("It hurts");
    await phone.choose(SIT, 5);
    await phone.sees("That is within your limit.");
    await phone.choose(SIT, 6);
    await phone.sees("Stop this exercise");
    await phone.sees("Pain over 5 out of 10? Stop this exercise for today.");
    expect(await phone.text()).not.toContain("Go on");
    await phone.tap("End this exercise");
    await phone.tap("Next exercise");
    await phone.tap("Leave out this exercise");
    await phone.tap("Go on");
    await phone.choose("Pain now, after it", 6);
    await phone.sees("That was too much");
    await phone.tap("Finish the session");
    const [, wednesday] = await entries();
    expect(wednesday?.done).toBe("part");
    expect(wednesday?.exercises.map(({ pain, done }) => [done, pain])).toEqual([
      ["part", 6],
      ["no", undefined],
    ]);
  });

  test("a bad morning asks for less, and the next session says so before it starts", async () => {
    await phone.reopen("2026-12-03T08:00");
    await phone.choose("How much pain did you have this morning?", 6);
    await phone.choose("Was that back to your usual?", "No, worse");
    await phone.sees("That was too much");
    await phone.reopen("2026-12-04T19:00");
    await phone.sees("Do less next time: less weight first, then fewer sets.");
  });

  test("the short version of a bad day, done without the phone's help", async () => {
    await phone.tap("Bad day? Short version, 7 min");
    await phone.sees("Today only: sets to do: 1 of 3");
    await phone.tap("All done as planned");
    await phone.tap("Finish");
    const friday = (await entries())[2];
    expect([friday?.short, friday?.done]).toEqual([true, "yes"]);
  });

  test("two bad mornings running ask for a call, with the number to tap", async () => {
    await phone.reopen("2026-12-05T09:00");
    await phone.choose("How much pain did you have this morning?", 6);
    await phone.sees("Call us today");
    await phone.sees("two times running");
    expect(await phone.page.evaluate(`document.querySelector(".advice-call a.button").href`)).toBe(
      "tel:01632960214",
    );
    await phone.tap("I have called");
  });

  test("a missed session that fits is done on another day, and can be gone on with", async () => {
    const other = await browser.createBrowserContext();
    const late = await Phone.open(other, url, { at: "2026-12-05T09:00" });
    await late.sees("Nothing is written down for Friday. That happens. You can still do it today.");
    await late.tap("Start");
    await late.tap("Leave out this exercise");
    await late.choose("Did you do it?", "Done");
    await late.tap("Next exercise");
    await late.tap("Today");
    await late.tap("Go on where you were");
    await late.sees("Exercise 2 of 2");
    const [friday] = readDiary(await late.kept()).diary?.entries ?? [];
    expect([friday?.date, friday?.doneOn, friday?.done]).toEqual([
      "2026-12-04",
      "2026-12-05",
      "part",
    ]);
    await late.reopen("2026-12-06T09:00");
    await late.sees("Sunday 6 December");
    expect(await late.text()).not.toContain("Go on where you were");
    expect(late.complaints).toEqual([]);
    await other.close();
  });

  test("a missed session is let go without blame", async () => {
    await phone.reopen("2026-12-08T09:00");
    await phone.sees("Nothing is written down for Monday. That happens.");
    await phone.tap("Leave it out");
    await phone.sees("No exercises today.");
    expect((await entries()).map(({ done }) => done)).toEqual(["part", "part", "yes", "no"]);
  });

  test("when to stop is one tap away on every screen", async () => {
    for (const place of [
      "#/today",
      "#/diary",
      "#/bring",
      "#/booklet",
      "#/write/2026-11-30-evening",
    ]) {
      await phone.page.evaluate(`location.hash = ${JSON.stringify(place)}`);
      await phone.tap("Stop and call");
      await phone.sees("Call 999 at once if:");
    }
  });

  test("the whole booklet is one tap away, and its links lead on", async () => {
    await phone.tap("Booklet");
    await phone.sees("Home program for Edda Marlowe");
    await phone.tap("1 Sit and rise");
    await phone.settled();
    const top = await phone.page.evaluate(
      `document.getElementById("exercise-heel-raise-seated-weight").getBoundingClientRect().top`,
    );
    expect(Number(top)).toBeLessThan(200);
  });

  test("the code on the screen is read by another program, and says what was written", async () => {
    await phone.reopen("2026-12-08T09:00");
    await phone.tap("Diary");
    await phone.tap("Bring it back to us");
    await phone.tap("Show a code of the last 7 days");
    const texts: string[] = [];
    for (;;) {
      const code = await phone.page.$(".code");
      const picture = PNG.sync.read(Buffer.from((await code?.screenshot()) ?? []));
      const read = readQr(new Uint8ClampedArray(picture.data), picture.width, picture.height);
      texts.push(read?.data ?? "");
      const next = await phone.page.$(".codes .buttons .button:last-child:not(:disabled)");
      if (next === null) break;
      await next.tap();
      await phone.settled();
    }
    const { diary, problems } = readCodes(texts);
    expect(problems).toEqual([]);
    expect(diary?.entries).toEqual((await entries()).slice(1));
  });

  test("the file that is saved is read by another program, and by a new phone", async () => {
    const downloads = freshFolder();
    const session = await phone.page.createCDPSession();
    await session.send("Browser.setDownloadBehavior", {
      behavior: "allow",
      downloadPath: downloads,
    });
    await phone.tap("Save it as a file");
    await phone.sees("Your phone now saves achilles-demo-diary-2026-12-08.csv");
    const file = join(downloads, "achilles-demo-diary-2026-12-08.csv");
    expect(await eventually(() => existsSync(file) && statSync(file).size > 0)).toBe(true);
    const text = readFileSync(file, "utf8");
    const rows: Record<string, string>[] = parse(text, { columns: true, bom: true });
    expect(rows.filter(({ exercise }) => exercise === "").map(({ date }) => date)).toEqual([
      "2026-11-30",
      "2026-12-02",
      "2026-12-04",
      "2026-12-07",
    ]);

    const other = await browser.createBrowserContext();
    const fresh = await Phone.open(other, url, { at: "2026-12-08T09:00" });
    expect(await fresh.kept()).toBe("");
    await fresh.tap("Diary");
    await fresh.tap("Bring it back to us");
    const input = await fresh.page.waitForSelector('input[type="file"]');
    if (input === null) throw new Error("no place for a file");
    await (input as ElementHandle<HTMLInputElement>).uploadFile(file);
    await fresh.sees("Loaded. Sessions: 4.");
    expect(await fresh.kept()).toBe(await phone.kept());
    expect(fresh.complaints).toEqual([]);
    await other.close();
  });

  test("a re-issued booklet takes over what was written, and moves what it no longer plans aside", async () => {
    const path = `${DEMO}/achilles.md`;
    const plan = change(shippedText(path), "starts: 2026-11-30", "starts: 2026-12-01");
    const before = await entries();
    const again = saved(
      await phoneHtml(demoBooklet("achilles", { [path]: plan })),
      "home-program.html",
    );
    await phone.reopen("2026-12-09T09:00", again);
    await phone.tap("Diary");
    await phone.tap("From an earlier booklet");
    await phone.sees("Mon 30 Nov, Evening");
    expect(await entries()).toEqual(before);
    expect(new Set(before.map(({ booklet }) => booklet)).size).toBe(1);
  });

  test("the page has made no complaint all week, and keeps just what it would send", async () => {
    expect(phone.complaints).toEqual([]);
    const text = await phone.kept();
    const { diary, problems } = readDiary(text);
    expect(problems).toEqual([]);
    expect(diary && diaryCsv(diary)).toBe(text);
  });
});
