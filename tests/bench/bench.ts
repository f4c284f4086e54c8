/** Measures each stage against a named limit in the same run; ratios and medians, never bare times. */
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import puppeteer from "puppeteer-core";
import { parse } from "yaml";
import { makeBooklet, makeProgram } from "../../src/booklet.ts";
import { withBrowser } from "../../src/browser/browser.ts";
import { type FoundBrowser, findBrowser } from "../../src/browser/find.ts";
import { readLibrary } from "../../src/cards/read-library.ts";
import type { Booklet } from "../../src/compose/model.ts";
import { doseProgram } from "../../src/dose/program.ts";
import { isError } from "../../src/faults/fault.ts";
import { diskTree } from "../../src/files/tree.ts";
import { type BookletAssets, loadAssets } from "../../src/html/assets.ts";
import { companionOf, loadCompanion } from "../../src/html/companion.ts";
import { renderHtml } from "../../src/html/html.ts";
import { contactSheet } from "../../src/library/contact-sheet.ts";
import { printerFor } from "../../src/pdf/booklet-pdf.ts";
import { printMany, printPdf } from "../../src/pdf/print.ts";
import { resolveProgram } from "../../src/program/resolve.ts";
import { readText } from "../../src/readability/read-text.ts";
import { layOut } from "../../src/schedule/lay-out.ts";
import { solveWeek } from "../../src/week/search/solve.ts";
import type { Words } from "../../src/words/words.ts";
import { figureCost } from "../figure/bench.ts";
import { asSigned } from "../support/signed.ts";
import { COMMAND, DAY, DEMO, demoClinic, english, ROOT, shippedText } from "../support/world.ts";
import { oracle } from "../week/search/oracle.ts";
import { seededWeek } from "../week/search/seeded.ts";
import { keyCost } from "./keys.ts";
import { beatsOff, readyTimes } from "./ready.ts";

const say = (text: string) => process.stdout.write(`${text}\n`);
const HIGHS_WEEKS = Number(process.env.BENCH_HIGHS ?? 12);
/** A picture of sixty a second, in milliseconds. */
const PICTURE = 16;
/** What a booklet's file may take, in bytes. */
const LARGEST_HTML = 420_000;
/** Until the day's session can be begun, in milliseconds. */
const READY = 1000;
/** How far a beat may be off, in milliseconds. */
const OFF_BEAT = 10;
/** Of beats that are listened to. */
const BEATS_S = Number(process.env.BENCH_BEATS_S ?? 60);
const BOOKLETS = Number(process.env.BENCH_BOOKLETS ?? 200);

say("Median of the runs; a ratio is against the limit named beside it.\n");
startUp();
cards();
texts();
await phone();
const booklet = programs();
await weeks();
await pdfs(booklet);

function startUp(): void {
  const time = (args: string[]) =>
    median(times(15, () => void spawnSync(process.execPath, args, { encoding: "utf8" })));
  const bare = time(["-e", "0"]);
  const help = time([COMMAND, "--help"]);
  row("paulatim --help", `${ms(help)}`, help / bare, `node -e 0 (${ms(bare)})`);
}

/** The text of a client that grows most: 100 KB of it. Limit: twice the time of 50 KB, what a linear reader takes. */
function texts(): void {
  const kinds = ["a", ".", "12 34-", "[](", "{", "- ", ">", "*_`~", "Go. "];
  const readAll = (bytes: number) =>
    median(
      times(3, () => {
        for (const kind of kinds) readText(kind.repeat(bytes / kind.length), "en");
      }),
    );
  const half = readAll(50_000);
  const whole = readAll(100_000);
  row("100 KB of odd text read", ms(whole), whole / (2 * half), `twice 50 KB (${ms(2 * half)})`);
}

/** 2,000 cards on disk: read, parsed, checked, linked. Limit: the YAML parser alone on the same front matter. */
function cards(): void {
  const folder = mkdtempSync(join(tmpdir(), "paulatim-bench-"));
  try {
    mkdirSync(join(folder, "exercises/calf-and-achilles"), { recursive: true });
    writeFileSync(
      join(folder, "exercises/vocabulary.yaml"),
      shippedText("exercises/vocabulary.yaml"),
    );
    const text = shippedText("exercises/calf-and-achilles/heel-raise-one-leg-step-weight.md")
      .replace(/^harder:.*$/m, "harder: []")
      .replace(/^easier:.*$/m, "easier: []")
      .replace(/^capacity_from:.*$/m, "capacity_from: []");
    const all = Array.from({ length: 2000 }, (_, n) => text.replace(/^id: .*$/m, `id: card-${n}`));
    all.forEach((card, n) => {
      writeFileSync(join(folder, `exercises/calf-and-achilles/card-${n}.md`), card);
    });
    const tree = diskTree(folder);
    const check = median(
      times(3, () => {
        const { faults, library } = readLibrary(tree, ["exercises"], DAY);
        if (faults.length > 0 || library.cards.size !== 2000) throw new Error(faults[0]?.message);
      }),
    );
    const matters = all.map((card) => card.split("---\n")[1] ?? "");
    const limit = median(times(3, () => matters.forEach((matter) => void parse(matter))));
    row(
      "2,000 cards checked",
      `${perSecond(2000, check)} cards/s`,
      check / limit,
      `yaml parse alone (${ms(limit)})`,
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Twelve-week programs and booklets of the demo clients. Limit of the whole way: filling the templates alone. */
function programs() {
  const workspace = demoClinic();
  const file = `${DEMO}/achilles.md`;
  const { value: made } = makeProgram(workspace, file);
  if (!made || !workspace.clinic) throw new Error("the demo plan does not compute");
  const { plan, program } = made;
  const parts = {
    plan,
    protocol: program.protocol,
    library: workspace.cards.library,
    clinic: workspace.clinic.value,
  };
  const resolve = () => {
    const { value, faults } = resolveProgram(parts);
    if (!value || faults.some(isError)) throw new Error("the demo plan does not resolve");
    return value;
  };
  const compute = each(300, () => void doseProgram(resolve(), workspace.cards.library));
  row("12-week programs computed", `${Math.round(60_000 / compute)} a minute`, undefined, "");
  const figures = figureCost(() => performance.now());
  row(
    "figures drawn",
    `${ms(figures.milliseconds)} each`,
    figures.milliseconds / 8,
    `8 ms a figure (${figures.figures} figures, ${Math.round(figures.bytes / 1024)} KB of SVG each)`,
  );
  const lay = each(20, () => void layOut(program, made.dosed));
  row("12-week layout on real dates", `${ms(lay)}`, undefined, "");
  return { workspace, made };
}

/** A note typed at the end of the largest demo, every session of it written down. Limit: one picture of a screen. */
async function phone(): Promise<void> {
  const workspace = demoClinic();
  const { value } = makeProgram(workspace, `${DEMO}/shoulder.md`);
  if (!value) throw new Error("the demo plan does not compute");
  const words = english();
  const booklet = makeBooklet(asSigned(value), workspace, words, DAY);
  const assets = await loadAssets(join(ROOT, "templates"), words);
  const found = await findBrowser({ env: process.env, platform: process.platform });
  const { keys, pauses, entries, bytes } = await keyCost(found, booklet, assets, words);
  row(
    "a key of a note on the phone",
    `${ms(median(keys))}, worst ${ms(Math.max(...keys))}`,
    median(keys) / PICTURE,
    `${PICTURE} ms, at a quarter of this machine's speed (${entries} sessions written down)`,
  );
  const [first = 0, ...later] = pauses;
  say(
    `  keeping it when the typing pauses: ${ms(first)} the first time, then ${ms(median(later))}`,
  );
  row(
    "the largest demo's HTML",
    `${Math.round(bytes / 1000)} KB`,
    bytes / LARGEST_HTML,
    `${LARGEST_HTML / 1000} KB, with its pictures and the companion`,
  );
  await readiness(found, booklet, assets, words);
}

/** The same file opened, and beats of an exercise of repetitions of six seconds. Limits: a second, and ten milliseconds. */
async function readiness(
  found: FoundBrowser,
  booklet: Booklet,
  assets: BookletAssets,
  words: Words,
): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "paulatim-bench-"));
  const browser = await puppeteer.launch({
    executablePath: found.path,
    args: [...found.args],
    env: { ...process.env, ...found.env },
    headless: "shell",
    pipe: true,
  });
  try {
    const script = companionOf(booklet, await loadCompanion(), words);
    const [session] = booklet.sessions;
    const [bout] = session?.bouts ?? [];
    if (script === undefined || !session || !bout) throw new Error("there is no companion");
    const file = join(folder, "booklet.html");
    writeFileSync(file, renderHtml(booklet, assets, { script }));
    const ready = await readyTimes(browser, pathToFileURL(file).href, session.date);
    row(
      "the phone's first screen",
      `${ms(median(ready))}, worst ${ms(Math.max(...ready))}`,
      median(ready) / READY,
      `${READY} ms, at a quarter of this machine's speed`,
    );
    const many = Math.ceil(BEATS_S / 6);
    const tempo = { lower: 3, bottom: 0, lift: 2, top: 1 };
    const once = { sets: 1, reps: [{ low: many, high: many }], side: "both" as const };
    const off = await beatsOff(browser, { ...bout, ...once, tempo });
    const most = Math.max(...off);
    row(
      `beats heard in ${BEATS_S} s`,
      `${off.length}, ${ms(median(off))} off, worst ${ms(most)}`,
      most / OFF_BEAT,
      `${OFF_BEAT} ms, at a sixth of this machine's speed`,
    );
  } finally {
    await browser.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Seeded weeks of ten exercises, feasible and not. Limit: HiGHS on the same weeks. */
async function weeks(): Promise<void> {
  const problems = Array.from({ length: 60 }, (_, seed) => seededWeek(seed, 10, seed % 2 === 1));
  const own = problems.flatMap((problem) => times(1, () => void solveWeek(problem)));
  const ask = await oracle();
  const general: number[] = [];
  for (const problem of problems.slice(0, HIGHS_WEEKS)) {
    general.push(await clock(async () => void ask(problem, 5)));
  }
  const ratio = median(own.slice(0, HIGHS_WEEKS)) / median(general);
  row(
    "a week of ten exercises",
    `${ms(median(own))}, worst ${ms(Math.max(...own))}`,
    ratio,
    `HiGHS, a general solver (${ms(median(general))}; ${HIGHS_WEEKS} weeks, at most 5 s a goal)`,
  );
}

async function pdfs({ workspace, made }: ReturnType<typeof programs>): Promise<void> {
  const words = english();
  const assets = await loadAssets(join(ROOT, "templates"), words);
  const make = () => makeBooklet(made, workspace, words, DAY);
  const booklet = make();
  const html = renderHtml(booklet, assets);
  const fill = each(50, () => void renderHtml(booklet, assets));
  const whole = each(50, () => {
    const { value } = makeProgram(workspace, `${DEMO}/achilles.md`);
    if (value) renderHtml(makeBooklet(value, workspace, words, DAY), assets);
  });
  row(
    "HTML booklets, plan to file",
    `${perSecond(1, whole)} a second`,
    whole / fill,
    `filling the templates alone (${ms(fill)})`,
  );
  say(`  size of the HTML: ${Math.round(html.length / 1024)} KB`);

  const found = await findBrowser({ env: process.env, platform: process.platform });
  const sheet = contactSheet(workspace.cards.library, "Figures");
  const printed = (html: string) =>
    withBrowser(found, (browser) =>
      browser.usePage((page) => printPdf(page, html, { paper: "A4" })),
    );
  const blank = sheet.replace(/<img [^>]*>/g, '<div style="width:100mm;height:45mm"></div>');
  const figures = sheet.match(/<img /g)?.length ?? 1;
  const each12 = ((await printed(sheet)).length - (await printed(blank)).length) / figures / 1024;
  row(
    "a figure in a PDF",
    `${each12.toFixed(1)} KB`,
    each12 / 12,
    `12 KB (${figures} figures on a sheet)`,
  );

  for (const [count, runs] of [
    [1, 5],
    [BOOKLETS, 1],
  ] as const) {
    const jobs = Array.from({ length: count }, (_, n) => n);
    const bare: number[] = [];
    const full: number[] = [];
    const before = process.memoryUsage().rss;
    let bytes = 0;
    for (let run = 0; run < runs; run += 1) {
      bare.push(
        await clock(() =>
          withBrowser(found, async (browser) => {
            for await (const one of printMany(browser, jobs, (_, page) =>
              printPdf(page, html, { paper: booklet.paper }),
            )) {
              if ("faults" in one) throw new Error(one.faults[0]?.message);
            }
          }),
        ),
      );
      const printer = await printerFor({ env: process.env, platform: process.platform });
      full.push(
        await clock(() =>
          printer(jobs, make, { assets, day: DAY }, async (_, result) => {
            if ("faults" in result) throw new Error(result.faults[0]?.message);
            bytes = result.pdf.length;
          }),
        ),
      );
    }
    const grown = (process.memoryUsage().rss - before) / 1024 / 1024;
    const limit = perSecond(count, median(bare));
    row(
      count === 1 ? "1 PDF, browser's start included" : `${count} PDFs`,
      `${perSecond(count, median(full))} a second`,
      median(full) / median(bare),
      `the same Chromium printing the same HTML once (${limit} a second)`,
    );
    say(
      `  ${(median(bare) / median(full)).toFixed(2)} of that limit; contents numbers included; ` +
        `${Math.round(bytes / 1024)} KB each; memory of Node grew by ${Math.round(grown)} MB`,
    );
  }
}

function row(what: string, value: string, ratio: number | undefined, limit: string): void {
  const against = ratio === undefined ? "" : `${ratio.toFixed(2)} × ${limit}`;
  say(`${what.padEnd(32)} ${value.padEnd(22)} ${against}`);
}

function times(runs: number, work: () => void): number[] {
  return Array.from({ length: runs }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
}

/** Median time of one call, after some to warm up, in milliseconds. */
function each(runs: number, work: () => void): number {
  times(Math.ceil(runs / 5), work);
  return median(times(runs, work));
}

async function clock(work: () => Promise<void>): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}

function median(all: readonly number[]): number {
  return [...all].sort((a, b) => a - b)[Math.floor(all.length / 2)] ?? 0;
}

function ms(time: number): string {
  return `${time.toFixed(time < 10 ? 2 : 0)} ms`;
}

function perSecond(count: number, time: number): string {
  return ((count * 1000) / time).toFixed(1);
}
