import type { BundleFile } from "../../../electron/bundle/bundle-file.ts";
import { seededChance } from "../../../electron/domain/chance.ts";
import { ladders } from "../../../electron/domain/privacy/ladder.ts";
import type { ReleasedMark } from "../../../electron/domain/privacy/rule.ts";
import { protocolOf, testCodes } from "../../../electron/domain/tests/registry.ts";
import { makeBundle, type Told } from "./making.ts";

/**
 * Invented bundles, each with about so many rows: groups of five to fourteen that are alike, of all tests, in steps of their
 * ladders, with open ends, two ways to hold the push-ups, ages and categories told or not, from two years, of some of
 * which the quarter is told. The same ones each time.
 */
export function* manyBundles(count: number, rowsEach: number): Generator<BundleFile> {
  const random = seededChance([1, 2, count, rowsEach]);
  const pick = <Value>(values: readonly [Value, ...Value[]]): Value =>
    values[Math.floor(random() * values.length)] ?? values[0];
  for (let index = 0; index < count; index += 1) {
    const rows: Told[] = [];
    const category = pick(["told", "not told"] as const);
    const ageBand = pick(["told", "not told"] as const);
    let left = rowsEach;
    while (left >= 5) {
      const size = left < 15 ? left : 5 + Math.floor(random() * 5);
      rows.push({
        count: size,
        marks: [markOf(random, pick)],
        category: category === "told" ? pick(["women", "men", "open"]) : category,
        quarter: quarters[index % quarters.length] ?? "2026",
        ageBand: ageBand === "told" ? pick(["20 to 24", "25 to 29", "30 to 34", "unknown"]) : ageBand,
      });
      left -= size;
    }
    yield makeBundle({ rows, seed: index + 1, bpm: pick([40, 40, 50]) });
  }
}

const quarters = ["2025", ...[1, 2, 3, 4].map((number) => `2025-Q${number}`), "2026-Q1", "2026-Q2", "2026"];

type Pick = <Value>(values: readonly [Value, ...Value[]]) => Value;

function markOf(random: () => number, pick: Pick): ReleasedMark {
  const test = pick(testCodes);
  const { steps, usual } = ladders[test];
  const step = pick(steps);
  const [from, to] = usual;
  const low = Math.floor((from + random() * (to - from)) / step) * step;
  const [variant = ""] = protocolOf(test).variants;
  const end = random();
  const bounds = { low: end < 0.15 ? null : low, high: end > 0.85 ? null : low + step };
  return { test, variant: test === "push-up" ? pick(["full", "knee"]) : variant, ...bounds };
}
