/** Days of the week and parts of the day: the one list of each. */

/** Weekdays as plans write them, Monday first. */
export const WEEKDAYS = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"] as const;
export type Weekday = (typeof WEEKDAYS)[number];

/** The three parts of a day in which a session can lie, in the order of the client's day. */
export const PARTS = ["morning", "midday", "evening"] as const;
export type PartOfDay = (typeof PARTS)[number];
