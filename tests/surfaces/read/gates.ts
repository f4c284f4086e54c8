/** Reads the sign without which an exercise is not begun, where it stands beside a dose. */
import type { Fact } from "../facts.ts";
import type { Context } from "./context.ts";
import { NONE } from "./dose-facts.ts";

/** Cuts "… Start only when: You can do ten rises." into what stands before it and the sign. */
export function withoutGate(
  text: string,
  { label }: Pick<Context, "label">,
): { readonly text: string; readonly sign: string } {
  const words = `${label("frame.exercise.when")}: `;
  const at = text.indexOf(words);
  if (at < 0) return { text, sign: NONE };
  return { text: text.slice(0, at).trim(), sign: text.slice(at + words.length).trim() };
}

export const gateFact = (key: string, sign: string | null | undefined, place: string): Fact => ({
  kind: "starts when",
  key,
  value: sign ?? NONE,
  place,
});
