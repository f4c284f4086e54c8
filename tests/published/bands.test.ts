/** Elastic bands against the printed chart, and body shares in a worked example. */
import { describe, expect, test } from "vitest";
import { BANDS, bandKg } from "../../src/dose/bands.ts";
import { doseProgram } from "../../src/dose/program.ts";
import { card, program } from "../dose/fixtures.ts";

const KG_PER_LB = 0.45359237;
/** Standard gravity, 3rd CGPM 1901. */
const NEWTON_PER_KG = 9.80665;

describe("bands, printed chart (doubtful: Uchida 2016, J Phys Ther Sci 28:1266)", () => {
  test.each([
    [1, 2.4, 3.4],
    [2, 3.0, 4.3],
    [3, 3.7, 5.5],
    [4, 4.6, 6.7],
    [5, 5.8, 8.6],
    [6, 7.3, 10.2],
    [7, 10.2, 15.3],
    [8, 14.2, 21.3],
  ])("level %d: %d lb at 100 %%, %d lb at 200 %%", (level, lb100, lb200) => {
    expect((bandKg(level, 1) ?? 0) / KG_PER_LB).toBeCloseTo(lb100, 9);
    expect((bandKg(level, 2) ?? 0) / KG_PER_LB).toBeCloseTo(lb200, 9);
  });
  test("level 1 at 100 % is about 10.7 newtons", () => {
    expect((bandKg(1) ?? 0) * NEWTON_PER_KG).toBeCloseTo(10.68, 2);
  });
  test("steps are 1.23 to 1.27 up to level 6 and about 1.4 above", () => {
    const steps = BANDS.slice(1).map((band, index) => band.lb100 / (BANDS[index]?.lb100 ?? 1));
    for (const step of steps.slice(0, 5)) expect(step).toBeGreaterThan(1.22);
    for (const step of steps.slice(0, 5)) expect(step).toBeLessThan(1.27);
    for (const step of steps.slice(5)) expect(step).toBeCloseTo(1.395, 1);
  });
  test.each([
    [0, 1],
    [9, 1],
    [3, 0.5],
    [3, 2.5],
    [3, Number.NaN],
  ])("level %d at %d is not printed", (level, at) => expect(bandKg(level, at)).toBeUndefined());
});

// Worked example after Hartmann and Tünnemann: a person of 200 lb.
describe("load moved with a share of body mass", () => {
  test.each([
    ["squat", 0.86, 225, 397],
    ["chin-up", 0.94, 50, 238],
  ])("%s, share %d, with %d lb: %d lb", (_name, share, added, moved) => {
    const lifted = card({
      id: "lift",
      load: { kind: "body", body_share: share, add: "weight", with: ["barbell"] },
      dose: { sets: 1, reps: 5, per_week: 1, target: `${added} kg` },
    });
    const { value } = doseProgram(
      program({
        exercises: [{ card: lifted }],
        plan: {
          client: { name: "Client", reference: "1", body_mass: "200 kg" },
          equipment: [{ have: "barbell", loads: [`${added} kg`] }],
        },
      }),
    );
    expect(value.weeks[0]?.bouts[0]?.load.systemKg).toBeCloseTo(moved, 6);
  });
});
