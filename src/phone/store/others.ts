/** Diaries of the same plan that are kept on this device for another reference of a client, such as one with a slip. */
import { readDiary } from "../../diary/csv.ts";
import type { Diary } from "../../diary/entry.ts";
import { readSettings, type Settings } from "./settings.ts";

/** The part of the Web Storage API that is used. */
type Listed = Pick<Storage, "getItem" | "key" | "length">;

export interface OtherDiary {
  readonly diary: Diary;
  readonly settings: Settings;
}

/** Those with something in them. Nothing of them is changed; what cannot be read is not among them. */
export function otherDiaries(
  storage: Listed | undefined,
  { plan, client }: Pick<Diary, "plan" | "client">,
): readonly OtherDiary[] {
  const start = `paulatim ${plan} `;
  try {
    return keysOf(storage).flatMap((key) => {
      if (!key.startsWith(start) || !key.endsWith(END)) return [];
      const other = key.slice(start.length, -END.length);
      const text = other === client ? null : storage?.getItem(key);
      const { diary } = readDiary(text ?? "");
      if (diary?.plan !== plan || diary.client !== other || diary.entries.length === 0) return [];
      const settings = readSettings(storage?.getItem(`${start}${other} settings`) ?? null);
      return [{ diary, settings }];
    });
  } catch {
    return [];
  }
}

const END = " diary";

const keysOf = (storage: Listed | undefined): string[] =>
  Array.from({ length: storage?.length ?? 0 }, (_, at) => storage?.key(at) ?? "");
