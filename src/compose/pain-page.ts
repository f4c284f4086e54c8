/** How much pain is all right: the ruler from 0 to 10, its zones, and the rules in words. */
import type { PainLimits } from "../pain/limits.ts";
import type { Program } from "../program/program.ts";
import type { PainPage } from "./model.ts";
import type { Writer } from "./numbers.ts";

type Zone = PainPage["zones"][number]["zone"];

/** The page for the strictest rule that most of the program's exercises follow: the plan's or the protocol's. */
export function painPage(program: Program, write: Writer): PainPage {
  const { words } = write;
  const limits = mainLimits(program);
  const zoneOf = (n: number): Zone =>
    n <= limits.comfortable ? "fine" : n <= limits.during ? "allowed" : "too-much";
  const ruler = Array.from({ length: 11 }, (_, n) => ({ n, zone: zoneOf(n) }));
  const zones = (["fine", "allowed", "too-much"] as const).flatMap((zone) => {
    const numbers = ruler.filter((mark) => mark.zone === zone).map(({ n }) => n);
    const [from, to] = [numbers[0], numbers.at(-1)];
    if (from === undefined || to === undefined) return [];
    return [
      {
        zone,
        from,
        to,
        name: words.say(`pain.zone.${zone}.name`),
        says: words.say(`pain.zone.${zone}.says`),
      },
    ];
  });
  const values = { during: write.number(limits.during), after: write.number(limits.after) };
  const rules = ["during", "after", "week", "more", "over"]
    .map((rule) => `pain.rules.${limits.kind}.${rule}`)
    .filter(words.has)
    .map((key) => words.say(key, values));
  return { ...limits, ruler, zones, rules };
}

/** The limits that hold for most exercises; between equals, the stricter. */
function mainLimits(program: Program): PainLimits {
  const all = program.phases.flatMap((phase) => phase.exercises.map(({ pain }) => pain));
  const counts = new Map<string, { limits: PainLimits; count: number }>();
  for (const limits of all) {
    const key = `${limits.kind} ${limits.comfortable} ${limits.during} ${limits.after}`;
    const entry = counts.get(key) ?? { limits, count: 0 };
    entry.count += 1;
    counts.set(key, entry);
  }
  const [first] = [...counts.values()].sort(
    (a, b) => b.count - a.count || a.limits.during - b.limits.during,
  );
  return first?.limits ?? { kind: "pain-free", comfortable: 0, during: 0, after: 0 };
}
