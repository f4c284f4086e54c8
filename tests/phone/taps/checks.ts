/** Looks at the screen after every tap: what it says and offers against the rules, and what is written against what was tapped. */
import {
  after,
  dayOf,
  during,
  type Expected,
  type Level,
  morning,
  type Reason,
  reasonsToCall,
  sessionRows,
  stoppedFor,
} from "./advice.ts";
import { momentAt, type Program, type Session } from "./program.ts";
import type { Sheet } from "./sheet.ts";
import { type Begun, maySurelyStart, wrongStart } from "./starts.ts";
import { nameOf } from "./taps.ts";

/** All that the checks know of a client. */
export interface Known {
  readonly program: Program;
  readonly sheet: Sheet;
  readonly nowMs: number;
  readonly begun: ReadonlyMap<string, Begun>;
  /** What the client has called for. */
  readonly called: readonly Reason[];
  /** Whether it is not known what of that is kept. */
  readonly callsUnsure: boolean;
  /** Whether the phone may have forgotten when sessions were begun. */
  readonly begunUnsure: boolean;
  readonly count: (what: string) => void;
}

const main = (): HTMLElement | null => document.querySelector(".phone-main");

/** What stands on the screen, a line a text. */
function screenText(): string {
  const place = main();
  if (place === null) return "";
  const texts = document.createTreeWalker(place, NodeFilter.SHOW_TEXT);
  const lines: string[] = [];
  while (texts.nextNode()) lines.push(texts.currentNode.textContent ?? "");
  return lines.join("\n");
}

/** What is due of the reasons to call, and what may be. */
export function dueNow({ sheet, program, called }: Known) {
  const open = reasonsToCall(sheet, program).filter(
    ({ id, pain }) => !called.some((one) => one.id === id && one.pain >= pain),
  );
  return { open, sure: open.filter(({ unsure }) => !unsure) };
}

/** What is wrong on the screen that is shown. */
export function wrongOnScreen(known: Known): string[] {
  const { open, sure } = dueNow(known);
  const due = known.callsUnsure
    ? undefined
    : sure.length > 0
      ? true
      : open.length > 0
        ? undefined
        : false;
  if (due) known.count("a call is due");
  return [...wrongNumbers(known, due), ...wrongToday(known, due), ...wrongReady(known, due)];
}

const screenNow = (): string[] => window.location.hash.replace(/^#\/?/, "").split("/");

/** A question for a number on the screen, what was answered, and the advice that may stand beside it. */
interface Question {
  readonly field: Element;
  readonly section: Element;
  readonly legend: string;
  readonly number: number | undefined;
  /** The session whose screen it is. */
  readonly name: string;
  readonly session: Session | undefined;
}

/** Every scale with a number, and the advice beside it. */
function wrongNumbers(known: Known, due: boolean | undefined): string[] {
  const { program } = known;
  const name = screenNow()[1] ?? "";
  const session = program.sessions.find((one) => one.name === name);
  return [...(main()?.querySelectorAll("fieldset.scale") ?? [])].flatMap((field) => {
    const section = field.closest("section");
    const checked = field.querySelector<HTMLInputElement>("input:checked");
    const legend = field.querySelector("legend")?.textContent?.trim() ?? "";
    if (section === null || legend === program.words["write.effort"]) return [];
    const number = checked === null ? undefined : Number(checked.value);
    const asked = { field, section, legend, number, name, session };
    const look = section.matches(".write-exercise, .session")
      ? besideDuring
      : section.matches(".write-session") && legend === program.words["write.after"]
        ? besideAfter
        : besideMorning;
    const advice = look(asked, known);
    return advice === undefined ? [] : wrongAdvice(advice.box, advice.expected, due, known);
  });
}

/** The box that is shown, and what it has to say; undefined where nothing can be said of it. */
type Beside = { readonly box: Element | null; readonly expected: Expected | undefined } | undefined;

const boxAfter = (element: Element | null | undefined): Element | null => {
  const next = element?.nextElementSibling;
  return next?.matches(".advice") ? next : null;
};

function besideDuring({ section, legend, number, session }: Question, known: Known): Beside {
  const { program } = known;
  const title = section.querySelector("h2")?.textContent?.trim() ?? legend;
  const bout = session?.bouts.find((one) => one.title === title);
  if (bout === undefined) return undefined;
  const expected = during(number, isSudden(section, program), bout, program);
  const box = section.querySelector(".advice");
  // a call that is due for something else stands on the screen of an exercise, too
  const other =
    levelOf(box) === "call" && expected?.level !== "call" && section.matches(".session");
  return other && dueNow(known).open.length > 0 ? undefined : { box, expected };
}

function besideAfter({ field, number, session }: Question, { program }: Known): Beside {
  if (session === undefined || number === undefined) return undefined;
  return { box: boxAfter(field), expected: after(number, session.bouts, program) };
}

function besideMorning({ field, section, name }: Question, known: Known): Beside {
  const day = dayOfMorning(name, field, known);
  if (day === undefined) return undefined;
  const expected = morning(day, known.sheet, known.program);
  // on the first screen the call stands above, for as long as it is due
  if (section.matches(".morning") && expected?.level === "call") return undefined;
  return { box: boxAfter(field.nextElementSibling), expected };
}

function isSudden(section: Element, { words }: Program): boolean {
  const field = [...section.querySelectorAll("fieldset.choice")].find(
    (one) => one.querySelector("legend")?.textContent === words.sudden,
  );
  return field?.querySelector<HTMLInputElement>("input:checked")?.value === "yes";
}

/** The day whose next morning is asked for: of the session that is written down, or of the one that was answered. */
function dayOfMorning(name: string, field: Element, { sheet }: Known): string | undefined {
  const rows = sessionRows(sheet);
  const entry = rows.filter((row) => `${row.date}-${row.part}` === name);
  if (name !== "") return entry.length === 1 ? entry[0]?.day : undefined;
  const number = field.querySelector<HTMLInputElement>("input:checked")?.value;
  if (number === undefined) return undefined;
  const answered = rows.filter((row) => row.numbers.pain_morning === Number(number));
  return answered.length === 1 ? answered[0]?.day : undefined;
}

/** Holds a box of advice against what has to be said. `due`: whether a call is due; undefined where that is open. */
function wrongAdvice(
  box: Element | null,
  expected: Expected | undefined,
  due: boolean | undefined,
  { count, program }: Known,
): string[] {
  const shown = levelOf(box);
  if (expected) count(`advice ${expected.level}`);
  const allowed: (Level | undefined)[] =
    expected?.level !== "call"
      ? [expected?.level]
      : due === undefined
        ? ["call", "ease"]
        : due
          ? ["call"]
          : ["ease"];
  if (!allowed.includes(shown))
    return [
      `advice is ${shown ?? "none"} in place of ${allowed.join(" or ") || "none"} on:\n${screenText()}`,
    ];
  if (expected === undefined || box === null) return [];
  const text = box.textContent ?? "";
  const says = expected.says.some((all) => all.every((sentence) => text.includes(sentence)));
  // the call that is shown is the one that is due: of several reasons, any may be the one at hand
  if (says || (expected.level === "call" && shown === "call" && saysCall(text, program))) return [];
  return [`advice does not say “${expected.says[0]?.join(" ")}” but “${text}”`];
}

const saysCall = (text: string, { severe, settle }: Program): boolean =>
  text.includes(severe) || text.includes(settle);

function levelOf(box: Element | null): Level | undefined {
  return (["call", "stop", "ease"] as const).find((level) =>
    box?.classList.contains(`advice-${level}`),
  );
}

const shownButtons = (): HTMLElement[] => [
  ...(main()?.querySelectorAll<HTMLElement>("button") ?? []),
];

/** The first screen: a call that is due, and whether each start may be offered. */
function wrongToday(known: Known, due: boolean | undefined): string[] {
  const { program, nowMs } = known;
  const [screen] = screenNow();
  if (main() === null || !["", "today"].includes(screen ?? "") || isAsked(program)) return [];
  const { words } = program;
  const starts = shownButtons().filter((one) => nameOf(one) === words["today.start"]);
  const goOn = shownButtons().find((one) => nameOf(one) === words["today.go-on"]);
  const call = main()?.querySelector(".advice-call") ?? null;
  if (due && call === null) return [`a call is due, and not told on:\n${screenText()}`];
  if (due === false && call !== null)
    return [`a call is told that is not due, on:\n${screenText()}`];
  if (call !== null && (starts.length > 0 || goOn))
    return [`a start under a call, on:\n${screenText()}`];
  const now = momentAt(nowMs, program);
  const underWay = goOn && sessionOf(goOn, now.day, known);
  const held = [...(main()?.querySelectorAll(".hold") ?? [])].flatMap((notice) => {
    const session = sessionOf(notice, now.day, known);
    known.count("a start is held back");
    if (session === undefined || known.begunUnsure) return [];
    return maySurelyStart(session, { ...known, underWay })
      ? [`${session.name} is held back, but nothing stands against it, on:\n${screenText()}`]
      : [];
  });
  const offered = starts.flatMap((button) => {
    const session = sessionOf(button, now.day, known);
    if (session === undefined) return [];
    known.count("a start is offered");
    const wrong = wrongStart(session, { ...known, underWay });
    return wrong === undefined
      ? []
      : [`${session.name} may be started now, but ${wrong}, on:\n${screenText()}`];
  });
  return [...offered, ...held, ...(call === null ? wrongCards(now.day, known) : [])];
}

/** Every session of the day is there, and each says that it is written down, or why not now, or starts. */
function wrongCards(day: string, { program }: Known): string[] {
  const cards = [...(main()?.querySelectorAll("section.session") ?? [])];
  const own = cards.filter((card) => card.closest(".missed") === null);
  const due = program.sessions.filter(({ date }) => date === day).length;
  if (own.length < due)
    return [`${due} sessions are of today, and not all shown, on:\n${screenText()}`];
  const { words } = program;
  const ways = [words["today.start"], words["today.go-on"]];
  const mute = own.filter(
    (card) =>
      !card.matches(".written") &&
      card.querySelector(".hold") === null &&
      ![...card.querySelectorAll("button")].some((one) => ways.includes(nameOf(one))),
  );
  return mute.length === 0
    ? []
    : [`a session neither starts nor says why not, on:\n${screenText()}`];
}

/** Whether it is asked whose diary it is: before that nothing else is shown. */
const isAsked = ({ words }: Program): boolean =>
  shownButtons().some((one) => nameOf(one) === words["same.yes"]);

/** The session of a card on the first screen. */
export function sessionOf(
  button: Element,
  today: string,
  { program, begun }: Known,
): Session | undefined {
  const part = button.closest("section.session")?.getAttribute("aria-labelledby")?.slice(8);
  const { sessions } = program;
  if (button.closest(".missed")) return sessions.filter(({ date }) => date < today).at(-1);
  const own = sessions.find((one) => one.date === today && one.part === part);
  const last = [...begun.values()].at(-1)?.session;
  const goesOn = nameOf(button) === program.words["today.go-on"];
  return goesOn && last?.part === part ? last : own;
}

/** Before an exercise: nothing of a tissue that was stopped today, and nothing while a call is due. */
function wrongReady(known: Known, due: boolean | undefined): string[] {
  const { program, sheet, begun } = known;
  const [screen, name = ""] = screenNow();
  const start = shownButtons().some((one) => nameOf(one) === program.words["pace.start"]);
  if (screen !== "session" || !start) return [];
  if (due) return [`an exercise may be started while a call is due, on:\n${screenText()}`];
  const title = main()?.querySelector("h1")?.textContent?.trim();
  const bout = program.sessions
    .find((one) => one.name === name)
    ?.bouts.find((one) => one.title === title);
  const day = begun.get(name)?.at.day;
  if (bout === undefined || day === undefined) return [];
  const stopped = stoppedFor(bout, (row) => dayOf(row, sheet) === day, sheet, program);
  if (stopped === undefined) return [];
  return [`${bout.title} may be started, though ${stopped} was stopped, on:\n${screenText()}`];
}
