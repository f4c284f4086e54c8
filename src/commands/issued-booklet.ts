/** A booklet together with what it issues: what `booklet` writes, and `check` asks what would be said of it. */

import type { MadeProgram } from "../booklet.ts";
import { makeBooklet } from "../booklet.ts";
import { issue } from "../calendar/issue.ts";
import type { Booklet, Edition } from "../compose/model.ts";
import type { WithFaults } from "../faults/fault.ts";
import type { IssuedRecord } from "../issued/record.ts";
import type { Words } from "../words/words.ts";
import type { Workspace } from "../workspace.ts";
import type { IssuedRecords } from "./issued.ts";

/** A booklet, and what it issues on a day. Faults: those of the record before it and of `issue`. */
export function issuedBooklet(
  { made, workspace }: { readonly made: MadeProgram; readonly workspace: Workspace },
  words: Words,
  day: string,
  edition: Edition,
  issued: IssuedRecords,
): WithFaults<{ readonly booklet: Booklet; readonly record: IssuedRecord }> {
  const booklet = makeBooklet(made, workspace, words, day, edition);
  const before = booklet.draft ? undefined : issued.revisionsOf(booklet.plan);
  const { value: record, faults } = issue(booklet, made.program, before?.value);
  return { value: { booklet, record }, faults: [...(before?.faults ?? []), ...faults] };
}
