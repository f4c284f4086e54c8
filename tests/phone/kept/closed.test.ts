/** No way out of the page: what the policy leaves open in this browser, the script takes away before it does anything. */
import { createSocket, type Socket } from "node:dgram";
import type { Browser, Page } from "puppeteer-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { launch, Phone, phoneHtml, saved } from "../phone-page.ts";
import { demoBooklet } from "../support.ts";

const html = await phoneHtml(demoBooklet("achilles"));

let browser: Browser;
let outside: Socket;
let packets = 0;
beforeAll(async () => {
  browser = await launch();
  outside = createSocket("udp4").on("message", () => {
    packets += 1;
  });
  await new Promise<void>((done) => outside.bind(0, "127.0.0.1", done));
});
afterAll(async () => {
  await browser?.close();
  outside?.close();
});

/** Tries to send word to a server of the test's own, by the name of a constructor; how it ended. */
const callOut = (page: Page, name: string) =>
  page.evaluate(`(async () => {
    try {
      const line = new ${name}({ iceServers: [{ urls: "stun:127.0.0.1:${outside.address().port}" }] });
      line.createDataChannel("diary");
      await line.setLocalDescription(await line.createOffer());
      await new Promise((done) => setTimeout(done, 1500));
      line.close();
      return "sent";
    } catch (thrown) {
      return thrown.name;
    }
  })()`);

test("without the script the policy of this browser lets word out", async () => {
  const page = await browser.newPage();
  await page.goto(saved(html.replace(/<script>[\s\S]*?<\/script>/, "")));
  packets = 0;
  expect(await callOut(page, "RTCPeerConnection")).toBe("sent");
  expect(packets).toBeGreaterThan(0);
  await page.close();
});

test.each(["RTCPeerConnection", "webkitRTCPeerConnection"])("%s is gone", async (name) => {
  const phone = await Phone.open(browser, saved(html), { at: "2026-11-30T18:00" });
  packets = 0;
  expect(await callOut(phone.page, name)).toBe("ReferenceError");
  expect(packets).toBe(0);
  expect(phone.complaints).toEqual([]);
  await phone.page.close();
});

test("it goes before the script reads anything", async () => {
  const before = `
    window.seen = [];
    const real = document.getElementById;
    Document.prototype.getElementById = function (id) {
      window.seen.push(typeof RTCPeerConnection);
      return real.call(this, id);
    };`;
  const phone = await Phone.open(browser, saved(html), { at: "2026-11-30T18:00", before });
  expect(await phone.page.evaluate("[...new Set(window.seen)]")).toEqual(["undefined"]);
});

test("the policy uses no word that this browser does not know", async () => {
  const page = await browser.newPage();
  const said: string[] = [];
  page.on("console", (message) => said.push(message.text()));
  await page.goto(saved(html));
  expect(said).toEqual([]);
  await page.close();
});
