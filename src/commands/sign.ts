/** `paulatim sign`: shows what is open in a plan, and writes a signature that covers it as it is. */
import { resolve } from "node:path";
import type { MadeProgram } from "../booklet.ts";
import { EXIT } from "../faults/catalogue.ts";
import { Fault, isError } from "../faults/fault.ts";
import { contentOf, digestOf } from "../signature/content.ts";
import { keptPath, keptText } from "../signature/kept.ts";
import type { SignedOff } from "../signature/signature.ts";
import { type Ask, askPerson } from "../terminal/ask.ts";
import { dayOf, printFaults, type Terminal } from "../terminal/terminal.ts";
import { loadWords } from "../words/load-words.ts";
import type { Workspace } from "../workspace.ts";
import { unreadDiaries } from "./diaries-beside.ts";
import { IssuedRecords } from "./issued.ts";
import { issuedBooklet } from "./issued-booklet.ts";
import { Workspaces } from "./one-plan.ts";
import { changedLines, PlanFile } from "./plan-file.ts";

export interface SignOptions {
  readonly by: string;
  /** The day of the signature, YYYY-MM-DD. */
  readonly on?: string;
  /** The day to work with, instead of today. */
  readonly date?: string;
  /** Sign whatever is open. */
  readonly yes?: boolean;
  readonly issued?: string;
  /** The folder of the booklets, where that lies unless it is named. */
  readonly out?: string;
}

/**
 * Signs a plan that has no errors: writes `signed` into it and what was signed beside it. What is open is
 * shown first, and somebody has to say that it is signed all the same. Returns the exit status. Throws usage
 * faults and what PlanFile does.
 */
export async function sign(
  path: string,
  options: SignOptions,
  terminal: Terminal,
  ask: Ask = askPerson,
): Promise<number> {
  const by = nameOf(options.by);
  const today = dayOf(options.date, terminal);
  const on = dayOf(options.on ?? today, terminal);
  const out = resolve(terminal.cwd, options.out ?? "out");
  const issued = new IssuedRecords({ issued: options.issued, out, today, plans: 1 }, terminal);
  const workspaces = new Workspaces(terminal, today);
  const file = new PlanFile(path, terminal);
  const { value, faults } = workspaces.make(path, issued, file.text);
  if (!value || faults.some(isError)) {
    printFaults(terminal, faults);
    terminal.err(`${file.shown} is not signed: its errors come first.`);
    return EXIT.input;
  }
  const { plan } = value.made;
  const open = [
    ...faults.filter(({ code }) => !ANSWERED_BY_SIGNING.includes(code)),
    ...issuingFaults(value, { by, on }, today, issued),
    ...unreadDiaries(file.shown, plan.value, terminal.cwd),
  ];
  printFaults(terminal, open);
  if (open.length > 0 && options.yes !== true && !(await isConfirmed(open.length, ask))) {
    terminal.err(`${file.shown} is not signed.`);
    return EXIT.input;
  }
  const content = contentOf(value.made, plan.note);
  const signed = { by, on, digest: digestOf(content) };
  const { text } = file.edited([{ kind: "set", path: ["signed"], value: signed }]);
  const again = workspaces.make(path, issued, text).value?.made.signedOff;
  if (again?.by !== by || again.on !== on) {
    throw new Fault("internal", `The signature does not cover ${file.shown}: nothing was written.`);
  }
  const kept = keptPath(resolve(terminal.cwd, path));
  await file.write(text, [{ path: kept, content: keptText(signed, content) }]);
  terminal.out(`${file.shown}: signed off by ${by} on ${on}.\n${changedLines(file.text, text)}`);
  return EXIT.done;
}

/** What `booklet` will say of the plan, once it is signed, to a client who has a booklet already. */
function issuingFaults(
  { made, workspace }: { readonly made: MadeProgram; readonly workspace: Workspace },
  signedOff: SignedOff,
  today: string,
  issued: IssuedRecords,
): readonly Fault[] {
  const { language, locale } = made.program.clinic;
  const words = loadWords(language, locale, workspace.look.words);
  const signed = { made: { ...made, signedOff }, workspace };
  return issuedBooklet(signed, words, today, "standard", issued).faults;
}

/** Faults that signing does away with. */
const ANSWERED_BY_SIGNING: readonly string[] = ["not-signed", "signature-stale"];

function nameOf(text: string): string {
  const name = text.trim();
  if (name !== "" && !/[\r\n]/.test(name)) return name;
  throw new Fault("usage", "--by needs the name of the clinician who signs.");
}

async function isConfirmed(open: number, ask: Ask): Promise<boolean> {
  const count = open === 1 ? "1 thing is" : `${open} things are`;
  const answer = await ask(`${count} open. Sign the plan all the same? (yes/no) `);
  if (answer !== undefined) return answer.toLowerCase() === "yes";
  throw new Fault("usage", `${count} open, and nobody is there to be asked.`, {
    hint: "Answer them in the plan; or, having looked at them, sign with --yes.",
  });
}
