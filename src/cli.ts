#!/usr/bin/env node
/** What is started: gives the command the real terminal and the day, and leaves with its exit status. */
import { runCommand } from "./command-line.ts";
import { EXIT } from "./faults/catalogue.ts";
import type { Terminal } from "./terminal/terminal.ts";

const terminal: Terminal = {
  cwd: process.cwd(),
  env: process.env,
  platform: process.platform,
  today: localToday(),
  out: (text) => process.stdout.write(`${text}\n`),
  err: (text) => process.stderr.write(`${text}\n`),
  colour: { out: wantsColour(process.stdout), err: wantsColour(process.stderr) },
};

// a reader that has seen enough, such as head, closes the pipe: that is no fault
for (const stream of [process.stdout, process.stderr]) {
  stream.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code === "EPIPE") process.exit(EXIT.done);
    throw error;
  });
}

process.exitCode = await runCommand(process.argv.slice(2), terminal);

function localToday(): string {
  const now = new Date();
  const two = (n: number) => String(n).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

function wantsColour(stream: NodeJS.WriteStream): boolean {
  return stream.isTTY === true && process.env.NO_COLOR === undefined;
}
