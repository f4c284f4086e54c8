/** What the tests of printing share: a document, a browser, a reader of PDFs. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import { findBrowser } from "../../src/browser/find.ts";

/** The bundled browser where there is one, so that every machine of this kind tests the same. */
export const found = await findBrowser({ env: {}, platform: process.platform });

const require = createRequire(import.meta.url);
const fonts = join(dirname(require.resolve("@fontsource/open-sans/package.json")), "files");
const font = readFileSync(join(fonts, "open-sans-latin-400-normal.woff2")).toString("base64");

/** A small booklet: contents with links, headings, a list, a figure, a table, a line of text. */
export function booklet(sections = 3, extra = ""): string {
  const names = Array.from({ length: sections }, (_, index) => `Part ${index + 1}`);
  const links = names.map((name, index) => `<li><a href="#p${index}">${name}</a></li>`).join("");
  const parts = names.map(
    (name, index) => `<section><h2 id="p${index}">${name}</h2><p>Lower it slowly.</p>
<svg role="img" aria-label="Leg raised" width="50" height="50"><circle cx="25" cy="25" r="9"/></svg>
<table><tr><th scope="col">Week</th><th scope="col">Sets</th></tr><tr><td>1</td><td>3</td></tr>
</table></section>`,
  );
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Home program</title>
<style>@font-face { font-family: Own; src: url(data:font/woff2;base64,${font}) }
body { font-family: Own } h1, h2, th { font-weight: 400 } section { break-before: page } @page { margin: 20mm;
@bottom-center { content: counter(page); font-family: Own } }</style></head>
<body><h1>Home program</h1><ul>${links}</ul>${parts.join("")}${extra}</body></html>`;
}

/** Opens a PDF with a reader that has nothing to do with the browser. */
export async function openPdf(bytes: Uint8Array) {
  return await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
}
