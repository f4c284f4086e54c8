/** How much pain is all right: the ruler from 0 to 10, its zones, and the rules in words. */

import { painZone } from "../pain/zone.ts";
import type { Program } from "../program/program.ts";
import type { PainPage } from "./model.ts";
import type { Writer } from "./numbers.ts";
import {
  callSentence,
  exceptionSentences,
  generalSentence,
  lessSentence,
  ruleOf,
  ruleSentences,
} from "./pain-words.ts";

/** The page for the rule that most of the program's exercises follow, naming those with another. */
export function painPage(program: Program, write: Writer): PainPage {
  const { words } = write;
  const rule = ruleOf(program.phases.flatMap(({ exercises }) => exercises));
  const { limits } = rule;
  const { callLevel } = program;
  const less = lessSentence(write);
  const ruler = Array.from({ length: 11 }, (_, n) => ({ n, zone: painZone(n, limits, callLevel) }));
  const zones = (["fine", "allowed", "too-much", "call"] as const).flatMap((zone) => {
    const numbers = ruler.filter((mark) => mark.zone === zone).map(({ n }) => n);
    const [from, to] = [numbers[0], numbers.at(-1)];
    if (from === undefined || to === undefined) return [];
    return [
      {
        zone,
        from,
        to,
        name: words.say(`pain.zone.${zone}.name`),
        says: [words.say(`pain.zone.${zone}.says`), ...(zone === "too-much" ? [less] : [])].join(
          " ",
        ),
      },
    ];
  });
  return {
    ...limits,
    callLevel,
    limit: write.number(limits.during),
    ruler,
    zones,
    says: generalSentence(limits, write),
    less,
    rules: [...ruleSentences(limits, write), callSentence(callLevel, write)],
    exceptions: exceptionSentences(rule, write),
  };
}
