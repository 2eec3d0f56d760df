import type { PublishedRow, Summary } from "../../../domain/privacy/publish.ts";
import { protocolOf } from "../../../domain/protocols/registry.ts";
import { inUnit } from "../../../domain/units.ts";
import { type Cell, writeSheet } from "../../sheets/write.ts";
import type { TextFile } from "./contents.ts";

/** A row as it stands in marks.csv: the mark in its unit. */
export interface MarkLine {
  readonly id: string;
  readonly test: string;
  readonly variant: string;
  readonly age_band: string;
  readonly category: string;
  readonly quarter: string;
  readonly mark: number;
  readonly unit: string;
}

/** A line of summary.csv: of fewer than ten rows only how many they are. */
export interface SummaryLine {
  readonly test: string;
  readonly variant: string;
  readonly n: number;
  readonly lower_quartile: number | null;
  readonly median: number | null;
  readonly upper_quartile: number | null;
  readonly unit: string;
}

export const markColumns = [
  "id",
  "test",
  "variant",
  "age_band",
  "category",
  "quarter",
  "mark",
  "unit",
] as const satisfies readonly (keyof MarkLine)[];

export const summaryColumns = [
  "test",
  "variant",
  "n",
  "lower_quartile",
  "median",
  "upper_quartile",
  "unit",
] as const satisfies readonly (keyof SummaryLine)[];

export function markLine({ id, test, variant, ageBand, category, quarter, value }: PublishedRow): MarkLine {
  const { grain } = protocolOf(test);
  return {
    id,
    test,
    variant,
    age_band: ageBand,
    category,
    quarter,
    mark: inUnit(grain, value),
    unit: grain.unit,
  };
}

export function summaryLine({ test, variant, n, quartiles }: Summary): SummaryLine {
  const { grain } = protocolOf(test);
  // Quartiles fall on quarters of a grain; of milliseconds that is five decimals of a second.
  const write = (grains: number | undefined) =>
    grains === undefined ? null : Number(inUnit(grain, grains).toFixed(5));
  return {
    test,
    variant,
    n,
    lower_quartile: write(quartiles?.lower),
    median: write(quartiles?.median),
    upper_quartile: write(quartiles?.upper),
    unit: grain.unit,
  };
}

export function marksSheet(rows: readonly PublishedRow[]): TextFile {
  return { name: "marks.csv", text: csv(markColumns, rows.map(markLine)) };
}

export function summarySheet(summaries: readonly Summary[]): TextFile {
  return { name: "summary.csv", text: csv(summaryColumns, summaries.map(summaryLine)) };
}

function csv<Column extends string>(
  columns: readonly Column[],
  lines: readonly Readonly<Record<Column, Cell>>[],
): string {
  return writeSheet(
    columns,
    lines.map((line) => columns.map((column) => line[column])),
  );
}
