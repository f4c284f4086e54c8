/** Licence texts travel with the package: of what is bundled, and of the typeface. */
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { ROOT } from "./support/world.ts";

const { dependencies } = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8"));

/** Installed beside the program and not put into its bundles: they bring their own texts. */
const BESIDE = ["puppeteer", "puppeteer-core", "@sparticuz/chromium", "@fontsource/open-sans"];

const notices = readFileSync(join(ROOT, "out/bin/THIRD-PARTY.txt"), "utf8");
const sections = new Map(
  notices.split(/^-{72}$/m).map((text) => [text.trim().split(" ")[0] ?? "", text] as const),
);

test.each(Object.keys(dependencies).filter((name) => !BESIDE.includes(name)))(
  "%s is bundled: its version and the text of its licence are there",
  (name) => {
    const text = sections.get(name) ?? "";
    expect(text).toContain(`${name} ${dependencies[name]}, `);
    expect(text).toMatch(/Permission (is hereby granted|to use)|Redistribution and use/);
    expect(text).toMatch(/copyright/i);
  },
);

test("what they bundle in turn is there as well", () => {
  // handlebars brings source-map, gray-matter brings js-yaml
  expect([...sections.keys()]).toContain("js-yaml");
  expect(sections.size).toBeGreaterThan(Object.keys(dependencies).length - BESIDE.length);
});

test("the package holds its own licence, those of others and the notice of the typeface", () => {
  const listed = execFileSync("npm", ["pack", "--dry-run", "--json", "--ignore-scripts"], {
    cwd: ROOT,
    encoding: "utf8",
    stdio: ["ignore", "pipe", "ignore"],
  });
  const files = JSON.parse(listed)[0].files.map(({ path }: { path: string }) => path);
  expect(files).toEqual(
    expect.arrayContaining(["LICENSE", "out/bin/THIRD-PARTY.txt", "templates/booklet/FONTS.txt"]),
  );
  const font = readFileSync(join(ROOT, "templates/booklet/FONTS.txt"), "utf8");
  expect(font).toMatch(/^Copyright 2020 The Open Sans Project Authors/m);
  expect(font).toContain("SIL OPEN FONT LICENSE Version 1.1");
});
