/** Invented clients of all kinds, each with what a colleague who knows the trade would expect of their plan. */
import { expect, test } from "vitest";
import { unmet } from "./expectations.ts";
import { clients, expectationsOf, outcomeOf } from "./outcome.ts";

test.each(clients())("%s", async (client) => {
  expect(unmet(expectationsOf(client), await outcomeOf(client)).join("\n")).toBe("");
});
