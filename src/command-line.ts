/** A call of the command: its words are read, one command is run, and faults become an exit status. */
import { Command, CommanderError } from "commander";
import type { SignOptions } from "./commands/sign.ts";
import { EXIT } from "./faults/catalogue.ts";
import type { Terminal } from "./terminal/terminal.ts";
import { VERSION } from "./version.ts";

/**
 * Runs one call of the command in a terminal. Bad input is printed, never thrown.
 *
 * @param args the words after the command's name
 * @returns the exit status (`EXIT`)
 */
export async function runCommand(args: readonly string[], terminal: Terminal): Promise<number> {
  let status: number = EXIT.done;
  const program = commands(terminal, (result) => {
    status = result;
  });
  try {
    await program.parseAsync([...args], { from: "user" });
    return status;
  } catch (thrown) {
    if (thrown instanceof CommanderError) return thrown.exitCode === 0 ? EXIT.done : EXIT.usage;
    return await printThrown(thrown, terminal, args.includes("--verbose"));
  }
}

/** The commands; each loads what it needs only when it is run. */
function commands(terminal: Terminal, end: (status: number) => void): Command {
  const program = new Command("paulatim")
    .configureOutput({
      writeOut: (text) => terminal.out(text.trimEnd()),
      writeErr: (text) => terminal.err(text.trimEnd()),
    })
    .description(
      "Exercise cards, and each client's multi-week home-program booklet made from them.",
    )
    .version(VERSION)
    .option("--verbose", "with a fault of the program, also where it happened")
    .showHelpAfterError("(paulatim --help shows how)")
    .exitOverride();

  program
    .command("check")
    .description("find every problem of cards, protocols and plans")
    .argument("[path...]", "files or folders; the folder you are in if none is given")
    .option("--json", "print the problems as JSON")
    .option(
      "--issued <file>",
      'what the client of the one plan already has, or "none" (default: ID.issued.json in the output folder, where it is)',
    )
    .option("--out <folder>", "the output folder of the booklets", "out")
    .option("--strict", "let warnings count as errors")
    .option("--date <YYYY-MM-DD>", "the day to work with, instead of today")
    .action(async (paths: string[], options: object) => {
      const { check } = await import("./commands/check.ts");
      end(await check(paths, options, terminal));
    });

  program
    .command("plan")
    .description("show a client's computed program, week by week")
    .argument("<plan>", "the plan's file")
    .option("--json", "print the program as JSON")
    .option(
      "--explain <card>",
      "show how the numbers of one exercise came about, or why it is not in the program",
    )
    .option(
      "--issued <file>",
      'what the client already has, or "none" (default: ID.issued.json in the output folder, where it is)',
    )
    .option("--out <folder>", "the output folder of the booklets", "out")
    .option("--apply <number>", "write the remedy of that number into the plan")
    .option("--why <text>", "the reason for it, where the plan has to state one")
    .option("--strict", "let warnings count as errors")
    .option("--date <YYYY-MM-DD>", "the day to work with, instead of today")
    .action(async (path: string, { apply, ...options }: { readonly apply?: string }) => {
      if (apply !== undefined) {
        const { applyRemedy } = await import("./commands/apply.ts");
        end(await applyRemedy(path, { ...options, apply }, terminal));
        return;
      }
      const { plan } = await import("./commands/plan.ts");
      end(plan(path, options, terminal));
    });

  program
    .command("sign")
    .description("sign a plan off as it is, after a look at what is still open")
    .argument("<plan>", "the plan's file")
    .requiredOption("--by <name>", "the clinician who signs")
    .option("--on <YYYY-MM-DD>", "the day of the signature, where that is another")
    .option("--date <YYYY-MM-DD>", "the day to work with, instead of today")
    .option("--yes", "sign although something is open, without being asked")
    .option(
      "--issued <file>",
      'what the client already has, or "none" (default: ID.issued.json in the output folder, where it is)',
    )
    .option("--out <folder>", "the output folder of the booklets", "out")
    .action(async (path: string, options: SignOptions) => {
      const { sign } = await import("./commands/sign.ts");
      end(await sign(path, options, terminal));
    });

  program
    .command("booklet")
    .description("write booklets as HTML and PDF")
    .argument("<plan...>", "the plans' files")
    .option(
      "--formats <list>",
      'html, pdf, ics (a calendar file), or several (default: "html,pdf")',
    )
    .option("--edition <name>", "standard, large (print) or summary (one page)", "standard")
    .option("--out <folder>", "where to write", "out")
    .option(
      "--password-file <file>",
      "lock the PDF with the password on this file's first line, and write no other format",
    )
    .option(
      "--issued <file>",
      'what the client already has: past days stay, and as little as can moves; "none" lays out anew (default: ID.issued.json in the output folder, written with every signed booklet)',
    )
    .option("--browser <file>", "the browser to print with")
    .option("--strict", "let warnings count as errors")
    .option("--date <YYYY-MM-DD>", "the day to work with, instead of today")
    .action(async (plans: string[], options: object) => {
      const { booklet } = await import("./commands/booklet.ts");
      end(await booklet(plans, options, terminal));
    });

  program
    .command("diary")
    .description("show what a client wrote down, from files sent or codes scanned")
    .argument("<file...>", "diaries as CSV, or codes as text, one a line; - reads standard input")
    .option("--json", "print the diary as JSON")
    .option("--csv <file>", "write the diaries as one into this file")
    .action(async (files: string[], options: object) => {
      const { diary } = await import("./commands/diary.ts");
      end(await diary(files, options, terminal));
    });

  program
    .command("new")
    .description("make a card, protocol, plan or clinic to fill in")
    .argument("<kind>", "card, protocol, plan or clinic")
    .argument("<path>", "the file to make; for a clinic, its folder")
    .action(async (kind: string, path: string) => {
      const { newFile } = await import("./commands/new.ts");
      end(await newFile(kind, path, terminal));
    });

  program
    .command("library")
    .description("look over the whole library")
    .command("figures")
    .description("write a sheet of all cards' pictures, HTML and PDF")
    .option("--out <folder>", "where to write", "out")
    .option("--formats <list>", "html, pdf or both", "html,pdf")
    .option("--browser <file>", "the browser to print with")
    .option("--watch", "draw again whenever a card changes (HTML)")
    .action(async (options: object) => {
      const { figures } = await import("./commands/library.ts");
      end(await figures(options, terminal));
    });

  return program;
}

async function printThrown(thrown: unknown, terminal: Terminal, verbose: boolean): Promise<number> {
  const [{ faultsFrom }, { printFaults }] = await Promise.all([
    import("./faults/print.ts"),
    import("./terminal/terminal.ts"),
  ]);
  const faults = faultsFrom(thrown);
  printFaults(terminal, faults);
  if (verbose && thrown instanceof Error) terminal.err(thrown.stack ?? "");
  return Math.max(...faults.map((fault) => fault.exit));
}
