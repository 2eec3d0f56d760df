import fc from "fast-check";
import { expect, test } from "vitest";
import { percentilesTold } from "../../electron/domain/reference-table/table.ts";
import { normalShare } from "../../electron/domain/statistics/normal.ts";
import { leastToCompare, percentileRank, wilsonInterval } from "../../electron/domain/statistics/place.ts";
import { placeBetween } from "../../electron/domain/statistics/place-between.ts";
import { placeInPercentiles } from "../../electron/domain/statistics/place-in-percentiles.ts";
import { groupsOfMarks } from "../unit/place/groups-of-marks.ts";
import { normals } from "./chance.ts";

/** A mark told as an interval of `step` grains, with what it counts for. */
interface Told {
  readonly low: number;
  readonly weight: number;
}

/**
 * The percentiles of marks told in steps, by a plain count that shares nothing with the merge: type 7 of Hyndman & Fan
 * (The American Statistician 50(4), 1996) taken outward; a weight stands for as many marks.
 */
function percentilesOf(marks: readonly Told[], step: number) {
  const sorted = marks.toSorted((a, b) => a.low - b.low);
  const total = sorted.reduce((sum, { weight }) => sum + weight, 0);
  const first = (reached: (sum: number) => boolean) => {
    let sum = 0;
    const found = sorted.find(({ weight }) => {
      sum += weight;
      return reached(sum);
    });
    return (found ?? sorted.at(-1))?.low ?? 0;
  };
  return percentilesTold
    .filter((percentile) => Math.min(percentile, 100 - percentile) * total >= 500)
    .map((percentile) => {
      const place = ((total - 1) * percentile) / 100;
      const low = first((sum) => sum > place);
      return { percentile, low, high: first((sum) => sum >= place + 1) + step };
    });
}

test("the band holds the one of the marks behind the table, told as intervals and exactly", () => {
  fc.assert(
    fc.property(groupsOfMarks, ({ better, marks, step, value, reach, equalWithin }) => {
      const lows = marks.map((mark) => Math.floor(mark / step) * step);
      const percentiles = percentilesOf(
        lows.map((low) => ({ low, weight: 1 })),
        step,
      );
      const group = { marks: marks.length, countsAs: marks.length, percentiles };
      const band = placeInPercentiles(better, value, group, equalWithin, reach);
      const intervals = lows.map((low) => ({ low, high: low + step, count: 1 }));
      const between = placeBetween(better, value, intervals, equalWithin, reach);
      expect(band?.n).toBe(between?.n);
      expect(band?.low).toBeLessThanOrEqual(between?.low ?? -1);
      expect(band?.high).toBeGreaterThanOrEqual(between?.high ?? 101);
      // By brute force, from the very marks: the rank itself, with chance on top.
      const n = marks.length;
      for (const mark of [value - Math.floor(reach), value, value + Math.floor(reach)]) {
        const { low, high } = wilsonInterval((percentileRank(better, mark, marks, equalWithin) / 100) * n, n);
        expect(band?.low).toBeLessThanOrEqual(100 * low);
        expect(band?.high).toBeGreaterThanOrEqual(100 * high);
      }
    }),
  );
});

test("it is no wider than the percentiles make it: by a twentieth of the group at each end, where all are told", () => {
  // 2,000 different marks: the percentiles of a group this large are two grains wide at most.
  const marks = Array.from({ length: 2000 }, (_none, index) => index);
  const told = marks.map((low) => ({ low, weight: 1 }));
  const group = { marks: 2000, countsAs: 2000, percentiles: percentilesOf(told, 1) };
  for (let value = 0; value < 2000; value += 37) {
    const band = placeInPercentiles("higher", value, group, 0, 50);
    const exact = placeBetween(
      "higher",
      value,
      marks.map((low) => ({ low, high: low + 1, count: 1 })),
      0,
      50,
    );
    expect((exact?.low ?? 0) - (band?.low ?? 0)).toBeLessThanOrEqual(7);
    expect((band?.high ?? 0) - (exact?.high ?? 0)).toBeLessThanOrEqual(7);
  }
});

/** t_{0.975} with so many degrees of freedom, from a printed table (Fisher & Yates 1963, table III). */
const tTable = { 5: 2.571, 7: 2.365, 11: 2.201, 29: 2.045, 99: 1.984 } as const;

interface Sport {
  /** Marks of each hall that sent some. */
  readonly halls: readonly number[];
  /** Share of the variance of marks that lies between halls. */
  readonly alike: number;
  /** Standard deviation of what an athlete shows on different days, and the steps in which marks are told. */
  readonly error: number;
  readonly step: number;
}

const spread = 60;
/** As marks are: a third of the spread is the day's, and they are told in coarse steps. */
const usual = { error: 20, step: 30 };
/** Nothing but the others is uncertain. */
const exact = { error: 0, step: 1 };
const evenly = (halls: number, marks: number) => Array.from({ length: halls }, () => marks);

/** The largest c with c ≤ a third of all min(n, c), by trying. */
function capOf(halls: readonly number[]): number {
  let cap = Math.max(...halls);
  while (cap > 1 && 3 * cap > halls.reduce((sum, n) => sum + Math.min(n, cap), 0)) cap -= 1;
  return cap;
}

/**
 * A group of a table of these halls. The number of independent marks: the design effect (Kish 1965, Survey Sampling) of
 * the halls' mean ridits (Bross 1958, Biometrics 14), with Student's t for how few halls it was estimated from.
 */
function groupOf({ halls, alike, step }: Sport, draw: () => number) {
  const cap = capOf(halls);
  const [between, within] = [spread * Math.sqrt(alike), spread * Math.sqrt(1 - alike)];
  const told = halls.map((n) => {
    const middle = 1000 + between * draw();
    return Array.from({ length: n }, (): Told => {
      return { low: Math.floor((middle + within * draw()) / step) * step, weight: Math.min(1, cap / n) };
    });
  });
  const all = told.flat();
  const total = all.reduce((sum, { weight }) => sum + weight, 0);
  const ofLow = Map.groupBy(all, ({ low }) => low);
  const ridits = new Map<number, number>();
  let below = 0;
  for (const [low, equal] of [...ofLow].sort(([a], [b]) => a - b)) {
    const weight = equal.reduce((sum, each) => sum + each.weight, 0);
    ridits.set(low, (below + weight / 2) / total);
    below += weight;
  }
  const ridit = ({ low }: Told) => ridits.get(low) ?? 0.5;
  const variance = all.reduce((sum, each) => sum + each.weight * (ridit(each) - 0.5) ** 2, 0) / total;
  const plain = (variance * all.reduce((sum, { weight }) => sum + weight ** 2, 0)) / total ** 2;
  const clustered = told.reduce((sum, marks) => {
    const weight = marks.reduce((all, each) => all + each.weight, 0);
    const mean = marks.reduce((all, each) => all + each.weight * ridit(each), 0) / weight;
    return sum + (weight / total) ** 2 * (mean - 0.5) ** 2;
  }, 0);
  const effect = Math.max(1, ((halls.length / (halls.length - 1)) * clustered) / plain);
  const t = tTable[(halls.length - 1) as keyof typeof tTable];
  const counted = Math.floor(total);
  const countsAs = Math.min(counted, Math.max(1, Math.floor(counted / (effect * (t / 1.96) ** 2))));
  return { marks: counted, countsAs, percentiles: percentilesOf(all, step) };
}

// Bar: at least 95 % in every sport, of athletes of halls that sent nothing.
test.each<[string, Sport]>([
  ["6 halls of 100, hardly alike", { halls: evenly(6, 100), alike: 0.02, ...usual }],
  ["8 halls of 60", { halls: evenly(8, 60), alike: 0.1, ...usual }],
  ["12 halls, one of them half of all", { halls: [...evenly(11, 30), 330], alike: 0.1, ...usual }],
  ["30 halls of 30", { halls: evenly(30, 30), alike: 0.1, ...usual }],
  ["30 halls of 30 that differ much", { halls: evenly(30, 30), alike: 0.3, ...usual }],
  ["8 halls of 60, nothing else uncertain", { halls: evenly(8, 60), alike: 0.1, ...exact }],
  [
    "30 halls of 30 that differ much, nothing else uncertain",
    { halls: evenly(30, 30), alike: 0.3, ...exact },
  ],
  ["100 halls of 40", { halls: evenly(100, 40), alike: 0.1, ...usual }],
])("an athlete's true place is inside: %s", (name, sport) => {
  const draw = normals(name.length + sport.halls.length);
  const { error } = sport;
  const reach = 1.96 * error;
  const [groups, athletes] = [60, 50];
  let [held, heldPlain, all, told, width, counts] = [0, 0, 0, 0, 0, 0];
  for (let at = 0; at < groups; at += 1) {
    const group = groupOf(sport, draw);
    counts += group.countsAs / groups;
    if (group.countsAs >= leastToCompare) told += 1;
    for (let athlete = 0; athlete < athletes; athlete += 1) {
      const truth = Math.sqrt(spread ** 2 - error ** 2) * draw();
      const mark = Math.round(1000 + truth + error * draw());
      const place = 100 * normalShare(truth / spread);
      const band = placeInPercentiles("higher", mark, group, 0, reach);
      const plain = placeInPercentiles("higher", mark, { ...group, countsAs: group.marks }, 0, reach);
      all += 1;
      if (band !== null && band.low <= place && place <= band.high) held += 1;
      if (plain !== null && plain.low <= place && place <= plain.high) heldPlain += 1;
      width += ((band?.high ?? 0) - (band?.low ?? 0)) / (groups * athletes);
    }
  }
  const percent = (count: number) => ((100 * count) / all).toFixed(1);
  console.log(
    `${name}: inside in ${percent(held)} % (all marks taken as independent: ${percent(heldPlain)} %), counts as ` +
      `${Math.round(counts)} of ${capOf(sport.halls)} a hall, band ${width.toFixed(0)} wide, told of ${told} of ${groups}`,
  );
  expect(held / all).toBeGreaterThan(0.95);
  // Where nothing hides it, as many marks as there are would promise too much.
  if (error === 0) expect(heldPlain / all).toBeLessThan(0.95);
});
