/** Which signs to move on and to begin a client reads, from the plan's text, the course and the cards alone. */
import { label, type SignText, signWords } from "../surfaces/shipped.ts";
import { isLeftOut, lacking, openIn, ruledOut } from "./fits.ts";
import { wholeCard } from "./library.ts";
import type { Known } from "./names.ts";

const NAMED = /\{([^{}]*)\}/g;

/** The clinician's word, where a sign is not the client's or an exercise waits for a review. */
export const WORD = label("en", "start_review");

/** A phase's signs as its page has to print them; undefined where the client has no exercise in it. */
export interface PhaseSigns {
  readonly moveOn: readonly string[];
  /** By card, the sign on which it begins. */
  readonly begin: ReadonlyMap<string, string | undefined>;
}

/** What is right for each phase, by its id. */
export function signsOf(known: Known): ReadonlyMap<string, PhaseSigns> {
  const { asked, course } = known;
  const isDone = (id: string) =>
    asked.some(({ entries }) => entries.some((one) => one.phase === id));
  const phases = course.phases.filter(({ id }) => isDone(id));
  return new Map(
    phases.map((phase, at) => {
      const read = reader(known, phase.id);
      const signs = phase.move_on.map(read);
      const next = phases[at + 1];
      const waits =
        next !== undefined && cardsOf(known, next.id).every((card) => waitsFor(known, card));
      const asks = waits || signs.includes(undefined);
      const moveOn = [...signs.filter((one) => one !== undefined), ...(asks ? [WORD] : [])];
      return [phase.id, { moveOn, begin: begins(known, phase, read) }];
    }),
  );
}

function begins(
  known: Known,
  { id, exercises }: Known["course"]["phases"][number],
  read: (sign: SignText) => string | undefined,
): PhaseSigns["begin"] {
  const { plan } = known;
  return new Map(
    cardsOf(known, id).map((card) => {
      const own = exercises.find(
        (one) =>
          one.card === card || plan.swap.some((swap) => swap.card === one.card && swap.to === card),
      );
      const review = waitsFor(known, card) ? [WORD] : [];
      const when = own?.when;
      const sign = when === undefined ? [] : [read(when) ?? WORD];
      const all = [...new Set([...sign, ...review])];
      return [card, all.length === 0 ? undefined : all.join(" ")] as const;
    }),
  );
}

/** Cards that a client does in a phase. */
const cardsOf = ({ asked }: Known, id: string): string[] => [
  ...new Set(
    asked.flatMap(({ entries }) =>
      entries.filter(({ phase }) => phase === id).map(({ card }) => card),
    ),
  ),
];

const waitsFor = ({ flags }: Known, card: string): boolean =>
  flags.some(
    ({ byReview, flag }) =>
      byReview && (wholeCard(card).not_for ?? []).some((one) => one.flag === flag),
  );

/** Reads signs for a client in a phase: undefined for one that is none of theirs. */
function reader(known: Known, id: string) {
  const { asked, flags, plan } = known;
  const weeks = asked
    .filter(({ entries }) => entries.some(({ phase }) => phase === id))
    .map(({ number }) => number);
  const [first, last] = [Math.min(...weeks), Math.max(...weeks)];
  const open = openIn(
    flags,
    Array.from({ length: last - first + 1 }, (_, at) => first + at),
  );

  const begins = (card: string): number =>
    asked.find(({ entries }) => entries.some((one) => one.card === card))?.number ??
    Number.POSITIVE_INFINITY;

  function has(card: string): boolean {
    if (isLeftOut(plan, card, [id]) || begins(card) > last) return false;
    if (begins(card) <= first) return true;
    const whole = wholeCard(card);
    return ruledOut(whole, open) === undefined && lacking(whole, plan, open).length === 0;
  }

  function inPlaceOf(card: string): string | undefined {
    const swaps = plan.swap.filter((swap) => swap.card === card);
    const here = swaps.filter(({ phase }) => phase === undefined || phase === id);
    const others = swaps.filter((swap) => !here.includes(swap));
    return [card, ...[...here, ...others].map(({ to }) => to)].find(has);
  }

  return (sign: SignText): string | undefined => {
    const words = signWords(sign);
    const { of = undefined, not_for = [] } = typeof sign === "string" ? {} : sign;
    if (not_for.some((flag) => open.includes(flag))) return undefined;
    if (
      of !== undefined &&
      !has(of) &&
      !(begins(of) > last && begins(of) < Number.POSITIVE_INFINITY)
    )
      return undefined;
    const named = [...words.matchAll(NAMED)].map(([, card = ""]) => card);
    if (named.some((card) => inPlaceOf(card) === undefined)) return undefined;
    return words.replace(
      NAMED,
      (_, card: string) => `“${wholeCard(inPlaceOf(card) ?? card).title}”`,
    );
  };
}
