import { expect, test } from "vitest";
import { testCodes } from "../../../electron/domain/tests/registry.ts";
import { athletesOf, hallOf, plainDay, still } from "./halls.ts";

/**
 * By hand: with one place at each of m stations, turns of p and a rest of r, the first athlete is done after
 * m p + (m - 1) r, and every other one p later than the one before.
 */
test("49 athletes, five stations of 2.6 min, 5 min of rest: 157.8 min, to the second", () => {
  const hall = hallOf(
    testCodes.map((code) => still(code, 156)),
    { rest: 300 },
  );
  expect(plainDay(hall, athletesOf(49)).end).toBe(157.8 * 60);
});

test.each([
  [1, 4],
  [12, 4],
  [13, 4],
  [60, 6],
  [5, 12],
])(
  "a batch station alone, %i athletes in %i lanes: ceil(n / lanes) times a heat and its change-over",
  (n, lanes) => {
    const core = still("core", 100, { lanes, changeOver: { median: 60, sigma: 0 } });
    const day = plainDay(hallOf([core]), athletesOf(n, ["core"]));
    expect(day.end).toBe(Math.ceil(n / lanes) * (100 + 60));
  },
);
