/** What a key costs in the note of a booklet whose diary is full, in a real browser on a slow phone. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import puppeteer from "puppeteer-core";
import type { FoundBrowser } from "../../src/browser/find.ts";
import type { Booklet } from "../../src/compose/model.ts";
import { diaryCsv } from "../../src/diary/csv.ts";
import { sessionKey } from "../../src/diary/entry.ts";
import type { BookletAssets } from "../../src/html/assets.ts";
import { companionOf, loadCompanion } from "../../src/html/companion.ts";
import { renderHtml } from "../../src/html/html.ts";
import { phoneData } from "../../src/html/phone.ts";
import { plannedSessions } from "../../src/phone/day/data.ts";
import { emptyEntry, withAll } from "../../src/phone/day/entries.ts";
import type { Words } from "../../src/words/words.ts";

/** A phone of the cheaper kind, as browsers' own tools imitate it. */
const SLOWER = 4;

export interface KeyCost {
  /** Milliseconds of each key: its handler, what is drawn anew and its layout. */
  readonly keys: readonly number[];
  /** The longest time for which the page did not answer in the second after the last key of a burst, each. */
  readonly pauses: readonly number[];
  readonly entries: number;
  /** Of the booklet's file. */
  readonly bytes: number;
}

/** Types into the note of the last session of a booklet of which every session is written down. */
export async function keyCost(
  found: FoundBrowser,
  booklet: Booklet,
  assets: BookletAssets,
  words: Words,
): Promise<KeyCost> {
  const script = companionOf(booklet, await loadCompanion(), words);
  if (script === undefined) throw new Error("the booklet has no companion");
  const data = phoneData(booklet, words);
  const sessions = plannedSessions(data);
  const entries = sessions.map((session) => {
    const empty = emptyEntry(session, data.booklet, false, `${session.date}T20:00:00Z`);
    return { ...withAll(empty, "yes", session.date), effort: 6, painAfter: 2, note: NOTE };
  });
  const diary = { plan: data.plan, client: data.client, entries };
  const last = sessions.at(-1);
  if (last === undefined) throw new Error("the booklet has no sessions");
  const folder = mkdtempSync(join(tmpdir(), "paulatim-bench-"));
  const browser = await puppeteer.launch({
    executablePath: found.path,
    args: [...found.args],
    env: { ...process.env, ...found.env },
    headless: "shell",
    pipe: true,
  });
  try {
    const file = join(folder, "booklet.html");
    const html = renderHtml(booklet, assets, { script });
    writeFileSync(file, html);
    const url = pathToFileURL(file).href;
    const page = await browser.newPage();
    await page.goto(url);
    const key = `paulatim ${data.plan} ${data.client} diary`;
    await page.evaluate(
      `localStorage.setItem(${JSON.stringify(key)}, ${JSON.stringify(diaryCsv(diary))})`,
    );
    await page.goto("about:blank");
    await page.goto(`${url}#/write/${sessionKey(last).replace(" ", "-")}`);
    await page.waitForSelector(".note-field textarea");
    await page.emulateCPUThrottling(SLOWER);
    const { keys, pauses } = (await page.evaluate(TYPE)) as Pick<KeyCost, "keys" | "pauses">;
    return { keys, pauses, entries: entries.length, bytes: Buffer.byteLength(html) };
  } finally {
    await browser.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

const NOTE = "The last set was slow; the shoulder felt warm, not sore.";

const TYPE = `(async () => {
  const field = document.querySelector(".note-field textarea");
  field.focus();
  const [keys, pauses] = [[], []];
  for (let n = 0; n < 60; n += 1) {
    if (n % 20 === 10) pauses.push(await pause());
    await new Promise((done) => setTimeout(done, 30));
    const start = performance.now();
    document.execCommand("insertText", false, "a");
    // what is drawn anew waits for a microtask
    for (let turn = 0; turn < 5; turn += 1) await undefined;
    void field.offsetHeight;
    keys.push(performance.now() - start);
  }
  return { keys: keys.slice(10), pauses };
  async function pause() {
    let [before, longest] = [performance.now(), 0];
    const end = before + 1000;
    while (before < end) {
      await new Promise((done) => setTimeout(done, 0));
      const now = performance.now();
      longest = Math.max(longest, now - before);
      before = now;
    }
    return longest;
  }
})()`;
