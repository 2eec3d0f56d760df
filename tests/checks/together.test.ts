import { expect, test } from "vitest";
import { typicalError } from "../../electron/domain/statistics/change.ts";
import { newsOf } from "../../electron/domain/statistics/news.ts";
import type { SummaryMark } from "../../electron/domain/summary/day.ts";
import { movedTogether } from "../../electron/domain/summary/together.ts";
import { definitionOf, type TestCode, testCodes } from "../../electron/domain/tests/registry.ts";
import { normals } from "./chance.ts";
import { sleep } from "./sleep.ts";

function markOf(test: TestCode, athleteId: number, before: number, value: number): SummaryMark {
  const news = newsOf(test, { date: "2026-11-14", value }, [{ date: "2026-08-08", value: before }]);
  return { athleteId, test, variant: "", mark: { state: "complete", value }, news };
}

// R: t.test(extra ~ group, sleep, paired = TRUE): mean 1.58, interval 0.7001142 to 2.4598858.
test("the common move and its interval are R's", () => {
  const hours = 1_000_000;
  const [moved] = movedTogether(
    sleep.map(([one, other], at) => markOf("push-up", at, (10 + one) * hours, (10 + other) * hours)),
  );
  expect(moved?.by).toBeCloseTo(1.58 * hours, -1);
  expect(moved?.low).toBeCloseTo(0.7001142 * hours, -1);
  expect(moved?.high).toBeCloseTo(2.4598858 * hours, -1);
  expect(moved?.athletes).toBe(10);
});

/** A day of 49 athletes in five tests, who all move by so many typical errors in the first of them. */
function dayOf(moved: number, draw: () => number): SummaryMark[] {
  return testCodes.flatMap((test, at) => {
    const level = definitionOf(test).figures.middling;
    const size = typicalError(test, level);
    return Array.from({ length: 49 }, (_, athlete) => {
      const [before, now] = [level + size * draw(), level + size * (draw() + (at === 0 ? moved : 0))];
      return markOf(test, athlete, Math.round(before), Math.round(now));
    });
  });
}

// Bar: a day on which nobody moved together names any test in at most 5 %; a common move of one typical error is found.
test("what everybody moved is told when it stands clear of chance", () => {
  const draw = normals(31);
  const count = 400;
  const named = [0, 1].map((moved) => {
    const found = Array.from({ length: count }, () =>
      movedTogether(dayOf(moved, draw)).map(({ test }) => test),
    );
    const right = found.filter((tests) => tests.includes("push-up")).length / count;
    const wrong = found.filter((tests) => tests.some((each) => each !== "push-up")).length / count;
    console.log(
      `all move by ${moved} TE: push-up named on ${100 * right} %, another on ${100 * wrong} % of days`,
    );
    return { right, wrong };
  });
  const [none, one] = named;
  expect((none?.right ?? 1) + (none?.wrong ?? 1)).toBeLessThan(0.05 + 3 * Math.sqrt((0.05 * 0.95) / count));
  expect(one?.right).toBeGreaterThan(0.8);
});

test("seven athletes are too few to tell it by", () => {
  const few = Array.from({ length: 7 }, (_, at) => markOf("push-up", at, 20, 30 + (at % 2)));
  expect(movedTogether(few)).toEqual([]);
  const enough = [...few, markOf("push-up", 8, 20, 30)];
  expect(movedTogether(enough)).toMatchObject([{ test: "push-up", athletes: 8 }]);
});
