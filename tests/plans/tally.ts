/** What became of random plans: how many were made, what stopped the others, and which kinds the made ones are of. */
import type { Fault } from "../../src/faults/fault.ts";
import type { RandomPlan } from "./draw.ts";
import { KINDS, KINDS_SHOWN, kindsOf } from "./kinds.ts";
import type { Printed } from "./printed.ts";

export class Tally {
  made = 0;
  /** Made plans of which the booklet was read, too. */
  read = 0;
  readonly wrong: string[] = [];
  readonly #codes = new Map<string, number>();
  readonly #kinds = new Map<string, number>();

  /** A plan that was not made: it has to say why, and the program has to have foreseen it. */
  stopped(seed: number, faults: readonly Fault[]): void {
    const [first] = faults.filter(({ level }) => level === "error");
    count(this.#codes, first?.code ?? "no error");
    if (first === undefined) this.wrong.push(`plan ${seed}: not made, and nothing says why`);
    if (first?.code === "internal") this.wrong.push(`plan ${seed}: ${first.message}`);
    if (first && first.place === undefined)
      this.wrong.push(`plan ${seed}: ${first.code} at no place`);
  }

  take(random: RandomPlan, printed: Printed, wrong: readonly string[]): void {
    this.made += 1;
    if (printed.booklet) this.read += 1;
    for (const kind of kindsOf(random, printed)) count(this.#kinds, kind);
    this.wrong.push(...wrong.map((one) => `plan ${random.seed}: ${one}`));
  }

  /** Kinds of which no plan, or less than a share of them, was made: the proof says little of these. */
  rare(share: number): string[] {
    const among = (kinds: readonly string[], all: number) =>
      kinds.filter((kind) => (this.#kinds.get(kind) ?? 0) < Math.max(1, share * all));
    return [...among(KINDS, this.made), ...among(KINDS_SHOWN, this.read)];
  }

  summary(plans: number): string {
    const list = (counts: ReadonlyMap<string, number>) =>
      [...counts]
        .sort((a, b) => b[1] - a[1])
        .map(([name, n]) => `  ${n} ${name}`)
        .join("\n");
    return [
      `${this.made} of ${plans} plans made, ${this.read} booklets read, ${this.wrong.length} disagreements`,
      `what stopped the others:\n${list(this.#codes)}`,
      `of the made ones:\n${list(this.#kinds)}`,
    ].join("\n");
  }
}

function count(map: Map<string, number>, name: string): void {
  map.set(name, (map.get(name) ?? 0) + 1);
}
