import { expect, test } from "vitest";
import { intraclass, type Model, type Of } from "../../electron/domain/statistics/agreement.ts";
import { twoWay } from "../../electron/domain/statistics/two-way.ts";
import { shroutAndFleiss } from "./shrout-fleiss.ts";

function near(value: number | undefined, published: number, within: number): void {
  expect(Math.abs((value ?? Number.NaN) - published), `${value} is not ${published}`).toBeLessThan(within);
}

const targets = twoWay(shroutAndFleiss);

test("mean squares of six targets and four judges", () => {
  const { between, within, columns, error } = targets;
  near(between, 11.2417, 5e-5);
  near(within, 6.2639, 5e-5);
  near(columns, 32.4861, 5e-5);
  near(error, 1.0194, 5e-5);
});

// Two decimals as published, six recomputed independently.
test.each<[Model, Of, number, number]>([
  [1, "single", 0.17, 0.165742],
  [2, "single", 0.29, 0.289764],
  [3, "single", 0.71, 0.714841],
  [1, "mean", 0.44, 0.442797],
  [2, "mean", 0.62, 0.620051],
  [3, "mean", 0.91, 0.909316],
])("ICC(%i) of a %s is %f", (model, of, published, recomputed) => {
  const value = intraclass(targets, model, of)?.value;
  near(value, published, 0.005);
  near(value, recomputed, 5e-7);
});

// The 95 % intervals of the same data by the formulas of Shrout & Fleiss 1979 and McGraw & Wong 1996 (Psychological
// Methods 1(1), 30–46), recomputed independently.
test.each<[Model, number, number]>([
  [1, -0.13293, 0.72256],
  [2, 0.01879, 0.76108],
  [3, 0.34246, 0.94586],
])("the interval of ICC(%i,1) is %f to %f", (model, low, high) => {
  const icc = intraclass(targets, model, "single");
  near(icc?.low, low, 6e-6);
  near(icc?.high, high, 6e-6);
});

// Weir 2005, J Strength Cond Res 19(1), 231–240: the same differences among unlike and among like subjects (raw rows
// from memory; the derived values recomputed independently).
const setA = [
  [146, 140],
  [148, 152],
  [170, 152],
  [90, 99],
  [157, 145],
  [156, 153],
  [176, 167],
  [205, 218],
];
const setB = [
  [166, 160],
  [168, 172],
  [160, 142],
  [150, 159],
  [147, 135],
  [146, 143],
  [156, 147],
  [155, 168],
];

test.each<[string, number[][], Model, number, number]>([
  ["A", setA, 1, 0.950053, 0.974387],
  ["A", setA, 2, 0.949975, 0.974346],
  ["A", setA, 3, 0.947016, 0.972787],
  ["B", setB, 1, 0.55891, 0.717052],
  ["B", setB, 2, 0.552749, 0.711962],
  ["B", setB, 3, 0.537728, 0.69938],
])("set %s: ICC(%#)", (_set, rows, model, single, mean) => {
  near(intraclass(twoWay(rows), model, "single")?.value, single, 6e-7);
  near(intraclass(twoWay(rows), model, "mean")?.value, mean, 6e-7);
});

// Two course handouts print, for eight subjects and the same F, a mean ICC of .973 with an interval of .864 to .995.
test("the interval of set A's averaged consistency", () => {
  const icc = intraclass(twoWay(setA), 3, "mean");
  near(icc?.value, 0.973, 5e-4);
  near(icc?.low, 0.864, 5e-4);
  near(icc?.high, 0.995, 5e-4);
});

test.each([
  ["A", setA, 7.308],
  ["B", setB, 7.364],
])(
  "set %s: the error of measurement hangs on the differences alone, and by an ICC on who was tested",
  (_set, rows, byIcc) => {
    const table = twoWay(rows);
    // The root of the error mean square, without effects of whole columns, is to be preferred (Weir 2005).
    const error = Math.sqrt(table.error);
    near(error, 7.557, 5e-4);
    const all = rows.flat();
    const mean = all.reduce((sum, value) => sum + value, 0) / all.length;
    const spread = Math.sqrt(all.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (all.length - 1));
    const icc = intraclass(table, 3, "single")?.value ?? 0;
    near(spread * Math.sqrt(1 - icc), byIcc, 6e-4);
  },
);

test("where no two values differ there is nothing to agree on, and full agreement is 1", () => {
  const models: Model[] = [1, 2, 3];
  const same = twoWay([
    [4, 4],
    [4, 4],
    [4, 4],
  ]);
  const full = twoWay([
    [4, 4],
    [7, 7],
    [9, 9],
  ]);
  expect(models.map((model) => intraclass(same, model, "single"))).toEqual([null, null, null]);
  for (const model of models) {
    expect(intraclass(full, model, "single")).toEqual({ value: 1, low: 1, high: 1 });
  }
});

test("a table that is not full, or holds no number, is refused", () => {
  expect(() => twoWay([[1, 2]])).toThrow(RangeError);
  expect(() => twoWay([[1], [2]])).toThrow(RangeError);
  expect(() => twoWay([[1, 2], [3]])).toThrow(RangeError);
  expect(() =>
    twoWay([
      [1, 2],
      [3, Number.NaN],
    ]),
  ).toThrow(RangeError);
});
