/** Everything that is made of a random plan, by the stages that the commands call, with a clinic that is read once. */
import { join } from "node:path";
import { makeBooklet, makeProgram } from "../../src/booklet.ts";
import { calendarFile } from "../../src/calendar/calendar-file.ts";
import { issue } from "../../src/calendar/issue.ts";
import { type Fault, isError } from "../../src/faults/fault.ts";
import { loadAssets } from "../../src/html/assets.ts";
import { companionOf } from "../../src/html/companion.ts";
import { renderHtml } from "../../src/html/html.ts";
import { planJson } from "../../src/plan-text/json.ts";
import { planTable } from "../../src/plan-text/table.ts";
import { openWorkspace } from "../../src/workspace.ts";
import { asSigned } from "../support/signed.ts";
import { DAY, english, ROOT, worldWith } from "../support/world.ts";
import type { RandomPlan } from "./draw.ts";
import { OWN_COURSES } from "./own-courses.ts";
import type { Printed } from "./printed.ts";

const FOLDER = "clinics/plans";
const PLAN = `${FOLDER}/plan.md`;
const CLINIC = `name: Harrow Lane Physiotherapy
phone: 01632 960 417
hours: Monday to Friday, 8:00 to 18:00
out_of_hours: 01632 960 999 (nights and weekends)
emergency: "999"
`;

const files: Record<string, string> = {
  [`${FOLDER}/clinic.yaml`]: CLINIC,
  ...Object.fromEntries(
    OWN_COURSES.map(({ id, text }) => [
      `${FOLDER}/protocols/${id}.md`,
      `---\n${text}---\n\nFor the clinician.\n`,
    ]),
  ),
  [PLAN]: "",
};
const workspace = openWorkspace({
  tree: worldWith(files),
  clinicFolder: FOLDER,
  shipped: ".",
  today: DAY,
});
const broken = workspace.faults.find(isError);
if (broken) throw broken;
const words = english();
const assets = await loadAssets(join(ROOT, "templates"), words);
/** The companion's data is what the proof reads; its code is always the same. */
const CODE = "0";

/**
 * What is made of a plan, or the faults that say why nothing is. `pages`: whether its booklet is made, too,
 * with all that comes with it.
 */
export function outputsOf(
  { text }: Pick<RandomPlan, "text">,
  pages: boolean,
): Printed | { readonly faults: readonly Fault[] } {
  files[PLAN] = text;
  const { value: unsigned, faults } = makeProgram(workspace, PLAN);
  if (!unsigned || faults.some(isError)) return { faults };
  const made = asSigned(unsigned);
  const json = JSON.stringify(planJson(made, faults));
  if (!pages) return { json, booklet: undefined };
  const booklet = makeBooklet(made, workspace, words, DAY);
  const issued = issue(booklet, made.program, undefined).value;
  const script = companionOf(booklet, CODE, assets.allWords);
  return {
    json,
    booklet: {
      table: planTable(made, workspace.texts.library, words),
      ics: calendarFile(booklet, issued),
      phone: script?.data ?? "",
      html: renderHtml(booklet, assets, script === undefined ? {} : { script }),
    },
  };
}
