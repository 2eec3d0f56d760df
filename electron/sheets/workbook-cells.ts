/** A cell as workbooks hold it; a day or a time of day is a Date in UTC. */
export type CellValue = string | number | boolean | Date | null;

/** One row as the library reads it; blank ones may be left out. */
export interface WorkbookRow {
  /** From 0. */
  readonly index: number;
  readonly values: readonly CellValue[];
}

/** A worksheet that can be read on its own. */
export interface Worksheet {
  readonly name: string;
  rows(): AsyncIterable<WorkbookRow>;
}

/** A cell of a workbook as a person would have written it into a text sheet. */
export function cellText(value: CellValue): string {
  if (value === null) return "";
  if (value instanceof Date) return momentText(value);
  // Twelve digits: 0.1 + 0.2 was worked out by somebody's formula, and is 0.3.
  return typeof value === "number" ? String(Number(value.toPrecision(12))) : String(value);
}

/** Times of day count from the last day of 1899 (ECMA-376 part 1, section 18.17.4); everything else is a day. */
function momentText(moment: Date): string {
  if (Number.isNaN(moment.getTime())) return "";
  return moment.getUTCFullYear() < 1900 ? timeText(moment) : moment.toISOString().slice(0, 10);
}

/**
 * Reads a time as minutes and seconds: 2:31 in a spreadsheet is meant so, and the spreadsheet takes it for hours and
 * minutes. Without seconds the two are read as typed.
 */
function timeText(moment: Date): string {
  const [hours, minutes, seconds] = [moment.getUTCHours(), moment.getUTCMinutes(), moment.getUTCSeconds()];
  const tenths = Math.round(moment.getUTCMilliseconds() / 100);
  const two = (part: number) => String(part).padStart(2, "0");
  if (hours > 0 && seconds === 0 && tenths === 0) return `${hours}:${two(minutes)}`;
  const end = `${two(seconds)}${tenths > 0 ? `.${tenths}` : ""}`;
  return hours > 0 ? `${hours}:${two(minutes)}:${end}` : `${minutes}:${end}`;
}
