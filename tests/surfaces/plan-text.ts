/** A plan's front matter, as an author writes it and the tests know it. */
import type { CardText, DoseText } from "./shipped.ts";

/** A plan's front matter as an author writes it. */
export interface PlanText {
  readonly id: string;
  readonly client: {
    readonly name: string;
    readonly reference: string;
    readonly body_mass: string;
  };
  readonly clinician: string;
  readonly protocol: string;
  readonly starts: string;
  readonly weeks?: number;
  readonly side: "left" | "right" | "both";
  readonly flags: readonly string[];
  readonly goals: readonly {
    readonly what: string;
    readonly now: number;
    readonly want: number;
    readonly on: string;
  }[];
  readonly measures: readonly unknown[];
  readonly equipment: readonly unknown[];
  readonly week: WeekText;
  readonly pain?: CardText["pain"];
  readonly pain_call?: number;
  readonly leave_out: readonly { readonly card: string; readonly why: string }[];
  readonly swap: readonly { readonly card: string; readonly to: string; readonly why: string }[];
  readonly add: readonly {
    readonly card: string;
    readonly phase?: string;
    readonly why: string;
    readonly dose: DoseText;
  }[];
  readonly redose: readonly {
    readonly card: string;
    readonly weeks?: string;
    readonly why: string;
    readonly dose: DoseText;
  }[];
  readonly signed?: { readonly by: string; readonly on: string };
  readonly [field: string]: unknown;
}

export interface WeekText {
  readonly free: Readonly<Record<string, Readonly<Record<string, string>>>>;
  readonly away: readonly AwayText[];
  readonly events: readonly EventText[];
  readonly hours: Readonly<Record<"morning" | "midday" | "evening", string>> | undefined;
  readonly [field: string]: unknown;
}

export type AwayText =
  | string
  | { readonly from: string; readonly to: string; readonly then?: "shift" | "skip" };

export interface EventText {
  readonly what: string;
  readonly day?: string;
  readonly on?: readonly string[];
  readonly part: string;
  readonly [field: string]: unknown;
}
