import { decodeSheet, refuseEmptyOrBig } from "./decode.ts";
import type { Grid, LinesRead } from "./grid.ts";
import { readTextRows } from "./text-rows.ts";
import { isZip, readWorkbook } from "./workbook.ts";

/**
 * Reads the rows of a sheet, text or workbook, a bunch at a time. `worksheet` (from 0; null: the first with something
 * in it) matters to workbooks alone.
 * @throws Refusal `bad-input` when the file as a whole can't be read.
 */
export async function* readGrid(
  bytes: Uint8Array,
  worksheet: number | null,
): AsyncGenerator<LinesRead, Grid> {
  refuseEmptyOrBig(bytes);
  if (isZip(bytes)) return yield* readWorkbook(bytes, worksheet);
  return yield* readTextRows(decodeSheet(bytes));
}
