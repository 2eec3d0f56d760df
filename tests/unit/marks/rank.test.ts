import { expect, test } from "vitest";
import { isUnfinished, middleRank, rankOf } from "../../../electron/domain/marks/rank.ts";
import { placeAmong } from "../../../electron/domain/statistics/place.ts";

const finished = (ms: number) => rankOf({ state: "complete", value: ms }) ?? Number.NaN;
const stopped = (rounds: number, reps: number) => rankOf({ state: "unfinished", rounds, reps }) ?? Number.NaN;

test("whoever stopped ranks after every finisher, and among each other by the reps done", () => {
  // An hour is the most that a circuit is believed to take.
  const inOrder = [
    finished(45_000),
    finished(3_600_000),
    stopped(2, 89),
    stopped(2, 0),
    stopped(1, 89),
    stopped(0, 0),
  ];
  expect(inOrder.toSorted((a, b) => a - b)).toEqual(inOrder);
  expect(new Set(inOrder).size).toBe(inOrder.length);
  expect(inOrder.map(isUnfinished)).toEqual([false, false, true, true, true, true]);
  expect(rankOf({ state: "incomplete", missing: ["cw"] })).toBeNull();
});

/*
 * Of forty, ten stopped; the middle finisher beats half of the 29 others who finished (14 and one equal) and all ten. By
 * Wilson 1927, z = 1.959964: of 29 alone 0.329 to 0.671; of 39, with 24.5 beaten, 0.472 to 0.762.
 */
test("with ten of forty unfinished the middle finisher is told 47 to 77 and not 32 to 68", () => {
  const others = Array.from({ length: 29 }, (_none, index) => finished(300_000 + 1000 * index));
  const own = finished(300_000 + 14_000);
  const tens = Array.from({ length: 10 }, (_none, index) => stopped(1, index));
  expect(placeAmong("lower", own, others)).toEqual({ n: 29, low: 32, high: 68 });
  expect(placeAmong("lower", own, [...others, ...tens])).toEqual({ n: 39, low: 47, high: 77 });
  expect(placeAmong("lower", stopped(1, 5), [...others, ...tens])).toMatchObject({ n: 39, low: 6, high: 29 });
});

test("the middle of a circuit counts those who stopped as worst, and is told as long as it is a finisher", () => {
  const three = [finished(300_000), finished(320_000), finished(340_000)];
  expect(middleRank(three)).toBe(320_000);
  expect(middleRank([...three, stopped(2, 0), stopped(1, 0)])).toBe(340_000);
  // Between the third finisher and the first who stopped there is no time.
  expect(middleRank([...three, stopped(2, 0), stopped(1, 0), stopped(0, 3)])).toBe(340_000);
  expect(middleRank([finished(300_000), stopped(2, 0), stopped(1, 0)])).toBeNull();
  expect(middleRank([])).toBeNull();
});
