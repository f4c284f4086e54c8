/** The signs to stop for: those of every booklet, and what a client's health flags change of them. */
import type { StopPage } from "./model.ts";
import type { Writer } from "./numbers.ts";
import { severeSign } from "./pain-words.ts";

/**
 * Health flags that make some signs more urgent, and the group under `stop` that holds their words.
 * On medicine against clotting every knock to the head goes to hospital at once, however well the
 * person feels (NICE guideline NG232, 2023, on head injury; from memory). A treated clot nearly always
 * means such medicine (common practice).
 */
const FLAGS_OF = { bleeding: ["blood-thinners", "blood-clot-treated"] } as const;

/** Signs for a client with these flags: signs of their own come first, and in place of a general one of the same name. */
export function stopSigns(
  flags: readonly string[],
  callLevel: number,
  write: Writer,
): Pick<StopPage, "emergency" | "call" | "urgent" | "severe"> {
  const { words } = write;
  const severe = severeSign(callLevel, write);
  const groups = Object.entries(FLAGS_OF)
    .filter(([, own]) => own.some((flag) => flags.includes(flag)))
    .map(([group]) => group);
  const own = (list: "emergency" | "call") =>
    new Map(groups.flatMap((group) => [...words.named(`stop.${group}.${list}`)]));
  const urgent = own("emergency");
  return {
    urgent: [...urgent.values()],
    severe,
    emergency: [...new Map([...urgent, ...words.named("stop.emergency"), ...urgent]).values()],
    call: [severe, ...new Map([...words.named("stop.call"), ...own("call")]).values()],
  };
}
