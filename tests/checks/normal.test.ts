import { expect, test } from "vitest";
import { normalQuantile, normalShare } from "../../electron/domain/statistics/normal.ts";

// Tables of the standard normal distribution, ten decimals, recomputed independently.
test.each([
  [0, 0.5],
  [0.5, 0.6914624613],
  [1, 0.8413447461],
  [1.645, 0.9500150945],
  [1.96, 0.9750021049],
  [2, 0.9772498681],
  [3, 0.998650102],
  [-1, 0.1586552539],
])("the share below %f is %f", (x, share) => {
  expect(Math.abs(normalShare(x) - share)).toBeLessThan(1e-10);
});

test.each([
  [0.75, 0.6744897502],
  [0.8, 0.8416212336],
  [0.9, 1.2815515655],
  [0.95, 1.644853627],
  [0.975, 1.9599639845],
  [0.99, 2.326347874],
  [0.995, 2.5758293035],
])("the quantile of %f is %f", (share, x) => {
  expect(Math.abs(normalQuantile(share) - x)).toBeLessThan(1e-10);
  expect(Math.abs(normalQuantile(1 - share) + x)).toBeLessThan(1e-10);
});

test("the series and the continued fraction meet at three without a step", () => {
  expect(normalShare(3 + 1e-12) - normalShare(3)).toBeLessThan(1e-12);
  expect(normalShare(-3) - normalShare(-3 - 1e-12)).toBeLessThan(1e-12);
});

test("the ends", () => {
  expect([normalQuantile(0), normalQuantile(1), normalQuantile(1.1)]).toEqual([
    -Infinity,
    Infinity,
    Number.NaN,
  ]);
  expect([normalShare(-Infinity), normalShare(Infinity), normalShare(Number.NaN)]).toEqual([
    0,
    1,
    Number.NaN,
  ]);
});
