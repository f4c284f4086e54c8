/** Reads the signs of an emergency that stand beside others, for a client with certain health flags. */
import type { Context } from "./context.ts";
import { type Section, textsIn } from "./sections.ts";

/** Health flags with which a knock to the head is an emergency. */
export const BLEEDING: readonly string[] = ["blood-thinners", "blood-clot-treated"];

/** The sign in "Call 999 at once if: …"; undefined for another text. */
export const urgentSign = (
  text: string,
  { filled }: Pick<Context, "filled">,
): string | undefined =>
  filled("frame.stop.emergency", text.slice(0, text.indexOf(":") + 1))
    ? text.slice(text.indexOf(":") + 1).trim()
    : undefined;

export const urgentIn = (blocks: Section["blocks"], context: Context): string[] =>
  textsIn(blocks).flatMap((text) => urgentSign(text, context) ?? []);
