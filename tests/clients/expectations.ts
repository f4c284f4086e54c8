/** What a colleague expects of a client's plan, a line each, held against what comes out of it. */
import type { Fault } from "../../src/faults/fault.ts";
import { weekdayOf } from "../../src/units/dates.ts";
import { WEEKDAYS } from "../../src/units/day-parts.ts";
import { type Outcome, SURFACES, type Surface } from "./outcome.ts";

/** What one line says of an outcome: undefined where it holds, else what is there instead. */
type Holds = (outcome: Outcome) => string | undefined;

interface Sentence {
  readonly form: RegExp;
  readonly read: (found: Readonly<Record<string, string>>) => Holds;
}

/** Warnings of every plan here: the clinician signs when these are looked at. */
const ALWAYS = ["not-signed"];

/**
 * What of the expectations does not hold, in words; empty where all does. A warning or an error that no
 * line names is among it: a colleague is not told in vain.
 */
export function unmet(text: string, outcome: Outcome): readonly string[] {
  const lines = linesOf(text);
  const wrong = lines.flatMap((line) => {
    const instead = reading(line)(outcome);
    return instead === undefined ? [] : [`${line}\n    but ${instead}`];
  });
  const named = new Set(lines.flatMap((line) => CODE.exec(line)?.[1] ?? []));
  const unnamed = outcome.faults.filter(({ code }) => !named.has(code) && !ALWAYS.includes(code));
  return [...wrong, ...unnamed.map((fault) => `nobody expects: ${sayFault(fault)}`)];
}

/** The lines after the first paragraph, which says who the client is. */
function linesOf(text: string): readonly string[] {
  const at = text.indexOf("\n\n");
  if (at < 0) throw new Error("who it is, an empty line, and what is expected");
  return text
    .slice(at)
    .split("\n")
    .map((line) => line.trim())
    .filter((line) => line !== "" && !line.startsWith("#"));
}

function reading(line: string): Holds {
  for (const { form, read } of SENTENCES) {
    const found = form.exec(line);
    if (found) return read(found.groups ?? {});
  }
  throw new Error(`nobody can read this expectation: ${line}`);
}

const CODE = /^(?:stops with|warns|may warn) ([a-z-]+)/;

/** The forms of a line; `*` in a quoted text stands for anything. */
const SENTENCES: readonly Sentence[] = [
  {
    form: /^(?<level>stops with|warns) (?<code>[a-z-]+)(?:: "(?<text>.+)")?$/,
    read:
      ({ level = "", code = "", text = "" }) =>
      ({ faults, said }) => {
        const found = faults.filter((fault) => fault.code === code);
        if (found.length === 0)
          return `it says ${faults.map(sayFault).join("\n      ") || "nothing"}`;
        if (level === "stops with" && said) return "a booklet is made";
        if (text === "" || found.some((fault) => has(sayFault(fault), text))) return undefined;
        return `it says ${found.map(sayFault).join("\n      ")}`;
      },
  },
  { form: /^may warn [a-z-]+$/, read: () => () => undefined },
  {
    form: /^(?<surface>pages|large print|summary|phone|calendar|terminal) (?<verb>say|never say) "(?<text>.+)"$/,
    read:
      ({ surface = "", verb = "", text = "" }) =>
      (outcome) => {
        const said = saidOn(outcome, surface as Surface);
        if (said === undefined) return sayStopped(outcome);
        if (has(said, text) === (verb === "say")) return undefined;
        return verb === "say" ? "they do not" : `they say ${around(said, text)}`;
      },
  },
  {
    form: /^nothing (?<verb>says|names) "?(?<text>[^"]+)"?$/,
    read:
      ({ verb = "", text = "" }) =>
      (outcome) => {
        if (!outcome.said) return sayStopped(outcome);
        const title = outcome.titles.get(text);
        if (verb === "names" && title === undefined) return `there is no card ${text}`;
        const wanted = verb === "names" ? [text, title ?? text] : [text];
        const at = SURFACES.flatMap((surface) =>
          wanted
            .filter((one) => has(saidOn(outcome, surface) ?? "", one))
            .map((one) => `${surface}: ${around(saidOn(outcome, surface) ?? "", one)}`),
        );
        return at.length === 0 ? undefined : at.join("\n      ");
      },
  },
  {
    form: /^(?:week|weeks) (?<from>\d+)(?:-(?<to>\d+))? (?:holds?) (?<count>\d+|no) sessions?(?: of (?<card>[a-z0-9-]+))?$/,
    read:
      ({ from = "", to = from, count = "", card }) =>
      (outcome) => {
        if (!outcome.json) return sayStopped(outcome);
        const wanted = count === "no" ? 0 : Number(count);
        const counts = outcome.json.weeks
          .slice(Number(from) - 1, Number(to))
          .map(({ sessions }) => sessions.filter((one) => hasCard(one, card)).length);
        const whole = counts.length === Number(to) - Number(from) + 1;
        if (whole && counts.every((one) => one === wanted)) return undefined;
        return `there are ${counts.join(", ") || "none"}`;
      },
  },
  {
    form: /^in all (?<count>\d+) sessions?(?: of (?<card>[a-z0-9-]+))?$/,
    read:
      ({ count = "", card }) =>
      (outcome) => {
        if (!outcome.json) return sayStopped(outcome);
        const found = sessionsOf(outcome).filter((one) => hasCard(one, card)).length;
        return found === Number(count) ? undefined : `there are ${found}`;
      },
  },
  {
    form: /^(?<weeks>\d+) weeks$/,
    read:
      ({ weeks = "" }) =>
      (outcome) => {
        const found = outcome.json?.weeks.length;
        return found === Number(weeks) ? undefined : `there are ${found ?? "none"}`;
      },
  },
  {
    form: /^no (?<what>session|hard work|[a-z0-9-]+) (?:on (?<on>[a-z0-9-]+))(?: (?<part>morning|midday|evening))?$/,
    read:
      ({ what = "", on = "", part }) =>
      (outcome) => {
        if (!outcome.json) return sayStopped(outcome);
        const found = sessionsOf(outcome).filter(
          (session) =>
            [session.date, WEEKDAYS[weekdayOf(session.date)]].includes(on) &&
            (part === undefined || session.part === part) &&
            session.bouts.some(
              (bout) =>
                what === "session" || (what === "hard work" ? bout.hard : bout.card === what),
            ),
        );
        return found.length === 0
          ? undefined
          : `there is some on ${found.map(({ date, part: at }) => `${date} ${at}`).join(", ")}`;
      },
  },
  {
    form: /^(?<card>[a-z0-9-]+) on (?<date>[\d-]+)(?: (?<part>morning|midday|evening))?$/,
    read:
      ({ card = "", date = "", part }) =>
      (outcome) => {
        if (!outcome.json) return sayStopped(outcome);
        const found = sessionsOf(outcome).filter((one) => hasCard(one, card));
        return found.some((one) => one.date === date && (part === undefined || one.part === part))
          ? undefined
          : `it is on ${found.map((one) => `${one.date} ${one.part}`).join(", ")}`;
      },
  },
  {
    form: /^week (?<week>\d+) (?<card>[a-z0-9-]+): (?<fields>\w.*)$/,
    read:
      ({ week = "", card = "", fields = "" }) =>
      (outcome) => {
        if (!outcome.json) return sayStopped(outcome);
        const bout = outcome.json.weeks[Number(week) - 1]?.sessions
          .flatMap(({ bouts }) => bouts)
          .find((one) => one.card === card);
        if (!bout) return "it is not there";
        const wrong = fields.split(/, (?=[a-z_]+ )/).filter((field) => {
          const [name = "", ...value] = field.split(" ");
          return JSON.stringify(Reflect.get(bout, name)) !== asJson(value.join(" "));
        });
        return wrong.length === 0 ? undefined : `it is ${JSON.stringify(bout)}`;
      },
  },
];

/** `true`, `12` and `[6,8]` as they are; other words are texts. */
function asJson(value: string): string {
  return /^(true|false|null|[\d.]+|\[.*\])$/.test(value)
    ? value.replaceAll(" ", "")
    : JSON.stringify(value);
}

const saidOn = ({ said }: Outcome, surface: Surface): string | undefined => said?.[surface];

const sessionsOf = ({ json }: Outcome) => json?.weeks.flatMap(({ sessions }) => sessions) ?? [];

const hasCard = (
  session: { readonly bouts: readonly { readonly card: string }[] },
  card: string | undefined,
): boolean => card === undefined || session.bouts.some((bout) => bout.card === card);

function has(said: string, text: string): boolean {
  return patternOf(text).test(said);
}

const patternOf = (text: string): RegExp =>
  new RegExp(
    text
      .split("*")
      .map((part) => part.replace(/[.+?^${}()|[\]\\]/g, "\\$&"))
      .join("[\\s\\S]{0,80}?"),
  );

function around(said: string, text: string): string {
  const at = said.search(patternOf(text));
  return `“…${said.slice(Math.max(0, at - 60), at + text.length + 60)}…”`;
}

const sayStopped = ({ faults }: Outcome): string =>
  `there is no booklet: ${faults
    .filter(({ level }) => level === "error")
    .map(sayFault)
    .join("\n      ")}`;

/** A fault with all that is offered, on one line. */
const sayFault = ({ level, code, message, hint, remedies }: Fault): string =>
  [
    `${level} ${code}: ${message}`,
    ...(remedies.length > 0
      ? remedies.map(({ lead, sentence }) => `${lead}: ${sentence}`)
      : [hint ?? ""]),
  ].join(" ");
