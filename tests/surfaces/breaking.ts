/** Outputs of a demo client, and ways to break one statement of them. */
import { change } from "../support/world.ts";
import type { Files } from "./check.ts";
import type { Client } from "./clients.ts";
import { outputsOf } from "./outputs.ts";

/** A client's outputs; throws the fault that stops the plan. */
export async function filesOf(client: Client): Promise<Files> {
  const outputs = await outputsOf(client);
  if ("faults" in outputs) throw outputs.faults[0];
  return outputs;
}

/** Changes what comes first after a mark: a page's title, or the phone's data. */
export const after =
  (mark: string, from: string | RegExp, to: string) =>
  (text: string): string => {
    const at = text.indexOf(mark);
    if (at < 0) throw new Error(`there is no ${mark}`);
    return text.slice(0, at) + change(text.slice(at), from, to);
  };

export const page = (anchor: string, from: string | RegExp, to: string) =>
  after(`id="${anchor}"`, from, to);
export const data = (from: string | RegExp, to: string) => after('id="booklet-data"', from, to);
export const inText = (from: string | RegExp, to: string) => (text: string) =>
  change(text, from, to);
