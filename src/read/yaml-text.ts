/** Values as YAML text, as authors write plans: short groups in braces, lists of groups line by line. */
import { stringify } from "yaml";
import { isGroup, type Value } from "../edits/edit.ts";

/** A value on one line: `{ card: x, dose: { sets: 2 } }`, `[a, b]`; right inside brackets and outside. */
export function flowText(value: Value): string {
  if (Array.isArray(value)) return `[${value.map(flowText).join(", ")}]`;
  if (!isGroup(value)) return scalarText(value as Exclude<Value, object>);
  const fields = Object.entries(value as Readonly<Record<string, Value>>);
  const parts = fields.map(([name, one]) => `${scalarText(name)}: ${flowText(one)}`);
  return parts.length === 0 ? "{}" : `{ ${parts.join(", ")} }`;
}

/** A field on lines of its own; a list of groups has a line for each of their fields. */
export function blockPair(indent: string, name: string, value: Value): string[] {
  if (!Array.isArray(value) || !value.some(isGroup)) {
    return [`${indent}${scalarText(name)}: ${flowText(value)}`];
  }
  const items = value.flatMap((item: Value) => blockItem(`${indent}  `, item));
  return [`${indent}${scalarText(name)}:`, ...items];
}

/** An item of a list on lines of its own. */
export function blockItem(indent: string, item: Value): string[] {
  const fields = isGroup(item) ? Object.entries(item as Readonly<Record<string, Value>>) : [];
  if (fields.length === 0) return [`${indent}- ${flowText(item)}`];
  return fields.map(
    ([name, value], at) =>
      `${indent}${at === 0 ? "- " : "  "}${scalarText(name)}: ${flowText(value)}`,
  );
}

/** A text, number or truth value, quoted where it would be read as something else. */
function scalarText(value: string | number | boolean | null): string {
  const list = stringify([value], { version: "1.2", collectionStyle: "flow", lineWidth: 0 });
  return list.trim().slice(1, -1).trim();
}
