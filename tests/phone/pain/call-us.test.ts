/** On a real phone: "Call us today" stays until the client has called or a new booklet comes, with no Start below it. */
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { makeBooklet, makeProgram } from "../../../src/booklet.ts";
import { asSigned } from "../../support/signed.ts";
import { DEMO, demoClinic, english } from "../../support/world.ts";
import { launch, Phone, phoneHtml, saved } from "../phone-page.ts";
import { demoBooklet } from "../support.ts";

const url = saved(await phoneHtml(demoBooklet("achilles")), "call.html");
const WAIT = "Do nothing more of this program until you have spoken to us.";
const SIT = "Sit and rise up on your toes with a heavy weight";

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

/** Nothing of the program is offered, and the number can be tapped. */
async function mustCall(): Promise<void> {
  await phone.sees("Call us today");
  await phone.sees(WAIT);
  for (const offer of ["Start", "Go on where you were", "All done as planned", "Bad day?"])
    expect((await buttons()).filter((one) => one.startsWith(offer))).toEqual([]);
  expect(await phone.page.evaluate(`document.querySelector(".advice-call a.button").href`)).toBe(
    "tel:01632960214",
  );
}

describe.sequential("a call that is due", { timeout: 60_000 }, () => {
  test("stops the session in which it came up", async () => {
    await phone.tap("Start");
    await phone.tap("Start");
    await phone.tap("It hurts");
    await phone.choose(SIT, 9);
    await mustCall();
    await phone.tap("End this exercise");
    await phone.tap("Next exercise");
    await mustCall();
    await phone.tap("Finish the session");
    await phone.tap("Finish the session");
    await mustCall();
  });

  test("is there an hour later, after the page is loaded anew, and on the next session's day", async () => {
    for (const at of ["2026-11-30T20:30", "2026-12-01T08:00", "2026-12-02T19:00"]) {
      await phone.reopen(at);
      await mustCall();
    }
  });

  test("does not go with a good morning, which is still asked for", async () => {
    await phone.choose("How much pain did you have on the morning after Monday?", 0);
    await mustCall();
    await phone.reopen("2026-12-02T19:10");
    await mustCall();
  });

  test("ends when the client says that they have called, which can be taken back", async () => {
    await phone.tap("I have called");
    await phone.sees("Kept: you have called us.");
    expect(await phone.text()).not.toContain("Call us today");
    expect(await buttons()).toContain("Start");
    await phone.tap("Undo");
    await mustCall();
    await phone.tap("I have called");
    await phone.reopen("2026-12-02T19:20");
    expect(await phone.text()).not.toContain("Call us today");
    await phone.sees("That was too much");
    expect(await buttons()).toContain("Start");
  });

  test("comes back for a new reason, and ends with the clinic's next booklet", async () => {
    await phone.page.evaluate(`location.hash = "#/write/2026-12-02-evening"`);
    await phone.choose("Did you do it?", "Done");
    await phone.choose("Pain now, after it", 8);
    await phone.reopen("2026-12-03T20:00");
    await mustCall();
    const workspace = demoClinic();
    const { value } = makeProgram(workspace, `${DEMO}/achilles.md`);
    if (!value) throw new Error("the demo plan has errors");
    const next = makeBooklet(asSigned(value), workspace, english(), "2026-12-03");
    saved(await phoneHtml(next), "call.html");
    await phone.reopen("2026-12-04T19:00");
    expect(await phone.text()).not.toContain("Call us today");
    expect(await buttons()).toContain("Start");
    expect(phone.complaints).toEqual([]);
  });
});
