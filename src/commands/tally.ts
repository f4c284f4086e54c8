/** How a run over many plans goes: what was written, what was not, and the exit status. */
import { EXIT } from "../faults/catalogue.ts";
import type { Fault } from "../faults/fault.ts";
import { faultsFrom } from "../faults/print.ts";
import { printFaults, type Terminal } from "../terminal/terminal.ts";

/** Counts what was written and what was not, says so as it goes, and knows the exit status. */
export class Tally {
  readonly #total: number;
  readonly #terminal: Terminal;
  #written = 0;
  #failed = 0;
  #status: number = EXIT.done;

  constructor(total: number, terminal: Terminal) {
    this.#total = total;
    this.#terminal = terminal;
  }

  done(paths: readonly string[]): void {
    this.#written += 1;
    if (this.#total === 1) this.#terminal.out(paths.join("\n"));
    else this.#progress();
  }

  /** What is said of a booklet that is written all the same. */
  warned(faults: readonly Fault[]): void {
    printFaults(this.#terminal, faults);
  }

  failed(plan: string | undefined, faults: readonly Fault[]): void {
    if (plan !== undefined) this.#failed += 1;
    this.#status = Math.max(this.#status, EXIT.input, ...faults.map((fault) => fault.exit));
    printFaults(this.#terminal, faults);
  }

  /** Runs a step of one plan; a fault of it does not stop the others. */
  async guard(plan: string, step: () => Promise<void>): Promise<void> {
    try {
      await step();
    } catch (thrown) {
      this.failed(plan, faultsFrom(thrown));
    }
  }

  finish(): number {
    if (this.#total > 1) {
      const failed = this.#failed > 0 ? `, ${this.#failed} not` : "";
      this.#terminal.out(`${this.#written} of ${this.#total} booklets written${failed}.`);
    }
    return this.#status;
  }

  /** A line for every hundredth part of the work, at most. */
  #progress(): void {
    const step = Math.max(1, Math.floor(this.#total / 100));
    if (this.#written % step === 0) this.#terminal.err(`${this.#written} of ${this.#total}`);
  }
}
