import { expect, test } from "vitest";
import { assumedDrift, driftOf } from "../../electron/domain/statistics/drift.ts";
import { newsOf, numbered } from "../../electron/domain/statistics/news.ts";
import { normals } from "./chance.ts";
import { marksOf, start } from "./hall.ts";

/**
 * Whether "about 85 in 100 such changes are real" is so: halls of 60 athletes with two days fourteen weeks apart, whose
 * true changes have an SD of ½, 1 or 2 typical errors. The chances that were told are held against what was so.
 */
interface Case {
  readonly said: number;
  readonly so: boolean;
}

function tell(spread: number, halls: number, seed: number, informed: boolean): Case[] {
  const draw = normals(seed);
  return Array.from({ length: halls }, () => {
    const changes = Array.from({ length: 60 }, () => spread * draw());
    const people = changes.map((change) => marksOf([0, change], draw));
    const drift = informed ? driftOf(people.map(numbered), start) : assumedDrift;
    const variation = { error: start, drift };
    return people.map(([before = { date: "", value: 0 }, after = before], at): Case => {
      const { chanceReal, change } = newsOf("push-up", after, [before], variation);
      return { said: chanceReal ?? 0, so: (change ?? 0) > 0 === (changes[at] ?? 0) > 0 };
    });
  }).flat();
}

/** In each tenth of what was said that holds 500 cases: by how much more was said than was so, in points of a hundred. */
function offBy(cases: readonly Case[]): number[] {
  return [5, 6, 7, 8, 9].flatMap((tenth) => {
    const some = cases.filter(({ said }) => Math.min(9, Math.floor(10 * said)) === tenth);
    if (some.length < 500) return [];
    return (100 * some.reduce((sum, each) => sum + each.said - Number(each.so), 0)) / some.length;
  });
}

const spreads = [0.5, 1, 2];
const most = (off: readonly number[]) => Math.max(...off.map(Math.abs));
const shown = (off: readonly number[]) => off.map((by) => by.toFixed(1)).join(", ");

// Bar: within 3 in every tenth that holds 500 cases, over halls whose athletes change by ½, 1 or 2 typical errors.
test("chances that a hall's own marks inform are right", () => {
  const cases = spreads.map((spread, at) => tell(spread, 150, 60 + at, true));
  for (const [at, some] of cases.entries()) {
    console.log(`true changes of SD ${spreads[at]}: said too much by ${shown(offBy(some))} points`);
    // One kind of hall by itself: the prior of all halls still shows.
    expect(most(offBy(some))).toBeLessThan(8);
  }
  console.log(`all together: ${shown(offBy(cases.flat()))} points`);
  expect(most(offBy(cases.flat()))).toBeLessThan(3);
});

// Bar: within 10, said as an assumption (`changes` is 0). Of a change of 1.8 spreads 72 in 100 are real where the SD is ½,
// and 93 where it is 2: whatever is said, it is 10 off for one of them, and half a point more by the draw.
test("without marks of its own, a hall's chances are an assumption and about 10 in 100 off at most", () => {
  expect(assumedDrift.changes).toBe(0);
  for (const [at, spread] of spreads.entries()) {
    const off = offBy(tell(spread, 400, 90 + at, false));
    console.log(`assumed, true changes of SD ${spread}: said too much by ${shown(off)} points`);
    expect(most(off)).toBeLessThan(10.5);
  }
});
