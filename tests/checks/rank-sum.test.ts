import { expect, test } from "vitest";
import { differingHalls } from "../../electron/domain/reference-table/differing-halls.ts";
import { compared, type Reported } from "./compared.ts";

const exact = (hall: string, values: readonly number[], cell = "25 to 29"): Reported[] =>
  values.map((value) => ({ hall, cell, low: value, high: value + 1 }));

/**
 * The rank-sum of the first sample with its standard deviation. Each sample comes as three halls, since one that had more
 * than a third of the group would be cut: their rank-sums add up, and the variance of one says that of all by the sizes,
 * as n (N − n) does.
 */
async function rankSum(one: readonly number[], two: readonly number[]) {
  const inThree = (name: string, values: readonly number[]) =>
    values.flatMap((value, index) => exact(`${name}${index % 3}`, [value]));
  const halls = await compared([...inThree("a", one), ...inThree("b", two)]);
  const total = one.length + two.length;
  const ours = halls.filter(({ name }) => name.startsWith("a"));
  const size = Math.ceil(one.length / 3);
  const variance = ours.find(({ name }) => name === "a0")?.variance ?? Number.NaN;
  const ofAll = (variance * one.length * two.length) / (size * (total - size));
  return {
    sum: ours.reduce((sum, { above }) => sum + above, 0) * (total + 1) + (one.length * (total + 1)) / 2,
    deviation: Math.sqrt(ofAll) * (total + 1),
  };
}

test("the rank-sum with its correction for ties is that of a course's worked example", async () => {
  // S. Sawyer, Washington University, course m408 of spring 2009, program WcxRankSum2: X 68.50, tie-corrected 15.7683.
  const { sum, deviation } = await rankSum(
    [23, 21, 22, 14, 23, 19, 15, 15, 16],
    [27, 27, 22, 21, 27, 28, 19, 20, 31, 24, 21, 23, 23, 21],
  );
  expect(sum).toBeCloseTo(68.5, 1);
  expect(deviation).toBeCloseTo(15.7683, 2);
  expect((sum - 108) / deviation).toBeCloseTo(-2.505, 2);
});

test("and that of a numeric library's manual", async () => {
  // IMSL C# Numerical Library 6.5, Wilcoxon rank sum, example 2 (averaged ranks): 34.500, 4.758, 1.471. Values times ten.
  const { sum, deviation } = await rankSum([73, 69, 72, 78, 72], [74, 68, 69, 67, 71]);
  expect(sum).toBeCloseTo(34.5, 1);
  expect(deviation).toBeCloseTo(4.758, 2);
  expect((sum - 27.5) / deviation).toBeCloseTo(1.471, 2);
});

/** Every way to choose `count` of the numbers from 0 to before `n`. */
function* choices(n: number, count: number, from = 0): Generator<number[]> {
  if (count === 0) yield [];
  for (let first = from; first <= n - count && count > 0; first += 1) {
    for (const rest of choices(n, count - 1, first + 1)) yield [first, ...rest];
  }
}

test("put together over groups, its variance is that over every way to deal the results out", async () => {
  const groups = [
    { cell: "25 to 29", values: [4, 4, 5, 6, 6, 6, 9, 9, 9], ours: [0, 3, 6] },
    { cell: "30 to 34", values: [1, 2, 2, 8, 8, 3], ours: [1, 4] },
  ];
  const rows = groups.flatMap(({ cell, values, ours }) =>
    values.flatMap((value, index) =>
      exact(ours.includes(index) ? "a" : `b${index % 2}${index % 4}`, [value], cell),
    ),
  );
  const found = (await compared(rows)).find(({ name }) => name === "a");
  // Within each group mid-ranks by hand, over n + 1 (van Elteren); the sums of every deal of both groups together.
  const dealt = groups.map(({ values, ours }) => {
    const rank = (value: number) =>
      values.filter((each) => each < value).length + (values.filter((each) => each === value).length + 1) / 2;
    const sumOf = (chosen: readonly number[]) =>
      chosen.reduce((sum, index) => sum + rank(values[index] ?? 0), 0) / (values.length + 1);
    return { all: [...choices(values.length, ours.length)].map(sumOf), ours: sumOf(ours) };
  });
  const [one, two] = dealt.map(({ all }) => all);
  const together = (one ?? []).flatMap((first) => (two ?? []).map((second) => first + second));
  const mean = together.reduce((sum, each) => sum + each, 0) / together.length;
  const variance = together.reduce((sum, each) => sum + (each - mean) ** 2, 0) / together.length;
  expect(found?.above).toBeCloseTo((dealt[0]?.ours ?? 0) + (dealt[1]?.ours ?? 0) - mean, 3);
  expect(found?.variance).toBeCloseTo(variance, 3);
});

test("two halls are never told apart: there is nothing to say who of them differs", () => {
  const hall = (number: number, above: number) => {
    return { hall: number, test: "core", above, variance: 1, size: 100 };
  };
  expect(differingHalls([hall(0, 40), hall(1, -40)])).toEqual([]);
});
