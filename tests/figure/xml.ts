/** A strict well-formedness check for the XML that figures use: elements, attributes, text, five entities. */

const TOKEN = /<(\/?)([A-Za-z][\w:-]*)((?:\s+[A-Za-z_:][\w:.-]*="[^"<]*")*)\s*(\/?)>|([^<]+)/y;

/** What is wrong with a text as XML, or undefined where it is well formed. */
export function xmlFault(text: string): string | undefined {
  const open: string[] = [];
  let roots = 0;
  for (let at = 0; at < text.length; at = TOKEN.lastIndex) {
    TOKEN.lastIndex = at;
    const match = TOKEN.exec(text);
    if (match === null) return `not XML at ${at}: ${text.slice(at, at + 40)}`;
    const [, closing, name = "", attributes = "", single, data] = match;
    const wrong = dataFault(data ?? attributes) ?? twice(name, attributes);
    if (wrong !== undefined) return wrong;
    if (data !== undefined && outside(open, data)) return "text outside the root";
    if (data === undefined && closing !== "/" && open.length === 0) roots += 1;
    if (data === undefined && !nested(open, name, closing === "/", single === "/")) {
      return `</${name}> closes another element`;
    }
  }
  if (open.length > 0) return `<${open.at(-1)}> is not closed`;
  return roots === 1 ? undefined : `${roots} roots`;
}

const outside = (open: readonly string[], data: string) => open.length === 0 && data.trim() !== "";

/** Opens or closes an element; false where it closes another one than was opened last. */
function nested(open: string[], name: string, closing: boolean, single: boolean): boolean {
  if (closing) return open.pop() === name;
  if (!single) open.push(name);
  return true;
}

function dataFault(content: string): string | undefined {
  const entity = /&(?!(?:amp|lt|gt|quot|apos);)/.exec(content);
  return entity === null ? undefined : `a bare ampersand: ${content.slice(entity.index)}`;
}

function twice(name: string, attributes: string): string | undefined {
  const names = [...attributes.matchAll(/([\w:.-]+)="/g)].map((one) => one[1]);
  return new Set(names).size === names.length ? undefined : `an attribute twice in <${name}>`;
}
