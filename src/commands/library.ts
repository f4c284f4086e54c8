/** `paulatim library`: what a clinic asks of its whole library. */
import { watch } from "node:fs";
import { mkdir } from "node:fs/promises";
import { join, resolve } from "node:path";
import { EXIT } from "../faults/catalogue.ts";
import { isError } from "../faults/fault.ts";
import { faultsFrom } from "../faults/print.ts";
import { shippedFolder } from "../files/shipped.ts";
import { diskTree } from "../files/tree.ts";
import { writeAll } from "../files/write.ts";
import { contactSheet } from "../library/contact-sheet.ts";
import { printFaults, type Terminal } from "../terminal/terminal.ts";
import { CARDS_FOLDER, clinicFolderOf, openWorkspace, type Workspace } from "../workspace.ts";
import { shownPath } from "./check.ts";
import { unfinished } from "./write-booklet.ts";

export interface FiguresOptions {
  readonly out?: string;
  readonly formats?: string;
  readonly browser?: string;
  readonly watch?: boolean;
}

/** Writes the sheet of all cards' pictures. Returns the exit status. */
export async function figures(options: FiguresOptions, terminal: Terminal): Promise<number> {
  const out = resolve(terminal.cwd, options.out ?? "out");
  const formats = (options.formats ?? "html,pdf").split(",").map((one) => one.trim());
  const draw = async (wanted: readonly string[]) => {
    const workspace = open(terminal);
    printFaults(terminal, workspace.cards.faults.filter(isError));
    const html = contactSheet(
      workspace.cards.library,
      workspace.clinic?.value.name ?? "Exercise figures",
    );
    const files = [{ path: join(out, "figures.html"), content: html as string | Uint8Array }];
    if (wanted.includes("pdf")) {
      files.push({ path: join(out, "figures.pdf"), content: await print(html, options, terminal) });
    }
    await mkdir(out, { recursive: true });
    await writeAll(files);
    terminal.out(files.map(({ path }) => path).join("\n"));
  };
  await draw(formats);
  if (options.watch) await redrawOnChange(terminal, () => draw(["html"]));
  return EXIT.done;
}

function open(terminal: Terminal): Workspace {
  const tree = diskTree(terminal.cwd);
  return openWorkspace({
    tree,
    clinicFolder: clinicFolderOf(tree, "."),
    shipped: shownPath(shippedFolder(), terminal.cwd),
    today: terminal.today,
  });
}

async function print(
  html: string,
  options: FiguresOptions,
  terminal: Terminal,
): Promise<Uint8Array> {
  const [{ findBrowser }, { withBrowser }, { printPdf }, { printBooklet }] = await Promise.all([
    import("../browser/find.ts"),
    import("../browser/browser.ts"),
    import("../pdf/print.ts"),
    import("../pdf/print-numbered.ts"),
  ]);
  const { env, platform, today } = terminal;
  const as = { direction: "ltr", date: new Date(`${today}T00:00:00Z`) } as const;
  const found = await findBrowser({ setting: options.browser, env, platform });
  const printed = await withBrowser(found, (browser) =>
    browser.usePage((page) =>
      printBooklet(
        (text, how) => printPdf(page, text, { paper: "A4", ...how }),
        () => html,
        as,
      ),
    ),
  );
  // the same words as of a booklet that could not be finished
  if ("broken" in printed) printFaults(terminal, [unfinished(printed.broken)]);
  return printed.pdf;
}

/** Draws again a moment after a card has changed, until the command is stopped. */
function redrawOnChange(terminal: Terminal, draw: () => Promise<void>): Promise<never> {
  let waiting: NodeJS.Timeout | undefined;
  const soon = () => {
    clearTimeout(waiting);
    waiting = setTimeout(() => {
      draw().catch((thrown: unknown) => printFaults(terminal, faultsFrom(thrown)));
    }, 100);
  };
  const tree = diskTree(terminal.cwd);
  const clinic = clinicFolderOf(tree, ".");
  const own = clinic === undefined ? undefined : join(terminal.cwd, clinic, CARDS_FOLDER);
  for (const folder of new Set([own, join(shippedFolder(), CARDS_FOLDER)])) {
    if (folder === undefined) continue;
    try {
      watch(folder, { recursive: true }, soon);
    } catch {
      // a clinic need not have cards of its own
    }
  }
  terminal.err("Watching the cards; stop with Ctrl+C.");
  return new Promise(() => undefined);
}
