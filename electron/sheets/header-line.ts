import type { SheetRow } from "./grid.ts";
import { isKnownHeader, longestHeader, sheetKinds } from "./headers.ts";
import { wideHeader } from "./wide-header.ts";

/** Lines among which the headers are looked for: above them a sheet may have its title, a date, an address. */
const most = 20;

/**
 * Finds the row with the headers: the first in which at least two cells are headers that are known, else the first with
 * several cells, else the first.
 */
export function headerRow(rows: readonly SheetRow[]): SheetRow | undefined {
  const first = rows.slice(0, most);
  return (
    first.find(({ cells }) => cells.filter(isHeader).length > 1) ??
    first.find(({ cells }) => cells.filter((cell) => cell.trim() !== "").length > 1) ??
    first[0]
  );
}

function isHeader(cell: string): boolean {
  const text = cell.trim();
  if (text === "" || text.length > longestHeader) return false;
  return sheetKinds.some((kind) => isKnownHeader(kind, text)) || wideHeader("past", text) !== null;
}
