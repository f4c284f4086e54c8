/** What is said of a client's age: outside a bound, unknown where there is one, and while they grow. */
import { expect, test } from "vitest";
import { makeProgram } from "../../src/booklet.ts";
import { ageOn } from "../../src/program/age.ts";
import { change, DEMO, demoClinic, shippedText } from "../support/world.ts";

const PLAN = `${DEMO}/achilles.md`;
const PROTOCOL = "templates/protocols/achilles-heavy-slow-resistance.md";
const CARD = "exercises/calf-and-achilles/heel-raise-seated-weight.md";
const AGES = ["age-outside", "age-unknown", "growth-plates"];
const plain = change(shippedText(PROTOCOL), "age: { from: 18 }\n", "");

/** What the demo's plan is told when its client is born then; `born` undefined for not given. */
function told(born: string | undefined, files: Readonly<Record<string, string>> = {}, more = "") {
  const text = change(
    shippedText(PLAN),
    "born: 1979-05-16, ",
    born === undefined ? "" : `born: ${born}, `,
  );
  const plan = more === "" ? text : change(text, "signed:", `${more}\nsigned:`);
  const { value, faults } = makeProgram(demoClinic({ [PLAN]: plan, ...files }), PLAN);
  return {
    made: value !== undefined,
    said: faults
      .filter(({ code }) => AGES.includes(code))
      .map(({ code, level, message, hint }) => `${level} ${code}: ${message} ${hint}`),
  };
}

test.each([
  ["2008-11-30", "2026-11-30", 18],
  ["2008-12-01", "2026-11-30", 17],
  ["2008-02-29", "2027-02-28", 18],
  ["2008-02-29", "2027-03-01", 19],
])("born %s, on %s: %i", (born, day, years) => {
  expect(ageOn(born, day)).toBe(years);
});

test("an adult in a course for adults: nothing is said", () => {
  expect(told("1979-05-17")).toEqual({ made: true, said: [] });
});

test("too young for the course: it stops, and the clinician is asked for growth plates", () => {
  const { made, said } = told("2012-06-01");
  expect(made).toBe(false);
  expect(said).toEqual([
    expect.stringMatching(
      /^error age-outside: .*achilles-heavy-slow-resistance.* of 18 and over; the client is 14/,
    ),
    expect.stringMatching(/^warning growth-plates: The client is 14 .* Examine the growth plates/),
  ]);
});

test("is done where the plan accepts it, and the prompt stays", () => {
  const accept =
    "accept: [{ code: age-outside, card: achilles-heavy-slow-resistance, why: Agreed with the surgeon. }]";
  const { made, said } = told("2012-06-01", {}, accept);
  expect(made).toBe(true);
  expect(said).toEqual([
    expect.stringMatching(/^warning age-outside: .*Accepted: Agreed with the surgeon\./),
    expect.stringMatching(/^warning growth-plates/),
  ]);
});

test("an age that is not known is said where there is a bound, and only there", () => {
  expect(told(undefined).said).toEqual([
    expect.stringMatching(
      /^warning age-unknown: .*achilles-heavy-slow-resistance for people of 18 and over\. Add born/,
    ),
  ]);
  expect(told(undefined, { [PROTOCOL]: plain }).said).toEqual([]);
});

test("a card's own bound counts too, at both ends", () => {
  const card = change(shippedText(CARD), "pain: ", "age: { from: 16, to: 47 }\npain: ");
  const files = { [PROTOCOL]: plain, [CARD]: card };
  expect(told("1979-05-17", files)).toEqual({ made: true, said: [] });
  expect(told("1978-05-16", files)).toEqual({
    made: false,
    said: [expect.stringMatching(/heel-raise-seated-weight.* from 16 to 47; the client is 48/)],
  });
});
