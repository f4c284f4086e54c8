/** Counts the nodes of a search; a node limit, unlike a time limit, is the same on every machine. */

export interface Counter {
  nodes: number;
  readonly limit: number;
}

/** Nodes spent on several searches together. */
export interface Tally {
  nodes: number;
}

/** Counts one node; false once the limit is passed. */
export function spend(counter: Counter): boolean {
  counter.nodes += 1;
  return counter.nodes <= counter.limit;
}

/** Whether the limit was passed, so that nothing is proven. */
export function isSpent(counter: Counter): boolean {
  return counter.nodes > counter.limit;
}
