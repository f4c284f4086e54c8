/** Signs to go back a step name exercises that this client has in the booklet, or say to do less. */
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { makeBooklet, makeProgram } from "../../src/booklet.ts";
import { loadAssets } from "../../src/html/assets.ts";
import { renderHtml } from "../../src/html/html.ts";
import { loadWords } from "../../src/words/load-words.ts";
import { openWorkspace } from "../../src/workspace.ts";
import { partsOf, shippedCourse, textOf } from "../support/shipped.ts";
import { asSigned } from "../support/signed.ts";
import { change, DAY, demoClinic, ROOT, shippedText, worldWith } from "../support/world.ts";

const phasesOf = (html: string): string => textOf(partsOf(html, "phase").join(""));

const LESS = "Do less of what you do now, and take your time. If that does not help, call us.";
const STIFF = "Your heel cord is more stiff the morning after";

interface Row {
  readonly what: string;
  readonly protocol: string;
  readonly plan?: string;
  readonly says?: readonly string[];
  readonly never?: readonly string[];
}

const leaveOut = (card: string, more = "") =>
  `leave_out: [{ card: ${card}, ${more}why: It did not help. }]`;

const ROWS: readonly Row[] = [
  {
    what: "an exercise that is done only in place of another",
    protocol: "hamstring-lowering-ten-weeks",
    says: [
      "You fall from the start in two sessions running. Do “Kneel and lean forward part of the way” for a week in its place.",
    ],
  },
  {
    what: "an exercise of the phase",
    protocol: "hamstring-first-weeks",
    says: [
      "Your thigh is more sore the next morning. Do only “Dig your heel in and hold”, with less push.",
      "Your thigh turns blue or swells. Stop and call us.",
    ],
  },
  {
    what: "one that the plan leaves out, and nothing is below it",
    protocol: "hamstring-first-weeks",
    plan: leaveOut("heel-dig-hold"),
    says: [`Your thigh is more sore the next morning. ${LESS}`],
    never: ["Dig your heel"],
  },
  {
    what: "one that the plan swaps",
    protocol: "hamstring-first-weeks",
    plan: "swap: [{ card: heel-dig-hold, to: heel-slide-out, dose: { sets: 2, reps: 8, effort: 3, per_week: 2 }, why: He likes it. }]",
    says: ["Do only “Lift your hips and let your heels slide away”, with less push."],
    never: ["Dig your heel"],
  },
  {
    what: "one that the plan leaves out of this phase alone",
    protocol: "achilles-four-phases",
    plan: leaveOut("heel-raise-two-legs-floor", "phase: begin, "),
    never: ["Do “Rise up on both legs on the floor” in its place."],
  },
  {
    what: "a sign of an exercise that the plan leaves out",
    protocol: "achilles-four-phases",
    plan: leaveOut("hops-two-legs"),
    says: [`${STIFF} a run, two times running. Do not run for a week.`],
    never: [`${STIFF} “`, "Hop on the spot"],
  },
  {
    what: "a sign of an exercise that is there",
    protocol: "achilles-four-phases",
    says: [
      `${STIFF} “Hop on the spot on both legs”, two times running. Leave it out for a week.`,
      "You cannot finish “Rise up on one leg on the floor” for pain. Do “Rise up on both legs on the floor” in its place.",
    ],
  },
];

test.each(ROWS)("$protocol: $what", ({ protocol, plan, says = [], never = [] }) => {
  const page = phasesOf(shippedCourse(protocol, plan === undefined ? {} : { more: plan }).html);
  for (const text of says) expect(page).toContain(text);
  for (const text of never) expect(page).not.toContain(text);
  expect(page).not.toMatch(/[{}]/);
});

describe("in German", () => {
  const FILE = "templates/protocols/achilles-heavy-slow-resistance";
  const NAMED = "heel-raise-one-leg-step-weight";
  const words = loadWords("de", "de-DE");

  /** The German demo, with the second sign to go back naming a card in the protocol and in its translation. */
  function german(original: string, translated: string) {
    const files = {
      [`${FILE}.md`]: change(
        shippedText(`${FILE}.md`),
        "- Your heel cord is more sore or stiff the next morning, two times running.",
        `- "You cannot do it. Do {${original}} slowly."`,
      ),
      [`${FILE}.de.md`]: change(
        shippedText(`${FILE}.de.md`),
        "- Ihre Sehne am Morgen danach mehr wehtut oder steifer ist, zwei Mal in Folge.",
        `- "Es geht nicht mehr. Machen Sie {${translated}} langsam."`,
      ),
    };
    const workspace = openWorkspace({
      tree: worldWith(files),
      clinicFolder: "templates/demo-de",
      shipped: ".",
      today: DAY,
    });
    return { workspace, ...makeProgram(workspace, "templates/demo-de/achilles.md") };
  }

  test("the card's German title stands in German quotation marks", async () => {
    const { workspace, value } = german(NAMED, NAMED);
    if (!value) throw new Error("no program");
    const booklet = makeBooklet(asSigned(value), workspace, words, DAY);
    const html = renderHtml(booklet, await loadAssets(join(ROOT, "templates"), words));
    const title = workspace.texts.library.cards.get(NAMED)?.card.title;
    expect(title).toMatch(/^Mit Gewicht|Bein/);
    expect(phasesOf(html)).toContain(`Es geht nicht mehr. Machen Sie „${title}“ langsam.`);
  });

  test("a translation that names another exercise is not used", () => {
    const { workspace } = german(NAMED, "heel-raise-seated-weight");
    expect(workspace.faults.map(({ message, hint }) => `${message} ${hint}`)).toContain(
      `The line does not name the exercises that the protocol names in it. It names: {${NAMED}}.`,
    );
  });
});

test("a card that is not there is an error of the protocol, at its line", () => {
  const file = "templates/protocols/hamstring-first-weeks.md";
  const text = change(shippedText(file), "Do only {heel-dig-hold}", "Do only {heel-dig-holds}");
  const line = text.split("\n").findIndex((one) => one.includes("{heel-dig-holds}")) + 1;
  const workspace = demoClinic({ [file]: text });
  const [fault] = workspace.faults.filter(({ code }) => code === "unknown-card");
  expect(fault).toMatchObject({
    level: "error",
    message: "There is no card heel-dig-holds.",
    hint: "Did you mean heel-dig-hold?",
    place: { file, line },
  });
});
