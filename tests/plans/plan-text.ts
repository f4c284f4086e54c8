/** A plan's front matter with everything that a plan may say, as its author writes it. */
import type { DoseText } from "../surfaces/shipped.ts";

export const PARTS = ["morning", "midday", "evening"] as const;
export type Part = (typeof PARTS)[number];

export type FreeDay = Readonly<Partial<Record<Part, string>>>;
export type FreeWeek = Readonly<Record<string, FreeDay>>;

/** A date, or where a week of the course or a phase begins. */
export type MomentText = string | { readonly week: number } | { readonly phase: string };

export type FlagText =
  | string
  | {
      readonly flag: string;
      /** `review` alone: until somebody takes it out. */
      readonly until: MomentText | { readonly review: MomentText };
    };

/** For which weeks of a phase a change is. */
export interface SpanText {
  readonly phase?: string;
  readonly weeks?: string;
}

export interface ChangeText extends SpanText {
  readonly card: string;
  readonly why: string;
}

export type AwayText =
  | string
  | { readonly from: string; readonly to: string; readonly then?: "shift" | "skip" };

export interface EventText {
  readonly what: string;
  readonly day?: string;
  readonly from?: string;
  readonly until?: string;
  readonly on?: readonly string[];
  readonly part: Part;
  readonly hard?: boolean;
  readonly tissues?: readonly string[];
  readonly clear_before?: string;
  readonly clear_after?: string;
  readonly clear_of?: readonly string[];
  readonly blocks?: boolean;
}

export interface RotaText {
  readonly on: number;
  readonly off: number;
  readonly from: string;
  readonly until?: string;
  readonly free_on?: FreeDay;
  readonly free_off: FreeDay;
  readonly hard_on_days_off?: boolean;
}

export interface WeekText {
  readonly free: FreeWeek;
  readonly other_weeks?: readonly {
    readonly from: string;
    readonly until?: string;
    readonly free: FreeWeek;
  }[];
  readonly rota?: RotaText;
  readonly away: readonly AwayText[];
  readonly events: readonly EventText[];
  readonly hours?: Readonly<Record<Part, string>>;
  readonly [field: string]: unknown;
}

export interface PlanText {
  readonly id: string;
  readonly client: {
    readonly name: string;
    readonly reference: string;
    readonly born?: string;
    readonly body_mass: string;
  };
  readonly protocol: string;
  readonly starts: string;
  readonly weeks?: number;
  readonly extend: readonly {
    readonly phase: string;
    readonly weeks: number;
    readonly repeat_week?: number;
    readonly why: string;
  }[];
  readonly side: "left" | "right" | "both";
  readonly flags: readonly FlagText[];
  readonly measures: readonly unknown[];
  readonly equipment: readonly (string | { readonly have: string })[];
  readonly week: WeekText;
  readonly leave_out: readonly ChangeText[];
  readonly swap: readonly (ChangeText & { readonly to: string; readonly dose?: DoseText })[];
  readonly add: readonly (ChangeText & { readonly dose: DoseText })[];
  readonly redose: readonly (ChangeText & { readonly dose: DoseText })[];
  readonly accept: readonly {
    readonly code: string;
    readonly card: string;
    readonly why: string;
  }[];
  readonly [field: string]: unknown;
}
