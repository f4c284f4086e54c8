/** Whether the clients who tap find out companions that are broken: `npm run taps -- broken`. */
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { type Issued, programOfSlot } from "./booklets.ts";
import { BREAKS, brokenCompanion } from "./broken.ts";
import { Tapping } from "./browser.ts";

vi.mock(import("../../../src/week/explain/explain.ts"), () => ({
  explainProgram: () => ({ collision: [], least: [], larger: [], complete: false }),
}));

/** So many programs, with clients one after the other, until one of them finds something. */
const PROGRAMS = 30;
const SEED = 1000;
const MOST_CLIENTS = Number(process.env.TAPS_CLIENTS ?? 180);

/** Whether the client gets another reference in the middle. */
const isCorrected = ({ files }: Issued): boolean =>
  new Set(files.map((file) => /"client":"([^"]*)"/.exec(file)?.[1])).size > 1;

describe.skipIf(process.env.TAPS_BROKEN === undefined)("a companion in which", () => {
  const programs: Issued[] = [];
  let tapping: Tapping;
  beforeAll(async () => {
    for (let slot = 0; slot < PROGRAMS; slot += 1) programs.push(await programOfSlot(slot));
    tapping = await Tapping.begin({ drawn: false });
  }, 600_000);
  afterAll(() => tapping?.end());

  test.each(BREAKS.map((one) => [one.what, one] as const))(
    "%s",
    {
      timeout: 600_000,
    },
    async (_, one) => {
      const code = await brokenCompanion(one);
      const own = programs.filter((issued) => !one.reference || isCorrected(issued));
      for (let n = 0; n < MOST_CLIENTS; n += 1) {
        const [issued] = own.slice(n % own.length);
        if (issued === undefined) break;
        const found: string[] = [];
        await tapping.through(issued, [SEED + n], ({ wrong }) => found.push(...wrong), code);
        if (found.length === 0) continue;
        process.stdout.write(`${one.what}: client ${n + 1}: ${found[0]?.slice(0, 160)}\n`);
        return;
      }
      expect.fail(`${MOST_CLIENTS} clients have seen nothing`);
    },
  );
});
