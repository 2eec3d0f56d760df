import { tablesOf } from "../domain/privacy/able.ts";
import type { MarkBounds } from "../domain/privacy/coding.ts";
import type { PublishedRow, TestSummary } from "../domain/privacy/publish.ts";
import { protocolOf, type TestCode } from "../domain/tests/registry.ts";
import { inUnit } from "../domain/units.ts";
import { type SheetCell, writeSheet } from "../sheets/write.ts";
import type { TextFile } from "./contents.ts";

/** Returns an interval's bounds in its test's unit; null where one is open. */
export function boundsOf(
  test: TestCode,
  { low, high }: MarkBounds,
): { low: number | null; high: number | null } {
  const { grain } = protocolOf(test);
  const write = (grains: number | null) => (grains === null ? null : inUnit(grain, grains));
  return { low: write(low), high: write(high) };
}

export const quasiColumns = ["age_band", "category", "league_size", "quarter"] as const;
export const markColumns = [
  ...(["id", "test", "variant", ...quasiColumns] as const),
  ...(["mark_low", "mark_high", "unit"] as const),
] as const;
export const summaryColumns = [
  ...(["test", "variant", "n", "lower_quartile_low", "lower_quartile_high"] as const),
  ...(["median_low", "median_high", "upper_quartile_low", "upper_quartile_high", "unit"] as const),
] as const;

function quasiCells({ quasi }: PublishedRow): SheetCell[] {
  return [quasi.ageBand, quasi.category, quasi.leagueSize, quasi.quarter];
}

/** Makes marks.csv: one row per mark. */
export function marksSheet(rows: readonly PublishedRow[]): TextFile {
  const lines = rows.flatMap((row) =>
    row.marks.map((mark): SheetCell[] => {
      const { low, high } = boundsOf(mark.test, mark);
      return [row.id, mark.test, mark.variant, ...quasiCells(row), low, high, unitOf(mark.test)];
    }),
  );
  return { name: "marks.csv", text: writeSheet(markColumns, lines) };
}

/** A test and variant, and its pair of columns in profiles.csv. */
export interface ProfileTest {
  readonly test: TestCode;
  readonly variant: string;
  readonly columns: readonly [low: string, high: string];
}

/** Returns the tests reported in profiles, in the order of the tests. */
export function profileTests(rows: readonly PublishedRow[]): ProfileTest[] {
  return tablesOf(rows.flatMap(({ marks }) => marks)).map(({ test, variant }) => {
    const name = [test, variant]
      .filter((part) => part !== "")
      .join("_")
      .replaceAll("-", "_");
    return { test, variant, columns: [`${name}_low`, `${name}_high`] };
  });
}

/** Makes profiles.csv: one row per athlete; both bounds are empty where the athlete has no mark. */
export function profilesSheet(rows: readonly PublishedRow[]): TextFile {
  const tests = profileTests(rows);
  const lines = rows.map((row): SheetCell[] => [
    ...[row.id, ...quasiCells(row)],
    ...tests.flatMap(({ test, variant }) => {
      const mark = row.marks.find((one) => one.test === test && one.variant === variant);
      const { low, high } = boundsOf(test, mark ?? { low: null, high: null });
      return [low, high];
    }),
  ]);
  const columns = ["id", ...quasiColumns, ...tests.flatMap((test) => test.columns)];
  return { name: "profiles.csv", text: writeSheet(columns, lines) };
}

export function summarySheet(summaries: readonly TestSummary[]): TextFile {
  const lines = summaries.map(({ test, variant, n, quartiles }): SheetCell[] => {
    const parts = [quartiles?.lower, quartiles?.median, quartiles?.upper].flatMap((part) => {
      const { low, high } = boundsOf(test, part ?? { low: null, high: null });
      return [low, high];
    });
    return [test, variant, n, ...parts, unitOf(test)];
  });
  return { name: "summary.csv", text: writeSheet(summaryColumns, lines) };
}

export function unitOf(test: TestCode): string {
  return protocolOf(test).grain.unit;
}
