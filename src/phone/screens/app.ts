/** What every screen is given: the booklet's sessions and words, what is written, and how to go on. */
import { createContext } from "preact";
import { useContext } from "preact/hooks";
import type { Diary, DiaryEntry } from "../../diary/entry.ts";
import type { Moment } from "../../units/clock.ts";
import type { Act, Kept } from "../day/acts.ts";
import type { DueCall } from "../day/call.ts";
import type { PhoneData, PlannedSession } from "../day/data.ts";
import type { DayNames } from "../day/dates.ts";
import type { Known } from "../day/hold.ts";
import type { Pairs } from "../day/pairs.ts";
import type { SessionPlace, Settings } from "../store/settings.ts";
import type { Route } from "./route.ts";
import type { PaceState } from "./use-kept.ts";
import type { Say } from "./words.ts";

export interface App {
  readonly data: PhoneData;
  /** With the exercises that the client may do: none whose sign they have not seen. */
  readonly sessions: readonly PlannedSession[];
  /** As they were laid out. */
  readonly laidOut: readonly PlannedSession[];
  readonly say: Say;
  readonly names: DayNames;
  /** The client's day and the time in it. */
  readonly now: Moment;
  /** The day whose morning has come: in the night, the day before. */
  readonly waking: string;
  /** Whether the device's date cannot be right. */
  readonly oddClock: boolean;
  /**
   * The day to write down for a session that is done now: today, or the day on which it was begun; where
   * the clock is odd, the planned day.
   */
  readonly doneDay: (session: PlannedSession) => string;
  readonly diary: Diary;
  /** What is written down of a session, and the session that an entry tells of. */
  readonly pairs: Pairs;
  /** What is known when a start is asked for. */
  readonly known: Known;
  /** The entry to go on with for a session, or its short version. */
  readonly entryFor: (session: PlannedSession, short: boolean) => DiaryEntry;
  /** The date on which a session begins, as a calendar on the wall has it. */
  readonly dateOf: (session: Pick<DiaryEntry, "date" | "part">) => string;
  /**
   * Makes a change, and goes on to a screen; where `said` is given, it can be taken back, with these words.
   * `was`: what it is then to be as before, where that is not as it is kept now.
   */
  readonly act: (act: Act, said?: string, to?: Route, was?: Partial<Kept>) => void;
  /** Keeps an entry, marked with this instant. */
  readonly write: (entry: DiaryEntry, said?: string) => void;
  /** Whether all that was written is known to be kept on this device; waits: something is still being typed. */
  readonly isKept: "yes" | "no" | "waits";
  /** Says whether there is something typed that is not written yet. */
  readonly waits: (waiting: boolean) => void;
  /** Texts that could not be read and were put aside. */
  readonly aside: () => readonly string[];
  /** The client has these texts in a file of their own. */
  readonly asideTaken: () => void;
  /** Deletes all that is kept of this plan. Whether nothing is left. */
  readonly forget: () => boolean;
  readonly settings: Settings;
  readonly set: (settings: Partial<Settings>) => void;
  /** The call to the clinic that is due now: nothing of the program goes on below it. */
  readonly call: DueCall | undefined;
  /** Where the client is in a session that can be gone on with. */
  readonly place: SessionPlace | undefined;
  readonly setPlace: (place: SessionPlace | undefined) => void;
  /** Keeps the state of the pace, or whether it hurts, at the place that the client is in. */
  readonly keepPace: (state: PaceState) => void;
  readonly go: (route: Route) => void;
  /** Says something to a screen reader without moving the focus. */
  readonly tell: (text: string) => void;
}

const AppContext = createContext<App | undefined>(undefined);

export const AppProvider = AppContext.Provider;

/** The app around a screen. Throws where a screen is drawn outside it. */
export function useApp(): App {
  const app = useContext(AppContext);
  if (app === undefined) throw new Error("a screen stands outside the app");
  return app;
}
