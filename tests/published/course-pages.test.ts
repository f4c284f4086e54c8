/** What the pages of each shipped course print, against the table that its source prints. */
import { describe, expect, test } from "vitest";
import { printedText } from "./course-json.ts";
import { type Client, course } from "./course-support.ts";

const both = (cards: readonly string[]) =>
  cards.map((card) => ({ card, side: "both" as const, kg: 80, reps: 10 }));

/** Source, the client, and rows of weeks and words as the page has them. */
const COURSES: readonly (readonly [string, Client, readonly string[]])[] = [
  [
    "Beyer et al. 2015, Am J Sports Med 43:1704",
    {
      protocol: "achilles-heavy-slow-resistance",
      measures: both([
        "heel-raise-seated-weight",
        "heel-press-leg-press",
        "heel-raise-standing-weight",
      ]),
    },
    [
      "Week 1 3 sets of 15",
      "Weeks 2 to 3 3 sets of 12",
      "Weeks 4 to 5 4 sets of 10",
      "Weeks 6 to 8 4 sets of 8",
      "Weeks 9 to 12 4 sets of 6",
    ],
  ],
  [
    "Kongsgaard et al. 2009, Scand J Med Sci Sports 19:790",
    {
      protocol: "knee-tendon-heavy-slow-resistance",
      measures: both(["squat-weight", "leg-press-two-legs", "hack-squat"]),
    },
    ["Week 1 4 sets of 15", "Weeks 2 to 3 4 sets of 12", "Weeks 9 to 12 4 sets of 6"],
  ],
  [
    "Mjølsnes et al. 2004, Scand J Med Sci Sports 14:311",
    { protocol: "hamstring-lowering-ten-weeks" },
    [
      "Week 1 2 sets of 5",
      "Week 2 2 sets of 6",
      "Week 3 3 sets of 6 to 8",
      "Week 4 3 sets of 8 to 10",
      "Weeks 5 to 10 3 sets: 12, 10, 8",
    ],
  ],
  [
    "Polglass et al. 2019, BMJ Open Sport Exerc Med 5:e000570",
    { protocol: "groin-side-lift-eight-weeks", side: "both" },
    [
      "Week 1 2 sets of 6 holds, 20 seconds each",
      "Week 2 2 sets of 6 holds, 20 seconds each",
      "Week 3 3 sets of 6 holds, 20 seconds each",
      "Week 4 3 sets of 8 holds, 20 seconds each",
      "Week 5 3 sets of 8 holds, 20 seconds each",
      "Week 6 3 sets of 6",
      "Week 7 3 sets of 8",
      "Week 8 3 sets of 10",
    ],
  ],
  [
    "Yousefzadeh et al. 2018, Rehabil Res Pract 2018:8146819",
    { protocol: "groin-two-parts-ten-weeks", side: "both" },
    [
      "Weeks 1 to 2 3 sets of 10 holds, 10 seconds each",
      "Weeks 1 to 2 5 sets of 10 holds, 10 seconds each",
      "Weeks 1 to 2 4 sets of 15",
      "Weeks 1 to 2 8 minutes",
      "Weeks 3 to 10 5 sets of 10",
      "Weeks 3 to 10 8 times 24 seconds",
    ],
  ],
  [
    "Rio et al. 2015, Br J Sports Med 49:1277 (soft check, from memory)",
    { protocol: "knee-tendon-holds" },
    ["Weeks 1 to 4 5 holds of 45 seconds"],
  ],
  [
    "Rathleff et al. 2015, Scand J Med Sci Sports 25:e292",
    {
      protocol: "plantar-heel-towel-raise",
      measures: [{ card: "heel-raise-towel-one-leg", side: "left", kg: 20, reps: 10 }],
    },
    ["Weeks 1 to 2 3 sets of 12", "Weeks 3 to 4 4 sets of 10", "Weeks 5 to 12 5 sets of 8"],
  ],
  [
    "Silbernagel et al. 2020, J Athl Train 55:438, table 2",
    {
      protocol: "achilles-four-phases",
      measures: [{ card: "heel-raise-one-leg-step-weight", side: "left", kg: 12, reps: 20 }],
    },
    [
      "Weeks 1 to 2 3 sets of 10 to 15",
      "Weeks 3 to 5 3 sets of 15",
      "Weeks 3 to 5 3 sets of 20",
      "Weeks 6 to 12 3 sets of 15",
    ],
  ],
];

describe.each(COURSES)("%s", (_source, client, rows) => {
  const text = printedText(course(client));
  test.each(rows.map((row) => [row]))("%s", (row) => {
    expect(text).toContain(row);
  });
});
