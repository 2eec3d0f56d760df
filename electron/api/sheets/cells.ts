import { type LengthUnit, type TestCode, testCodes } from "../../domain/protocols/protocol.ts";
import { Refusal } from "../../domain/refusal.ts";
import { parseCount, parseLength, parseTime } from "../../domain/units.ts";
import { type Sentence, sentence } from "../../domain/words.ts";
import { restored } from "./formula.ts";
import { type Field, plainHeader } from "./headers.ts";

/** One row is kept back: which field to look at (null for the row as a whole), and why. */
export class RowRefused extends Refusal {
  readonly field: Field | null;
  constructor(field: Field | null, why: Sentence) {
    super("bad-input", why);
    this.field = field;
  }
}

/** The cell of a field as it was meant: without outer blanks, with formula text as it was; "" where there is none. */
export type Cells = (field: Field) => string;

export function cellsOf(columns: ReadonlyMap<Field, number>, cells: readonly string[]): Cells {
  return (field) => {
    const column = columns.get(field);
    const cell = column === undefined ? undefined : cells[column];
    return cell === undefined ? "" : restored(cell.trim()).trim();
  };
}

const yes = ["yes", "y", "true", "1", "ja", "oui", "sí", "si"];
const no = ["no", "n", "false", "0", "nein", "non"];

/** yes or no, in the ways that people fill in lists; null where nothing is said. */
export function yesNo(cells: Cells, field: Field): boolean | null {
  const text = cells(field).toLowerCase();
  if (text === "") return null;
  if (yes.includes(text)) return true;
  if (no.includes(text)) return false;
  throw new RowRefused(field, sentence("sheets.row.yesNo"));
}

/** A short text on one line; longer than `most` signs is refused. */
export function line(cells: Cells, field: Field, most: number): string {
  const text = cells(field).replace(/\s+/g, " ").normalize("NFC");
  if (text.length > most) throw new RowRefused(field, sentence("sheets.row.tooLong", { most }));
  return text;
}

export function requiredLine(cells: Cells, field: Field, most: number): string {
  const text = line(cells, field, most);
  if (text === "") throw new RowRefused(field, sentence("sheets.row.empty"));
  return text;
}

/** The number that an athlete skates under: 0 to 4 digits, a text. */
export function skaterNumber(cells: Cells): string {
  const text = cells("number").replace(/^#\s*/, "");
  if (!/^\d{0,4}$/.test(text)) throw new RowRefused("number", sentence("sheets.row.number"));
  return text;
}

/** A count; a blank cell is `whenBlank`, or refused where that is null. */
export function count(cells: Cells, field: Field, whenBlank: number | null): number {
  const text = cells(field);
  if (text === "" && whenBlank !== null) return whenBlank;
  const read = parseCount(text);
  if ("sentence" in read) throw new RowRefused(field, read.sentence);
  return read.count;
}

/** A time in ms. */
export function time(cells: Cells, field: Field, text = cells(field)): number {
  const read = parseTime(text);
  if ("sentence" in read) throw new RowRefused(field, read.sentence);
  return read.ms;
}

/** A length in mm. */
export function lengthOf(cells: Cells, field: Field, unit: LengthUnit): number {
  const read = parseLength(cells(field), unit);
  if ("sentence" in read) throw new RowRefused(field, read.sentence);
  return read.mm;
}

/** The unit of lengths; cm where nothing is said. */
export function lengthUnit(cells: Cells): LengthUnit {
  const text = cells("unit").toLowerCase();
  if (text === "" || text === "cm") return "cm";
  if (["in", "inch", "inches", '"'].includes(text)) return "in";
  throw new RowRefused("unit", sentence("sheets.row.lengthUnit"));
}

/** The test, written with or without hyphen and in any case. */
export function testOf(cells: Cells): TestCode {
  const text = plainHeader(cells("test"));
  const test = testCodes.find((code) => plainHeader(code) === text);
  if (test === undefined) throw new RowRefused("test", sentence("sheets.row.test"));
  return test;
}
