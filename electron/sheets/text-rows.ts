import Papa from "papaparse";
import { Refusal } from "../domain/refusal.ts";
import { sheetLimits } from "../domain/sheets/limits.ts";
import { sentence } from "../domain/words.ts";
import {
  type BrokenRow,
  type Grid,
  type LinesRead,
  refuseManyColumns,
  type SheetRow,
  tooManyRows,
} from "./grid.ts";
import { breaksIn, endOfRows, newlineOf, separatorOf } from "./text.ts";

/** Rows between two moments at which the caller may do something else. */
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
 * Splits the text of a sheet into rows, a bunch at a time: the caller goes on when it likes, so that a long sheet never holds up
 * everything else. Blank rows are passed over. A row whose quotation marks don't pair up is set aside with its line,
 * and reading goes on at the next line.
 * @throws Refusal `bad-input` for too many rows or columns, or too many broken rows.
 */
export function* readTextRows(whole: string): Generator<LinesRead, Grid> {
  const text = whole.slice(0, endOfRows(whole));
  const newline = newlineOf(text);
  const separator = separatorOf(text, newline);
  const reader: Reader = { text, newline, separator, rows: [], broken: [], at: 0, line: 1 };
  const total = breaksIn(text) + 1;
  // Millions of lines cost minutes before the rows among them are too many.
  if (total > sheetLimits.lines) throw tooManyRows();
  while (reader.at < text.length) {
    readBunch(reader);
    yield { done: Math.min(reader.line - 1, total), total };
  }
  const { rows, broken } = reader;
  return { rows, broken, worksheets: [], worksheet: 0, separator: separator === ";" ? ";" : "," };
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
  // The rows before the broken one are sound; where it begins is where a split of just those ends.
  const sound = badRow === 0 ? { data: [], cursor: 0 } : soundPart(reader, rest, badRow);
  keepRows(reader, sound.data);
  reader.at += sound.cursor;
  setLineAside(reader);
}

function soundPart(reader: Reader, rest: string, count: number): { data: string[][]; cursor: number } {
  const { data, meta } = split(reader, rest, count);
  return { data, cursor: meta.cursor };
}

/** The quick way of the library reads to the end of the text for each bunch, so it is off. */
function split({ newline, separator }: Reader, text: string, count: number): Papa.ParseResult<string[]> {
  const delimiter = separator;
  return Papa.parse<string[]>(text, {
    delimiter,
    newline: newline as "\n" | "\r" | "\r\n",
    preview: count,
    fastMode: false,
  });
}

/** Sheets joined end to end leave a byte order mark at the start of a row; the library drops it uncounted. */
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
  refuseManyColumns(row);
  // The header is one more row.
  if (reader.rows.length > sheetLimits.rows) throw tooManyRows();
  reader.rows.push(row);
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
