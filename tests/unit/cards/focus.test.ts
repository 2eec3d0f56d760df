import { expect, test } from "vitest";
import { type Compared, focusOf } from "../../../electron/domain/cards/focus.ts";
import { normalQuantile } from "../../../electron/domain/statistics/normal.ts";
import { testCodes } from "../../../electron/domain/tests/registry.ts";
import { seeded } from "../../door/desk.ts";

/** Five tests with these changes since the last test, in units of their noise. */
function changes(...values: (number | null)[]): Compared[] {
  return testCodes.map((code, index) => ({ test: code, change: values[index] ?? null, place: null }));
}

/** Five tests with these bands in one reference group. */
function places(...bands: (readonly [number, number] | null)[]): Compared[] {
  return testCodes.map((code, index) => {
    const band = bands[index] ?? null;
    return {
      test: code,
      change: null,
      place: band === null ? null : { group: "today", low: band[0], high: band[1] },
    };
  });
}

const even = (why: "few" | "alike") => ({ kind: "even", why });

test("nothing to compare with: all five evenly", () => {
  expect(focusOf([])).toEqual(even("few"));
  expect(focusOf(changes(null, null, null))).toEqual(even("few"));
  expect(focusOf(changes(-9, 3))).toEqual(even("few"));
});

test("changes that noise explains point at nothing", () => {
  expect(focusOf(changes(0, 0, 0, 0, 0))).toEqual(even("alike"));
  expect(focusOf(changes(-1, 0.5, 0.4, -0.2, 0.9))).toEqual(even("alike"));
});

test("a test that fell behind the others is named, whether it fell or they rose", () => {
  const found = { kind: "test", test: "vertical", by: "change" };
  expect(focusOf(changes(0.2, 0.1, -2.6, 0, 0.3))).toEqual(found);
  expect(focusOf(changes(2.8, 2.9, 0.2, 3, 2.7))).toEqual(found);
  expect(focusOf(changes(1, 1, 1, 1, 1))).toEqual(even("alike"));
});

test("the bar is Bonferroni's: 0.20 / 5 in one tail, over a deviation of the root of 1 + 1/4", () => {
  // Φ⁻¹(0.96) = 1.7507 (any table of the normal distribution), times √1.25 = 1.9573.
  expect(focusOf(changes(-1.957, 0, 0, 0, 0))).toEqual(even("alike"));
  expect(focusOf(changes(-1.958, 0, 0, 0, 0))).toMatchObject({ kind: "test", test: "push-up" });
});

test("a place is named when it lies below the mean of the others by more than the bands leave open", () => {
  const found = { kind: "test", test: "core", by: "place" };
  expect(focusOf(places([60, 75], [55, 70], [62, 80], [20, 40], [70, 85]))).toEqual(found);
  expect(focusOf(places([60, 75], [35, 55], [62, 80], [20, 40], [70, 85]))).toEqual(found);
  expect(focusOf(places([30, 90], [10, 70], [15, 75], [10, 60], [40, 95]))).toEqual(even("alike"));
  expect(focusOf(places([60, 75], [20, 40], [62, 80], [20, 40], [70, 85]))).toEqual(even("alike"));
  expect(focusOf(places([60, 75], null, null, [20, 40]))).toEqual(even("few"));
});

test("bands of different groups are not held against each other", () => {
  const mixed = places([60, 75], [55, 70], [62, 80], [20, 40]).map((each) =>
    each.test === "core" && each.place !== null
      ? { ...each, place: { ...each.place, group: "store" } }
      : each,
  );
  expect(focusOf(mixed)).toEqual(even("alike"));
});

test("a place is asked before a change", () => {
  const both = places([60, 75], [55, 70], [62, 80], [20, 40]).map((each, index) => ({
    ...each,
    change: index === 0 ? -5 : 0,
  }));
  expect(focusOf(both)).toEqual({ kind: "test", test: "core", by: "place" });
});

test("where both can be asked, each may be wrong for half as many", () => {
  // Φ⁻¹(0.98) = 2.0537 (any table), times √1.25 = 2.2961, beside five places that are alike.
  const alike = places([30, 70], [30, 70], [31, 70], [30, 71], [30, 70]);
  const fallen = (by: number) => alike.map((each, at) => ({ ...each, change: at === 0 ? -by : 0 }));
  expect(focusOf(fallen(2.296))).toEqual(even("alike"));
  expect(focusOf(fallen(2.297))).toMatchObject({ kind: "test", test: "push-up", by: "change" });
});

test("where nothing truly differs, a test is named for at most one athlete in five", () => {
  const random = seeded(20_261_114);
  const athletes = 4000;
  let named = 0;
  for (let index = 0; index < athletes; index += 1) {
    const values = testCodes.map(() => normalQuantile(random()));
    if (focusOf(changes(...values)).kind === "test") named += 1;
  }
  // Three standard errors of a share of 0.20 among so many.
  expect(named / athletes).toBeLessThan(0.2 + 3 * Math.sqrt((0.2 * 0.8) / athletes));
  expect(named / athletes).toBeGreaterThan(0.1);
});

test("a test that truly lags by three of its noises is found, and it is that one", () => {
  const random = seeded(7);
  let right = 0;
  let wrong = 0;
  for (let index = 0; index < 1000; index += 1) {
    const values = testCodes.map((_code, at) => normalQuantile(random()) - (at === 1 ? 3 : 0));
    const focus = focusOf(changes(...values));
    if (focus.kind === "test" && focus.test === "agility") right += 1;
    if (focus.kind === "test" && focus.test !== "agility") wrong += 1;
  }
  expect(right).toBeGreaterThan(750);
  expect(wrong).toBeLessThan(50);
});
