import { expect, test } from "vitest";
import { assumedDrift, chanceReal, type Drift, driftOf } from "../../electron/domain/statistics/drift.ts";
import { assumedHall } from "../../electron/domain/statistics/hall.ts";
import { assumedLearning } from "../../electron/domain/statistics/learning.ts";
import { newsOf, numbered } from "../../electron/domain/statistics/news.ts";
import { normalShare } from "../../electron/domain/statistics/normal.ts";
import { normals } from "./chance.ts";
import { marksOf, start, truth } from "./hall.ts";

/**
 * Whether "about 85 in 100 such changes are real" is so: halls with two days fourteen weeks apart, whose true changes
 * have an SD of ½, 1 or 2 typical errors. The chances that were told are held against the share of such changes that are
 * true in their direction, which normal theory gives where the SD is known.
 */
interface Case {
  readonly said: number;
  readonly so: number;
}

/** The share of changes of so many typical errors that are true in their direction, where true ones have this SD. */
const shareReal = (change: number, spread: number) =>
  normalShare((Math.abs(change) * spread) / Math.sqrt(2 * (spread ** 2 + 2)));

interface Halls {
  readonly count: number;
  readonly athletes: number;
}

/** What is said in halls of athletes whose true changes have this SD; `learn` gives what the hall knows of changes. */
function tell(
  spread: number,
  { count, athletes }: Halls,
  learn: (people: readonly ReturnType<typeof marksOf>[]) => Drift,
): Case[] {
  const draw = normals(60 + 10 * spread);
  return Array.from({ length: count }, () => {
    const people = Array.from({ length: athletes }, () => marksOf([0, spread * draw()], draw));
    const variation = {
      error: start,
      drift: learn(people),
      learning: assumedLearning,
      hall: assumedHall,
    };
    return people.map(([before = { date: "", value: 0 }, after = before]): Case => {
      const { chanceReal: said } = newsOf("push-up", after, [before], variation);
      return { said: said ?? 0, so: shareReal((after.value - before.value) / truth, spread) };
    });
  }).flat();
}

/**
 * In each tenth of what was said that holds 500 of 9000 cases: by how much more was said than was so, in points of a
 * hundred.
 */
function offBy(cases: readonly Case[]): number[] {
  return [5, 6, 7, 8, 9].flatMap((tenth) => {
    const some = cases.filter(({ said }) => Math.min(9, Math.floor(10 * said)) === tenth);
    if (some.length < cases.length / 18) return [];
    return (100 * some.reduce((sum, each) => sum + each.said - each.so, 0)) / some.length;
  });
}

const spreads = [0.5, 1, 2];
const most = (off: readonly number[]) => Math.max(...off.map(Math.abs));
const shown = (off: readonly number[]) => off.map((by) => by.toFixed(1)).join(", ");
const informed = (people: readonly ReturnType<typeof marksOf>[]) => driftOf(people.map(numbered), start);

/** What somebody would know who was told that true changes have one of these three SDs, each as likely as the others. */
function oracle(people: readonly ReturnType<typeof marksOf>[]): Drift {
  const changes = people.map(([one, other]) => ((other?.value ?? 0) - (one?.value ?? 0)) / truth);
  const mean = changes.reduce((sum, change) => sum + change, 0) / changes.length;
  const square = changes.reduce((sum, change) => sum + (change - mean) ** 2, 0);
  const logs = spreads.map(
    (spread) => -((changes.length - 1) * Math.log(2 + spread ** 2) + square / (2 + spread ** 2)) / 2,
  );
  const top = Math.max(...logs);
  const sum = logs.reduce((all, log) => all + Math.exp(log - top), 0);
  const likely = spreads.map((spread, at) => ({
    perWeek: spread ** 2 / 14,
    weight: Math.exp((logs[at] ?? 0) - top) / sum,
  }));
  return { likely, perWeek: 1 / 14, changes: changes.length };
}

// Bar: within 3 in every tenth that holds 500 cases, over halls whose athletes change by ½, 1 or 2 typical errors and for each
// of these alone. Where true changes are of 1 it was 4.0 too little from 70 to 80 in 100: about 1.5 of it is that what days may
// move is counted in and days move nobody here, the rest that 60 athletes can't tell 1 from ½. Who is told that there are but
// these three, each as likely, is 4.2 off.
test("chances that a hall's own marks inform are right, for each SD of true changes", () => {
  const cases = spreads.map((spread) => tell(spread, { count: 300, athletes: 60 }, informed));
  for (const [at, some] of cases.entries()) {
    const best = offBy(tell(spreads[at] ?? 0, { count: 300, athletes: 60 }, oracle));
    console.log(
      `60 athletes, true changes of SD ${spreads[at]}: said too much by ${shown(offBy(some))} points;`,
      `told that there are but three SDs: ${shown(best)}`,
    );
    expect(most(offBy(some))).toBeLessThan(3);
  }
  console.log(`all together: ${shown(offBy(cases.flat()))} points`);
  expect(most(offBy(cases.flat()))).toBeLessThan(3);
});

test("from 300 athletes on they are right for each kind of hall", () => {
  for (const spread of spreads) {
    const off = offBy(tell(spread, { count: 60, athletes: 300 }, informed));
    console.log(`300 athletes, true changes of SD ${spread}: said too much by ${shown(off)} points`);
    expect(most(off)).toBeLessThan(3);
  }
});

// Bars: no more than 10 and a tenth for however few, as without marks; the others are as it stands.
test.each([
  [5, 10],
  [20, 8],
  [40, 4],
  [120, 3],
])("with %i athletes on two days they are within %f for each SD, those between too", (athletes, bar) => {
  for (const spread of [0.5, 0.7, 1, 1.4, 2]) {
    const off = offBy(tell(spread, { count: 18_000 / athletes, athletes }, informed));
    console.log(`${athletes} athletes, true changes of SD ${spread}: said too much by ${shown(off)} points`);
    expect(most(off)).toBeLessThan(bar);
  }
});

// Bar: within 3. Here each true change is drawn: it is real where it has the change's sign.
test.each(spreads)("three earlier marks, true changes of SD %f: the chances are right", (spread) => {
  const draw = normals(90 + 10 * spread);
  const cases = Array.from({ length: 300 }, () => {
    const people = Array.from({ length: 60 }, () => walk(spread, 4, draw));
    const drift = informed(people.map(({ marks }) => marks));
    const variation = { error: start, drift, learning: assumedLearning, hall: assumedHall };
    return people.map(({ marks, last }): Case => {
      const mark = marks.at(-1) ?? { date: "", value: 0 };
      const { chanceReal: said, beyond } = newsOf("push-up", mark, marks.slice(0, -1), variation);
      return { said: said ?? 0, so: Math.sign(last) === Math.sign(beyond ?? 0) ? 1 : 0 };
    });
  }).flat();
  console.log(`three earlier, true changes of SD ${spread}: said too much by ${shown(offBy(cases))} points`);
  expect(most(offBy(cases))).toBeLessThan(3);
});

/** Marks of somebody who truly changes by this SD from test to test, and the last of those changes. */
function walk(spread: number, tests: number, draw: () => number) {
  const changes = Array.from({ length: tests }, (_, at) => (at === 0 ? 0 : spread * draw()));
  const moved = changes.map((_change, at) => changes.slice(0, at + 1).reduce((sum, one) => sum + one, 0));
  return { marks: marksOf(moved, draw), last: changes.at(-1) ?? 0 };
}

// Bar: within 10, said as an assumption (`changes` is 0). Of a change of 1.8 spreads 72 in 100 are real where the SD is ½,
// and 93 where it is 2: whatever is said, it is 10 off for one of them. So it is integrated, not drawn.
test("without marks of its own, a hall's chances are an assumption and less than 10 in 100 off", () => {
  expect(assumedDrift.changes).toBe(0);
  const variance = 2 * (1 + assumedHall.variance);
  const step = 0.01;
  for (const spread of spreads) {
    const sd = Math.sqrt(2 + spread ** 2);
    const sums = [5, 6, 7, 8, 9].map(() => ({ share: 0, off: 0 }));
    for (let change = step / 2; change < 8 * sd; change += step) {
      const share = 2 * (normalShare((change + step / 2) / sd) - normalShare((change - step / 2) / sd));
      const said = chanceReal(change / Math.sqrt(variance), variance, 14, assumedDrift);
      const tenth = sums[Math.min(4, Math.floor(10 * said) - 5)];
      if (tenth === undefined) continue;
      tenth.share += share;
      tenth.off += share * (said - shareReal(change, spread));
    }
    // 500 cases of 24,000.
    const off = sums.filter(({ share }) => share > 1 / 48).map(({ share, off: sum }) => (100 * sum) / share);
    console.log(`assumed, true changes of SD ${spread}: said too much by ${shown(off)} points`);
    expect(most(off)).toBeLessThan(10);
  }
});
