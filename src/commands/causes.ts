/** Why a plan lacks a card or protocol that is there: its own file has errors, and these are told with it. */
import { Fault } from "../faults/fault.ts";
import type { Workspace } from "../workspace.ts";

/**
 * The faults of a plan. That there is no card or protocol of a name whose file is broken is not said: in
 * its place stands that the file has errors, and then these errors.
 */
export function withCauses(faults: readonly Fault[], workspace: Workspace): Fault[] {
  const causes: Fault[] = [];
  const told = faults.map((fault) => {
    const broken = brokenPart(fault, workspace);
    if (!broken) return fault;
    const own = workspace.faults.filter(
      ({ level, place }) => level === "error" && place && idOf(place.file) === broken.id,
    );
    causes.push(...own);
    const file = own[0]?.place?.file;
    return new Fault(
      fault.code,
      `The ${broken.kind} ${broken.id} cannot be used: its file has errors.`,
      {
        level: fault.level,
        place: fault.place,
        frame: fault.frame,
        hint: file === undefined ? "Mend it first." : `Mend ${file} first.`,
      },
    );
  });
  return [...told, ...new Set(causes)];
}

function brokenPart(
  { code, message }: Fault,
  { cards, protocols }: Workspace,
): { readonly kind: "card" | "protocol"; readonly id: string } | undefined {
  if (code !== "unknown-card" && code !== "unknown-protocol") return undefined;
  const kind = code === "unknown-card" ? "card" : "protocol";
  const broken = kind === "card" ? cards.broken : protocols.broken;
  const id = [...broken].find((one) => message === `There is no ${kind} ${one}.`);
  return id === undefined ? undefined : { kind, id };
}

/** The id that a card or protocol has by the name of its file. */
const idOf = (file: string): string => file.replace(/^.*\//, "").replace(/\.md$/, "");
