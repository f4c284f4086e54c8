/** What was signed, kept beside the plan as a file that can be read and compared line by line. */
import * as z from "zod";
import { isGroup } from "../edits/edit.ts";
import { DIGEST } from "../plan/schema.ts";
import { digestOf, type SignedContent, signedContent } from "./content.ts";

const keptFile = z.strictObject({
  signed: z.strictObject({ by: z.string(), on: z.string(), digest: z.string().regex(DIGEST) }),
  ...signedContent.shape,
});

export type Signed = Readonly<z.infer<typeof keptFile>["signed"]>;

/** The file beside a plan: jo.md, jo.signed.json. */
export const keptPath = (plan: string): string => `${plan.replace(/\.md$/, "")}.signed.json`;

/** The file's text: fields, doses and sessions each on a line. */
export function keptText(signed: Signed, content: SignedContent): string {
  const { statement, weeks, note } = content;
  return `${lines({ signed, statement, weeks, note }, "")}\n`;
}

/** What a file holds if it is what was signed with this digest; undefined for any other. */
export function readKept(text: string, digest: string): SignedContent | undefined {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    return undefined;
  }
  const read = keptFile.safeParse(data);
  if (!read.success) return undefined;
  const { signed, ...content } = read.data;
  return signed.digest === digest && digestOf(content) === digest ? content : undefined;
}

/** JSON with a line for everything that has no more than short parts. */
function lines(value: unknown, indent: string): string {
  const short = JSON.stringify(value);
  const inner = `${indent}  `;
  const isWeek = isGroup(value) && "week" in value && "doses" in value;
  if (typeof value !== "object" || value === null || (short.length <= WIDTH && !isWeek))
    return short;
  const parts = Array.isArray(value)
    ? value.map((item) => lines(item, inner))
    : Object.entries(value).map(([name, one]) => `${JSON.stringify(name)}: ${lines(one, inner)}`);
  const [open, close] = Array.isArray(value) ? ["[", "]"] : ["{", "}"];
  return `${open}\n${parts.map((part) => `${inner}${part}`).join(",\n")}\n${indent}${close}`;
}

const WIDTH = 400;
