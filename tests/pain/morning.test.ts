/** Several answers to one morning, as one: the worse of each. */
import { expect, test } from "vitest";
import { isAnswered, type Morning, worstMorning } from "../../src/pain/morning.ts";

const answer = (painMorning?: number, worseMorning?: boolean): Morning => ({
  painMorning,
  worseMorning,
});

test.each<[string, Morning[], Morning]>([
  ["none", [], answer()],
  ["nothing said", [answer(), answer()], answer()],
  ["one number", [answer(0), answer()], answer(0)],
  ["two numbers", [answer(3), answer(7)], answer(7)],
  ["the higher first", [answer(7), answer(3)], answer(7)],
  ["no worse", [answer(undefined, false), answer()], answer(undefined, false)],
  ["worse once", [answer(1, true), answer(2, false)], answer(2, true)],
  ["worse in the later", [answer(1, false), answer(0, true)], answer(1, true)],
])("%s", (_, answers, one) => {
  expect(worstMorning(answers)).toEqual(one);
  expect(isAnswered(one)).toBe(answers.some(isAnswered));
});
