/** What thousands of clients did and what came out: nothing wrong, and nothing left untried. */
import type { Outcome } from "./client.ts";

/** What has to have happened, and how often at least for a hundred clients: else nobody has looked at it. */
const LEAST: Readonly<Record<string, number>> = {
  "a call is due": 20,
  "a start is held back": 20,
  "a start is offered": 100,
  "advice call": 20,
  "advice ease": 20,
  "advice stop": 20,
  "another reference": 3,
  "lost with the window": 1,
  "re-issue": 60,
  "same.yes": 2,
  "today.go-on": 20,
  "today.start": 100,
  "write.all": 40,
  back: 40,
  closed: 100,
  done: 60,
  effort: 40,
  export: 60,
  full: 10,
  lost: 20,
  note: 4,
  pain_after: 40,
  pain_during: 100,
  pain_morning: 60,
  reload: 20,
  sudden: 4,
  tick: 0.5,
  worse_morning: 20,
  "call.called": 20,
  "delete.yes": 0.2,
  "missed.let-go": 20,
  "morning.pass": 4,
  "pace.end": 8,
  "pace.hurts": 60,
  "pace.leave": 4,
  "pace.start": 60,
  "same.no": 0.5,
  "session.finish": 4,
  "session.next": 8,
  "undo.undo": 40,
};

/** From so many clients on everything has to have happened. */
const MANY = 300;

export class Tally {
  clients = 0;
  taps = 0;
  readonly #counts: Record<string, number> = {};
  #first: Outcome | undefined;
  readonly #wrong: Outcome[] = [];

  take(outcome: Outcome): void {
    this.clients += 1;
    this.taps += outcome.log.length;
    for (const [what, times] of Object.entries(outcome.counts))
      this.#counts[what] = (this.#counts[what] ?? 0) + times;
    if (outcome.wrong.length === 0) return;
    this.#wrong.push(outcome);
    if (this.#first === undefined || outcome.seed < this.#first.seed) this.#first = outcome;
  }

  /** Of each client with whom something was wrong, the first of it. */
  wrong(): string[] {
    return this.#wrong
      .sort((a, b) => a.seed - b.seed)
      .map(({ seed, wrong }) => `client ${seed}: ${wrong[0]}`);
  }

  /** What the first of them tapped. */
  replay(): string {
    if (this.#first === undefined) return "";
    const { seed, log, wrong } = this.#first;
    return [`TAPS_SEED=${seed} TAPS_CLIENTS=1 npm run taps`, ...log, ...wrong].join("\n");
  }

  /** What was tried too seldom; of few clients nothing is asked. */
  rare(): string[] {
    if (this.clients < MANY) return [];
    return Object.entries(LEAST).flatMap(([what, times]) => {
      const [had = 0, least] = [this.#counts[what], (times * this.clients) / 100];
      return had < least ? [`${what}: ${had} times in place of ${least}`] : [];
    });
  }

  summary(): string {
    const counts = Object.entries(this.#counts)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([what, times]) => `${what} ${times}`);
    return `${this.clients} clients, ${this.taps} taps, ${this.#wrong.length} with faults\n${counts.join(", ")}`;
  }
}
