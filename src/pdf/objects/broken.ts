/** What is said of a PDF that is not what was asked for. */
import { Fault } from "../../faults/fault.ts";

export function broken(what: string): Fault {
  return new Fault("pdf-broken", `The printed PDF cannot be read. ${what}`, {
    hint: "Print again, or with another browser (PUPPETEER_EXECUTABLE_PATH).",
  });
}
