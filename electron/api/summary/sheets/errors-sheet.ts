import type { TypicalError } from "../../../domain/statistics/change.ts";
import { protocolOf, type TestCode } from "../../../domain/tests/registry.ts";
import { inUnit } from "../../../domain/units.ts";
import { column, type SheetColumn, type SummarySheet, sheetOf } from "./sheet.ts";
import { unitOf } from "./values.ts";

type Line = TypicalError & { readonly test: TestCode };

/** Converts an amount to per cent of a mark, or to the test's unit. */
function amountIn({ test, kind }: Line, amount: number): number {
  const plain = kind === "share" ? amount * 100 : inUnit(protocolOf(test).grain, amount);
  return Number(plain.toFixed(4));
}

const columns: SheetColumn<Line>[] = [
  column("test", "code", "The test", ({ test }) => test),
  column(
    "typical_error",
    "see unit",
    "The spread of one athlete's marks from day to day when nothing has changed, as it is used for every verdict here",
    (line) => amountIn(line, line.amount),
  ),
  column("unit", "", "`%`: per cent of the mark; else the unit of the test", ({ test, kind }) =>
    kind === "share" ? "%" : unitOf(test),
  ),
  column("assumed", "yes or no", "yes: no pairs of this store's own are behind it yet", ({ assumed }) =>
    assumed ? "yes" : "no",
  ),
  column("pairs", "", "How many pairs of this store's own are behind it", ({ pairs }) => pairs),
  column("starting", "see unit", "What a store without pairs starts from", (line) =>
    amountIn(line, line.starting),
  ),
];

/** Makes `typical_errors.csv`: the typical errors that judged the changes. */
export function errorsSheet(errors: readonly Line[]): SummarySheet {
  return sheetOf(
    "typical_errors.csv",
    "One test: the typical error by which its changes were judged.",
    columns,
    errors,
  );
}
