/** On a real phone: a storage that is full, what cannot be read, deleting it all, and who else can read it. */
import { existsSync, readFileSync } from "node:fs";
import { createServer } from "node:http";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, BrowserContext } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { readDiary } from "../../../src/diary/csv.ts";
import { eventually, freshFolder } from "../../files/support.ts";
import { launch, Phone, phoneHtml, saved } from "../phone-page.ts";
import { demoBooklet } from "../support.ts";

const url = saved(await phoneHtml(demoBooklet("achilles")));
const MONDAY = { at: "2026-11-30T18:00" };
const NAME = "paulatim achilles-demo BF-0417 diary";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

async function fresh(
  use: (phone: Phone, context: BrowserContext) => Promise<void>,
  at = url,
): Promise<void> {
  const context = await browser.createBrowserContext();
  const phone = await Phone.open(context, at, MONDAY);
  await use(phone, context);
  expect(phone.complaints).toEqual([]);
  await context.close();
}

const writeAll = async (phone: Phone) => {
  await phone.tap("All done as planned");
  await phone.choose("How hard was it?", 6);
};
const efforts = async (phone: Phone) =>
  readDiary(await phone.kept()).diary?.entries.map(({ effort }) => effort);
const chosen = (phone: Phone) =>
  phone.page.evaluate(
    `[...document.querySelectorAll(".write-session input:checked")].map(({ value }) => value)`,
  );
const keys = (phone: Phone) => phone.page.evaluate("Object.keys(localStorage).sort()");

/** Leaves no room for another letter. */
const FILL = `(() => {
  let [fits, not] = [0, 16_000_000];
  while (not - fits > 1) {
    const middle = (fits + not) >> 1;
    try { localStorage.setItem("other", "0".repeat(middle)); fits = middle; } catch { not = middle; }
  }
})()`;
const EMPTY = `localStorage.removeItem("other")`;

test("a phone that is full: nothing is said to be kept, a reload loses nothing and says it again", async () => {
  await fresh(async (phone, context) => {
    await writeAll(phone);
    await phone.sees("Kept on this phone.");
    await phone.page.evaluate(FILL);
    await phone.choose("How hard was it?", 10);
    await phone.type("textarea", "a note that is not there yet");
    await phone.sees("This phone has no more room.");
    await phone.sees("Not kept on this phone.");
    expect(await phone.text()).not.toContain("Kept on this phone.");
    expect(await efforts(phone)).toEqual([6]);

    await phone.page.reload();
    await phone.sees("This phone has no more room.");
    await phone.sees("Not kept on this phone.");
    expect(await chosen(phone)).toEqual(["10"]);

    const next = await Phone.open(context, url, MONDAY);
    await next.sees("This phone has almost no more room.");
    await next.page.close();

    await phone.page.evaluate(EMPTY);
    await phone.choose("Pain now, after it", 2);
    await phone.sees("Kept on this phone.");
    expect(await phone.text()).not.toContain("no more room");
    expect(await efforts(phone)).toEqual([10]);
    expect(await phone.kept()).toContain("a note that is not there yet");
    expect(await phone.page.evaluate("sessionStorage.length")).toBe(0);
  });
});

test("a phone that is full: a call that was made is said to be kept only where it is", async () => {
  const made = "Kept: you have called us.";
  const calls = async (phone: Phone) =>
    Number(
      await phone.page.evaluate(
        `JSON.parse(localStorage.getItem(${JSON.stringify(NAME.replace(/diary$/, "settings"))}) ?? "{}").calls?.length ?? 0`,
      ),
    );
  await fresh(async (phone) => {
    await phone.tap("All done as planned");
    await phone.choose("Pain now, after it", 9);
    await phone.tap("Finish");
    await phone.sees("Call us today");
    await phone.page.evaluate(FILL);
    await phone.tap("I have called");
    await phone.sees("Not kept on this phone.");
    await phone.sees("This phone has no more room.");
    expect(await phone.text()).not.toContain(made);
    expect(await calls(phone)).toBe(0);

    // it stays told, and stays made, also on other screens and after the page is loaded anew
    await phone.tap("Diary");
    await phone.sees("This phone has no more room.");
    await phone.page.reload();
    await phone.sees("This phone has no more room.");
    await phone.tap("Today");
    expect(await phone.text()).not.toContain("Call us today");

    await phone.page.evaluate(EMPTY);
    await phone.tap("Look or change");
    await phone.choose("How hard was it?", 3);
    await phone.sees("Kept on this phone.");
    expect(await phone.text()).not.toContain("no more room");
    expect(await calls(phone)).toBe(1);
    expect(await phone.page.evaluate("sessionStorage.length")).toBe(0);
  });
});

test("what could not be read is told of until it is saved as a file of its own", async () => {
  await fresh(async (phone, context) => {
    await writeAll(phone);
    const broken = `${await phone.kept()}1,achilles-demo,BF-0417,b,1,2026-12-02,evening,,,,,maybe\r\n`;
    await phone.page.evaluate(
      `localStorage.setItem(${JSON.stringify(NAME)}, ${JSON.stringify(broken)})`,
    );
    for (let n = 0; n < 2; n += 1) {
      await phone.reopen(MONDAY.at);
      await phone.sees("Part of your diary could not be read.");
    }
    const downloads = freshFolder();
    const session = await phone.page.createCDPSession();
    await session.send("Browser.setDownloadBehavior", {
      behavior: "allow",
      downloadPath: downloads,
      ...(context.id !== undefined && { browserContextId: context.id }),
    });
    await phone.tap("Save it");
    await phone.tap("Save what could not be read");
    const file = join(downloads, "achilles-demo-unread-2026-11-30.txt");
    expect(await eventually(() => existsSync(file) && readFileSync(file, "utf8") === broken)).toBe(
      true,
    );
    await phone.reopen(MONDAY.at);
    await phone.sees("Evening: Done");
    expect(await phone.text()).not.toContain("Part of your diary could not be read.");
  });
});

describe("deleting the diary", () => {
  test("asks first; no leaves it, yes leaves nothing, in no other window either", async () => {
    await fresh(async (phone, context) => {
      await writeAll(phone);
      const other = await Phone.open(context, url, MONDAY);
      await other.sees("Evening: Done");
      await phone.page.bringToFront();
      await phone.tap("Diary");
      await phone.tap("Bring it back to us");
      await phone.tap("Delete the diary from this phone");
      await phone.sees("(sessions: 1)");
      const focus = await phone.page.evaluate("document.activeElement.textContent");
      expect(focus).toContain("You cannot get it back.");
      await phone.tap("No, keep it");
      await phone.sees("Your diary is still here.");
      expect(await keys(phone)).toContain(NAME);

      await phone.tap("Delete the diary from this phone");
      await phone.tap("Yes, delete it");
      await phone.sees("Your diary is gone from this phone.");
      await phone.sees("There is nothing in your diary yet.");
      expect(await keys(phone)).toEqual([]);
      expect(await phone.text()).not.toContain("Delete the diary from this phone");

      await other.page.bringToFront();
      await other.sees("Evening: about 24 minutes");
      await other.tap("All done as planned");
      expect(readDiary(await other.kept()).diary?.entries).toHaveLength(1);
      expect(other.complaints).toEqual([]);
    });
  });
});

describe("who else can read it", () => {
  const SHARED = "other files on this phone can read your diary";

  test("opened as a file it says that other files can, and in this browser they do", async () => {
    await fresh(async (phone, context) => {
      await writeAll(phone);
      await phone.tap("Diary");
      await phone.tap("Bring it back to us");
      await phone.sees(SHARED);
      const other = await context.newPage();
      await other.goto(saved("<!doctype html><title>Another file</title>"));
      expect(await other.evaluate("Object.keys(localStorage).join()")).toContain(NAME);
    });
  });

  test("from a server it does not say so", async () => {
    const server = createServer((_, response) => {
      response.setHeader("content-type", "text/html");
      response.end(readFileSync(fileURLToPath(url)));
    });
    await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
    const address = server.address();
    if (address === null || typeof address === "string") throw new Error("no port");
    await fresh(async (phone) => {
      await phone.tap("Diary");
      await phone.tap("Bring it back to us");
      await phone.sees("What this phone keeps");
      expect(await phone.text()).not.toContain(SHARED);
    }, `http://127.0.0.1:${address.port}/booklet.html`);
    server.close();
  });
});
