/** The body of a card: its sections, in the client's words, found by their headings. */
import { Fault } from "../faults/fault.ts";
import type { Source } from "../read/source.ts";
import { nearest } from "../read/validate.ts";

/** Every section of a card: key, heading, and what an author writes there. */
export const SECTIONS = [
  { key: "setUp", heading: "Set up", says: "What to get ready and where to stand, sit or lie." },
  { key: "move", heading: "Move", says: "The movement as numbered steps, one action each." },
  { key: "feel", heading: "You should feel", says: "Where and what; what is normal." },
  {
    key: "check",
    heading: "Check yourself",
    says: "What can go wrong and how to see it, as a list.",
  },
  { key: "stop", heading: "Stop and call us if", says: "Signs that end the exercise, as a list." },
  {
    key: "clinician",
    heading: "For the clinician",
    says: "Notes that are never printed for clients.",
  },
] as const;

export type SectionKey = (typeof SECTIONS)[number]["key"];

/** Markdown of each section, and what stands in its place with some equipment. */
export interface Sections extends Readonly<Record<SectionKey, string>> {
  readonly variants: readonly SectionVariant[];
}

/** A section for the clients whose load is made by certain things: “## Set up with barbell”. */
export interface SectionVariant {
  readonly key: SectionKey;
  /** The heading as it stands in the file. */
  readonly heading: string;
  readonly line: number;
  /** Equipment's words. */
  readonly with: readonly string[];
  /** Markdown. */
  readonly text: string;
}

/** The sections that a client reads. */
export type ClientSections = Omit<Sections, "clinician">;

/** What a body belongs to, and the sections it has to have. */
interface Wanted {
  readonly what: string;
  readonly sections: readonly (typeof SECTIONS)[number][];
}

/** Placeholders that card text may hold; each becomes a word that fits the client's side. */
export const PLACEHOLDERS = {
  side: "left or right; “working” where both sides take turns",
  other: "right or left; “other” where both sides take turns",
} as const;

/**
 * The sections of a card's body, or of its translation's. `firstLine` is the line of the file on which the body begins.
 * Faults: missing-section, unknown-section, unknown-placeholder, unsafe-text.
 */
export function readSections(
  body: string,
  firstLine: number,
  source: Source,
  { what, sections: wanted }: Wanted = { what: "card", sections: SECTIONS },
): { readonly sections: Sections; readonly faults: readonly Fault[] } {
  const found = new Map<SectionKey, { line: number; lines: string[] }>();
  const variants: (Omit<SectionVariant, "text"> & { readonly lines: string[] })[] = [];
  const faults: Fault[] = [];
  const add = (
    code: "missing-section" | "unknown-section" | "unknown-placeholder" | "unsafe-text",
    message: string,
    line: number,
    column = 1,
    hint?: string,
  ) => {
    const place = source.atLine(line, column);
    faults.push(new Fault(code, message, { place, frame: source.frame(place), hint }));
  };

  let current: string[] | undefined;
  body.split(/\r?\n/).forEach((text, index) => {
    const line = firstLine + index;
    const heading = /^#{1,6}\s+(.*?)\s*#*\s*$/.exec(text)?.[1];
    if (heading === undefined) {
      current?.push(text);
      if (current === undefined && text.trim() !== "") {
        add(
          "unknown-section",
          "Text stands before the first heading.",
          line,
          1,
          "Move it under a heading.",
        );
        current = [];
      }
      checkText(text, line, add);
      return;
    }
    const section = sectionOf(heading, wanted);
    current = [];
    const [, base = "", things] = /^(.+?) with (.+)$/i.exec(heading) ?? [];
    const varied = section === undefined ? sectionOf(base, wanted) : undefined;
    if (varied && varied.key !== "clinician" && things !== undefined) {
      const words = things.split(",").map((one) => one.trim());
      variants.push({ key: varied.key, heading, line, with: words, lines: current });
    } else if (!section) {
      const near = nearest(
        heading,
        wanted.map((one) => one.heading),
      );
      add(
        "unknown-section",
        `A ${what} has no section “${heading}”.`,
        line,
        1,
        near
          ? `Did you mean “${near}”?`
          : `Sections: ${wanted.map((one) => one.heading).join(", ")}.`,
      );
    } else if (found.has(section.key)) {
      add(
        "unknown-section",
        `The section “${section.heading}” is there twice.`,
        line,
        1,
        "Keep one of the two.",
      );
    } else {
      found.set(section.key, { line, lines: current });
    }
  });

  const lastLine = firstLine + Math.max(0, body.trimEnd().split(/\r?\n/).length - 1);
  for (const section of wanted) {
    const got = found.get(section.key);
    if (!got) {
      add(
        "missing-section",
        `The section “${section.heading}” is missing.`,
        lastLine,
        1,
        `Add a heading ## ${section.heading}. ${section.says}`,
      );
    } else if (got.lines.join("").trim() === "") {
      add(
        "missing-section",
        `The section “${section.heading}” is empty.`,
        got.line,
        1,
        section.says,
      );
    }
  }
  for (const { lines, line, heading } of variants) {
    if (lines.join("").trim() === "") {
      add("missing-section", `The section “${heading}” is empty.`, line);
    }
  }
  const textOf = (key: SectionKey) => (found.get(key)?.lines ?? []).join("\n").trim();
  return {
    sections: {
      setUp: textOf("setUp"),
      move: textOf("move"),
      feel: textOf("feel"),
      check: textOf("check"),
      stop: textOf("stop"),
      clinician: textOf("clinician"),
      variants: variants.map(({ lines, ...variant }) => ({
        ...variant,
        text: lines.join("\n").trim(),
      })),
    },
    faults,
  };
}

const sectionOf = (heading: string, wanted: Wanted["sections"]) =>
  wanted.find((one) => one.heading.toLowerCase() === heading.toLowerCase());

function checkText(
  text: string,
  line: number,
  add: (
    code: "unknown-placeholder" | "unsafe-text",
    message: string,
    line: number,
    column: number,
    hint: string,
  ) => void,
): void {
  for (const match of text.matchAll(/\{([^{}]*)\}/g)) {
    const name = match[1] ?? "";
    if (!(name in PLACEHOLDERS)) {
      add(
        "unknown-placeholder",
        `There is no placeholder {${name}}.`,
        line,
        match.index + 1,
        `Known: ${Object.keys(PLACEHOLDERS)
          .map((known) => `{${known}}`)
          .join(", ")}.`,
      );
    }
  }
  for (const match of text.matchAll(/\]\(\s*<?([a-z][a-z0-9+.-]*:|\/\/)/gi)) {
    add(
      "unsafe-text",
      "A card cannot link to anything outside the clinic's folder.",
      line,
      match.index + 1,
      "Write the words without the link.",
    );
  }
}
