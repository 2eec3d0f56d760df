import type { SummaryPerson } from "../../../domain/summary/day.ts";
import type { Column } from "./sheet.ts";

/** Who a row is about: the first columns of every sheet with names. */
export function whoColumns<Row>(whoOf: (row: Row) => SummaryPerson): Column<Row>[] {
  return [
    { name: "league", unit: "", means: "The league", cell: (row) => whoOf(row).league },
    {
      name: "number",
      unit: "digits as text",
      means: "The number skated under; 07 is not 7 (a spreadsheet may show both as 7). Empty: none",
      cell: (row) => whoOf(row).number,
    },
    { name: "name", unit: "", means: "The name skated under", cell: (row) => whoOf(row).name },
    {
      name: "bib",
      unit: "",
      means: "The bib of the day; empty: none was given",
      cell: (row) => whoOf(row).bib,
    },
  ];
}
