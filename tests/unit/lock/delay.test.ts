import fc from "fast-check";
import { expect, test } from "vitest";
import {
  delayAfter,
  freeTries,
  longestDelayMs,
  noTries,
  settled,
  type Tries,
  tryMore,
  waitLeft,
} from "../../../electron/domain/lock/delay.ts";

test("two slips are free, then the delay doubles from 5 s to 5 minutes", () => {
  const delays = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 60].map(delayAfter);
  expect(delays).toEqual([0, 0, 0, 5, 10, 20, 40, 80, 160, 300, 300, 300].map((seconds) => seconds * 1000));
});

/** How many tries fit into so many hours for somebody who always tries as soon as it is allowed. */
function triesWithin(hours: number): number {
  let tries: Tries = noTries;
  for (let ms = 0, count = 0; ; count += 1) {
    ms += waitLeft(tries, { ms, boot: "b" });
    if (ms > hours * 3_600_000) return count;
    tries = tryMore(tries, { ms, boot: "b" });
  }
}

test("a whole day of guessing tries less than one PIN in a thousand", () => {
  expect(triesWithin(10)).toBeLessThan(130);
  expect(triesWithin(24)).toBeLessThan(1_000_000 / 1000);
});

const tick = fc.record({
  ms: fc.integer({ min: 0, max: 1e9 }),
  boot: fc.constantFrom("a", "b", "estimate:5"),
});
const tries = fc.record({ wrong: fc.integer({ min: 0, max: 50 }), since: fc.option(tick) });

test("the wait is never below zero, never longer than the delay, and whole after a new start of the machine", () => {
  fc.assert(
    fc.property(tries, tick, (kept, now) => {
      const left = waitLeft(kept, now);
      expect(left).toBeGreaterThanOrEqual(0);
      expect(left).toBeLessThanOrEqual(delayAfter(kept.wrong));
      if (kept.since?.boot !== now.boot || kept.since.ms > now.ms) expect(left).toBe(delayAfter(kept.wrong));
    }),
  );
});

test("time alone shortens the wait, by exactly what has passed", () => {
  fc.assert(
    fc.property(fc.integer({ min: freeTries + 1, max: 30 }), fc.nat(2 * longestDelayMs), (wrong, passed) => {
      const kept = { wrong, since: { ms: 1000, boot: "a" } };
      const left = waitLeft(kept, { ms: 1000 + passed, boot: "a" });
      expect(left).toBe(Math.max(0, delayAfter(wrong) - passed));
    }),
  );
});

test("settling changes no count, and settling again changes nothing", () => {
  fc.assert(
    fc.property(tries, tick, (kept, now) => {
      const once = settled(kept, now);
      expect(once.wrong).toBe(kept.wrong);
      expect(settled(once, now)).toEqual(once);
      expect(waitLeft(once, now)).toBe(waitLeft(kept, now));
    }),
  );
});
