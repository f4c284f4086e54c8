/** The side on which a client works. */

/** The side or sides on which this client does an exercise; `each`: both in turn. */
export type WorkSide = "left" | "right" | "each" | "both" | "none";
