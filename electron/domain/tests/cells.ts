import { grainsOf, type Length } from "../length.ts";
import { Refusal } from "../refusal.ts";
import { fromUnit, parseCount, parseLength, parseTime } from "../units.ts";
import { type Sentence, sentence } from "../words.ts";
import type { Grain, LengthUnit } from "./protocol.ts";

/** One row is not imported: which column to look at (null for the row as a whole), why, and what else is wrong with it. */
export class RowRefused extends Refusal {
  readonly field: string | null;
  readonly also: readonly RowRefused[];
  constructor(field: string | null, why: Sentence, also: readonly RowRefused[] = []) {
    super("bad-input", why);
    this.field = field;
    this.also = also;
  }
}

/** Reads a column's cell without outer spaces, formula text unescaped; "" where there is none. */
export type Cells = (column: string) => string;

const yes = ["yes", "y", "true", "1", "x", "✓", "✔", "ok", "ja", "oui", "sí", "si", "s", "verdadero"];
const no = ["no", "n", "false", "0", "nein", "non", "falso"];

/** Reads yes or no in common spellings; null for an empty cell. @throws RowRefused */
export function yesNo(cells: Cells, column: string): boolean | null {
  const text = cells(column).toLowerCase();
  if (text === "") return null;
  if (yes.includes(text)) return true;
  if (no.includes(text)) return false;
  throw new RowRefused(column, sentence("sheets.row.yesNo"));
}

/** Reads a count. An empty cell is `whenBlank`, or refused where that is null. @throws RowRefused */
export function count(cells: Cells, column: string, whenBlank: number | null): number {
  const text = cells(column);
  if (text === "" && whenBlank !== null) return whenBlank;
  const read = parseCount(text);
  if ("sentence" in read) throw new RowRefused(column, read.sentence);
  return read.count;
}

/** Reads a time in ms. @throws RowRefused */
export function time(cells: Cells, column: string, text = cells(column)): number {
  const read = parseTime(text);
  if ("sentence" in read) throw new RowRefused(column, read.sentence);
  return read.ms;
}

/** Reads a length as it is written. @throws RowRefused */
export function lengthOf(cells: Cells, column: string, unit: LengthUnit): Length {
  const read = parseLength(cells(column), unit);
  if ("sentence" in read) throw new RowRefused(column, read.sentence);
  return read.length;
}

/** Reads the unit of lengths; cm when empty. @throws RowRefused */
export function lengthUnit(cells: Cells): LengthUnit {
  const text = cells("unit").toLowerCase();
  if (text === "" || text === "cm") return "cm";
  if (["in", "inch", "inches", '"'].includes(text)) return "in";
  throw new RowRefused("unit", sentence("sheets.row.lengthUnit"));
}

/** Refuses a past mark in a unit not in `known`, whose first is the one to write. @throws RowRefused */
export function refuseOtherUnit(cells: Cells, known: readonly string[]): void {
  const unit = cells("unit").toLowerCase();
  if (unit !== "" && !known.includes(unit)) {
    throw new RowRefused("unit", sentence("sheets.row.unit", { unit: known[0] ?? "" }));
  }
}

/** Reads a past mark in grains. @throws RowRefused */
export function pastGrains(cells: Cells, grain: Grain): number {
  const text = cells("mark");
  if (text === "") throw new RowRefused("mark", sentence("sheets.row.empty"));
  const read = fromUnit(grain, text);
  if ("sentence" in read) throw new RowRefused("mark", read.sentence);
  return read.value;
}

/** Reads a past length in grains; in inches where the unit says so. @throws RowRefused */
export function pastLength(cells: Cells, grain: Grain): number {
  return lengthUnit(cells) === "in" ? grainsOf(lengthOf(cells, "mark", "in")) : pastGrains(cells, grain);
}

/** Reads a past time in ms. "3.00" alone could be minutes, unless the unit says seconds. @throws RowRefused */
export function pastTime(cells: Cells): number {
  const unit = cells("unit").toLowerCase();
  const text = cells("mark");
  if (["s", "sec", "seconds"].includes(unit)) {
    return time(cells, "mark", /^[\d.,]+$/.test(text) ? `${text} s` : text);
  }
  if (["", "m:ss", "mm:ss", "m:ss.s", "min:s", "h:mm:ss"].includes(unit)) return time(cells, "mark");
  throw new RowRefused("unit", sentence("sheets.row.timeUnit"));
}
