/** The pace's clock, whatever happens to the clocks of the machine. Times in seconds. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { clockAfterReload, clockAt, startClock } from "../../../src/phone/pace/clock.ts";

const HOUR = 3600;
const YEAR = 365 * 24 * HOUR;
/** Both clocks at the start: the page has run for a while, on some day. */
const PERF = 100;
const WALL = 1_790_000_000;

const reading = (perf: number, wall: number, hidden = false) => ({
  perfMs: (PERF + perf) * 1000,
  wallMs: (WALL + wall) * 1000,
  hidden,
});

const started = () => startClock(reading(0, 0));

describe("after ten seconds of performance.now() in a page that was seen", () => {
  test.each<[string, number]>([
    ["and of the wall clock", 10],
    ["with the wall clock set forward by half a second from the net", 10.5],
    ["with the wall clock set back by half a second from the net", 9.5],
    ["with the wall clock set forward by an hour", 10 + HOUR],
    ["with the wall clock set back by an hour", 10 - HOUR],
    ["with the wall clock set back by a year", 10 - YEAR],
    ["with the wall clock set forward by a year", 10 + YEAR],
  ])("%s, ten seconds have passed", (_, wall) => {
    expect(clockAt(started(), reading(10, wall)).ms).toBe(10_000);
  });
});

describe("in a page that was hidden", () => {
  test.each<[string, number, number, number]>([
    ["both clocks go on", 60, 60, 60],
    ["summer time begins, which no clock here counts", 60, 60, 60],
    ["the machine slept and performance.now() stood still", 2, 602, 602],
    ["the machine slept a little", 1, 6, 6],
    ["the wall clock was put right by a second from the net", 60, 61, 60],
    ["the wall clock was set back by a second from the net", 60, 59, 60],
    ["the wall clock was set back by an hour", 60, 60 - HOUR, 60],
    ["the wall clock was set back by a year", 60, 60 - YEAR, 60],
    ["the wall clock was set forward by a year", 60, 60 + YEAR, 60],
    ["the machine slept all night: no place in an exercise lasts as long", 5, 8 * HOUR, 5],
    ["performance.now() went on all night", 8 * HOUR, 8 * HOUR, 8 * HOUR],
  ])("%s", (_, perf, wall, passed) => {
    expect(clockAt(started(), reading(perf, wall, true)).ms).toBe(passed * 1000);
  });

  test("a rounded wall clock read every second adds nothing up in an hour", () => {
    let clock = started();
    for (let s = 1; s <= HOUR; s += 1) {
      clock = clockAt(clock, reading(s, s + ((s * 7) % 10) / 10_000, true));
    }
    expect(clock.ms).toBe(HOUR * 1000);
  });
});

describe("in a page loaded anew only the wall clock is left", () => {
  test.each<[string, number, number]>([
    ["it was gone for half a minute", 30, 30],
    ["it was gone for a moment", 0, 0],
    ["the wall clock was set back by a year", -YEAR, 0],
    ["the wall clock was set forward by a year", YEAR, 0],
    ["it was gone for three days", 72 * HOUR, 0],
  ])("%s", (_, wall, passed) => {
    const clock = clockAfterReload({ ms: 7000, wallMs: WALL * 1000 }, reading(-90, wall));
    expect(clock.ms).toBe(7000 + passed * 1000);
    expect(clockAt(clock, reading(-80, wall + 10)).ms).toBe(17_000 + passed * 1000);
  });
});

test("it never goes back, and never faster than the faster of both", () => {
  const steps = fc.array(fc.tuple(fc.integer(), fc.integer(), fc.boolean()));
  fc.assert(
    fc.property(steps, (rows) => {
      let clock = startClock({ perfMs: 0, wallMs: 0, hidden: false });
      let [perfMs, wallMs] = [0, 0];
      for (const [perf, wall, hidden] of rows) {
        [perfMs, wallMs] = [perfMs + perf, wallMs + wall];
        const next = clockAt(clock, { perfMs, wallMs, hidden });
        expect(next.ms).toBeGreaterThanOrEqual(clock.ms);
        expect(next.ms - clock.ms).toBeLessThanOrEqual(Math.max(0, perf, wall));
        clock = next;
      }
    }),
  );
});
