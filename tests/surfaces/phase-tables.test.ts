/** From the tables of the phases every dose of every week can be read: nothing is lost where things are said once. */
import { expect, test } from "vitest";
import { PROTOCOLS, shippedCourse } from "../support/shipped.ts";
import { compare, disagreementText, type Surface } from "./facts.ts";
import { contextOf } from "./read/context.ts";
import { DOSE_KINDS } from "./read/dose-facts.ts";
import { readHtml } from "./read/html.ts";
import { readPages } from "./read/pages.ts";
import { readPlanJson } from "./read/plan-json.ts";
import { protocolIn } from "./shipped.ts";

const KINDS: readonly string[] = [...DOSE_KINDS, "often", "starts when"];

test.each(PROTOCOLS)("%s", (id) => {
  const { html, json, made } = shippedCourse(id);
  const starts = made.program.plan.value.starts;
  const context = contextOf({
    clinic: { language: "en" },
    plan: { starts, week: {} },
    protocol: protocolIn(id, "en"),
  });
  const pages = readPages("HTML", readHtml(html).blocks, context);
  const tables = pages.find(({ name }) => name === "HTML phase page");
  const { disagreements, compared } = compare([
    dosesIn(tables),
    dosesIn(readPlanJson(JSON.stringify(json), context)),
  ]);
  expect(disagreements.map(disagreementText)).toEqual([]);
  const bouts = json.weeks.flatMap(({ sessions }) => sessions.flatMap((one) => one.bouts));
  expect(bouts.length).toBeGreaterThan(0);
  expect(compared.get("sets")).toBeGreaterThan(0);
});

/** What is said of doses, as all that there is to say. */
function dosesIn(surface: Surface | undefined): Surface {
  const facts = surface?.facts.filter(({ kind }) => KINDS.includes(kind)) ?? [];
  return { name: surface?.name ?? "", facts, complete: new Set(KINDS) };
}
