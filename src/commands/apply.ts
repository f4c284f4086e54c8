/** `paulatim plan PLAN --apply N`: writes one remedy into the plan, and leaves the rest of the file as it is. */
import { resolve } from "node:path";
import { asksWhy, type Edit, type Remedy, withReason } from "../edits/edit.ts";
import { EXIT } from "../faults/catalogue.ts";
import { Fault, isError } from "../faults/fault.ts";
import { numberedRemedies } from "../faults/print.ts";
import { type Ask, askPerson } from "../terminal/ask.ts";
import { dayOf, printFaults, type Terminal } from "../terminal/terminal.ts";
import { askedAbout } from "./explain.ts";
import { IssuedRecords } from "./issued.ts";
import { Workspaces } from "./one-plan.ts";
import { changedLines, PlanFile } from "./plan-file.ts";

export interface ApplyOptions {
  /** The remedy's number, as `paulatim plan` prints it. */
  readonly apply: string;
  /** The reason, where the plan has to state one. */
  readonly why?: string;
  /** A card that is not in the program: the remedies are those of its explanation. */
  readonly explain?: string;
  readonly date?: string;
  readonly issued?: string;
  /** The folder of the booklets, where that lies unless it is named. */
  readonly out?: string;
}

/**
 * Makes the edits of one remedy, lays the plan out with them, and writes it where that did away with the
 * fault. Returns the exit status of what is left. Throws usage faults, `remedy-fails`, and what PlanFile does.
 */
export async function applyRemedy(
  path: string,
  options: ApplyOptions,
  terminal: Terminal,
  ask: Ask = askPerson,
): Promise<number> {
  const today = dayOf(options.date, terminal);
  const out = resolve(terminal.cwd, options.out ?? "out");
  const issued = new IssuedRecords({ issued: options.issued, out, today, plans: 1 }, terminal);
  const workspaces = new Workspaces(terminal, today);
  const file = new PlanFile(path, terminal);
  const faultsWith = (text: string): readonly Fault[] => {
    const { explain } = options;
    if (explain === undefined) return workspaces.make(path, issued, text).faults;
    const asked = askedAbout(path, explain, workspaces, text);
    return "faults" in asked ? asked.faults : asked.absent;
  };
  const before = faultsWith(file.text);
  const remedy = remedyOf(options.apply, before);
  const edits = await withWhy(remedy, options.why, ask);
  const { text, reprinted } = file.edited(edits);
  const after = workspaces.make(path, issued, text);
  const left = stillThere(remedy, before, faultsWith(text));
  if (left) {
    throw new Fault("remedy-fails", `With it the fault is still there: ${left.message}`, {
      place: left.place,
      hint: "Nothing was written. Change the plan by hand.",
    });
  }
  await file.write(text);
  terminal.out(`${file.shown}: ${remedy.sentence}\n${changedLines(file.text, text)}`);
  for (const field of reprinted) {
    terminal.err(`The field ${field} had to be written anew: comments inside it are gone.`);
  }
  printFaults(terminal, after.faults, numberedRemedies(after.faults));
  return after.faults.some(isError) ? EXIT.input : EXIT.done;
}

function remedyOf(number: string, faults: readonly Fault[]): Remedy {
  const all = numberedRemedies(faults);
  const found = /^[1-9]\d*$/.test(number) ? all[Number(number) - 1] : undefined;
  if (found) return found;
  const hint =
    all.length === 0
      ? "Nothing is offered for this plan; paulatim plan shows what is wrong with it."
      : `There are ${all.length}: paulatim plan shows them with their numbers.`;
  throw new Fault("usage", `There is no remedy ${number}.`, { hint });
}

/** The edits with the reason in them where they ask for one. */
async function withWhy(
  { edits, sentence }: Remedy,
  given: string | undefined,
  ask: Ask,
): Promise<readonly Edit[]> {
  if (!asksWhy(edits)) return edits;
  const why = given ?? (await ask(`${sentence}\nWhy, in a sentence for the file? `));
  if (why !== undefined && why.trim() !== "") return withReason(edits, why.trim());
  throw new Fault("usage", "This changes what the client does: it needs a reason.", {
    hint: 'Give it with --why "…".',
  });
}

/** A fault that the remedy was for, and that is there after it. */
function stillThere(
  remedy: Remedy,
  before: readonly Fault[],
  after: readonly Fault[],
): Fault | undefined {
  const meant = before.filter(({ remedies }) => remedies.includes(remedy));
  return after.find(({ code, message }) =>
    meant.some((one) => one.code === code && (code.startsWith("week-") || one.message === message)),
  );
}
