/** Opens the clinic around a plan and makes its program: what `plan` and `booklet` both begin with. */

import { type IssuedBefore, type MadeProgram, makeProgram, readParts } from "../booklet.ts";
import { Fault, type WithFaults } from "../faults/fault.ts";
import { shippedFolder } from "../files/shipped.ts";
import { diskTree, treeWith } from "../files/tree.ts";
import { unreadable } from "../files/unreadable.ts";
import type { ProgramParts } from "../program/parts.ts";
import type { Terminal } from "../terminal/terminal.ts";
import { clinicFolderOf, openWorkspace, type Workspace } from "../workspace.ts";
import { withCauses } from "./causes.ts";
import { shownPath } from "./check.ts";

/** Workspaces by clinic folder, opened once however many plans there are. */
export class Workspaces {
  readonly #terminal: Terminal;
  readonly #today: string;
  readonly #open = new Map<string, Workspace>();

  constructor(terminal: Terminal, today: string) {
    this.#terminal = terminal;
    this.#today = today;
  }

  /**
   * The program of a plan, and the clinic it belongs to; undefined after an error.
   *
   * @param before what was issued of it; where not given it is laid out as for the first time
   * @param text the plan's text in place of what its file holds
   */
  make(
    path: string,
    before?: IssuedBefore,
    text?: string,
  ): WithFaults<{ made: MadeProgram; workspace: Workspace } | undefined> {
    const { value: found, faults } = this.#find(path, text);
    if (!found) return { value: undefined, faults };
    const { workspace, file } = found;
    const made = makeProgram(workspace, file, before);
    // faults of cards and protocols matter here only where this plan meets them
    const clinicFaults = workspace.clinic ? [] : workspace.faults;
    return {
      value: made.value && { made: made.value, workspace },
      faults: [...clinicFaults, ...withCauses(made.faults, workspace)],
    };
  }

  /** What a plan's program is brought together from, whether or not it can be made, and its clinic. */
  parts(
    path: string,
    text?: string,
  ): WithFaults<{ parts: ProgramParts; workspace: Workspace } | undefined> {
    const { value: found, faults } = this.#find(path, text);
    if (!found) return { value: undefined, faults };
    const { workspace, file } = found;
    const read = readParts(workspace, file);
    const value = read.value && { parts: read.value, workspace };
    return { value, faults: withCauses(read.faults, workspace) };
  }

  /** The clinic around a plan's file. */
  #find(
    path: string,
    text?: string,
  ): WithFaults<{ workspace: Workspace; file: string } | undefined> {
    const file = shownPath(path, this.#terminal.cwd);
    const tree = diskTree(this.#terminal.cwd);
    const place = { file, line: 1, column: 1 };
    if (!tree.exists(file)) {
      return { value: undefined, faults: [unreadable(file, "plan")] };
    }
    const clinicFolder = clinicFolderOf(tree, file);
    if (clinicFolder === undefined) {
      const fault = new Fault(
        "file-unreadable",
        "No clinic.yaml was found beside or above this plan.",
        { place, hint: "Make one with: paulatim new clinic FOLDER" },
      );
      return { value: undefined, faults: [fault] };
    }
    const opened = this.open(clinicFolder);
    const workspace =
      text === undefined ? opened : { ...opened, tree: treeWith(opened.tree, file, text) };
    return { value: { workspace, file }, faults: [] };
  }

  /** The clinic's folder above a plan; undefined where there is none. */
  clinicOf(path: string): string | undefined {
    const tree = diskTree(this.#terminal.cwd);
    return clinicFolderOf(tree, shownPath(path, this.#terminal.cwd));
  }

  /** The workspace of a clinic's folder, opened once. */
  open(clinicFolder: string): Workspace {
    const known = this.#open.get(clinicFolder);
    if (known) return known;
    const tree = diskTree(this.#terminal.cwd);
    const shipped = shownPath(shippedFolder(), this.#terminal.cwd);
    const opened = openWorkspace({ tree, clinicFolder, shipped, today: this.#today });
    this.#open.set(clinicFolder, opened);
    return opened;
  }
}
