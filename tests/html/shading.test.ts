/** Shading means one thing in the whole booklet: what is done. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { ROOT } from "../support/world.ts";

/** Days of exercise, an exercise and its dose in a table, the dose on its own page, the short version of a day. */
const DONE = [".bad-day", ".calendar .busy", ".dose-box", ".doses .group th"];

const sheet = (name: string) =>
  readFileSync(join(ROOT, "templates/booklet", `${name}.css`), "utf8");

test("nothing is shaded on paper but what is done", () => {
  const shaded = ["booklet", "print", "editions", "fit"]
    .map(sheet)
    .flatMap((css) => [...css.replace(/\/\*.*?\*\//gs, "").matchAll(/([^{};]+)\{([^{}]*)\}/g)])
    .filter(([, , body = ""]) => /(background|fill)[^;]*var\(--tint\)/.test(body))
    .map(([, selector = ""]) => selector.trim());
  expect(shaded.sort()).toEqual(DONE);
});
