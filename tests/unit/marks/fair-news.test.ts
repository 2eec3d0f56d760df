import { expect, test } from "vitest";
import { besideChange, fairNewsOf } from "../../../electron/domain/marks/fair-news.ts";
import { startingVariations } from "../../../electron/domain/statistics/variation.ts";

const dates = ["2025-01-10", "2025-05-10", "2025-09-10", "2026-01-10"];
const made = { position: null, restMinutes: null };

/** What is said beside the last of these push-ups, each of another day; `trials` as if there were any. */
function beside(values: readonly number[], trials: readonly (number | null)[] = []): string[] {
  const marks = values.map((value, at) => ({
    date: dates[at] ?? "",
    value,
    made: { ...made, trials: trials[at] ?? null },
  }));
  const mark = marks.at(-1);
  if (mark === undefined) throw new Error("no push-ups");
  const earlier = marks.slice(0, -1);
  const variation = startingVariations["push-up"];
  const news = fairNewsOf("push-up", mark, earlier, variation);
  return besideChange("push-up", { mark, news }, earlier, variation).map(({ key }) => key);
}

test("beside a gain after a result that was poor beside those before it stands that it was", () => {
  expect(beside([30, 31, 22, 33])).toEqual(["marks.afterPoor"]);
  expect(beside([30, 22, 33])).toEqual(["marks.afterPoor"]);
});

test("nothing of it beside a gain after a usual result, beside no gain, or where nobody can see it", () => {
  expect(beside([30, 31, 30, 40])).toEqual([]);
  expect(beside([30, 31, 22, 26])).toEqual([]);
  // One earlier result alone: nobody knows whether it was a poor one.
  expect(beside([22, 33])).toEqual([]);
});

test("a result of other trials says nothing of the last one", () => {
  expect(beside([30, 22, 33], [1, null, null])).toEqual([]);
});
