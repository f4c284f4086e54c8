/** Which levers could help at all when they are pulled as far as they go; the others need no questions. */
import { asksForTime } from "./costs.ts";
import type { Lever } from "./levers.ts";
import type { Trial } from "./trial.ts";

/**
 * More free time and less work never make a week harder. So two levers that do not help when
 * pulled as far as they go do not help by smaller steps; and where one of them does not help
 * together with all levers of the other's kind, it does not help with any one of them.
 */
export class Reach {
  readonly #trial: Trial;
  readonly #levers: readonly Lever[];
  /** Numbers of the levers, by whether they ask for time. */
  readonly #ofKind: ReadonlyMap<boolean, readonly number[]>;
  /** Answers, by the numbers of the levers pulled. */
  readonly #known = new Map<string, boolean>();

  constructor(trial: Trial, levers: readonly Lever[]) {
    this.#trial = trial;
    this.#levers = levers;
    const all = levers.map((_, at) => at);
    this.#ofKind = new Map(
      [true, false].map((kind) => [kind, all.filter((at) => this.#isTime(at) === kind)]),
    );
  }

  /** Whether one lever or two could help, pulled as far as they go. */
  isEnough(pulled: readonly number[]): boolean {
    const [one = 0, other] = pulled;
    if (other === undefined) return this.#helps(pulled);
    const ofOne = this.#alike(one);
    const ofOther = this.#alike(other);
    return (
      this.#helps([...ofOne, ...ofOther]) &&
      this.#helps([one, ...ofOther]) &&
      this.#helps([other, ...ofOne]) &&
      this.#helps(pulled)
    );
  }

  #alike(lever: number): readonly number[] {
    return this.#ofKind.get(this.#isTime(lever)) ?? [];
  }

  #isTime(lever: number): boolean {
    const step = this.#levers[lever]?.[0];
    return step !== undefined && asksForTime(step.change);
  }

  #helps(pulled: readonly number[]): boolean {
    const set = [...new Set(pulled)].sort((a, b) => a - b);
    const key = set.join();
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const changes = set.flatMap((lever) => this.#levers[lever]?.at(-1)?.change ?? []);
    const helps = this.#trial.canHelp(changes) && this.#trial.fits(changes);
    this.#known.set(key, helps);
    return helps;
  }
}
