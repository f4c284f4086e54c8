/** A re-issued booklet with other times finds what was written, and advises by it. */
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { readDiary } from "../../../src/diary/csv.ts";
import { change, DEMO, shippedText } from "../../support/world.ts";
import { launch, type Phone, phoneHtml, saved } from "../phone-page.ts";
import { demoBooklet } from "../support.ts";
import { entriesOf, onPhone, SIT, toldOf } from "./support.ts";

const path = `${DEMO}/achilles.md`;
const booklet = demoBooklet("achilles");
const moved = booklet.sessions.map((one) => ({ ...one, part: "morning" as const }));
const html = await phoneHtml(booklet);
/** The file as the client first had it: each test puts another in its place. */
const issued = () => saved(html, "issued.html");

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

test("times that have moved", { timeout: 60_000 }, async () => {
  await onPhone(browser, issued(), { at: "2026-12-02T19:00" }, async (phone) => {
    await phone.tap("All done as planned");
    await phone.choose("Pain while you did it", 7);
    await phone.choose("Pain now, after it", 6);
    const before = await entriesOf(phone);
    const again = saved(await phoneHtml({ ...booklet, sessions: moved }), "issued.html");
    await phone.reopen("2026-12-02T21:00", again);
    await phone.sees("Morning: Done");
    expect(await phone.text()).not.toContain("Start");
    await phone.tap("Look or change");
    await phone.choose("How hard was it?", 8);
    const [wednesday, ...others] = await entriesOf(phone);
    expect(others).toEqual([]);
    expect(wednesday?.part).toBe("evening");
    expect(wednesday && toldOf(wednesday)).toEqual(before.flatMap(toldOf));
    expect(wednesday?.effort).toBe(8);
    await phone.tap("Diary");
    expect(await phone.text()).not.toContain("From an earlier booklet");
    await phone.reopen("2026-12-03T08:00");
    await phone.choose("How much pain did you have this morning?", 2);
    await phone.reopen("2026-12-04T08:00");
    await phone.sees("Morning: about");
    await phone.sees("That was too much");
  });
});

test("a session that the booklet no longer has can still be put right", {
  timeout: 60_000,
}, async () => {
  await onPhone(browser, issued(), { at: "2026-11-30T19:00" }, async (phone) => {
    await phone.tap("All done as planned");
    const later = change(shippedText(path), "starts: 2026-11-30", "starts: 2026-12-01");
    const again = saved(await phoneHtml(demoBooklet("achilles", { [path]: later })), "issued.html");
    await phone.reopen("2026-12-02T09:00", again);
    await phone.tap("Diary");
    await phone.tap("From an earlier booklet");
    await phone.tap("Mon 30 Nov, Evening");
    await phone.sees(SIT);
    await phone.choose("Pain while you did it", 3);
    await phone.choose("Pain now, after it", 2);
    const [monday] = await entriesOf(phone);
    expect(monday && [...toldOf(monday), monday.painAfter]).toEqual(["yes 3", "yes", 2]);
    await phone.tap("Undo");
    expect((await entriesOf(phone))[0]?.painAfter).toBeUndefined();
  });
});

describe("a corrected reference", { timeout: 60_000 }, () => {
  const corrected = change(shippedText(path), "BF-0417", "BF-0471");
  const asks =
    "This booklet is for BF-0471. Your diary was kept for BF-0417. Is it the same person?";
  const reissue = async () =>
    saved(await phoneHtml(demoBooklet("achilles", { [path]: corrected })), "issued.html");
  const written = async (phone: Phone) => {
    await phone.tap("All done as planned");
    await phone.choose("Pain while you did it", 4);
    await phone.tap("Finish");
    await phone.reopen("2026-12-01T08:00", await reissue());
    await phone.sees(asks);
  };
  const kept = async (phone: Phone, client: string) =>
    String(
      await phone.page.evaluate(`localStorage["paulatim achilles-demo ${client} diary"] ?? ""`),
    );

  test("asks once, and the diary of the same person goes on", async () => {
    await onPhone(browser, issued(), { at: "2026-11-30T19:00" }, async (phone) => {
      await written(phone);
      await phone.tap("Stop and call");
      await phone.sees("Call 999 at once if:");
      await phone.tap("Today");
      await phone.tap("Yes, the same person");
      await phone.choose("How much pain did you have this morning?", 2);
      await phone.page.reload();
      await phone.sees("Tuesday 1 December");
      expect(await phone.text()).not.toContain(asks);
      const [monday] = readDiary(await kept(phone, "BF-0471")).diary?.entries ?? [];
      expect(monday && [...toldOf(monday), monday.painMorning]).toEqual(["yes 4", "yes", 2]);
      expect(readDiary(await kept(phone, "BF-0417")).diary?.entries).toHaveLength(1);
    });
  });

  test("rest is counted from the hour at which the last session was begun", async () => {
    await onPhone(browser, issued(), { at: "2026-12-05T12:00" }, async (phone) => {
      // Friday's, a day late and at noon
      await phone.tap("Start");
      await phone.tap("Start");
      await phone.tap("It hurts");
      await phone.choose(SIT, 1);
      await phone.tap("End this exercise");
      await phone.reopen("2026-12-07T13:00", await reissue());
      await phone.sees(asks);
      await phone.tap("Yes, the same person");
      await phone.sees("Monday 7 December");
      expect(await phone.text()).not.toContain("your body still needs its rest");
      await phone.tap("Start");
      await phone.sees("Exercise 1 of 2");
    });
  });

  test("a call that was made and a morning that is forgotten are not asked for again", async () => {
    await onPhone(browser, issued(), { at: "2026-11-30T19:00" }, async (phone) => {
      await phone.tap("All done as planned");
      await phone.choose("Pain while you did it", 9);
      await phone.sees("Call us today");
      await phone.tap("Finish");
      await phone.tap("I have called");
      await phone.reopen("2026-12-01T08:00");
      await phone.tap("I do not remember");
      await phone.reopen("2026-12-01T09:00", await reissue());
      await phone.tap("Yes, the same person");
      await phone.sees("Tuesday 1 December");
      expect(await phone.text()).not.toContain("Call us today");
      expect(await phone.text()).not.toContain("How much pain did you have this morning?");
      await phone.page.reload();
      await phone.sees("Tuesday 1 December");
      expect(await phone.text()).not.toContain("Call us today");
      await phone.tap("Diary");
      await phone.tap("Mon 30 Nov, Evening");
      await phone.sees("You have called us about this");
    });
  });

  test("somebody else begins a diary of their own, and an answer can be taken back", async () => {
    await onPhone(browser, issued(), { at: "2026-11-30T19:00" }, async (phone) => {
      await written(phone);
      await phone.tap("Yes, the same person");
      await phone.sees("The morning after Monday");
      await phone.tap("Undo");
      await phone.sees(asks);
      await phone.tap("Yes, the same person");
      const [again] = readDiary(await kept(phone, "BF-0471")).diary?.entries ?? [];
      expect(again && toldOf(again)).toEqual(["yes 4", "yes"]);
      await phone.tap("Undo");
      await phone.sees(asks);
      await phone.tap("No, somebody else");
      await phone.sees("Tuesday 1 December");
      await phone.page.reload();
      await phone.sees("Tuesday 1 December");
      expect(await phone.text()).not.toContain("The morning after Monday");
      await phone.tap("Diary");
      await phone.tap("Bring it back to us");
      await phone.sees("There is nothing in your diary yet.");
      expect(readDiary(await kept(phone, "BF-0417")).diary?.entries).toHaveLength(1);
    });
  });
});
