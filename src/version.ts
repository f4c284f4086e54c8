/** The version of the program; the build puts in the one of package.json. */
declare const PAULATIM_VERSION: string | undefined;
export const VERSION = typeof PAULATIM_VERSION === "string" ? PAULATIM_VERSION : "0.0.0";
