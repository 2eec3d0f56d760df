import { readFileSync } from "node:fs";
import type { TestCode } from "../domain/tests/registry.ts";

/** The query; its beginning describes its input. */
export const percentilesSql = readFileSync(new URL("percentiles.sql", import.meta.url), "utf8");

/** Creates the query's input table, in SQL that every engine knows. */
export const markTableSql = `CREATE TABLE mark (
  bundle INTEGER NOT NULL, test TEXT NOT NULL, variant TEXT NOT NULL, fingerprint TEXT NOT NULL,
  category TEXT NOT NULL, age_band TEXT NOT NULL, low INTEGER, high INTEGER, marks INTEGER NOT NULL
)`;

/** One percentile of one group, with its bounds (grains; null: open). */
export interface PercentileRow {
  readonly test: TestCode;
  readonly variant: string;
  readonly fingerprint: string;
  readonly category: string;
  readonly age_band: string;
  readonly percentile: number;
  readonly low: number | null;
  readonly high: number | null;
  /** Number of marks in the group, and of their bundles. */
  readonly n: number;
  readonly bundles: number;
}
