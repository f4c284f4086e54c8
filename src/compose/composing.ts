/** What every page of a booklet is made from. */
import type { Library } from "../cards/library.ts";
import type { ClinicLook } from "../clinic/look.ts";
import type { DosedProgram } from "../dose/types.ts";
import type { Program } from "../program/program.ts";
import type { OftenOf } from "../schedule/how-often.ts";
import type { Schedule } from "../schedule/schedule.ts";
import type { Words } from "../words/words.ts";
import type { Edition } from "./model.ts";
import type { Writer } from "./numbers.ts";

export interface BookletParts {
  readonly program: Program;
  readonly dosed: DosedProgram;
  readonly schedule: Schedule;
  /** Who has signed the plan as it is, and on which day; undefined for a draft. */
  readonly signedOff: { readonly by: string; readonly on: string } | undefined;
  readonly library: Library;
  readonly words: Words;
  /** The clinician's note to the client, Markdown. */
  readonly note: string;
  /** The day of printing, YYYY-MM-DD. */
  readonly day: string;
  readonly edition: Edition;
  readonly look: ClinicLook;
}

/** The parts of a booklet, how often each exercise is done, and the writer of its locale. */
export interface Composing extends BookletParts {
  readonly often: OftenOf;
  readonly write: Writer;
}
