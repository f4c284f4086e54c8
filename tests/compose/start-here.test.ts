/** The first page says which session to begin with, what is done in it, and when to stop. */
import { describe, expect, test } from "vitest";
import { makeBooklet } from "../../src/booklet.ts";
import { PROTOCOLS, partsOf, shippedCourse, textOf } from "../support/shipped.ts";
import { DAY, english } from "../support/world.ts";

interface Session {
  readonly date: string;
  readonly minutes: number;
  readonly bouts: readonly {
    readonly card: string;
    readonly sets: number;
    readonly pain: { readonly kind: string; readonly during: number };
  }[];
}

describe.each(PROTOCOLS)("%s", (protocol) => {
  const { html, json, made, workspace } = shippedCourse(protocol);
  const { weeks } = json as unknown as { weeks: readonly { sessions: readonly Session[] }[] };
  const sessions = weeks.flatMap((week) => week.sessions);
  const [first] = sessions;
  const page = textOf(partsOf(html, "cover").join(""));
  const titles = ({ bouts }: Session) =>
    bouts.map(({ card }) => workspace.texts.library.cards.get(card)?.card.title ?? card);
  const startOf = (on: string | undefined) => {
    const signedOff = on === undefined ? undefined : { by: "Robin Ashdown", on };
    return makeBooklet({ ...made, signedOff }, workspace, english(), DAY).start;
  };

  test("the day, the length and the exercises of the first session stand on the first page", () => {
    expect(page).toContain("Start here: your first session");
    const day = new Date(`${first?.date}T12:00:00Z`).toLocaleDateString("en-GB", {
      day: "numeric",
      month: "long",
      year: "numeric",
      timeZone: "UTC",
    });
    expect(page).toContain(day);
    expect(page).toMatch(new RegExp(`about ${first?.minutes} minutes?`));
    for (const title of first ? titles(first) : ["no session"]) expect(page).toContain(title);
  });

  test("so does when it hurts too much", () => {
    const limits = new Set(first?.bouts.map(({ pain }) => pain.during));
    const monitored = first?.bouts.some(({ pain }) => pain.kind === "monitored");
    const says = [...limits].map((limit) =>
      monitored ? `over ${limit} out of 10? Stop this exercise` : "If it hurts, make the movement",
    );
    expect(says.some((sentence) => page.includes(sentence))).toBe(true);
  });

  test("signed in the middle of the course, the next session after that day", () => {
    const after = sessions.slice(1).find(({ date }) => date > (first?.date ?? ""));
    const start = startOf(after?.date);
    expect(start?.heading).toBe(after ? "Your next session" : "Start here: your first session");
    expect(start?.exercises.map(({ title }) => title)).toEqual(titles(after ?? (first as Session)));
  });

  test("a draft, and a course that is over, begin at the beginning", () => {
    for (const on of [undefined, "2099-01-01"])
      expect(startOf(on)?.heading).toBe("Start here: your first session");
  });
});
