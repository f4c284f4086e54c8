/** Everything that a plan of the demo clinic comes to, as its client and its clinician get it. */
import { join } from "node:path";
import { makeBooklet, makeProgram } from "../../src/booklet.ts";
import { calendarFile } from "../../src/calendar/calendar-file.ts";
import { issue } from "../../src/calendar/issue.ts";
import { loadAssets } from "../../src/html/assets.ts";
import { companionOf, loadCompanion } from "../../src/html/companion.ts";
import { renderHtml } from "../../src/html/html.ts";
import { planJson } from "../../src/plan-text/json.ts";
import { planTable } from "../../src/plan-text/table.ts";
import { asSigned } from "./signed.ts";
import { DAY, DEMO, demoClinic, english, ROOT, shippedText, worldWith } from "./world.ts";

const clinic = demoClinic();

const ACHILLES = `${DEMO}/achilles.md`;

/** The demo's plan for a sore heel cord. */
export const achillesPlan = (): string => shippedText(ACHILLES);

/** A plan's text made: with its faults, and undefined where an error stops it. */
export function tryPlan(
  text: string,
  file = ACHILLES,
  more: Readonly<Record<string, string>> = {},
) {
  const files = { [file]: text, ...more };
  const workspace =
    Object.keys(more).length > 0 ? demoClinic(files) : { ...clinic, tree: worldWith(files) };
  const { value, faults } = makeProgram(workspace, file);
  const errors = faults.filter(({ level }) => level === "error");
  return { value, faults, errors, workspace };
}

/** The outputs of a plan that can be made; throws its errors. */
export function outputsOf(text: string, file?: string, more?: Readonly<Record<string, string>>) {
  const { value, faults, errors, workspace } = tryPlan(text, file, more);
  if (!value) throw new Error(errors.map(({ message, hint }) => `${message} ${hint}`).join("\n"));
  const booklet = makeBooklet(asSigned(value), workspace, english(), DAY);
  const json = planJson(value, faults);
  return {
    made: value,
    faults,
    booklet,
    json,
    ics: calendarFile(booklet, issue(booklet, value.program, undefined).value).replace(
      /\r\n[ \t]/g,
      "",
    ),
    table: planTable(value, workspace.texts.library, english()),
    /** The HTML file with its companion for the phone. */
    html: async () => {
      const assets = await loadAssets(join(ROOT, "templates"), english());
      const script = companionOf(booklet, await loadCompanion(), assets.allWords);
      return renderHtml(booklet, assets, script === undefined ? {} : { script });
    },
    /** Cards done in a week, in the machine form. */
    cardsIn: (week: number): string[] => {
      const bouts = json.weeks[week - 1]?.sessions.flatMap((session) => session.bouts) ?? [];
      return [...new Set(bouts.map(({ card }) => card))].sort();
    },
  };
}

/** What a page says without its marks. */
export const textOf = (html: string): string =>
  html
    .replace(/<(script|style)[\s\S]*?<\/\1>/g, " ")
    .replace(/<[^>]*>/g, " ")
    .replace(/\s+/g, " ");
