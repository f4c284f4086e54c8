/** Reads what an exercise's page says to do on a day when it is too much. */
import type { Say } from "../facts.ts";
import type { Context } from "./context.ts";

/** "If it is too hard", on an exercise's own page: another exercise of the booklet, an easier move, or less of it. */
export function readInstead(text: string, title: string, say: Say, context: Context): void {
  const { filled, label } = context;
  const place = `${title} › ${label("frame.exercise.easier")}`;
  const [other] = filled("easier.other", text) ?? [];
  const known = filled("easier.known", text);
  if (other !== undefined) say("easier move", title, other, place);
  else if (known) {
    const [number = "", weeks = "", name = ""] = known;
    say("number of an exercise", name, number, place);
    say("last week of an exercise", name, (/\d+/.exec(weeks) ?? [""])[0], place);
    say("easier move", title, NOT_ITS_OWN, place);
  } else if (text === label("easier.less")) say("easier move", title, NOT_ITS_OWN, place);
  else throw new Error(`no rule reads "${text}" of ${title}`);
}

/** An exercise for which the page of easier moves has nothing. */
export const NOT_ITS_OWN = "none on its page";
