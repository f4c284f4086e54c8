/** Compiles the booklet's templates, a clinic's own in place of the shipped ones, and says where a broken one breaks. */
import Handlebars from "handlebars";
import { Fault, FaultList } from "../faults/fault.ts";
import { frameOf } from "../read/source.ts";
import { nearest } from "../read/validate.ts";
import type { Values, Words } from "../words/words.ts";
import { inlineFaults } from "./inline.ts";
import type { TemplateFile } from "./template-file.ts";

/** A compiled template. */
export type Template = (view: object) => string;

export interface Templates {
  /** Everything between head and foot of the HTML file. */
  readonly body: Template;
  /** The same for the edition of one page. */
  readonly summary: Template;
  /** The file around it. */
  readonly document: Template;
}

/**
 * Compiles `document`, `booklet` and `summary` with all other templates as their partials.
 * Throws template-broken with file, line and column: at once for what cannot be parsed and for what
 * the booklet's policy leaves without effect, and when filled for a word that the booklet does not
 * have.
 */
export function compileTemplates(
  shipped: ReadonlyMap<string, TemplateFile>,
  own: ReadonlyMap<string, TemplateFile>,
  words: Words,
): Templates {
  for (const [name, { file }] of own) {
    if (!shipped.has(name)) throw unknownTemplate(name, file, [...shipped.keys()]);
  }
  const handlebars = Handlebars.create();
  handlebars.registerHelper("t", (key: string, options: Handlebars.HelperOptions) =>
    words.say(key, options.hash as Values),
  );
  const compiled = new Map<string, Template>();
  const inline: Fault[] = [];
  for (const [name, file] of [...shipped, ...own]) {
    const parsed = parse(handlebars, file);
    inline.push(...inlineFaults(name, file, parsed));
    const made = compile(handlebars, file, parsed);
    compiled.set(name, made);
    handlebars.registerPartial(name, made as Handlebars.Template);
  }
  if (inline.length > 0) throw new FaultList(inline);
  const get = (name: string): Template => compiled.get(name) ?? (() => "");
  return { body: get("booklet"), summary: get("summary"), document: get("document") };
}

const OPTIONS = {
  strict: true,
  preventIndent: true,
  knownHelpers: { t: true },
  knownHelpersOnly: true,
};

function parse(handlebars: typeof Handlebars, file: TemplateFile): hbs.AST.Program {
  try {
    return handlebars.parse(file.text);
  } catch (cause) {
    throw broken(file, cause);
  }
}

function compile(
  handlebars: typeof Handlebars,
  file: TemplateFile,
  parsed: hbs.AST.Program,
): Template {
  const template = handlebars.compile(parsed, OPTIONS);
  return (view, options?: Handlebars.RuntimeOptions) => {
    try {
      return template(view, options);
    } catch (cause) {
      throw cause instanceof Fault ? cause : broken(file, cause);
    }
  };
}

/** Handlebars says where in its message: "Parse error on line 3:" or "… - 3:7" (column from 0). */
function broken(file: TemplateFile, cause: unknown): Fault {
  const message = cause instanceof Error ? cause.message : String(cause);
  const [, at, column] = / - (\d+):(\d+)\s*$/.exec(message) ?? [];
  const [, line] = /on line (\d+)/.exec(message) ?? [];
  const place = {
    file: file.file,
    line: Number(at ?? line ?? 1),
    column: column === undefined ? 1 : Number(column) + 1,
  };
  const [, missing] = /^"([^"]+)" not defined/.exec(message) ?? [];
  const says =
    missing === undefined
      ? `This template cannot be read: ${(message.split("\n")[0] ?? "").replace(/:?$/, ".")}`
      : `The booklet has nothing called ${missing} here.`;
  return new Fault("template-broken", says, {
    place,
    frame: frameOf(file.text, place),
    hint: "Compare it with the shipped template of the same name.",
    cause,
  });
}

function unknownTemplate(name: string, file: string, known: readonly string[]): Fault {
  const near = nearest(name, known);
  return new Fault("template-broken", `There is no template ${name} to stand in for.`, {
    place: { file, line: 1, column: 1 },
    hint: near ? `Did you mean ${near}.hbs?` : `There are: ${known.join(", ")}.`,
  });
}
