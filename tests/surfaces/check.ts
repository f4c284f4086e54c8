/** All surfaces of one client, read and held against each other. */
import type { Client } from "./clients.ts";
import { type Comparison, collector, compare, type Surface } from "./facts.ts";
import type { Outputs } from "./outputs.ts";
import { readCalendar } from "./read/calendar.ts";
import { type Context, contextOf } from "./read/context.ts";
import { type HtmlFile, readHtml } from "./read/html.ts";
import type { Block } from "./read/outline.ts";
import { readPages, readSummaryPage } from "./read/pages.ts";
import type { PdfFile } from "./read/pdf.ts";
import { readPhone } from "./read/phone.ts";
import { readPlanJson } from "./read/plan-json.ts";
import { readSources } from "./read/sources.ts";
import { readTable } from "./read/terminal.ts";

export type Files = Pick<Outputs, "client" | "html" | "ics" | "icsBefore" | "json" | "table">;

/** Every surface of a client, without the PDF. */
export function surfacesOf({ client, html, ics, icsBefore, json, table }: Files): Surface[] {
  const context = contextOf(client);
  const file = readHtml(html);
  return [
    readSources(client, context),
    readPlanJson(json, context),
    readTable(table, context),
    readCalendar(ics, icsBefore, context),
    fileSurface(client, file, context),
    ...(file.phone === undefined ? [] : readPhone(file.phone, context)),
    ...pagesOf("HTML", client, file.blocks, context),
  ];
}

/** The surfaces of a client's printed booklet. */
export function pdfSurfaces(client: Client, file: PdfFile): Surface[] {
  const context = contextOf(client);
  const { facts, say } = collector();
  say("language", "", file.language.slice(0, 2), "Lang");
  say("title", "", file.title, "Title");
  say("paper", "", file.paper, "size of the pages");
  const help = String(context.label("frame.page.help")).replace("{phone}", "");
  for (const [at, text] of file.furniture.entries()) {
    const place = `page ${at + 1}`;
    say(
      "signed",
      "",
      text.includes(context.label("frame.draft.mark")) ? "draft" : "signed",
      `${place}, its head`,
    );
    const phone = text.indexOf(help);
    const number = /^\+?[\d() -]+/
      .exec(phone < 0 ? "" : text.slice(phone + help.length))?.[0]
      .trim();
    say("telephone", "clinic", number ?? "(no number)", `${place}, its foot`);
  }
  const pages = pagesOf("PDF", client, file.blocks, context);
  return [{ name: "PDF file", facts, complete: new Set() }, ...pages];
}

function pagesOf(
  name: string,
  { edition }: Client,
  blocks: readonly Block[],
  context: Context,
): Surface[] {
  return edition === "summary"
    ? [readSummaryPage(name, blocks, context)]
    : readPages(name, blocks, context);
}

export const checkClient = (files: Files): Comparison => compare(surfacesOf(files));

/** What the HTML file says of itself, outside its pages. */
function fileSurface(
  { clinic, edition }: Client,
  file: HtmlFile,
  { label, protocol, filled }: Context,
): Surface {
  const { facts, say } = collector();
  say("language", "", file.language, "html[lang]");
  say("title", "", file.title, "title");
  say("clinic", "name", file.author, "meta[name=author]");
  say("paper", "", file.paper, "html[class]");
  const [, name] = filled("title", file.title) ?? [];
  if (name !== undefined) say("client", "name", name, "title");
  const draft = file.blocks.some(
    (block) => block.kind === "text" && block.text.startsWith(label("frame.draft.mark")),
  );
  say("signed", "", draft ? "draft" : "signed", "bar at the top");
  if (edition !== "summary")
    say(
      "signed",
      "",
      file.phone === undefined ? "draft" : "signed",
      "whether there is a companion",
    );
  for (const { text, href } of file.calls) {
    const number = filled("frame.stop.emergency", text)?.[0] ?? text;
    say("address of telephone", number, href, `a[href="${href}"]`);
  }
  void clinic;
  void protocol;
  return { name: "HTML file", facts, complete: new Set() };
}
