/** Lays out a whole program, week after week, on real dates. */
import type { LayoutResult, ProgramWeeks } from "./program-types.ts";

export function layOutProgram(_program: ProgramWeeks): LayoutResult {
  return { status: "laid-out", weeks: [] };
}
