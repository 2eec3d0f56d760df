import fc from "fast-check";
import { expect, test } from "vitest";
import {
  anchorOfAnswer,
  anchorOfTap,
  betterAnchor,
  createHeatClock,
  timed,
} from "../../../renderer/sound/clock.ts";

test("a tap starts the heat at its own time stamp, however late its handler runs", () => {
  let now = 10_340;
  const clock = createHeatClock(anchorOfTap(10_000, -6_000), () => now);
  expect(clock.elapsed()).toBe(-5_660);
  expect(clock.performanceAt(0)).toBe(16_000);
  now = 20_000;
  expect(clock.elapsed()).toBe(4_000);
  expect(clock.elapsedAt(19_800)).toBe(3_800);
});

test("a time stamp of another clock is not believed: the tap is now", () => {
  const clock = createHeatClock(anchorOfTap(0, 0), () => 50_000);
  for (const stamp of [1_790_000_000_000, 50_001, 39_999, -1, Number.NaN]) {
    expect(clock.elapsedAt(stamp)).toBe(50_000);
  }
});

test("after a reload the clock is off by at most half the way there and back", () => {
  fc.assert(
    fc.property(
      fc.double({ min: -10_000, max: 3_600_000, noNaN: true }),
      fc.double({ min: 0, max: 400, noNaN: true }),
      fc.double({ min: 0, max: 400, noNaN: true }),
      (zeroAt, there, back) => {
        const askedAt = 5_000;
        const elapsedMs = askedAt + there - zeroAt;
        const anchor = anchorOfAnswer({ elapsedMs, askedAt, answeredAt: askedAt + there + back });
        expect(anchor.doubtMs).toBeCloseTo((there + back) / 2, 6);
        expect(Math.abs(anchor.zeroAt - zeroAt)).toBeLessThanOrEqual(anchor.doubtMs + 1e-6);
      },
    ),
  );
});

test("the surest anchor stays; an answer that took long never shifts a running clock", () => {
  const sure = { zeroAt: 1_000, doubtMs: 2 };
  expect(betterAnchor(sure, { zeroAt: 1_040, doubtMs: 60 })).toBe(sure);
  const surer = { zeroAt: 1_001, doubtMs: 1 };
  expect(betterAnchor(sure, surer)).toBe(surer);
});

test("an answer that contradicts by more than its doubt and a quarter of a second is another start", () => {
  const kept = { zeroAt: 1_000, doubtMs: 0 };
  const within = { zeroAt: 1_259, doubtMs: 10 };
  const beyond = { zeroAt: 1_261, doubtMs: 10 };
  expect(betterAnchor(kept, within)).toBe(kept);
  expect(betterAnchor(kept, beyond)).toBe(beyond);
});

test("a clock says how far it may be off: by the surest anchor, and anew after another start", () => {
  const clock = createHeatClock(anchorOfTap(1_000, 0));
  clock.settle({ zeroAt: 1_100, doubtMs: 120 });
  expect(clock.doubtMs()).toBe(0);
  clock.settle({ zeroAt: 5_000, doubtMs: 120 });
  expect(clock.doubtMs()).toBe(120);
  clock.settle({ zeroAt: 4_990, doubtMs: 30 });
  expect(clock.doubtMs()).toBe(30);
});

test("asking notes when it asked and when it was answered", async () => {
  const times = [100, 130];
  const noted = await timed(
    () => Promise.resolve("view"),
    () => times.shift() ?? 0,
  );
  expect(noted).toEqual({ answer: "view", askedAt: 100, answeredAt: 130 });
});
