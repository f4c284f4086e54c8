/** Splits a Markdown file into front matter and body, and parses the front matter as YAML 1.2. */
import matter from "gray-matter";
import { type Document, LineCounter, parseDocument } from "yaml";
import { Fault } from "../faults/fault.ts";
import { keptByFile } from "./kept.ts";
import { frameOf, Source } from "./source.ts";
import { ownErrors, sayYamlError } from "./yaml-fault.ts";

/** Far above any card or plan; a larger file is refused before it is parsed. */
export const MAX_BYTES = 512 * 1024;

/** How YAML is read here, wherever it is. */
export const YAML_OPTIONS = {
  version: "1.2",
  uniqueKeys: true,
  prettyErrors: false,
  stringKeys: true,
} as const;

export interface Split {
  readonly source: Source;
  /** Plain data of the front matter, before it is checked against a schema. */
  readonly data: unknown;
  readonly body: string;
  /** Line of the file on which the body begins, counted from 1. */
  readonly bodyLine: number;
}

export type SplitResult =
  | { readonly split: Split; readonly faults: readonly Fault[] }
  | { readonly split: undefined; readonly faults: readonly Fault[] };

/**
 * Front matter and body of a Markdown file. `file` is the path to show in faults.
 * Faults: front-matter-missing, front-matter-language, yaml-syntax, yaml-alias.
 */
export function splitMarkdown(file: string, text: string): SplitResult {
  return split(file, text, undefined);
}

const split = keptByFile((file: string, text: string, _: undefined): SplitResult => {
  const opening = /^\uFEFF?---([^\r\n]*)\r?\n/.exec(text);
  const place = { file, line: 1, column: 1 };
  if (!opening) {
    return failed(
      "front-matter-missing",
      "This file does not begin with front matter.",
      text,
      place,
      "Put a line --- first, then the fields, then another line ---.",
    );
  }
  const language = (opening[1] ?? "").trim();
  if (language !== "" && language.toLowerCase() !== "yaml") {
    return failed(
      "front-matter-language",
      `Front matter in "${language}" is not read; only YAML is.`,
      text,
      place,
      "Begin the file with a line --- and nothing after it.",
    );
  }
  let raw = "";
  let parsed: ReturnType<typeof parseYaml> | undefined;
  const grayMatter = matter(text.replace(/^\uFEFF/, ""), {
    language: "yaml",
    engines: {
      yaml: (yaml: string) => {
        // gray-matter hands over what follows the three hyphens: the line break comes first
        raw = yaml.replace(/^\r?\n/, "").replace(/\r$/, "");
        parsed = parseYaml(file, text, raw, 2);
        return asObject(parsed.data);
      },
      // gray-matter would run these as code; the check above refuses them before they get here.
      javascript: refuse,
      js: refuse,
      json: refuse,
    },
  });
  if (!hasEnd(text)) {
    return failed(
      "front-matter-missing",
      "The front matter has no end.",
      text,
      place,
      "Put a line --- after the last field.",
    );
  }
  // gray-matter calls no engine for empty front matter
  parsed ??= parseYaml(file, text, raw, 2);
  if (parsed.faults.length > 0) return { split: undefined, faults: parsed.faults };
  const bodyLine = text.slice(0, text.length - grayMatter.content.length).split("\n").length;
  return {
    split: { source: parsed.source, data: parsed.data, body: grayMatter.content, bodyLine },
    faults: [],
  };
});

export interface ParsedYaml {
  readonly source: Source;
  readonly data: unknown;
  readonly faults: readonly Fault[];
}

/** Parses YAML that starts on `firstLine` of the file's text. Faults: yaml-syntax, yaml-alias. */
export function parseYaml(file: string, text: string, yaml: string, firstLine = 1): ParsedYaml {
  const lines = new LineCounter();
  const document: Document = parseDocument(yaml, { ...YAML_OPTIONS, lineCounter: lines });
  const source = new Source(file, text, { document, lines, firstLine });
  const faults = ownErrors(document.errors).map((error) => {
    const position = lines.linePos(error.pos[0]);
    const at = source.atLine(position.line + firstLine - 1, position.col);
    const { message, hint } = sayYamlError(error);
    return new Fault("yaml-syntax", message, {
      place: at,
      frame: source.frame(at),
      cause: error,
      hint,
    });
  });
  if (faults.length > 0) return { source, data: undefined, faults };
  try {
    return { source, data: document.toJS({ maxAliasCount: 0 }), faults: [] };
  } catch (cause) {
    const at = aliasPlace(source, text, firstLine);
    const fault = new Fault("yaml-alias", "YAML aliases (*name) are not read here.", {
      place: at,
      frame: source.frame(at),
      hint: "Write the value out where it is needed.",
      cause,
    });
    return { source, data: undefined, faults: [fault] };
  }
}

function failed(
  code: "front-matter-missing" | "front-matter-language",
  message: string,
  text: string,
  place: { file: string; line: number; column: number },
  hint: string,
): SplitResult {
  return {
    split: undefined,
    faults: [new Fault(code, message, { place, hint, frame: frameOf(text, place) })],
  };
}

function hasEnd(text: string): boolean {
  return /\r?\n---[ \t]*(?:\r?\n|$)/.test(text);
}

function asObject(data: unknown): object {
  return typeof data === "object" && data !== null ? data : {};
}

function refuse(): never {
  throw new Fault("front-matter-language", "Only YAML is read as front matter.");
}

function aliasPlace(source: Source, text: string, firstLine: number) {
  const lines = text.split("\n");
  for (let index = firstLine - 1; index < lines.length; index += 1) {
    const match = /(?:^|[\s[{,:])\*[A-Za-z0-9_]/.exec(lines[index] ?? "");
    if (match) return source.atLine(index + 1, match.index + match[0].length - 1);
  }
  return source.atLine(firstLine);
}
