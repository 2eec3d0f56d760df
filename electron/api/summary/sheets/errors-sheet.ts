import { protocolOf } from "../../../domain/tests/registry.ts";
import { inUnit } from "../../../domain/units.ts";
import type { errorsOf } from "../view.ts";
import { column, type SheetColumn, type SummarySheet, sheetOf } from "./sheet.ts";
import { unitOf } from "./values.ts";

type Line = ReturnType<typeof errorsOf>[number];

const inTestUnit = ({ test }: Line, grains: number) =>
  Number(inUnit(protocolOf(test).grain, grains).toFixed(4));
const inPerCent = (share: number) => Number((share * 100).toFixed(4));

const columns: SheetColumn<Line>[] = [
  column("test", "code", "The test", ({ test }) => test),
  column(
    "fixed_part",
    "see unit",
    "The part of the typical error that every mark has. The typical error is the spread of one athlete's marks from " +
      "day to day when nothing has changed: the root of the sum of the squares of both parts",
    (line) => inTestUnit(line, line.fixed),
  ),
  column("unit", "", "The unit of the test", ({ test }) => unitOf(test)),
  column("share_part", "per cent of the mark", "The part that grows with the mark", ({ share }) =>
    inPerCent(share),
  ),
  column("assumed", "yes or no", "yes: no pairs of this store's own are behind it yet", ({ assumed }) =>
    assumed ? "yes" : "no",
  ),
  column("pairs", "", "How many pairs of this store's own are behind it", ({ pairs }) => pairs),
  column("starting_fixed_part", "see unit", "The fixed part that a store without pairs starts from", (line) =>
    inTestUnit(line, line.startingFixed),
  ),
  column(
    "starting_share_part",
    "per cent of the mark",
    "The share that a store without pairs starts from",
    ({ startingShare }) => inPerCent(startingShare),
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
