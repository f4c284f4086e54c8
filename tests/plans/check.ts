/** Everything that is wrong with what is made of a plan; the plan's text, its course and the cards say what is right. */
import { readHtml } from "../surfaces/read/html.ts";
import { sectionsOf } from "../surfaces/read/sections.ts";
import { wrongTimes } from "./clear.ts";
import type { RandomPlan } from "./draw.ts";
import {
  type Known,
  knownOf,
  wrongExercises,
  wrongNames,
  wrongPages,
  wrongRemedies,
  wrongShort,
} from "./names.ts";
import { wrongOften } from "./often.ts";
import { wrongNumbers } from "./pages.ts";
import type { Printed, PrintedBooklet, PrintedPlan } from "./printed.ts";

export function wrongIn({ plan, course }: RandomPlan, printed: Printed): string[] {
  const known = knownOf(plan, course);
  const json = JSON.parse(printed.json) as PrintedPlan;
  return [
    ...wrongOften(plan, known.asked, json.weeks),
    ...wrongTimes(plan, known.asked, json.weeks),
    ...wrongExercises(known, json),
    ...wrongRemedies(known, json),
    ...(printed.booklet ? wrongBooklet(known, printed.booklet, printed.json, json) : []),
  ];
}

function wrongBooklet(
  known: Known,
  booklet: PrintedBooklet,
  text: string,
  json: PrintedPlan,
): string[] {
  const { blocks } = readHtml(booklet.html);
  const sections = sectionsOf(blocks);
  return [
    ...wrongNames(known, booklet),
    ...(booklet.phone === "" ? ["there is no companion"] : wrongShort(booklet.phone)),
    ...wrongPages(known, sections, blocks),
    ...wrongNumbers(known, sections, text, json),
  ];
}
