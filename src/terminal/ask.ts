/** Asks the person at the terminal; a program that stands there is never waited for. */
import { createInterface } from "node:readline/promises";

/** The answer, trimmed; undefined where nobody is there to give one. */
export type Ask = (question: string) => Promise<string | undefined>;

export const askPerson: Ask = async (question) => {
  if (!process.stdin.isTTY || !process.stderr.isTTY) return undefined;
  const lines = createInterface({ input: process.stdin, output: process.stderr });
  try {
    return (await lines.question(question)).trim();
  } finally {
    lines.close();
  }
};
