import { expect, test } from "vitest";
import { differenceOfMeans, meanChange } from "../../electron/domain/statistics/mean-change.ts";
import { trueSpread } from "../../electron/domain/statistics/responses.ts";

// R's `sleep`: hours gained by ten sleepers with either of two drugs.
const first = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2];
const second = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4];

// R documentation, t.test example: t.test(extra ~ group, data = sleep, paired = TRUE) gives t = −4.0621, df = 9,
// p = 0.002833, mean −1.58, interval −2.4598858 to −0.7001142.
test("ten sleepers: mean difference, interval and chance are those of R's paired t test", () => {
  const { amount, low, high, byChance } = meanChange(first.map((value, at) => value - (second[at] ?? 0)));
  expect(amount).toBeCloseTo(-1.58, 12);
  expect(low).toBeCloseTo(-2.4598858, 7);
  expect(high).toBeCloseTo(-0.7001142, 7);
  expect(byChance).toBeCloseTo(0.002833, 6);
  // Half of the interval is 2.262157 standard errors (a table's t of 9), and t is the mean in those.
  expect(amount / ((high - low) / 2 / 2.262157)).toBeCloseTo(-4.0621, 4);
});

// The same page without pairs, Welch's test: t = −1.8608, df = 17.776, p = 0.07939, interval −3.3654832 to 0.2054832
// (from memory).
test("two groups of sleepers: difference, interval and chance are those of R's Welch test", () => {
  const { amount, low, high, byChance } = differenceOfMeans(first, second);
  expect(amount).toBeCloseTo(0.75 - 2.33, 12);
  expect(low).toBeCloseTo(-3.3654832, 6);
  expect(high).toBeCloseTo(0.2054832, 6);
  expect(byChance).toBeCloseTo(0.07939, 5);
});

test("changes all alike have no spread to be off by, and one change has no mean to tell", () => {
  expect(meanChange([2, 2, 2])).toEqual({ amount: 2, low: 2, high: 2, byChance: 0 });
  expect(meanChange([0, 0, 0])).toEqual({ amount: 0, low: 0, high: 0, byChance: 1 });
  expect(differenceOfMeans([1, 1], [1, 1])).toEqual({ amount: 0, low: 0, high: 0, byChance: 1 });
  expect(() => meanChange([2])).toThrow(RangeError);
  expect(() => differenceOfMeans([1, 2], [3])).toThrow(RangeError);
});

const known = Number.POSITIVE_INFINITY;

// Without noise it is the SD with its χ² interval: 7.83 with seven degrees of freedom, 5.18 to 15.94 (two course handouts
// after Weir 2005, as in reliability.test.ts).
test("where nothing is noise, the spread of true changes is that of the changes", () => {
  const { amount, low, high } = trueSpread(
    { square: 7.83076 ** 2, degrees: 7 },
    { square: 0, degrees: known },
  );
  expect(amount).toBeCloseTo(7.83076, 9);
  expect(low).toBeCloseTo(5.1774, 3);
  expect(high).toBeCloseTo(15.9376, 3);
});

// By hand: √(25 − 16) = 3. χ² of 24 degrees: 12.401 and 39.364 (any printed table), so that 25 lies in 15.242 to 48.383:
// less 16 below nought, and √32.383 = 5.691.
test("SD of changes 5, of noise 4: true changes of 3, between 0 and 5.69", () => {
  const { amount, low, high } = trueSpread({ square: 25, degrees: 24 }, { square: 16, degrees: known });
  expect(amount).toBeCloseTo(3, 12);
  expect(low).toBe(0);
  expect(high).toBeCloseTo(5.691, 3);
});

// χ² of 10 degrees: 3.247 and 20.483. The noise's 16 lies in 7.811 to 49.277, which widens both ends:
// √(9 + √(23.383² + 8.189²)) = √(9 + 24.775) = 5.812.
test("a noise that is not well known widens the interval", () => {
  const { amount, high } = trueSpread({ square: 25, degrees: 24 }, { square: 16, degrees: 10 });
  expect(amount).toBeCloseTo(3, 12);
  expect(high).toBeCloseTo(5.812, 2);
});

test("changes that vary less than noise tell no spread, and perhaps none at all", () => {
  expect(trueSpread({ square: 9, degrees: 24 }, { square: 16, degrees: known })).toMatchObject({
    amount: 0,
    low: 0,
  });
  expect(trueSpread({ square: 4, degrees: 60 }, { square: 16, degrees: known })).toEqual({
    amount: 0,
    low: 0,
    high: 0,
  });
});
