/**
 * Every situation in which a client gives a number of pain, and the advice that the printed page gives to
 * it: limits 0 to 10; 0 to 10 felt while exercising, after it or the next morning; once or two days running;
 * with a rest day between, day after day, twice a day; the booklet as it was or re-issued with other times;
 * the session begun, given up, or its short version done. What is expected is read from the pages in print.
 */
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { makeBooklet, makeProgram } from "../../src/booklet.ts";
import type { Diary, DiaryEntry } from "../../src/diary/entry.ts";
import { loadAssets } from "../../src/html/assets.ts";
import { companionOf } from "../../src/html/companion.ts";
import { renderHtml } from "../../src/html/html.ts";
import {
  type Advice,
  adviceAfter,
  adviceDuring,
  adviceFromLast,
  adviceMorning,
  stoppedBefore,
} from "../../src/phone/day/advice.ts";
import { callOf } from "../../src/phone/day/call.ts";
import { type PhoneData, type PlannedSession, plannedSessions } from "../../src/phone/day/data.ts";
import { emptyEntry } from "../../src/phone/day/entries.ts";
import { partsOf, textOf } from "../support/shipped.ts";
import { asSigned } from "../support/signed.ts";
import { change, DAY, DEMO, demoClinic, english, ROOT, shippedText } from "../support/world.ts";

const PLAN = `${DEMO}/achilles.md`;
const CLINIC = `${DEMO}/clinic.yaml`;
const SCALE = Array.from({ length: 11 }, (_, n) => n);
const words = english();
const assets = await loadAssets(join(ROOT, "templates"), words);

/** The level to call from is 8, or just above a limit that is higher. */
const callFrom = (limit: number): number => Math.min(10, Math.max(8, limit + 1));

function planned(limit: number) {
  const rule = `pain: { comfortable: ${Math.min(2, limit)}, during: ${limit}, after: ${limit} }`;
  const workspace = demoClinic({
    [PLAN]: change(shippedText(PLAN), "side: left\n", `side: left\n${rule}\n`),
    [CLINIC]: `${shippedText(CLINIC)}\npain: { call: ${callFrom(limit)} }\n`,
  });
  return { workspace, ...makeProgram(workspace, PLAN) };
}

/** What the pages in print say. */
interface Page {
  readonly text: string;
  /** What the ruler's table says to each number. */
  readonly zone: readonly ("go on" | "stop" | "call")[];
  readonly after: number;
  readonly says: Readonly<
    Record<"over" | "less" | "after" | "worse" | "severe" | "settle", string>
  >;
}

function pageOf(html: string): Page {
  const [pain = ""] = partsOf(html, "pain-page");
  const [stop = ""] = partsOf(html, "stop-page");
  const items = [...`${stop}${pain}`.matchAll(/<li>(.*?)<\/li>/g)].map(([, one = ""]) =>
    textOf(one),
  );
  const find = (pattern: RegExp) => items.find((one) => pattern.test(one)) ?? `(no ${pattern})`;
  const zone = SCALE.map(() => "go on" as Page["zone"][number]);
  // of too much, the ruler's row says what to do at once, and then what holds from the next time on
  let less = "";
  for (const row of pain.split("<tr>").map(textOf)) {
    less = / Too much\. Stop this exercise\. (.*\.)/.exec(row)?.[1] ?? less;
    const [, from, to = from, name] = /^(\d+)(?: to (\d+))? (Too much|Call us)\./.exec(row) ?? [];
    if (from === undefined) continue;
    for (let n = Number(from); n <= Number(to); n += 1)
      zone[n] = name === "Call us" ? "call" : "stop";
  }
  const after = find(/^After you exercise/);
  return {
    text: [...items, textOf(pain)].join("\n"),
    zone,
    after: /no new pain/.test(after) ? 0 : Number(/up to (\d+) out of 10/.exec(after)?.[1]),
    says: {
      over: find(/Stop this exercise for today\.$|stop this exercise for today\.$/),
      less,
      after,
      worse: find(/^More pain the next morning than before\?/),
      severe: find(/^Pain of \d+ out of 10 or more, or sudden pain$/),
      settle: find(/two times running$/),
    },
  };
}

const WHEN = ["during", "after", "morning"] as const;
const DAYS = ["day after day", "a rest day between", "twice a day"] as const;
const HOW = ["started", "stopped", "short"] as const;
type When = (typeof WHEN)[number];

interface Situation {
  readonly felt: number;
  readonly when: When;
  readonly running: 1 | 2;
  readonly days: (typeof DAYS)[number];
  readonly reissued: boolean;
  readonly how: (typeof HOW)[number];
}

const SITUATIONS = SCALE.flatMap((felt) =>
  WHEN.flatMap((when) =>
    ([1, 2] as const).flatMap((running) =>
      DAYS.flatMap((days) =>
        [false, true].flatMap((reissued) =>
          HOW.map((how): Situation => ({ felt, when, running, days, reissued, how })),
        ),
      ),
    ),
  ),
);

/** The advice on the page. */
function expected({ zone, after, says }: Page, { felt, when, running }: Situation) {
  const advice = (level: Advice["level"], ...sentences: string[]): Advice => ({
    level,
    says: sentences,
  });
  if (zone[felt] === "call") return advice("call", says.severe);
  if (when === "during") return zone[felt] === "stop" ? advice("stop", says.over) : undefined;
  if (felt <= after) return undefined;
  if (when === "after") return advice("ease", says.after, says.worse);
  return running === 2 ? advice("call", says.settle, says.worse) : advice("ease", says.worse);
}

/** Before the next session a stop is over, and what is left of it is what the ruler says of the next time. */
function expectedLater(page: Page, situation: Situation): Advice | undefined {
  const now = expected(page, situation);
  return now?.level === "stop" ? { level: "ease", says: [page.says.less] } : now;
}

/** The days, the sessions on them as they are now planned, and what was written down. */
function played(one: PlannedSession, situation: Situation) {
  const { felt, when, running, days, reissued, how } = situation;
  const [first, second] = [
    "2026-12-01",
    days === "a rest day between" ? "2026-12-03" : "2026-12-02",
  ];
  const parts = days === "twice a day" ? (["morning", "evening"] as const) : (["evening"] as const);
  const sessions = [first, second].flatMap((date) =>
    parts.map((part) => ({
      ...one,
      date,
      // a re-issued booklet has the single session of a day at another time
      part: reissued && days !== "twice a day" ? ("midday" as const) : part,
    })),
  );
  const entryOf = (date: string, part: DiaryEntry["part"], hurt: boolean): DiaryEntry => {
    const empty = emptyEntry({ ...one, date, part }, `${DAY}-abc`, how === "short", "");
    const done = { started: "part", stopped: "no", short: "yes" } as const;
    return {
      ...empty,
      done: done[how],
      doneOn: how === "stopped" ? undefined : date,
      painAfter: hurt && when === "after" ? felt : undefined,
      painMorning: hurt && when === "morning" ? felt : undefined,
      exercises: empty.exercises.map((exercise, at) => ({
        ...exercise,
        done: at === 0 || how === "short" ? done[how] : "no",
        pain: hurt && when === "during" && at === 0 ? felt : undefined,
      })),
    };
  };
  // of two sessions a day the first one hurts; the answer to a morning may stand with either
  const entries = [first, second].flatMap((date) =>
    parts.map((part, at) => entryOf(date, part, at === 0 && (date === second || running === 2))),
  );
  const diary: Diary = { plan: "p", client: "c", entries };
  const entry = entries.find(({ date }) => date === second);
  if (!entry) throw new Error("nothing was written down");
  return { sessions, diary, second, entry, today: sessions.filter(({ date }) => date === second) };
}

/** What the phone says, and what it leaves out of the day's sessions. */
function told(session: PlannedSession, { pain }: PhoneData, situation: Situation) {
  const { felt, when, reissued } = situation;
  const { sessions, diary, second, entry, today } = played(session, situation);
  const [bout] = session.bouts;
  if (!bout) throw new Error("no exercise");
  const now = {
    during: () => adviceDuring(felt, bout, pain),
    after: () => adviceAfter(felt, session, pain),
    morning: () => adviceMorning(entry, sessions, diary, pain),
  }[when]();
  return {
    now,
    later: adviceFromLast(diary, sessions, pain),
    whenCalled: adviceFromLast(diary, sessions, pain, true)?.level,
    // a re-issued booklet was made after all that was felt
    call: callOf(diary, [], { made: reissued ? "2026-12-05" : DAY, pain }, sessions)?.says,
    left: today.map((planned) =>
      planned.bouts.map((one) => stoppedBefore(one, planned, second, sessions, diary)?.card),
    ),
  };
}

/** The same from the page: a call stays due until the next booklet, and a stop holds for the day. */
function shouldBeTold(
  { bouts }: PlannedSession,
  page: Page,
  situation: Situation,
  limit: number,
): ReturnType<typeof told> {
  const { felt, when, days, reissued, how } = situation;
  const now = expected(page, situation);
  const later = expectedLater(page, situation);
  const isCall = now?.level === "call";
  // where no pain is allowed, an exercise that was made smaller and then done was not stopped
  const stopped =
    when === "during" && page.zone[felt] !== "go on" && !(limit === 0 && how === "short");
  const by = stopped ? bouts[0]?.card : undefined;
  return {
    now,
    later,
    whenCalled: isCall ? "ease" : later?.level,
    call: isCall && !reissued ? [now.says[0] ?? ""] : undefined,
    left: Array.from({ length: days === "twice a day" ? 2 : 1 }, () => bouts.map(() => by)),
  };
}

describe.each(SCALE.slice(0, 10))("with a limit of %d", (limit) => {
  const { workspace, value } = planned(limit);
  if (!value) throw new Error(`a plan with a limit of ${limit} has errors`);
  const booklet = makeBooklet(asSigned(value), workspace, words, DAY);
  const page = pageOf(renderHtml(booklet, assets));
  const data = JSON.parse(companionOf(booklet, "", words)?.data ?? "") as PhoneData;
  const [session] = plannedSessions(data);
  if (!session) throw new Error("no session");

  test("the page states its limits", () => {
    expect(page.zone).toEqual(
      SCALE.map((n) => (n >= callFrom(limit) ? "call" : n > limit ? "stop" : "go on")),
    );
    expect(page.after).toBe(limit);
    for (const sentence of Object.values(page.says)) expect(page.text).toContain(sentence);
  });

  test("every situation has the page's advice", () => {
    const wrong = SITUATIONS.map((situation) => ({
      situation,
      is: told(session, data, situation),
      should: shouldBeTold(session, page, situation, limit),
    })).filter(({ is, should }) => JSON.stringify(is) !== JSON.stringify(should));
    expect(wrong.slice(0, 3)).toEqual([]);
  });
});

test("a limit of 10 is refused: nothing would be left to call for", () => {
  const { value, faults } = planned(10);
  expect(value).toBeUndefined();
  expect(faults.map(({ message }) => message).join()).toContain("from 10 on the client is to call");
});
