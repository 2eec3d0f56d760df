import { expect, test } from "vitest";
import { inventedDays } from "../../bench/invented-days.ts";
import { hiddenBench, neighbourBench, subtractionBench } from "../../bench/neighbour.ts";

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

test.each(["marks", "profiles"] as const)(
  "on thirty invented days no mark in %s of somebody hidden is found by taking everybody else off",
  (kind) => {
    const bench = hiddenBench(inventedDays(30), kind, 5);
    // The same play finds some where nothing is done about it.
    expect(bench.foundWithout).toBeGreaterThan(0);
    expect(bench.foundWith).toBe(0);
    expect(bench.toldWith / bench.toldWithout).toBeGreaterThan(kind === "marks" ? 0.97 : 0.8);
  },
);

test("why of a day one bundle leaves: of two, most newcomers could be subtracted", () => {
  const { pairs, found } = subtractionBench(inventedDays(2), 5);
  expect(found / pairs).toBeGreaterThan(0.5);
});
