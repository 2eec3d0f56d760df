import type { Grid } from "../../../electron/sheets/grid.ts";
import { type Table, tableOf as tableIn } from "../../../electron/sheets/table.ts";
import { readTextRows } from "../../../electron/sheets/text-rows.ts";

/** Reads all rows of a text at once. */
function gridOf(text: string): Grid {
  const steps = readTextRows(text);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** Reads a whole table at once. */
export function tableOf(text: string): Table {
  return tableIn(gridOf(text));
}
