/** An exercise that starts with a sign says so wherever its dose stands. */
import { describe, expect, test } from "vitest";
import { makeBooklet } from "../../src/booklet.ts";
import { calendarFile } from "../../src/calendar/calendar-file.ts";
import { issue } from "../../src/calendar/issue.ts";
import { phoneData } from "../../src/html/phone.ts";
import { PROTOCOLS, partsOf, shippedCourse, textOf } from "../support/shipped.ts";
import { DAY, demoClinic, english, shippedText } from "../support/world.ts";

const LABEL = "Start only when:";
const workspace = demoClinic();
const titleOf = (card: string) => workspace.texts.library.cards.get(card)?.card.title ?? card;

const withTitles = (sign: string): string =>
  sign.replace(/\{([a-z-]+)\}/g, (_, card: string) => `“${titleOf(card)}”`);

/** Cards that wait for a sign, phase by phase, from the text of the protocol's own file; ids in braces as titles. */
function gatesIn(protocol: string): { card: string; sign: string }[] {
  const text = shippedText(`templates/protocols/${protocol}.md`);
  return text
    .split(/^ {6}- card: /m)
    .slice(1)
    .flatMap((part) => {
      const [, sign] = /^ {8}when: (.*)$/m.exec(part) ?? [];
      return sign === undefined
        ? []
        : [{ card: part.split("\n")[0] ?? "", sign: withTitles(sign.replaceAll('"', "")) }];
    });
}

/** What comes after each place of a title; a sign may hold the title too. */
const tailsAfter = (text: string, title: string): string[] =>
  [...text.matchAll(new RegExp(title, "g"))].map(({ index }) => text.slice(index + title.length));

const GATED = PROTOCOLS.filter((protocol) => gatesIn(protocol).length > 0);

test("there are courses with such exercises", () => {
  expect(GATED).toContain("achilles-four-phases");
});

describe.each(GATED)("%s", (protocol) => {
  const { html, print, json, table, made } = shippedCourse(protocol);
  const booklet = makeBooklet(made, workspace, english(), DAY);
  const gates = gatesIn(protocol);

  test("on the phase's page under the exercise's name", () => {
    const page = textOf(partsOf(html, "phase").join(""));
    for (const { card, sign } of gates) {
      const after = tailsAfter(page, titleOf(card)).map((text) => text.slice(0, 400));
      expect(
        after.some((text) => text.includes(`${LABEL} ${sign}`)),
        card,
      ).toBe(true);
    }
  });

  test("on the exercise's own page, and on the one to hang up", () => {
    const pages = partsOf(html, "exercise").map(textOf);
    const summary = textOf(print(DAY, "summary"));
    for (const { card, sign } of gates) {
      const own = pages.filter(
        (page) => page.includes(`: ${titleOf(card)} `) && page.startsWith("Exercise"),
      );
      expect(own, card).toHaveLength(1);
      expect(own[0]).toContain(`${LABEL} ${sign}`);
      expect(
        tailsAfter(summary, titleOf(card)).some((text) => text.includes(`${LABEL} ${sign}`)),
        card,
      ).toBe(true);
    }
    const free = pages.filter(
      (page) => !gates.some(({ card }) => page.includes(`: ${titleOf(card)} `)),
    );
    expect(free.length).toBeGreaterThan(0);
    expect(free.join("")).not.toContain(LABEL);
  });

  test.each(["standard", "large"] as const)(
    "above its name in the %s diary, once for all weeks that it is in",
    (edition) => {
      const diary = partsOf(print(DAY, edition), "diary").join("");
      const parts = diary.split('<div class="diary-part">').slice(1);
      for (const { card, sign } of gates) {
        const weeks = json.weeks
          .filter(({ sessions }) =>
            sessions.some(({ bouts }) =>
              bouts.some((bout) => bout.card === card && bout.start_when === sign),
            ),
          )
          .map(({ week }) => week);
        expect(weeks.length).toBeGreaterThan(0);
        const said = parts.filter((part) => textOf(part).includes(`${LABEL} ${sign}`));
        for (const part of said) {
          const [, under = "", ...again] = textOf(part).split(`${LABEL} ${sign}`);
          expect(under.split(LABEL)[0], card).toContain(titleOf(card));
          expect(again, card).toEqual([]);
        }
        const first = parts.findIndex((part) => said.includes(part));
        const before = parts.slice(0, first).map(textOf).join(" ");
        for (const week of weeks) expect(before).not.toContain(`Week ${week}: `);
      }
    },
  );

  test("on the exercise's own page under no phase that has none", () => {
    for (const page of partsOf(html, "exercise")) {
      const groups = [...page.matchAll(/<tbody>([\s\S]*?)<\/tbody>/g)].map(([, one = ""]) => one);
      if (!groups.some((one) => one.includes(LABEL))) continue;
      for (const group of groups) expect(group).toMatch(/^\s*<tr class="group">/);
    }
  });

  test("in the calendar file, on its line", () => {
    const { value: record } = issue(booklet, made.program, undefined);
    const lines = calendarFile(booklet, record)
      .replace(/\r\n[ \t]/g, "")
      .replaceAll("\\,", ",")
      .split("\\n");
    for (const { card, sign } of gates) {
      const own = lines.filter((line) => line.includes(`${titleOf(card)}: `));
      expect(
        own.some((line) => line.endsWith(`${LABEL} ${sign}`)),
        `${card}: ${own[0]}`,
      ).toBe(true);
    }
  });

  test("in what the phone is given, in JSON and in the terminal", () => {
    const { bouts } = phoneData(booklet, english());
    const written = json.weeks.flatMap(({ sessions }) => sessions.flatMap((one) => one.bouts));
    for (const { card, sign } of gates) {
      expect(
        bouts.some((bout) => bout.card === card && bout.when === sign),
        card,
      ).toBe(true);
      expect(
        written.some((bout) => bout.card === card && bout.start_when === sign),
        card,
      ).toBe(true);
    }
    expect(table).toContain(`starts only when: ${gates[0]?.sign}`);
  });
});
