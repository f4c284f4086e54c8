/** What an invented client and their clinician get from a plan: every output as text, and what is said about it. */
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { type MadeProgram, makeBooklet, makeProgram } from "../../src/booklet.ts";
import { calendarFile } from "../../src/calendar/calendar-file.ts";
import { issue } from "../../src/calendar/issue.ts";
import type { Edition } from "../../src/compose/model.ts";
import type { Fault } from "../../src/faults/fault.ts";
import { diskTree } from "../../src/files/tree.ts";
import { loadAssets } from "../../src/html/assets.ts";
import { renderHtml } from "../../src/html/html.ts";
import { phoneData } from "../../src/html/phone.ts";
import { type PlanJson, planJson } from "../../src/plan-text/json.ts";
import { planTable } from "../../src/plan-text/table.ts";
import { loadWords } from "../../src/words/load-words.ts";
import { openWorkspace } from "../../src/workspace.ts";
import { textOf } from "../support/shipped.ts";
import { DAY, ROOT } from "../support/world.ts";

const FOLDER = "tests/clients";

/** Places where something can be said to a client or their clinician. */
export const SURFACES = [
  "pages",
  "large print",
  "summary",
  "phone",
  "calendar",
  "terminal",
] as const;
export type Surface = (typeof SURFACES)[number];

export interface Outcome {
  readonly faults: readonly Fault[];
  /** Nothing where an error stops the plan. */
  readonly said: Readonly<Record<Surface, string>> | undefined;
  readonly json: PlanJson | undefined;
  /** What cards are called in the clinic's language. */
  readonly titles: ReadonlyMap<string, string>;
}

/** The clients' plans, each with the file of what is expected of it: `english/night-nurse`. */
export function clients(): readonly string[] {
  return ["english", "german", "american"].flatMap((clinic) =>
    readdirSync(join(ROOT, FOLDER, clinic))
      .filter((name) => name.endsWith(".md"))
      .map((name) => `${clinic}/${name.slice(0, -".md".length)}`),
  );
}

/** What a colleague expects of a client's plan, as it is written. */
export const expectationsOf = (client: string): string =>
  readFileSync(join(ROOT, FOLDER, `${client}.expected.txt`), "utf8");

/** The outputs of a client's plan, signed by whoever made it where the plan says nothing else. */
export async function outcomeOf(client: string): Promise<Outcome> {
  const { workspace, words, assets } = await clinicOf(dirname(client));
  const { value, faults } = makeProgram(workspace, `${FOLDER}/${client}.md`);
  const { library } = workspace.texts;
  const titles = new Map([...library.cards].map(([id, { card }]) => [id, card.title]));
  if (!value) return { faults, said: undefined, json: undefined, titles };
  const made = value.plan.value.signed ? value : signed(value);
  const booklet = (edition: Edition) => makeBooklet(made, workspace, words, DAY, edition);
  const page = (edition: Edition) => textOf(renderHtml(booklet(edition), assets));
  const standard = booklet("standard");
  const json = planJson(made, faults);
  const said = {
    pages: textOf(renderHtml(standard, assets)),
    "large print": page("large"),
    summary: page("summary"),
    phone: JSON.stringify(phoneData(standard, words)),
    calendar: oneLineEach(calendarFile(standard, issue(standard, made.program, undefined).value)),
    terminal: planTable(made, library, words),
  };
  return { faults, said, json, titles };
}

const signed = (made: MadeProgram): MadeProgram => ({
  ...made,
  signedOff: { by: made.plan.value.clinician, on: DAY },
});

/** A calendar file with its folded lines joined (RFC 5545, 3.1) and its commas as they are read (3.3.11). */
const oneLineEach = (ics: string): string =>
  ics.replace(/\r\n[ \t]/g, "").replace(/\\([,;\\])/g, "$1");

type Clinic = Awaited<ReturnType<typeof openClinic>>;
const opened = new Map<string, Promise<Clinic>>();

/** A clinic, read once for all its clients. */
function clinicOf(folder: string): Promise<Clinic> {
  const known = opened.get(folder);
  if (known) return known;
  const clinic = openClinic(folder);
  opened.set(folder, clinic);
  return clinic;
}

async function openClinic(folder: string) {
  const workspace = openWorkspace({
    tree: diskTree(ROOT),
    clinicFolder: `${FOLDER}/${folder}`,
    shipped: ".",
    today: DAY,
  });
  const { language = "en", locale = "en-GB" } = workspace.clinic?.value ?? {};
  const words = loadWords(language, locale);
  return { workspace, words, assets: await loadAssets(join(ROOT, "templates"), words) };
}
