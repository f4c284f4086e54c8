/** Booklets as HTML: complete in themselves, sound, and with every text as it was typed. */
import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it, test } from "vitest";
import type { Booklet } from "../../src/compose/model.ts";
import { loadAssets } from "../../src/html/assets.ts";
import { renderHtml } from "../../src/html/html.ts";
import { achilles, shoulder } from "../support/fixture-booklet.ts";
import { english } from "../support/world.ts";

const path = (name: string) => fileURLToPath(new URL(`../../${name}`, import.meta.url));
const assets = await loadAssets(path("templates"), english());

const both: [string, Booklet, string][] = [
  ["achilles", achilles, renderHtml(achilles, assets)],
  ["shoulder", shoulder, renderHtml(shoulder, assets)],
];
const [[, , html], [, , draft]] = both as [(typeof both)[0], (typeof both)[0]];

const VOID = new Set(["meta", "br", "img", "hr", "link", "input", "path", "rect", "circle"]);

/** All tags in order, without what stands inside the style element. */
function tags(source: string): { name: string; close: boolean; attributes: string }[] {
  const body = source.replace(/<style>[\s\S]*?<\/style>/, "<style></style>");
  const pattern = /<(\/?)([a-z][a-z0-9]*)((?:\s+[\w:-]+(?:="[^"]*")?)*)\s*\/?>/gi;
  return [...body.matchAll(pattern)].map(([, slash, name = "", attributes = ""]) => ({
    name: name.toLowerCase(),
    close: slash === "/",
    attributes,
  }));
}

function attribute(source: string, name: string): string[] {
  return tags(source).flatMap(({ attributes }) => {
    const [, value] = new RegExp(`\\s${name}="([^"]*)"`).exec(attributes) ?? [];
    return value === undefined ? [] : [value];
  });
}

/** What a reader sees: no tags, references to characters resolved. */
function textOf(source: string): string {
  return source
    .replace(/<head>[\s\S]*<\/head>/, "")
    .replaceAll(/<[^>]*>/g, "")
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&quot;", '"')
    .replaceAll("&#x27;", "'")
    .replaceAll("&#x3D;", "=")
    .replaceAll("&#x60;", "`")
    .replaceAll("&amp;", "&");
}

describe.each(both)("the booklet %s", (_, booklet, page) => {
  it("is closed in itself: no script, nothing fetched", () => {
    expect(page).toMatch(
      /content="default-src 'none'; style-src 'sha256-[\w+/]{43}='; img-src data:; font-src data:; base-uri 'none'; form-action 'none'">/,
    );
    expect(tags(page).filter(({ name }) => ["script", "link", "iframe"].includes(name))).toEqual(
      [],
    );
    expect(attribute(page, "on\\w+")).toEqual([]);
    expect(attribute(page, "style")).toEqual([]);
    const addresses = [...attribute(page, "href"), ...attribute(page, "src")];
    expect(addresses.filter((address) => !/^(#|tel:|data:)/.test(address))).toEqual([]);
    expect(page).not.toMatch(/https?:|@import|url\((?!data:)/);
  });

  it("closes every element that it opens, in order", () => {
    const open: string[] = [];
    for (const { name, close } of tags(page)) {
      if (VOID.has(name)) continue;
      if (close) expect(open.pop()).toBe(name);
      else open.push(name);
    }
    expect(open).toEqual([]);
  });

  it("has one first heading and leaves out no level", () => {
    const levels = tags(page)
      .filter(({ name, close }) => /^h[1-6]$/.test(name) && !close)
      .map(({ name }) => Number(name[1]));
    expect(levels.filter((level) => level === 1)).toEqual([1]);
    levels.forEach((level, at) => {
      expect(level).toBeLessThanOrEqual((levels[at - 1] ?? 0) + 1);
    });
  });

  it("has every id once, and a target for every link and label", () => {
    const ids = attribute(page, "id");
    expect(new Set(ids).size).toBe(ids.length);
    const links = attribute(page, "href").filter((address) => address.startsWith("#"));
    expect(links.length).toBeGreaterThan(8);
    for (const link of links) expect(ids).toContain(link.slice(1));
    for (const label of attribute(page, "aria-labelledby")) expect(ids).toContain(label);
  });

  it("lists every part in its contents", () => {
    const [contents = ""] = /<nav[\s\S]*<\/nav>/.exec(page) ?? [];
    const listed = attribute(contents, "href");
    for (const { anchor } of [...booklet.phases, ...booklet.exercises]) {
      expect(listed).toContain(`#${anchor}`);
    }
    expect(listed.slice(0, 3)).toEqual(["#part-stop", "#part-pain", "#part-weeks"]);
    expect(listed.slice(-2).sort()).toEqual(["#part-diary", "#part-questions"]);
  });

  it("gives every table a caption and every head a scope", () => {
    const all = tags(page).filter(({ close }) => !close);
    const count = (wanted: string) => all.filter(({ name }) => name === wanted).length;
    expect(count("caption")).toBe(count("table"));
    for (const { attributes } of all.filter(({ name }) => name === "th")) {
      expect(attributes).toContain("scope=");
    }
  });

  it("has a box for each session", () => {
    const planned = booklet.diary
      .flatMap(({ weeks }) => weeks.flatMap(({ rows }) => rows.flatMap(({ ticks }) => ticks)))
      .filter(Boolean).length;
    expect(planned).toBeGreaterThan(0);
    expect(page.split('<td class="tick"></td>').length - 1).toBe(planned);
  });

  it("says on every exercise page when to stop and whom to call", () => {
    const pages = page.split('<section class="part exercise"').slice(1);
    expect(pages).toHaveLength(booklet.exercises.length);
    for (const exercise of pages) {
      expect(exercise).toContain("Stop and call us if");
      expect(exercise).toContain(booklet.clinic.phone);
      expect(exercise).toContain(`>${booklet.clinic.emergency}</a>`);
    }
  });

  it("says language, direction and title", () => {
    expect(page).toContain(
      `<html lang="${booklet.language}" dir="${booklet.direction}" class="edition-${booklet.edition} paper-${booklet.paper}">`,
    );
    expect(page).toContain(`<title>${booklet.title}</title>`);
  });

  it("is the same to the byte when made again", () => {
    expect(renderHtml(booklet, assets)).toBe(page);
  });
});

describe("texts", () => {
  it("print as they were typed", () => {
    expect(textOf(draft)).toContain("<b>O'Neil & {{name}}</b>");
    expect(textOf(draft)).toContain("Reach the top shelf & hang <up> my coat &amp; hat.");
  });

  it("of the running head cannot end the styles", () => {
    const name = '</style><script>alert(1)</script> "Clinic" \\ & }';
    const page = renderHtml({ ...achilles, clinic: { ...achilles.clinic, name } }, assets);
    expect(page.match(/<\/style>/g)).toHaveLength(1);
    expect(page).not.toContain("<script>");
    expect(textOf(page)).toContain(name);
  });

  it("of a message are never taken for a message", () => {
    const client = { name: "{n, plural, other {#}}", reference: "'{'" };
    const page = renderHtml({ ...achilles, client, clinician: "{date}" }, assets);
    expect(textOf(page)).toContain(client.name);
    expect(textOf(page)).toContain("A note from {date}");
  });

  it("bring their alphabets with them, and only those", () => {
    expect(html.match(/@font-face/g)).toHaveLength(2);
    const client = { ...achilles.client, name: "Łucja Żak" };
    expect(renderHtml({ ...achilles, client }, assets).match(/@font-face/g)).toHaveLength(4);
  });
});

describe("the draft mark", () => {
  it("is on every page and on the screen", () => {
    expect(draft).toContain('@top-center{content:"DRAFT \\2013  not signed off"}');
    expect(draft).toContain('<p class="draft-bar"><strong>DRAFT – not signed off</strong>');
    expect(textOf(draft)).toContain("Your clinician has not signed this plan.");
  });

  it("is nowhere on a signed booklet", () => {
    expect(html).not.toContain("DRAFT");
    expect(html).not.toContain("@top-center{content");
    expect(textOf(html)).toContain("Priya Nair, 28 November 2026");
  });
});

describe("page numbers", () => {
  const numbers = (page: string) =>
    [...page.matchAll(/<span class="at">(\d*)<\/span>/g)].map(([, number]) => number);

  it("are filled in where they are known", () => {
    const pageNumbers = new Map([
      ["part-stop", 2],
      ["exercise-balance", 14],
    ]);
    const filled = numbers(renderHtml(achilles, assets, { pageNumbers }));
    expect(filled).toEqual(["2", "", "", "", "", "", "", "14", "", "", ""]);
  });

  it("leave their places empty where not", () => {
    expect(new Set(numbers(html))).toEqual(new Set([""]));
  });
});

test.each(["A4", "Letter"] as const)("paper %s is the size of the page", (paper) => {
  expect(renderHtml({ ...achilles, paper }, assets)).toContain(`@page{size:${paper};`);
});

describe("the pain ruler", () => {
  it("is described in words and marks the limit", () => {
    expect(html).toContain(
      'aria-label="Pain ruler from 0, no pain, to 10, worst pain. 0 to 2: Fine. 3 to 5: All right for now. 6 to 7: Too much. 8 to 10: Call us."',
    );
    expect(html).toContain(">Your limit: 5</text>");
  });

  it("is told apart without colour: blank, hatched, dark, dark with a frame", () => {
    const [ruler = ""] = /<div class="ruler">[\s\S]*?<\/svg>/.exec(html) ?? [];
    expect(ruler.match(/class="hatch"/g)).toHaveLength(3);
    expect(ruler.match(/zone-too-much/g)).toHaveLength(2);
    expect(ruler.match(/zone-call/g)).toHaveLength(3);
    expect(ruler.match(/class="inset"/g)).toHaveLength(3);
  });
});

describe("dose tables", () => {
  it("say once what holds in every week", () => {
    const [table = ""] = /<table class="doses">[\s\S]*?<\/table>/.exec(html) ?? [];
    expect(table.match(/3 seconds up, 3 seconds down/g)).toHaveLength(2);
    expect(table.match(/<tbody>/g)).toHaveLength(3);
    expect(table).toContain("<td><strong>4 sets of 6</strong></td><td>28 kg (backpack)</td>");
  });

  it("show beside the dose what changes, in a column that is else left out", () => {
    expect(html).not.toContain('<th scope="col">How</th>');
    expect(draft).toContain('<td><span class="how">Once a day</span> </td>');
  });
});

test("every word of the frame is used, and every word used is there", () => {
  const folders = [
    ["templates/booklet", /\.hbs$/, /\bt "([\w.-]+)"/g],
    ["src/html", /^(?!phone).*\.ts$/, /\bsay\("([\w.-]+)"/g],
  ] as const;
  const used = folders.flatMap(([folder, files, pattern]) =>
    readdirSync(path(folder))
      .filter((name) => files.test(name))
      .flatMap((name) => [...readFileSync(path(`${folder}/${name}`), "utf8").matchAll(pattern)])
      .map(([, key]) => key),
  );
  expect([...new Set(used)].sort()).toEqual([...assets.words.keys].sort());
});

test("templates print unescaped only what they give a reason for", () => {
  const files = readdirSync(path("templates/booklet")).filter((name) => name.endsWith(".hbs"));
  for (const file of files) {
    const source = readFileSync(path(`templates/booklet/${file}`), "utf8");
    if (source.includes("{{{")) expect(source, file).toContain("Unescaped");
  }
});

test("weeks away that are in no phase have one head, which says so", () => {
  const weeks = achilles.weeks.map((week, at) =>
    at === 2 ? { ...week, phases: [], away: true, summary: "Away: no sessions this week" } : week,
  );
  const page = renderHtml({ ...achilles, weeks }, assets);
  const heads = [...page.matchAll(/scope="rowgroup">(.*?)<\/th>/g)].map(([, head = ""]) =>
    textOf(head).trim(),
  );
  expect(heads).not.toContain("");
  expect(heads).toContain("Away: no sessions this week");
  expect(textOf(page).split("Away: no sessions this week")).toHaveLength(2);
});
