/** The next morning of a day's sessions: one question a day, whatever the number of its sessions. */
import type { Felt, FeltDay } from "./felt.ts";
import type { PainLimits } from "./limits.ts";

export type Morning = Pick<Felt, "painMorning" | "worseMorning">;

/** Whether anything was answered of a morning. */
export const isAnswered = ({ painMorning, worseMorning }: Morning): boolean =>
  painMorning !== undefined || worseMorning !== undefined;

/** Whether the morning after a day was answered, with any of its sessions. */
export const isDayAnswered = ({ sessions }: FeltDay<unknown>): boolean =>
  sessions.some(({ felt }) => isAnswered(felt));

/**
 * Whether the morning after a day was worse than usual, or over the limit. Answered with two sessions of
 * one day (diaries put together), it counts once and the worse answer holds: one too many asks for less
 * work, one too few would hide a bad night.
 */
export const wasBad = ({ sessions }: FeltDay<unknown>, limits: PainLimits): boolean =>
  sessions.some(({ felt }) => isBad(felt, limits));

/**
 * The answers of one morning as one: the most pain, and worse where any says so. Where nothing was
 * answered, both are undefined.
 */
export function worstMorning(answers: readonly Morning[]): Morning {
  const pains = answers.flatMap(({ painMorning }) => painMorning ?? []);
  const words = answers.flatMap(({ worseMorning }) => worseMorning ?? []);
  return {
    painMorning: pains.length === 0 ? undefined : Math.max(...pains),
    worseMorning: words.length === 0 ? undefined : words.includes(true),
  };
}

/**
 * Worse than usual, or a number over the limit. Where no pain is allowed, the rule is "no more than
 * before": then a number that is the client's usual is not over it.
 */
function isBad({ painMorning, worseMorning }: Morning, { after }: PainLimits): boolean {
  if (worseMorning === true) return true;
  if (painMorning === undefined || (after === 0 && worseMorning === false)) return false;
  return painMorning > after;
}
