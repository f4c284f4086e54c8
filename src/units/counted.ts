/** A number with what is counted, in the singular for one alone. */

/** "1 repetition", "12 repetitions", "1 to 2 sets". English, for clinicians; clients' words are in templates/words. */
export function counted(number: number | string, one: string): string {
  return `${number} ${one}${String(number) === "1" ? "" : "s"}`;
}
