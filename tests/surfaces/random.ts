/** Choices that follow from a number: the same seed, the same client on every machine. */

export interface Random {
  /** A whole number from `low` to `high`, both possible. */
  readonly whole: (low: number, high: number) => number;
  /** Whether something with this chance (0 to 1) happens. */
  readonly chance: (share: number) => boolean;
  readonly one: <T>(items: readonly T[]) => T;
  /** `count` different items, or as many as there are, in their own order. */
  readonly some: <T>(items: readonly T[], count: number) => T[];
}

/** Mulberry32: 32 bits of state, enough to spread clients. Every seed gives a stream of its own. */
export function randomFrom(seed: number): Random {
  let state = Math.imul(seed + 1, 0x9e3779b1) >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const whole = (low: number, high: number) => low + Math.floor(next() * (high - low + 1));
  return {
    whole,
    chance: (share) => next() < share,
    one: (items) => {
      const item = items[whole(0, items.length - 1)];
      if (item === undefined) throw new Error("nothing to choose from");
      return item;
    },
    some: (items, count) => {
      const left = items.map((item, place) => ({ item, place }));
      const taken = [];
      while (taken.length < count && left.length > 0) {
        taken.push(...left.splice(whole(0, left.length - 1), 1));
      }
      return taken.sort((a, b) => a.place - b.place).map(({ item }) => item);
    },
  };
}
