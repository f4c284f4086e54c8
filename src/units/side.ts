/** The side on which a client works. */

/** The side or sides on which this client does an exercise; `each`: both in turn. */
export const WORK_SIDES = ["left", "right", "each", "both", "none"] as const;
export type WorkSide = (typeof WORK_SIDES)[number];
