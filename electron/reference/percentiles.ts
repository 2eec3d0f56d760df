import { readFileSync } from "node:fs";
import type { TestCode } from "../domain/tests/registry.ts";

/** The query alone; what it reads stands at its beginning. */
export const percentilesSql = readFileSync(new URL("percentiles.sql", import.meta.url), "utf8");

/** The table that the query reads, in words that every engine knows. */
export const markTableSql = `CREATE TABLE mark (
  bundle INTEGER NOT NULL, test TEXT NOT NULL, variant TEXT NOT NULL, fingerprint TEXT NOT NULL,
  category TEXT NOT NULL, age_band TEXT NOT NULL, low INTEGER, high INTEGER, marks INTEGER NOT NULL
)`;

/** One percentile of one group: between which bounds (grains; null: none is told) it lies. */
export interface PercentileRow {
  readonly test: TestCode;
  readonly variant: string;
  readonly fingerprint: string;
  readonly category: string;
  readonly age_band: string;
  readonly percentile: number;
  readonly low: number | null;
  readonly high: number | null;
  /** Marks of the group, and bundles that they are from. */
  readonly n: number;
  readonly bundles: number;
}
