import { type TestCode, testCodes } from "../protocols/protocol.ts";
import { type Quartiles, quartiles } from "../statistics/quantile.ts";
import { drawIds, shuffled } from "./chance.ts";
import type { Quasi } from "./quasi.ts";
import type { Kept } from "./rule.ts";

/** A row as it leaves: nothing links it to another row or to a person; `value` in the test's grains. */
export interface PublishedRow extends Quasi {
  readonly id: string;
  readonly test: TestCode;
  readonly value: number;
}

/**
 * Rows in random order under random ids. They are put in the order of their own content first: so neither the order in
 * which they came nor the numbers of the generator, worked out backwards from the ids, say anything about an athlete.
 */
export function publish(kept: readonly Kept[], random: () => number): PublishedRow[] {
  const rows = shuffled(inOrderOfContent(kept), random);
  const ids = drawIds(rows.length, random);
  return rows.map(({ test, variant, ageBand, category, quarter, value }, index) => ({
    id: ids[index] ?? "",
    test,
    variant,
    ageBand,
    category,
    quarter,
    value,
  }));
}

function inOrderOfContent(kept: readonly Kept[]): Kept[] {
  return kept.toSorted(
    (a, b) =>
      byText(a.test, b.test) ||
      byText(a.variant, b.variant) ||
      byText(a.ageBand, b.ageBand) ||
      byText(a.category, b.category) ||
      byText(a.quarter, b.quarter) ||
      a.value - b.value,
  );
}

function byText(a: string, b: string): number {
  return a < b ? -1 : Number(a > b);
}

/** What the rows of one test and variant amount to, in grains; quartiles only of {@link leastForQuartiles} and more. */
export interface Summary {
  readonly test: TestCode;
  readonly variant: string;
  readonly n: number;
  readonly quartiles: Quartiles | null;
}

/** A statistic of fewer than ten people says too much about each (a published rule of official statistics). */
export const leastForQuartiles = 10;

/** One summary for each test and variant that has rows, in the order of the tests. */
export function summarise(rows: readonly Pick<Kept, "test" | "variant" | "value">[]): Summary[] {
  const groups = Map.groupBy(rows, ({ test, variant }) => `${testCodes.indexOf(test)} ${variant}`);
  return [...groups.entries()]
    .sort(([a], [b]) => byText(a, b))
    .flatMap(([, group]) => {
      const values = group.map(({ value }) => value);
      const middle = values.length >= leastForQuartiles ? quartiles(values) : null;
      return group.slice(0, 1).map(({ test, variant }) => ({
        test,
        variant,
        n: values.length,
        quartiles: middle,
      }));
    });
}
