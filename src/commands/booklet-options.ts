/** What `paulatim booklet` may be told, and what it means. */
import type { Edition } from "../compose/model.ts";
import { Fault } from "../faults/fault.ts";

export interface BookletOptions {
  readonly formats?: string;
  readonly out?: string;
  readonly edition?: string;
  readonly passwordFile?: string;
  readonly issued?: string;
  readonly browser?: string;
  readonly date?: string;
  readonly strict?: boolean;
}

const FORMATS = ["html", "pdf", "ics"] as const;
export type Format = (typeof FORMATS)[number];

/** Only a PDF can be locked: with a password nothing is written that anyone could read. */
export function formatsOf({ formats, passwordFile }: BookletOptions): readonly Format[] {
  const usual = passwordFile === undefined ? "html,pdf" : "pdf";
  const wanted = (formats ?? usual).split(",").map((one) => one.trim().toLowerCase());
  const odd = wanted.find((one) => !FORMATS.includes(one as Format));
  if (odd !== undefined) {
    throw new Fault("usage", `There is no format "${odd}".`, {
      hint: `Formats: ${FORMATS.join(", ")}.`,
    });
  }
  const open = wanted.find((one) => one !== "pdf");
  if (passwordFile !== undefined && open !== undefined) {
    throw new Fault("usage", `A password cannot lock ${open}, only pdf.`, {
      hint: "Leave --formats out, or write the other formats without a password.",
    });
  }
  return wanted as Format[];
}

export function editionOf(text = "standard"): Edition {
  const found = EDITIONS.find((one) => one === text.toLowerCase());
  if (!found) {
    throw new Fault("usage", `There is no edition "${text}".`, {
      hint: `Editions: ${EDITIONS.join(", ")}.`,
    });
  }
  return found;
}

const EDITIONS: readonly Edition[] = ["standard", "large", "summary"];
