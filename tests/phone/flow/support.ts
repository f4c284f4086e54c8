/** A phone of its own for each test of the flow of a day, with the booklet of a demo on it. */
import type { Browser } from "puppeteer-core";
import { expect } from "vitest";
import { readDiary } from "../../../src/diary/csv.ts";
import type { DiaryEntry } from "../../../src/diary/entry.ts";
import { Phone, type PhoneOptions } from "../phone-page.ts";

/** The first exercise of the demo's evenings: pain up to 5 while it is done. */
export const SIT = "Sit and rise up on your toes with a heavy weight";

/** Opens the file on a new phone, and expects no complaint of the page. */
export async function onPhone(
  browser: Browser,
  url: string,
  options: PhoneOptions,
  use: (phone: Phone) => Promise<void>,
): Promise<void> {
  const context = await browser.createBrowserContext();
  const phone = await Phone.open(context, url, options);
  await use(phone);
  expect(phone.complaints).toEqual([]);
  await context.close();
}

export const entriesOf = async (phone: Phone): Promise<readonly DiaryEntry[]> =>
  readDiary(await phone.kept()).diary?.entries ?? [];

/** What is written of each exercise: whether it was done, and the pain. */
export const toldOf = ({ exercises }: DiaryEntry) =>
  exercises.map(({ done, pain }) => (pain === undefined ? done : `${done} ${pain}`));
