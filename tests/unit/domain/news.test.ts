import fc from "fast-check";
import { expect, test } from "vitest";
import { newsOf } from "../../../electron/domain/statistics/news.ts";
import { parseLength } from "../../../electron/domain/units.ts";

const earlier = [
  { date: "2026-01-17", value: 450 },
  { date: "2026-05-16", value: 430 },
];

test("a best is held against the best before, a change against the last test", () => {
  expect(newsOf("vertical", 470, earlier)).toEqual({
    standing: "best",
    bestBefore: 450,
    gainOverBest: 20,
    previous: 430,
    previousDate: "2026-05-16",
    change: 40,
    verdict: "likely gain",
  });
});

test("a first mark has no news but that it is the first", () => {
  expect(newsOf("core", 60, [])).toMatchObject({
    standing: "first",
    bestBefore: null,
    change: null,
    verdict: null,
  });
});

test("the same jump in quarter inches is never a best over itself, whatever the reach", () => {
  const quarters = fc.integer({ min: 200, max: 420 });
  fc.assert(
    fc.property(quarters, quarters, fc.integer({ min: 1, max: 160 }), (one, other, jump) => {
      const height = (reach: number) => millimetres((reach + jump) / 4) - millimetres(reach / 4);
      const news = newsOf("vertical", height(one), [{ date: "2026-01-17", value: height(other) }]);
      expect(news.standing).toBe("equal");
    }),
  );
});

function millimetres(inches: number): number {
  const parsed = parseLength(String(inches), "in");
  if (!("mm" in parsed)) throw new Error(`not read: ${inches}`);
  return parsed.mm;
}
