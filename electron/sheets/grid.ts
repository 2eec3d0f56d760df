import { Refusal } from "../domain/refusal.ts";
import { sheetLimits } from "../domain/sheets/limits.ts";
import { type Sentence, sentence } from "../domain/words.ts";

/** One row with the line of the file on which it starts (from 1), as a person finds it in an editor. */
export interface SheetRow {
  readonly line: number;
  readonly cells: readonly string[];
}

/** A row that could not even be split into cells; `cells` is what a plain split gives. */
export interface BrokenRow extends SheetRow {
  readonly reason: Sentence;
}

/** All rows of a sheet that say something, the headers and what stands above them among them. */
export interface Grid {
  readonly rows: readonly SheetRow[];
  readonly broken: readonly BrokenRow[];
  /** Names of the worksheets of a workbook, and which one this is; none of a text. */
  readonly worksheets: readonly string[];
  readonly worksheet: number;
  /** What parts the cells of a sheet that is saved from this one, so that the same spreadsheet opens it. */
  readonly separator: Separator;
}

/** What parts cells in sheets that leave: many countries' spreadsheets open only semicolons by themselves. */
export type Separator = "," | ";";

/** The progress of the reading, in lines of the file. */
export interface LinesRead {
  readonly done: number;
  readonly total: number;
}

/** @throws Refusal `bad-input` when a row has more columns than can be read. */
export function refuseManyColumns({ line, cells }: SheetRow): void {
  const { columns: most } = sheetLimits;
  const columns = cells.length;
  if (columns <= most) return;
  throw new Refusal("bad-input", sentence("sheets.tooManyColumns", { line, columns, most }));
}

export function tooManyRows(): Refusal {
  return new Refusal("bad-input", sentence("sheets.tooManyRows", { most: sheetLimits.rows }));
}
