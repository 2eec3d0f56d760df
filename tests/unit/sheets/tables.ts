import { readTable, type Table } from "../../../electron/sheets/table.ts";

/** Reads a whole table at once. */
export function tableOf(text: string): Table {
  const steps = readTable(text);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}
