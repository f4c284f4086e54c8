/** Every shipped protocol as a whole booklet for an invented client: what tests of all pages read. */
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { makeBooklet } from "../../src/booklet.ts";
import type { Edition } from "../../src/compose/model.ts";
import { loadAssets } from "../../src/html/assets.ts";
import { renderHtml } from "../../src/html/html.ts";
import { planJson } from "../../src/plan-text/json.ts";
import { planTable } from "../../src/plan-text/table.ts";
import { type Client, courseIn } from "../published/course-support.ts";
import { asSigned } from "./signed.ts";
import { DAY, demoClinic, english, ROOT } from "./world.ts";

/** Ids of all shipped protocols. */
export const PROTOCOLS = readdirSync(join(ROOT, "templates/protocols"))
  .filter((name) => /^[a-z0-9-]+\.md$/.test(name))
  .map((name) => name.replace(/\.md$/, ""));

const words = english();
const assets = await loadAssets(join(ROOT, "templates"), words);
const { cards, protocols } = (({ texts }) => ({
  cards: texts.library.cards,
  protocols: texts.protocols,
}))(demoClinic());

/** A course with free mornings and evenings, and a repetition test of every card that needs one. */
function clientOf(protocol: string, more: Partial<Client>): Client {
  const ids = new Set(
    protocols.get(protocol)?.value.phases.flatMap(({ exercises }) => exercises.map((e) => e.card)),
  );
  const measures = [...ids].flatMap((id) => {
    const card = cards.get(id)?.card;
    if (card === undefined || !["weight", "body"].includes(card.load.kind)) return [];
    const side = card.side === "each" ? ("left" as const) : ("both" as const);
    return [{ card: id, side, kg: card.limb === "arm" ? 3 : 50, reps: 10 }];
  });
  const free = "morning: 180 min, evening: 180 min";
  return { protocol, measures, free, ...more };
}

/** What comes out of a course, on every surface that is text; `print` prints it again. */
export function shippedCourse(protocol: string, more: Partial<Client> = {}) {
  const { made: unsigned, workspace, faults } = courseIn(clientOf(protocol, more));
  const made = asSigned(unsigned);
  const print = (day: string, edition: Edition = "standard"): string =>
    renderHtml(makeBooklet(made, workspace, words, day, edition), assets);
  return {
    made,
    workspace,
    faults,
    html: print(DAY),
    print,
    json: planJson(made, []),
    table: planTable(made, workspace.texts.library, words),
  };
}

/** What a reader sees of HTML: no tags, one space between words. */
export const textOf = (html: string): string =>
  html
    .replace(/<head>[\s\S]*<\/head>/, "")
    .replace(/<svg[\s\S]*?<\/svg>/g, " ")
    .replace(/<[^>]*>/g, " ")
    .replaceAll("&#x27;", "'")
    .replaceAll("&quot;", '"')
    .replaceAll("&amp;", "&")
    .replace(/\s+/g, " ")
    .trim();

/** The HTML of the booklet's parts of a kind, such as "phase", in their order. */
export const partsOf = (html: string, kind: string): string[] =>
  html
    .split(/(?=<section class="part )/)
    .filter((part) => new RegExp(`^<section class="part ${kind}[ "]`).test(part));
