import Papa from "papaparse";
import { Refusal } from "../domain/refusal.ts";
import { sheetLimits } from "../domain/sheets/limits.ts";
import { type Sentence, sentence } from "../domain/words.ts";
import { breaksIn, endOfRows, newlineOf, separatorOf } from "./text.ts";

/** One row and the line of the file where it starts (from 1), as an editor counts. */
export interface SheetRow {
  readonly line: number;
  readonly cells: readonly string[];
}

/** A row that can't be split into cells properly; `cells` come from a plain split. */
interface BrokenRow extends SheetRow {
  readonly reason: Sentence;
}

export interface Table {
  readonly headers: readonly string[];
  readonly rows: readonly SheetRow[];
  readonly broken: readonly BrokenRow[];
}

/** The progress of reading, in lines of the file. */
export interface LinesRead {
  readonly done: number;
  readonly total: number;
}

/** Rows read between two pauses for the caller's other work. */
const bunch = 250;

interface Reader {
  readonly text: string;
  readonly newline: string;
  readonly separator: string;
  readonly rows: SheetRow[];
  readonly broken: BrokenRow[];
  at: number;
  line: number;
}

/**
 * Splits a sheet into rows, in batches: the caller decides when to go on, so that a long sheet never blocks everything
 * else. Empty rows are skipped. A row with unpaired quotation marks is set aside with its line, and reading continues
 * at the next line.
 * @throws Refusal `bad-input` for too many rows or columns, an unreadable header, or too many broken rows.
 */
export function* readTable(whole: string): Generator<LinesRead, Table> {
  const text = whole.slice(0, endOfRows(whole));
  const newline = newlineOf(text);
  const separator = separatorOf(text, newline);
  const reader: Reader = { text, newline, separator, rows: [], broken: [], at: 0, line: 1 };
  const total = breaksIn(text) + 1;
  // Millions of lines take minutes before their rows are too many.
  if (total > sheetLimits.lines) throw tooManyRows();
  while (reader.at < text.length) {
    readBunch(reader);
    yield { done: Math.min(reader.line - 1, total), total };
  }
  const [header, ...rows] = reader.rows;
  const [firstBroken] = reader.broken;
  if (firstBroken !== undefined && (header === undefined || firstBroken.line < header.line)) {
    throw new Refusal("bad-input", sentence("sheets.quotes", { line: firstBroken.line }));
  }
  if (header === undefined) throw new Refusal("bad-input", sentence("sheets.empty"));
  const headers = header.cells.map((cell) => cell.trim());
  return { headers, rows, broken: reader.broken };
}

function readBunch(reader: Reader): void {
  skipMark(reader);
  const rest = reader.text.slice(reader.at);
  const found = split(reader, rest, bunch);
  const badRow = found.errors.find((error) => error.type === "Quotes")?.row;
  if (badRow === undefined) {
    keepRows(reader, found.data);
    reader.at += Math.max(found.meta.cursor, 1);
    return;
  }
  // The rows before the broken one are good; it begins where a split of only those ends.
  const sound = badRow === 0 ? { data: [], cursor: 0 } : soundPart(reader, rest, badRow);
  keepRows(reader, sound.data);
  reader.at += sound.cursor;
  setLineAside(reader);
}

function soundPart(reader: Reader, rest: string, count: number): { data: string[][]; cursor: number } {
  const { data, meta } = split(reader, rest, count);
  return { data, cursor: meta.cursor };
}

/** Splits with the library's fast mode off, since that reads to the end of the text for each batch. */
function split({ newline, separator }: Reader, text: string, count: number): Papa.ParseResult<string[]> {
  const delimiter = separator;
  return Papa.parse<string[]>(text, {
    delimiter,
    newline: newline as "\n" | "\r" | "\r\n",
    preview: count,
    fastMode: false,
  });
}

/** Skips a byte order mark at the start of a row, left by sheets joined end to end; the library drops it uncounted. */
function skipMark(reader: Reader): void {
  if (reader.text.startsWith("\uFEFF", reader.at)) reader.at += 1;
}

function keepRows(reader: Reader, rows: readonly string[][]): void {
  for (const cells of rows) {
    const last = cells.at(-1) ?? "";
    if (reader.newline === "\n" && last.endsWith("\r")) cells[cells.length - 1] = last.slice(0, -1);
    const { line } = reader;
    for (const cell of cells) reader.line += breaksIn(cell);
    reader.line += 1;
    if (cells.length === 1 && cells[0]?.trim() === "") continue;
    if (cells.every((cell) => cell.trim() === "")) continue;
    keepRow(reader, { line, cells });
  }
}

function keepRow(reader: Reader, row: SheetRow): void {
  const { rows: most, columns } = sheetLimits;
  if (row.cells.length > columns) {
    throw new Refusal(
      "bad-input",
      sentence("sheets.tooManyColumns", { line: row.line, columns: row.cells.length, most: columns }),
    );
  }
  // The header is one more row.
  if (reader.rows.length > most) throw tooManyRows();
  reader.rows.push(row);
}

function tooManyRows(): Refusal {
  return new Refusal("bad-input", sentence("sheets.tooManyRows", { most: sheetLimits.rows }));
}

function setLineAside(reader: Reader): void {
  const { text, newline, at, line, separator, broken } = reader;
  const end = text.indexOf(newline, at);
  const raw = text.slice(at, end < 0 ? text.length : end);
  broken.push({ line, cells: raw.split(separator), reason: sentence("sheets.row.quotes") });
  if (broken.length > sheetLimits.brokenRows) {
    throw new Refusal("bad-input", sentence("sheets.quotes", { line: broken[0]?.line ?? line }));
  }
  reader.at = end < 0 ? text.length : end + newline.length;
  reader.line += 1;
}
