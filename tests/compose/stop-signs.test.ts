/** What a client with a health flag is told to stop for: on every page that lists signs, on the phone, in print. */
import { describe, expect, test } from "vitest";
import { partsOf, shippedCourse, textOf } from "../support/shipped.ts";
import { DAY } from "../support/world.ts";

const HEAD =
  "You fall hard or knock your head while you take a blood thinner, even if you feel well";
const ALONE = "A fall, or a new injury";
const LIGHT = "A light fall with no knock to your head, or a new injury";

const ofFlags = (protocol: string, flags: string) => {
  const made = shippedCourse(protocol, { more: `flags: [${flags}]` });
  return { ...made, summary: made.print(DAY, "summary"), large: made.print(DAY, "large") };
};

describe.each(["blood-thinners", "blood-clot-treated", "falls-risk, blood-thinners"])(
  "with %s",
  (flags) => {
    const { html, summary, large } = ofFlags("knee-tendon-holds", flags);

    test("a knock to the head is an emergency, and a fall alone is never a call for the same day", () => {
      for (const file of [html, large]) {
        const [stop = ""] = partsOf(file, "stop-page");
        const [emergency = "", call = ""] = stop.split('<div class="call">').map(textOf);
        expect(emergency).toContain("Call 999 at once");
        expect(emergency).toContain(HEAD);
        expect(call).toContain(LIGHT);
      }
      for (const file of [html, large, summary]) expect(textOf(file)).not.toContain(ALONE);
      expect(textOf(summary)).toContain(LIGHT);
    });

    test("it stands wherever signs to stop are listed", () => {
      for (const file of [html, large]) {
        const boxes = [...partsOf(file, "exercise"), ...partsOf(file, "easier")].flatMap((part) =>
          part.split("Stop and call us if").slice(1),
        );
        expect(boxes.length).toBeGreaterThan(0);
        for (const box of boxes) expect(textOf(box)).toContain(`Call 999 at once if: ${HEAD}`);
      }
      const [, box = ""] = summary.split('<div class="stop-box">');
      expect(textOf(box)).toContain(`Call 999 at once if: ${HEAD}`);
    });
  },
);

test("without such a flag the general words stand, and nothing is said of it", () => {
  const { html } = shippedCourse("knee-tendon-holds");
  expect(textOf(html)).toContain(ALONE);
  expect(textOf(html)).not.toContain("blood thinner");
});
