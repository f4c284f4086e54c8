/** A re-issued booklet with other times finds what was written, and advises by it. */
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { change, DEMO, shippedText } from "../../support/world.ts";
import { launch, phoneHtml, saved } from "../phone-page.ts";
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
    await phone.sees("Go easier");
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
