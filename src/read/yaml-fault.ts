/** What is wrong with YAML, in words for people who do not know its grammar. */
import type { YAMLError } from "yaml";

interface Says {
  readonly message: string;
  readonly hint: string;
}

/** After one of these the parser reads what follows as something else than it is. */
const MISLEADING = new Set(["TAB_AS_INDENT", "BAD_INDENT", "MISSING_CHAR", "UNEXPECTED_TOKEN"]);
/** Errors that stand for themselves whatever is wrong before them. */
const OWN = new Set(["TAB_AS_INDENT", "DUPLICATE_KEY"]);

/** The errors of the parser, in their order, without those that only follow from an earlier one. */
export function ownErrors<E extends Pick<YAMLError, "code">>(errors: readonly E[]): E[] {
  const misled = errors.findIndex(({ code }) => MISLEADING.has(code));
  return errors.filter(({ code }, at) => {
    if (OWN.has(code) || at === 0) return true;
    return code !== "UNEXPECTED_TOKEN" && (misled < 0 || at <= misled);
  });
}

/** What an error of the parser means for whoever wrote the text, and what to do about it. */
export function sayYamlError({ code, message }: Pick<YAMLError, "code" | "message">): Says {
  switch (code) {
    case "DUPLICATE_KEY":
      return { message: "This field is given twice.", hint: "Keep one of the two." };
    case "TAB_AS_INDENT":
      return { message: "This line begins with a tab.", hint: "Indent with spaces." };
    case "BLOCK_AS_IMPLICIT_KEY":
    case "MULTILINE_IMPLICIT_KEY":
      return {
        message:
          "A value has a second colon in it, or is followed by lines that belong to nothing.",
        hint: 'Text that holds a colon needs quotation marks: "like: this". Lines of one group begin in the same column.',
      };
    case "MISSING_CHAR":
      return /quote/.test(message)
        ? {
            message: "A text that begins with a quotation mark does not end with one.",
            hint: "Close it with the mark with which it begins.",
          }
        : { message: "A field has no colon after its name.", hint: "Write name: value." };
    case "BAD_INDENT":
      return badIndent(message);
    case "BAD_SCALAR_START":
      return {
        message: `A text without quotation marks cannot begin with ${message.trim().slice(-1)} here.`,
        hint: "Put it in quotation marks.",
      };
    case "BAD_DQ_ESCAPE":
      return {
        message:
          "A backslash between quotation marks begins a special character, and this is none.",
        hint: "Write two backslashes, or put the text between single quotation marks.",
      };
    case "MULTIPLE_DOCS":
      return { message: "A line --- begins a second part here.", hint: "Take that line out." };
    case "NON_STRING_KEY":
      return {
        message: "The name of a field is not a plain text.",
        hint: "Put it in quotation marks.",
      };
    default:
      return {
        message: "This does not belong here.",
        hint: "Look before it for a missing quotation mark, colon or bracket, or for a list and fields in one group.",
      };
  }
}

function badIndent(message: string): Says {
  const open = /^Flow map/.test(message) ? "{}" : /^Flow seq/.test(message) ? "[]" : undefined;
  if (open === undefined) {
    return {
      message: "This line does not begin in the same column as the others of its group.",
      hint: "Indent the lines of one group alike.",
    };
  }
  return {
    message: `What begins with ${open[0]} has no ${open[1]} at its end.`,
    hint: `Write ${open[1]} where it ends; lines inside it are indented.`,
  };
}
