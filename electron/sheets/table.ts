import { Refusal } from "../domain/refusal.ts";
import { sentence } from "../domain/words.ts";
import type { BrokenRow, Grid, SheetRow } from "./grid.ts";

/** The rows of a sheet below its headers. */
export interface Table {
  readonly headers: readonly string[];
  readonly rows: readonly SheetRow[];
  readonly broken: readonly BrokenRow[];
}

/** @throws Refusal `bad-input` when there is no header, or its quotation marks don't pair up. */
export function tableOf({ rows: all, broken }: Grid): Table {
  const [header, ...rows] = all;
  const [firstBroken] = broken;
  if (firstBroken !== undefined && (header === undefined || firstBroken.line < header.line)) {
    throw new Refusal("bad-input", sentence("sheets.quotes", { line: firstBroken.line }));
  }
  if (header === undefined) throw new Refusal("bad-input", sentence("sheets.empty"));
  const headers = header.cells.map((cell) => cell.trim());
  return { headers, rows, broken };
}
