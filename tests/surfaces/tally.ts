/** What was found over many clients: facts compared by kind, plans that cannot be made, disagreements by their pattern. */
import { type Fault, isError } from "../../src/faults/fault.ts";
import type { Client } from "./clients.ts";
import { type Comparison, type Disagreement, disagreementText } from "./facts.ts";
import type { Outputs } from "./outputs.ts";
import { TRAITS, traitsOf } from "./traits.ts";

interface Pattern {
  times: number;
  readonly clients: Set<number>;
  /** The example of the smallest client. */
  size: number;
  text: string;
}

export class Tally {
  readonly compared = new Map<string, number>();
  readonly patterns = new Map<string, Pattern>();
  /** Codes of the errors that stopped plans, and how often. */
  readonly stops = new Map<string, number>();
  /** By protocol, and by kind, how many clients were compared. */
  readonly protocols = new Map<string, number>();
  readonly traits = new Map(TRAITS.map((name) => [name, 0]));
  readonly unplaced: string[] = [];
  readonly #told: (text: string) => void;
  made = 0;
  impossible = 0;
  printed = 0;

  /** @param told is given each pattern of disagreement when it is first seen */
  constructor(told: (text: string) => void) {
    this.#told = told;
  }

  /** A client whose plan can be made. */
  begin(outputs: Outputs): void {
    this.made += 1;
    add(this.protocols, outputs.client.protocol.id, 1);
    for (const trait of traitsOf(outputs)) add(this.traits, trait, 1);
  }

  take(client: Client, { compared, disagreements }: Comparison, size: number): void {
    for (const [kind, n] of compared) add(this.compared, kind, n);
    for (const one of disagreements)
      this.#disagree(patternOf(one), client, size, disagreementText(one));
  }

  /** A page, file or screen that says something that no rule of the readers understands. */
  unread(client: Client, where: string, error: unknown): void {
    const message = error instanceof Error ? error.message : String(error);
    this.#disagree(
      `unread: ${where}: ${message.replace(/\d+/g, "n")}`,
      client,
      0,
      `  ${where}: ${message}`,
    );
  }

  stopped(client: Client, faults: readonly Fault[]): void {
    this.impossible += 1;
    for (const { code, place } of faults.filter(isError)) {
      add(this.stops, code, 1);
      if (place === undefined) this.unplaced.push(`client ${client.seed}: ${code}`);
    }
  }

  #disagree(key: string, client: Client, size: number, text: string): void {
    const known = this.patterns.get(key);
    const example = `client ${client.seed} (${client.protocol.id}, ${client.clinic.locale}, ${client.edition})\n${text}`;
    if (!known) {
      this.patterns.set(key, { times: 1, clients: new Set([client.seed]), size, text: example });
      this.#told(example);
    } else {
      known.times += 1;
      known.clients.add(client.seed);
      if (size < known.size) Object.assign(known, { size, text: example });
    }
  }

  /** Each pattern of disagreement once, the most frequent first, with its smallest client. */
  disagreements(): string[] {
    const sorted = [...this.patterns.values()].sort((a, b) => b.clients.size - a.clients.size);
    return sorted.map(
      ({ times, clients, text }) =>
        `${times} times, ${clients.size} clients; the smallest: ${text}`,
    );
  }

  summary(): string {
    const facts = [...this.compared].sort(([a], [b]) => (a < b ? -1 : 1));
    const total = facts.reduce((sum, [, n]) => sum + n, 0);
    return [
      `${this.made} clients compared, ${this.printed} of them printed as PDF; ${this.impossible} plans cannot be made`,
      ...[...this.stops].map(([code, n]) => `  ${code}: ${n}`),
      ...[...this.protocols].map(([protocol, n]) => `  ${protocol}: ${n} clients`),
      ...[...this.traits].map(([trait, n]) => `  ${trait}: ${n} clients`),
      `${total} statements held against another surface:`,
      ...facts.map(([kind, n]) => `  ${kind}: ${n}`),
      `${this.patterns.size} patterns of disagreement`,
      ...this.disagreements(),
    ].join("\n");
  }
}

/** The fact's kind, and which surfaces stand together. */
function patternOf({ kind, says }: Disagreement): string {
  const groups = new Map<string, string[]>();
  for (const { surface, value } of says) groups.set(value, [...(groups.get(value) ?? []), surface]);
  return `${kind}: ${[...groups.values()].map((names) => names.join(", ")).join(" / ")}`;
}

function add(counts: Map<string, number>, key: string, n: number): void {
  counts.set(key, (counts.get(key) ?? 0) + n);
}
