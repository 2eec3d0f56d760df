import fc from "fast-check";
import { expect, test } from "vitest";
import { type Exchange, offsetOf, toldDoubt } from "../../../electron/domain/heats/offset.ts";
import { anchorOfAnswer, createHeatClock } from "../../../renderer/sound/clock.ts";

/**
 * The bound is that of F. Cristian, "Probabilistic clock synchronization", Distributed Computing 3 (1989), 146–158: the
 * error is at most half the round trip, however it is split between the two ways.
 */

const delay = fc.double({ min: 0, max: 2_000, noNaN: true });
type Ways = readonly [there: number, back: number];

/** An exchange with a clock that is `aheadMs` ahead, each way so slow. */
function exchangeWith(aheadMs: number, [there, back]: Ways, askedAt = 1_000_000): Exchange {
  return { askedAt, answeredAt: askedAt + there + back, shownMs: askedAt + there + aheadMs };
}

test("a heat's clock after 200 exchanges with known delays: never off by over half the smallest round trip", () => {
  fc.assert(
    fc.property(
      fc.double({ min: -1e6, max: 1e6, noNaN: true }),
      fc.array(fc.tuple(delay, delay), { minLength: 200, maxLength: 200 }),
      (aheadMs, ways) => {
        const [first, ...others] = ways.map((way, index) => {
          const { shownMs, ...times } = exchangeWith(aheadMs, way, 1_000_000 + index * 250);
          return anchorOfAnswer({ elapsedMs: shownMs, ...times });
        });
        if (first === undefined) throw new Error("A clock needs an exchange.");
        const clock = createHeatClock(first);
        for (const anchor of others) clock.settle(anchor);
        const smallest = Math.min(...ways.map(([there, back]) => there + back));
        // Doubles near 1e6 ms are exact to a millionth of a ms.
        expect(Math.abs(clock.doubtMs() - smallest / 2)).toBeLessThan(1e-6);
        expect(Math.abs(clock.performanceAt(0) - -aheadMs)).toBeLessThanOrEqual(smallest / 2 + 1e-6);
      },
    ),
  );
});

test("the bound is reached where one way takes all the time; nothing is off where both take the same", () => {
  expect(offsetOf(exchangeWith(500, [80, 0]))).toEqual({ aheadMs: 540, doubtMs: 40 });
  expect(offsetOf(exchangeWith(500, [0, 80]))).toEqual({ aheadMs: 460, doubtMs: 40 });
  expect(offsetOf(exchangeWith(500, [40, 40]))).toEqual({ aheadMs: 500, doubtMs: 40 });
});

test("above 50 ms it is said how far the clock may be off, never less than it may be", () => {
  expect([0, 4, 50].map(toldDoubt)).toEqual([null, null, null]);
  expect([50.1, 100, 100.1, 240].map(toldDoubt)).toEqual([0.1, 0.1, 0.2, 0.3]);
  expect(toldDoubt(Number.POSITIVE_INFINITY)).toBeNull();
});
