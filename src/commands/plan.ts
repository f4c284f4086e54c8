/** `paulatim plan`: the computed program of one client, week by week, for people or for programs. */
import { resolve } from "node:path";
import { EXIT } from "../faults/catalogue.ts";
import { type Fault, isError, sortFaults } from "../faults/fault.ts";
import { faultJson, numberedRemedies } from "../faults/print.ts";
import { planJson } from "../plan-text/json.ts";
import { planTable } from "../plan-text/table.ts";
import { dayOf, printFaults, type Terminal } from "../terminal/terminal.ts";
import { loadWords } from "../words/load-words.ts";
import { explain } from "./explain.ts";
import { IssuedRecords } from "./issued.ts";
import { Workspaces } from "./one-plan.ts";

export interface PlanOptions {
  readonly json?: boolean;
  readonly explain?: string;
  readonly strict?: boolean;
  readonly date?: string;
  readonly issued?: string;
  /** The folder of the booklets, where that lies unless it is named. */
  readonly out?: string;
}

/** Prints the program of a plan. Returns the exit status. */
export function plan(path: string, options: PlanOptions, terminal: Terminal): number {
  const today = dayOf(options.date, terminal);
  const out = resolve(terminal.cwd, options.out ?? "out");
  const issued = new IssuedRecords({ issued: options.issued, out, today, plans: 1 }, terminal);
  const workspaces = new Workspaces(terminal, today);
  if (options.explain !== undefined) {
    return explain(
      path,
      { explain: options.explain, json: options.json },
      { workspaces, before: issued, terminal },
    );
  }
  const { value, faults } = workspaces.make(path, issued);
  if (!value) {
    if (options.json)
      terminal.out(JSON.stringify({ faults: sortFaults(faults).map(faultJson) }, null, 2));
    else printNumbered(terminal, path, faults);
    return EXIT.input;
  }
  const { made, workspace } = value;
  if (options.json) {
    terminal.out(JSON.stringify(planJson(made, faults), null, 2));
  } else {
    const words = loadWords(made.program.clinic.language, made.program.clinic.locale);
    terminal.out(planTable(made, workspace.texts.library, words));
    printNumbered(terminal, path, faults);
  }
  return options.strict && faults.length > 0
    ? EXIT.input
    : faults.some(isError)
      ? EXIT.input
      : EXIT.done;
}

/** The faults with numbers for what could be done about them, and how to have that written. */
function printNumbered(terminal: Terminal, path: string, faults: readonly Fault[]): void {
  const remedies = numberedRemedies(faults);
  printFaults(terminal, faults, remedies);
  if (remedies.length === 0) return;
  terminal.err(`To have one of these written into the plan: paulatim plan ${path} --apply NUMBER`);
}
