/** Reads the table that `plan` prints in the terminal. */
import { collector, type Fact, type Say, type Surface } from "../facts.ts";
import { CARDS } from "../shipped.ts";
import { type Context, readSide, readWeeks, waysOf } from "./context.ts";
import { doseFacts, NONE, weekKey } from "./dose-facts.ts";
import { timesFacts } from "./dose-pages.ts";
import { readLoad, readWork } from "./dose-words.ts";
import { gateFact } from "./gates.ts";
import { readHow } from "./how-words.ts";
import { readDate, spanText } from "./numbers.ts";

export function readTable(text: string, context: Context): Surface {
  const { facts, say } = collector();
  const [client = "", , course = "", signed = "", ...lines] = text.split("\n");
  const named = /^(.*) \(([^()]*)\)$/.exec(client);
  say("client", "name", named?.[1] ?? client, "line 1");
  say("client", "reference", named?.[2] ?? NONE, "line 1");
  say("course", "first day", readDate(course, context.starts), "line 3");
  say("course", "weeks", /, (\d+) \p{L}+$/u.exec(course)?.[1] ?? NONE, "line 3");
  say("signed", "", signed.startsWith("DRAFT") ? "draft" : "signed", "line 4");
  let exercise: Named | undefined;
  for (const [at, line] of lines.entries()) {
    const place = `line ${at + 5}`;
    const name = exerciseLine(line, context);
    const [, sign] = /^ {4}starts only when: (.*)$/.exec(line) ?? [];
    if (name) exercise = name;
    else if (/^ {4}hard work: /.test(line)) continue;
    else if (sign !== undefined && exercise) exercise = { ...exercise, sign };
    else if (/^ {4}\S/.test(line) && exercise)
      facts.push(...doseLine(line, exercise, place, context));
    else if (/^ {2}\S/.test(line)) weekLine(line, place, say, context);
    else phaseLine(line, place, say, context);
  }
  return {
    name: "terminal",
    facts,
    complete: new Set([
      "sets",
      "reps",
      "hold",
      "time",
      "distance",
      "load",
      "pace",
      "rest",
      "often",
      "side",
      "starts when",
      "week dates",
      "phase weeks",
    ]),
  };
}

interface Named {
  readonly title: string;
  readonly side: string;
  /** What has to be there before it is begun. */
  readonly sign?: string;
}

/** "  Clinical name [card-id], left leg". */
function exerciseLine(line: string, context: Context): Named | undefined {
  const found = /^ {2}\S.* \[([a-z0-9-]+)\](?:, (.+))?$/.exec(line);
  if (!found || !CARDS.has(found[1] ?? "")) return undefined;
  const side = found[2] === undefined ? NONE : readSide(found[2], context, "side");
  return { title: context.titleOf(found[1] ?? ""), side };
}

/** "Title: Weeks 2 to 5: Monday … to Sunday …", or the length of its sessions. */
function phaseLine(
  line: string,
  place: string,
  say: Say,
  { protocol, filled, starts, ...context }: Context,
): void {
  const phase = protocol.phases.find(({ title }) => line.startsWith(`${title}: `));
  const when = phase && filled("weeks.when", line.slice(phase.title.length + 2));
  if (!phase || !when) return;
  const [weeks = "", from = "", to = ""] = when;
  const { first, last } = readWeeks(weeks, { protocol, filled, starts, ...context });
  say("phase weeks", phase.title, `${first} to ${last}`, place);
  say("phase first day", phase.title, readDate(from, starts), place);
  say("phase last day", phase.title, readDate(to, starts), place);
}

function doseLine(
  line: string,
  { title, side, sign }: Named,
  place: string,
  context: Context,
): Fact[] {
  const { language } = context;
  const [weeks = "", work = "", ...cells] = line.trim().split(/ {2,}/);
  const loads = cells.filter((cell) => canRead(() => readLoad(cell, language)));
  const how = cells.filter((cell) => !loads.includes(cell)).join(" · ");
  const said = {
    ...readWork(work, language),
    ...(loads[0] !== undefined && { load: readLoad(loads[0], language) }),
    ...readHow(how, language, waysOf(context.cardByTitle(title), context)),
  };
  const { first, last } = readWeeks(weeks, context);
  const facts: Fact[] = [];
  for (let week = first; week <= last; week += 1) {
    const key = weekKey(week, title);
    const often = said.often ?? NONE;
    facts.push(...timesFacts(key, often, place));
    if (often === NONE) continue;
    // the table has no column for effort
    facts.push(...doseFacts(key, said, place).filter(({ kind }) => kind !== "effort"));
    facts.push(
      { kind: "side", key, value: side, place },
      { kind: "often", key, value: often, place },
      gateFact(key, sign, place),
    );
  }
  return facts;
}

/** "Week 1  30 Nov to 6 Dec  Mon Wed Fri evening 36 min  load 510". */
function weekLine(line: string, place: string, say: Say, context: Context): void {
  const [name = "", dates = "", sessions = ""] = line.trim().split(/ {2,}/);
  const [number] = context.filled("weeks.one", name) ?? [];
  const [from, to] = context.filled("weeks.dates", dates) ?? [];
  if (number === undefined || from === undefined || to === undefined) return;
  const key = `week ${number}`;
  say(
    "week dates",
    key,
    `${readDate(from, context.starts)} to ${readDate(to, context.starts)}`,
    place,
  );
  const kinds = sessions.split(" · ").flatMap((text) => {
    const found = /^(.+) (?:morning|midday|evening)(?: \([^()]*\))? (\d+) min$/.exec(text);
    return found ? [{ days: (found[1] ?? "").split(" ").length, minutes: Number(found[2]) }] : [];
  });
  say("week sessions", key, String(kinds.reduce((sum, { days }) => sum + days, 0)), place);
  if (kinds.length > 0)
    say("lengths in the week", key, spanText(kinds.map(({ minutes }) => minutes)), place);
}

function canRead(read: () => unknown): boolean {
  try {
    read();
    return true;
  } catch {
    return false;
  }
}
