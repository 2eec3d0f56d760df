import { shuffled } from "../chance.ts";
import { type TestCode, testCodes } from "../tests/registry.ts";
import { byText, tablesOf } from "./able.ts";
import type { MarkBounds } from "./coding.ts";
import type { ToldQuasi } from "./hierarchy.ts";
import { drawIds } from "./ids.ts";
import type { ReleasedMark, ReleasedRow } from "./rule.ts";

/** A released row: nothing links it to another row or to a person. */
export interface PublishedRow {
  readonly id: string;
  readonly quasi: ToldQuasi;
  readonly marks: readonly ReleasedMark[];
}

/** Returns a row's content as text: rows of equal text differ only in their random ids. */
export function rowContent({ quasi, marks }: Pick<ReleasedRow, "quasi" | "marks">): string {
  return JSON.stringify([
    ...marks.map(({ test, variant, low, high }) => [testCodes.indexOf(test), variant, low, high]),
    ...[quasi.ageBand, quasi.category, quasi.leagueSize, quasi.quarter],
  ]);
}

/** Returns the content of all rows as one text: the same rows, in any order, give the same text. */
export function contentsOf(kept: readonly ReleasedRow[]): string {
  return JSON.stringify(kept.map(rowContent).sort(byText));
}

/**
 * Puts rows in random order under random ids, after sorting them by their own content. So neither the input's order nor
 * the generator's numbers, worked out from the ids, say anything about an athlete.
 */
export function publish(kept: readonly ReleasedRow[], random: () => number): PublishedRow[] {
  const inOrder = kept
    .map(({ quasi, marks }) => ({ quasi, marks, content: rowContent({ quasi, marks }) }))
    .sort((a, b) => byText(a.content, b.content));
  const rows = shuffled(inOrder, random);
  const ids = drawIds(rows.length, random);
  return rows.map(({ quasi, marks }, index) => ({ id: ids[index] ?? "", quasi, marks }));
}

/** The intervals of three quartiles; each holds the exact quartile (type 7), which is not reported. */
interface ToldQuartiles {
  readonly lower: MarkBounds;
  readonly median: MarkBounds;
  readonly upper: MarkBounds;
}

/** A summary of one test and variant; computed from released marks only, so that it says nothing more than they do. */
export interface TestSummary {
  readonly test: TestCode;
  readonly variant: string;
  readonly n: number;
  /** Null for fewer than {@link leastForQuartiles} marks. */
  readonly quartiles: ToldQuartiles | null;
}

/** Fewest people for a statistic; with fewer it says too much about each (a published rule of official statistics). */
export const leastForQuartiles = 10;

/** Returns one summary for each test and variant that has marks, in the order of the tests. */
export function summarise(rows: readonly Pick<ReleasedRow, "marks">[]): TestSummary[] {
  return tablesOf(rows.flatMap(({ marks }) => marks)).map(({ test, variant, rows: marks }) => {
    const sorted = marks.toSorted((a, b) => (a.low ?? -Infinity) - (b.low ?? -Infinity));
    const n = marks.length;
    if (n < leastForQuartiles) return { test, variant, n, quartiles: null };
    const at = (p: number) => spanAt(sorted, p);
    return { test, variant, n, quartiles: { lower: at(0.25), median: at(0.5), upper: at(0.75) } };
  });
}

/** Returns a quartile's interval: type 7 lies between two neighbours, so from one's lower to the other's upper end. */
function spanAt(sorted: readonly ReleasedMark[], p: number): MarkBounds {
  const place = (sorted.length - 1) * p;
  const below = sorted[Math.floor(place)];
  const above = sorted[Math.ceil(place)];
  return { low: below?.low ?? null, high: above?.high ?? null };
}
