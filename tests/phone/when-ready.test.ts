/** On a real phone: an exercise that waits for a sign comes into the session with the tick, stays, and goes with it. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { parse } from "yaml";
import { makeBooklet } from "../../src/booklet.ts";
import { shippedCourse } from "../support/shipped.ts";
import { DAY, demoClinic, english, ROOT } from "../support/world.ts";
import { launch, Phone, phoneHtml, saved } from "./phone-page.ts";

const COURSE = "achilles-four-phases";
const CARD = "heel-raise-two-legs-step";

/** The front matter of a file as its author wrote it. */
const frontOf = (file: string) =>
  parse(readFileSync(join(ROOT, file), "utf8").split("---\n")[1] ?? "");
const cards = readdirSync(join(ROOT, "exercises"), { recursive: true, encoding: "utf8" });
const titleOf = (id: string): string =>
  frontOf(`exercises/${cards.find((file) => file.endsWith(`/${id}.md`))}`).title;

interface Written {
  readonly phases: readonly {
    readonly exercises: readonly { readonly card: string; readonly when?: string }[];
  }[];
}
const course: Written = frontOf(`templates/protocols/${COURSE}.md`);
const asked = course.phases.flatMap(({ exercises }) => exercises).find(({ card }) => card === CARD);
/** A sign names exercises by id; the client reads the titles of their cards. */
const SIGN = String(asked?.when).replace(/\{([a-z0-9-]+)\}/g, (_, id) => `“${titleOf(id)}”`);
const WAITS = titleOf(CARD);

const { made } = shippedCourse(COURSE);
const booklet = makeBooklet(made, demoClinic(), english(), DAY);
const first = booklet.sessions.find(({ bouts }) => bouts.some(({ when }) => when === SIGN));
const url = saved(await phoneHtml(booklet));

let browser: Browser;
let phone: Phone;
beforeAll(async () => {
  browser = await launch();
  phone = await Phone.open(browser, url, { at: `${first?.date}T06:00` });
});
afterAll(() => browser?.close());

/** Titles of the exercises of today's sessions. */
const today = async (): Promise<string[]> =>
  (await phone.page.evaluate(
    `[...document.querySelectorAll(".exercises h3")].map((one) => one.textContent)`,
  )) as string[];

test("it is offered, and no part of the session before the sign is there", {
  timeout: 60_000,
}, async () => {
  await phone.sees("When you are ready");
  await phone.sees(SIGN);
  expect(await phone.text()).toContain(WAITS);
  expect(await phone.text()).not.toMatch(/[{}]/);
  expect(await today()).not.toContain(WAITS);
});

test("with the tick it is, also after the page is loaded anew", { timeout: 60_000 }, async () => {
  await phone.tap(SIGN);
  expect(await today()).toContain(WAITS);
  await phone.page.reload();
  await phone.sees("When you are ready");
  expect(await today()).toContain(WAITS);
});

test("the tick can be taken back", { timeout: 60_000 }, async () => {
  await phone.tap(SIGN);
  expect(await today()).not.toContain(WAITS);
  expect(phone.complaints).toEqual([]);
});
