/** What a signature covers: everything a plan and its computed weeks ask of the client, and its digest. */
import { createHash } from "node:crypto";
import * as z from "zod";
import { isGroup } from "../edits/edit.ts";
import type { BoutJson } from "../plan-text/bout-json.ts";
import { type ComputedPlan, planJson } from "../plan-text/json.ts";

/** Rises when what is covered is written in another way; a signature of another form covers nothing. */
const FORM = 1;

const fields = z.record(z.string(), z.unknown());

export const signedContent = z.strictObject({
  /** The plan as its author wrote it, defaults filled in, without its signature. */
  statement: fields,
  weeks: z.array(
    z.strictObject({
      week: z.number(),
      /** What else is said of the week: its first day, its phases, whether the client is away. */
      about: fields,
      /** By the exercise's key: sets, repetitions, load and all else that is asked for. */
      doses: z.record(z.string(), fields),
      /** By date and part of the day: when it begins, how long it takes, the keys of its exercises. */
      sessions: z.record(z.string(), fields),
    }),
  ),
  /** The clinician's note to the client. */
  note: z.string(),
});

/** Only what is said: no empty values, so that a field that nobody uses changes no digest. */
export type SignedContent = Readonly<z.infer<typeof signedContent>>;

/**
 * What is covered of a plan. It is what `plan --json` gives, without what describes it (provenance, totals,
 * warnings, seconds under tension, why it is hard) and what depends on who looks: no words of the frame, edition or paper.
 */
export function contentOf(made: ComputedPlan, note: string): SignedContent {
  const json = planJson(made, []);
  const { signed: _, ...statement } = json.statement;
  return {
    statement: said(statement),
    weeks: json.weeks.map(
      ({ week, sessions, frequency, totals: _totals, trails: _trails, ...about }) => ({
        week,
        about: said(about),
        doses: Object.fromEntries(
          sessions.flatMap(({ bouts }) =>
            bouts.map((bout) => [
              bout.key,
              { ...doseOf(bout), ...said(frequency[bout.key] ?? {}) },
            ]),
          ),
        ),
        sessions: Object.fromEntries(
          sessions.map(({ date, part, bouts, ...session }) => [
            `${date} ${part}`,
            said({ ...session, exercises: bouts.map(({ key }) => key) }),
          ]),
        ),
      }),
    ),
    note: note.replaceAll("\r\n", "\n"),
  };
}

/** What is asked for; of a sign to wait for only that there is one, for its words are the language's. */
function doseOf(bout: BoutJson) {
  const { key: _key, tension_s: _t, clock_s: _c, hard: _h, hard_because: _b, ...asked } = bout;
  const { start_when, ask_first, after_review, ...dose } = asked;
  const waits = [
    start_when === null ? [] : "sign",
    ask_first ? "word" : [],
    after_review ? "review" : [],
  ].flat();
  return said({ ...dose, waits_for: waits });
}

/** The digest of a content, its form first: SHA-256, half of it, for it guards against slips and not against fraud. */
export function digestOf(content: SignedContent): string {
  const hash = createHash("sha256").update(JSON.stringify(inOrder(content)));
  return `${FORM}-${hash.digest("hex").slice(0, 32)}`;
}

/** Without values that say nothing. */
function said(group: object): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(group).flatMap(([name, value]) => {
      const inner = isGroup(value) ? said(value) : Array.isArray(value) ? value.map(ofItem) : value;
      return isNothing(inner) ? [] : [[name, inner]];
    }),
  );
}

const ofItem = (item: unknown): unknown => (isGroup(item) ? said(item) : item);

const isNothing = (value: unknown): boolean =>
  value === undefined ||
  value === null ||
  (typeof value === "object" && Object.keys(value).length === 0);

/** The same data with the fields of every group in one order. */
function inOrder(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(inOrder);
  if (!isGroup(value)) return value;
  const names = Object.keys(value).sort();
  return Object.fromEntries(names.map((name) => [name, inOrder(value[name])]));
}
