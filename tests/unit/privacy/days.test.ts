import { expect, test } from "vitest";
import { inventedDays } from "../../bench/invented-days.ts";
import { neighbourBench, subtractionBench } from "../../bench/neighbour.ts";

// `npm run bench` does the same with 200 days and prints the figures.
test.each([
  ["marks", 5],
  ["marks", 11],
  ["profiles", 5],
] as const)("on thirty invented days nobody is matched from %s in groups of %d", (kind, k) => {
  const bench = neighbourBench(inventedDays(30), kind, k);
  expect(bench.certainBefore).toBeGreaterThan(0.99);
  expect([bench.certainAfter, bench.exposedAfter]).toEqual([0, 0]);
  expect(bench.leaving).toBeGreaterThan(0);
  // Really guessed by other code: one in k, and three standard errors more.
  const error = Math.sqrt(((1 / k) * (1 - 1 / k)) / bench.bibs);
  expect(bench.guessedAfter).toBeLessThanOrEqual(1 / k + 3 * error);
});

test("why of a day one bundle leaves: of two, most newcomers could be subtracted", () => {
  const { pairs, found } = subtractionBench(inventedDays(2), 5);
  expect(found / pairs).toBeGreaterThan(0.5);
});
