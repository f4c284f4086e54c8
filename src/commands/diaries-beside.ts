/** Diaries that lie beside a plan and hold something that its last signature cannot have known. */

import { readdirSync, readFileSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { LARGEST } from "../diary/columns.ts";
import { textOf } from "../diary/decode.ts";
import { printable } from "../diary/printable.ts";
import { Fault } from "../faults/fault.ts";
import type { Plan } from "../plan/schema.ts";
import { counted } from "../units/counted.ts";
import { readText } from "./diary.ts";

/** The names of files that clients send: tables, and codes as text. */
const DIARY_FILE = /\.(csv|txt)$/i;

/** A warning, diary-unread, for each diary of this plan in its folder with entries since it was last signed. */
export function unreadDiaries(file: string, { id, signed }: Plan, cwd: string): Fault[] {
  const folder = dirname(file);
  return readdirSync(join(cwd, folder))
    .filter((name) => DIARY_FILE.test(name))
    .sort()
    .flatMap((name) => {
      const shown = folder === "." ? name : `${folder}/${name}`;
      const diary = diaryIn(join(cwd, shown));
      if (diary?.plan !== id) return [];
      const since = diary.entries.filter(({ written }) => {
        return signed === undefined || written.slice(0, 10) >= signed.on;
      });
      const last = since
        .map(({ date }) => date)
        .sort()
        .at(-1);
      if (last === undefined) return [];
      const count = counted(since.length, "session");
      return new Fault(
        "diary-unread",
        `The diary of ${printable(diary.client)} lies beside the plan: ${count} written down since ${signed?.on ?? "it was made"}, the last planned for ${last}.`,
        {
          level: "warning",
          place: { file: shown, line: 1, column: 1 },
          hint: `Look at it before you sign: paulatim diary ${shown}`,
        },
      );
    });
}

/** The diary in a file, as far as it can be read; undefined where it is none. */
function diaryIn(path: string) {
  if (!statSync(path).isFile() || statSync(path).size > LARGEST) return undefined;
  const text = textOf(readFileSync(path));
  return text === undefined ? undefined : readText(text).diary;
}
