import { type TestCode, testCodes } from "../tests/registry.ts";
import { byText, tablesOf } from "./able.ts";
import { drawIds, shuffled } from "./chance.ts";
import type { MarkBounds } from "./coding.ts";
import type { ToldQuasi } from "./hierarchy.ts";
import type { ReleasedMark, ReleasedRow } from "./rule.ts";

/** A row as it leaves: nothing links it to another row or to a person. */
export interface PublishedRow {
  readonly id: string;
  readonly quasi: ToldQuasi;
  readonly marks: readonly ReleasedMark[];
}

/** All that a row says, as text: rows of equal text can't be told apart by anything but their random ids. */
export function rowContent({ quasi, marks }: Pick<ReleasedRow, "quasi" | "marks">): string {
  return JSON.stringify([
    ...marks.map(({ test, variant, low, high }) => [testCodes.indexOf(test), variant, low, high]),
    ...[quasi.ageBand, quasi.category, quasi.leagueSize, quasi.quarter],
  ]);
}

/** What all rows say together, whoever they belong to: the same rows give the same text. */
export function contentsOf(kept: readonly ReleasedRow[]): string {
  return JSON.stringify(kept.map(rowContent).sort(byText));
}

/**
 * Rows in random order under random ids. They are put in the order of their own content first: so neither the order in
 * which they came nor the numbers of the generator, worked out backwards from the ids, say anything about an athlete.
 */
export function publish(kept: readonly ReleasedRow[], random: () => number): PublishedRow[] {
  const inOrder = kept
    .map(({ quasi, marks }) => ({ quasi, marks, content: rowContent({ quasi, marks }) }))
    .sort((a, b) => byText(a.content, b.content));
  const rows = shuffled(inOrder, random);
  const ids = drawIds(rows.length, random);
  return rows.map(({ quasi, marks }, index) => ({ id: ids[index] ?? "", quasi, marks }));
}

/** Where three quartiles lie; each interval holds the exact one (type 7), which is not told. */
interface ToldQuartiles {
  readonly lower: MarkBounds;
  readonly median: MarkBounds;
  readonly upper: MarkBounds;
}

/** What the marks of one test and variant amount to; worked out from what leaves alone, so that it says nothing more. */
export interface TestSummary {
  readonly test: TestCode;
  readonly variant: string;
  readonly n: number;
  /** Only of {@link leastForQuartiles} and more. */
  readonly quartiles: ToldQuartiles | null;
}

/** A statistic of fewer than ten people says too much about each (a published rule of official statistics). */
export const leastForQuartiles = 10;

/** One summary for each test and variant that has marks, in the order of the tests. */
export function summarise(rows: readonly Pick<ReleasedRow, "marks">[]): TestSummary[] {
  return tablesOf(rows.flatMap(({ marks }) => marks)).map(({ test, variant, rows: marks }) => {
    const sorted = marks.toSorted((a, b) => (a.low ?? -Infinity) - (b.low ?? -Infinity));
    const n = marks.length;
    if (n < leastForQuartiles) return { test, variant, n, quartiles: null };
    const at = (p: number) => spanAt(sorted, p);
    return { test, variant, n, quartiles: { lower: at(0.25), median: at(0.5), upper: at(0.75) } };
  });
}

/** Type 7 lies between two neighbours: from the lower bound of the one to the upper bound of the other. */
function spanAt(sorted: readonly ReleasedMark[], p: number): MarkBounds {
  const place = (sorted.length - 1) * p;
  const below = sorted[Math.floor(place)];
  const above = sorted[Math.ceil(place)];
  return { low: below?.low ?? null, high: above?.high ?? null };
}
