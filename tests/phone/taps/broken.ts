/** Companions that are broken in one place each: the clients who tap have to find out every one of them. */
import { readFile } from "node:fs/promises";
import { build, type Plugin } from "esbuild";

/** A change of one line of the companion's source, and what it breaks. */
export interface Break {
  readonly what: string;
  readonly file: string;
  readonly from: string;
  readonly to: string;
  /** Whether only those can see it who have a second reference. */
  readonly reference?: true;
}

const DAY = "src/phone/day";
const SCREENS = "src/phone/screens";

export const BREAKS: readonly Break[] = [
  {
    what: "done as planned replaces what was told",
    file: `${DAY}/entries.ts`,
    from: 'done === "yes" && (isTold(one) || leftOut.includes(one.card))',
    to: 'done === "yes" && leftOut.includes(one.card)',
  },
  {
    what: "done as planned forgets the pain",
    file: `${DAY}/entries.ts`,
    from: "      ? one\n",
    to: "      ? { ...one, pain: undefined }\n",
  },
  {
    what: "pain in an exercise is not written until it is over",
    file: `${SCREENS}/session.tsx`,
    from: "onPain={(felt) => app.write(withFelt(entry, bout.card, felt, day))}",
    to: "onPain={() => undefined}",
  },
  {
    what: "of two numbers the lower is kept",
    file: `${DAY}/entries.ts`,
    from: "Math.max(...felt)",
    to: "Math.min(...felt)",
  },
  {
    what: "a limit is over its own number",
    file: "src/pain/advice.ts",
    from: "pain > bout.pain.during",
    to: "pain >= bout.pain.during",
  },
  {
    what: "the hours after have a limit one higher",
    file: "src/pain/advice.ts",
    from: "return pain > by.pain.after ?",
    to: "return pain > by.pain.after + 1 ?",
  },
  {
    what: "the level to call from is one higher",
    file: "src/pain/advice.ts",
    from: "if (sudden || (pain ?? 0) >= callLevel)",
    to: "if (sudden || (pain ?? 0) > callLevel)",
  },
  {
    what: "sudden pain is no reason to call",
    file: "src/pain/advice.ts",
    from: "if (sudden || (pain ?? 0) >= callLevel)",
    to: "if ((pain ?? 0) >= callLevel)",
  },
  {
    what: "two bad mornings have to be on days that follow each other",
    file: "src/pain/advice.ts",
    from: ".filter((one) => one.day < day && isDayAnswered(one))",
    to: ".filter((one) => one.day < day)",
  },
  {
    what: "a call is over when the morning is good",
    file: "src/pain/call.ts",
    from: "const told = calls.flatMap((call) => call.for);",
    to: "const told = calls.flatMap((call) => call.for); if (diary.at(-1)?.felt.painMorning === 0) return [];",
  },
  {
    what: "a call that was made is due again",
    file: "src/pain/call.ts",
    from: "one.id === id && one.pain >= pain",
    to: "one.id === id && one.pain > pain",
  },
  {
    what: "a call that was made is forgotten with a corrected reference",
    file: `${SCREENS}/root.tsx`,
    from: "const yes = { asked, ready, same, begun, calls, passed };",
    to: "const yes = { asked, ready, same, begun, passed };",
    reference: true,
  },
  {
    what: "a session goes on below a call",
    file: `${SCREENS}/today.tsx`,
    from: "  if (call) {",
    to: "  if (call && begun === undefined) {",
  },
  {
    what: "an exercise of a tissue that was stopped is offered",
    file: `${SCREENS}/session.tsx`,
    from: "const stopped = stoppedBefore(bout, session, day, app.sessions, diary);",
    to: "const stopped = undefined as never;",
  },
  {
    what: "rest after what was done does not count",
    file: `${DAY}/hold.ts`,
    from: "return near && { kind:",
    to: "return undefined && { kind:",
  },
  {
    what: "rest before what is to come does not count",
    file: `${DAY}/hold.ts`,
    from: "return next && { kind:",
    to: "return undefined && { kind:",
  },
  {
    what: "events are not kept clear of",
    file: `${DAY}/hold.ts`,
    from: "return restAfter(session, start, now, known) ?? eventsAt(session, start, known);",
    to: "return restAfter(session, start, now, known);",
  },
  {
    what: "rest lasts half as long again as it has to",
    file: `${DAY}/hold.ts`,
    from: "return minutesApart(asLaid(one), asLaid(other), groupHours);",
    to: "return 1.5 * minutesApart(asLaid(one), asLaid(other), groupHours);",
  },
  {
    what: "a session that is over holds back what comes after it",
    file: `${DAY}/hold.ts`,
    from: "if (isSame(one, session) || isOver(one) || pairs.entryOf(one)) return false;",
    to: "if (isSame(one, session) || pairs.entryOf(one)) return false;",
  },
  {
    what: "when a session was begun is not kept",
    file: `${DAY}/begun.ts`,
    from: "return [...others, `",
    to: "return [...others] || [`",
  },
  {
    what: "the sessions of a day are not all shown",
    file: `${DAY}/today.ts`,
    from: "const today = sessions.filter(({ date }) => date === now.date);",
    to: "const today = sessions.filter(({ date }) => date === now.date).slice(0, 1);",
  },
  {
    what: "a full phone is not told of",
    file: "src/phone/store/store.ts",
    from: 'if (unkept || !chosenKept) return "full";',
    to: "",
  },
  {
    what: "what a full phone does not take goes with a reload",
    file: "src/phone/store/store.ts",
    from: 'second.write(name("diary"), unkept ? text : undefined);',
    to: "",
  },
  {
    what: "undo leaves what was written",
    file: `${DAY}/acts.ts`,
    from: "entries: [...entries, ...joined].map(asBefore),",
    to: "entries: [],",
  },
  {
    what: "a joined diary leaves its last session behind",
    file: `${SCREENS}/root.tsx`,
    from: "act({ joined: entries, settings: yes }",
    to: "act({ joined: entries.slice(0, -1), settings: yes }",
    reference: true,
  },
  {
    what: "the exported file lacks the morning",
    file: `${SCREENS}/bring.tsx`,
    from: "new File([diaryCsv(diary)]",
    to: "new File([diaryCsv({ ...diary, entries: diary.entries.map((one) => ({ ...one, painMorning: undefined })) })]",
  },
];

/** The companion with one place broken; without one as it is built. */
export async function brokenCompanion(one: Break | undefined): Promise<string> {
  let changed = one === undefined;
  const breaking: Plugin = {
    name: "breaking",
    setup: ({ onLoad }) => {
      onLoad({ filter: /\.tsx?$/ }, async ({ path }) => {
        const text = await readFile(path, "utf8");
        const loader = path.endsWith("x") ? "tsx" : "ts";
        if (one === undefined || !path.endsWith(one.file)) return { contents: text, loader };
        changed = text.includes(one.from);
        return { contents: text.replace(one.from, () => one.to), loader };
      });
    },
  };
  const { outputFiles } = await build({
    entryPoints: ["src/phone/main.tsx"],
    plugins: [breaking],
    ...{ bundle: true, format: "iife", platform: "browser", target: "es2023", minify: true },
    ...{ jsx: "automatic", jsxImportSource: "preact", charset: "utf8", write: false },
    logLevel: "silent",
  });
  if (!changed) throw new Error(`${one?.file} does not say “${one?.from}” any more`);
  return outputFiles?.[0]?.text ?? "";
}
