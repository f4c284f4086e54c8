/** Printing one booklet and many, with a real browser. */
import { afterAll, describe, expect, it, test } from "vitest";
import { PrintBrowser } from "../../src/browser/browser.ts";
import { Fault } from "../../src/faults/fault.ts";
import { finishPdf } from "../../src/pdf/post-process.ts";
import { type Paper, type Printed, printMany, printPdf } from "../../src/pdf/print.ts";
import { readDestinations } from "../../src/pdf/structure/destinations.ts";
import { eventually } from "../files/support.ts";
import { pageCount } from "../support/page-count.ts";
import { booklet, found, openPdf } from "../support/render.ts";

const browser = new PrintBrowser(found);
afterAll(() => browser.dispose());

const print = (html: string, paper: Paper = "A4", tagged = true) =>
  browser.usePage((page) => printPdf(page, html, { paper, tagged }));

const SIZES: [Paper, string, number, number][] = [
  ["A4", "", 595, 842],
  ["Letter", "", 612, 792],
  ["Letter", "<style>@page { size: A5 }</style>", 420, 595],
];

describe("printPdf", () => {
  test.each(SIZES)("paper %s with %j is %d by %d points", async (paper, extra, width, height) => {
    const pdf = await openPdf(await print(booklet(1, extra), paper));
    const [, , x = 0, y = 0] = (await pdf.getPage(1)).view;
    // The browser rounds sizes to its own units, by up to a point.
    expect(Math.abs(x - width)).toBeLessThan(1.1);
    expect(Math.abs(y - height)).toBeLessThan(1.1);
  });

  it("writes title, language, outline and tags", async () => {
    const pdf = await openPdf(await print(booklet()));
    const { info } = await pdf.getMetadata();
    expect(info).toMatchObject({ Title: "Home program", Language: "en" });
    const [top] = await pdf.getOutline();
    expect(top?.title).toBe("Home program");
    expect(top?.items.map(({ title }) => title)).toEqual(["Part 1", "Part 2", "Part 3"]);
    const tags = JSON.stringify(await (await pdf.getPage(2)).getStructTree());
    for (const role of ["H2", "P", "Figure", "Table", "TH"]) expect(tags).toContain(`"${role}"`);
    expect(tags).toContain("Leg raised");
  });

  it("leaves tags and outline out of a pass that is only measured, with the same pages", async () => {
    const bytes = await print(booklet(), "A4", false);
    const pdf = await openPdf(bytes);
    expect(await pdf.getOutline()).toBeNull();
    expect(await (await pdf.getPage(2)).getStructTree()).toBeNull();
    expect([...readDestinations(bytes)]).toEqual([...readDestinations(await print(booklet()))]);
  });

  it("embeds the document's own fonts and no other", async () => {
    const text = Buffer.from(await print(booklet())).toString("latin1");
    const names = [...text.matchAll(/\/FontName \/(\S+)/g)].map(([, name]) => name);
    expect(names.length).toBeGreaterThan(0);
    for (const name of names) expect(name).toMatch(/^[A-Z]{6}\+OpenSans/);
    expect(text.match(/\/FontFile[23]? /g)).toHaveLength(names.length);
  });

  test.each([
    `<meta http-equiv="refresh" content="0;url=x">`,
    `<META content="3" HTTP-EQUIV = refresh>`,
  ])("refuses a document that leads the browser elsewhere: %s", async (meta) => {
    await expect(print(booklet(1, meta))).rejects.toMatchObject({ code: "template-broken" });
  });
});

const FONTS = [
  ["is cut off", "data:font/woff2;base64,d09GMgABAAAAAA=="],
  ["is no font", "data:font/woff2;base64,AAAA"],
  ["lies on the disk", "file:///usr/share/fonts/font.ttf"],
  ["lies in the network", "http://127.0.0.1:9/font.woff2"],
];
test.each(FONTS)(
  "printPdf refuses a font that %s, used or not, and prints the next",
  async (_, url) => {
    const face = `<style>@font-face { font-family: Other; src: url(${url}) }</style>`;
    await expect(print(booklet(1, face))).rejects.toMatchObject({
      code: "template-broken",
      message: expect.stringContaining("Other"),
    });
    expect(pageCount(await print(booklet(1)))).toBe(2);
  },
);

describe("the same bytes", () => {
  const date = new Date("2026-03-04T05:06:07Z");

  it("come from a new page, a used page and another browser", async () => {
    const pages: Uint8Array[] = [];
    for (let round = 0; round < 3; round++) {
      pages.push(await print(booklet()));
      await print(booklet(5));
    }
    const other = new PrintBrowser(found);
    const foreign = await other.usePage((page) => printPdf(page, booklet(), { paper: "A4" }));
    await other.dispose();
    // Unsettled, the ids of table heads drift: without that, this test would show nothing.
    const ids = pages.map(
      (bytes) =>
        Buffer.from(bytes)
          .toString("latin1")
          .match(/node\d{8}/)?.[0],
    );
    expect(new Set(ids).size).toBe(3);
    const settled = [...pages, foreign].map((bytes) => Buffer.from(finishPdf(bytes, { date }).pdf));
    for (const bytes of settled) expect(bytes.equals(settled[0] ?? Buffer.of())).toBe(true);
  });

  it("still open with their date and tags", async () => {
    const bytes = finishPdf(await print(booklet()), { date }).pdf;
    const pdf = await openPdf(bytes);
    const { info } = await pdf.getMetadata();
    const stamp = "D:20260304050607+00'00'";
    expect(info).toMatchObject({ CreationDate: stamp, ModDate: stamp });
    expect(JSON.stringify(await (await pdf.getPage(2)).getStructTree())).toContain('"TH"');
  });
});

describe("printMany", () => {
  it("prints every job, and a failing one costs no other", async () => {
    const done: Printed<number, number>[] = [];
    const jobs = [1, 2, 3, 4, 5, 6, 7];
    const work = async (job: number, page: Parameters<typeof printPdf>[0]) => {
      if (job === 3) throw new Fault("template-broken", "No.");
      if (job === 5) throw new TypeError("Oops.");
      return pageCount(await printPdf(page, booklet(job), { paper: "A4" }));
    };
    for await (const printed of printMany(browser, jobs, work)) done.push(printed);
    done.sort((a, b) => a.job - b.job);
    const outcome = done.map((one) => ("result" in one ? one.result : one.faults[0]?.code));
    expect(outcome).toEqual([2, 3, "template-broken", 5, "internal", 7, 8]);
  });

  test.each([1, 2, 3])("with %d pages takes no more jobs than it can hold", async (pages) => {
    let taken = 0;
    let handed = 0;
    let active = 0;
    let most = 0;
    async function* jobs() {
      for (let job = 0; job < 9; job++) {
        taken++;
        expect(taken - handed).toBeLessThanOrEqual(pages + 1);
        yield job;
      }
    }
    const work = async () => {
      most = Math.max(most, ++active);
      await eventually(() => most === pages, 2000);
      active--;
    };
    for await (const _ of printMany(browser, jobs(), work, { pages })) handed++;
    expect([handed, most]).toEqual([9, pages]);
  });

  it("hands over what was under way before it passes on a fault of the jobs themselves", async () => {
    function* jobs() {
      yield 1;
      yield 2;
      throw new Fault("file-unreadable", "Gone.");
    }
    const got: number[] = [];
    const run = async () => {
      for await (const { job } of printMany(browser, jobs(), async (job) => job)) got.push(job);
    };
    await expect(run()).rejects.toMatchObject({ code: "file-unreadable" });
    expect(got.sort()).toEqual([1, 2]);
  });

  it("closes its source when the reader stops early", async () => {
    let closed = false;
    function* jobs() {
      try {
        for (let job = 0; ; job++) yield job;
      } finally {
        closed = true;
      }
    }
    for await (const { job } of printMany(browser, jobs(), async (job) => job)) if (job > 3) break;
    expect(closed).toBe(true);
  });
});
