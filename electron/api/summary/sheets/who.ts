import type { SummaryPerson } from "../../../domain/summary/day.ts";
import { column, type SheetColumn } from "./sheet.ts";

/** Returns the first columns of every sheet with names: the row's athlete. */
export function whoColumns<Row>(whoOf: (row: Row) => SummaryPerson): SheetColumn<Row>[] {
  return [
    column("league", "", "The league", (row) => whoOf(row).league),
    column(
      "number",
      "digits as text",
      "The number skated under; 07 is not 7 (a spreadsheet may show both as 7). Empty: none",
      (row) => whoOf(row).number,
    ),
    column("name", "", "The name skated under", (row) => whoOf(row).name),
    column("bib", "", "The bib of the day; empty: none was given", (row) => whoOf(row).bib),
  ];
}
