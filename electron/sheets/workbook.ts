import { strFromU8, strToU8, type Unzipped, unzipSync, zipSync } from "fflate";
import { streamOdsRows } from "hucre/ods";
import { readXlsx, streamXlsxRows } from "hucre/xlsx";
import { Refusal } from "../domain/refusal.ts";
import { sheetLimits } from "../domain/sheets/limits.ts";
import { type Sentence, sentence } from "../domain/words.ts";
import { type Grid, type LinesRead, refuseManyColumns, type SheetRow, tooManyRows } from "./grid.ts";
import { cellText, type WorkbookRow, type Worksheet } from "./workbook-cells.ts";

/** Rows between two moments at which the caller may do something else. */
const bunch = 250;

/** Returns true if bytes are a zip, as every present workbook is (APPNOTE 6.3.10, section 4.3.7). */
export function isZip(bytes: Uint8Array): boolean {
  return [0x50, 0x4b, 0x03, 0x04].every((byte, index) => bytes[index] === byte);
}

/**
 * Reads a worksheet of a workbook (`.xlsx`, `.ods`) as stored: no formula and no macro is run, and of a formula the value
 * that was last worked out counts. `chosen` null: the first worksheet with headers and a row.
 * @throws Refusal `bad-input` for another file, or one that unpacks to too much.
 */
export async function* readWorkbook(
  bytes: Uint8Array,
  chosen: number | null,
): AsyncGenerator<LinesRead, Grid> {
  const worksheets = await sound(() => worksheetsIn(unpack(bytes)));
  const names = worksheets.map(({ name }) => name);
  let first: Grid | null = null;
  for (const [index, worksheet] of worksheets.entries()) {
    if (chosen !== null && chosen !== index) continue;
    const rows = yield* readRows(worksheet);
    const grid = { rows, broken: [], worksheets: names, worksheet: index, separator: "," as const };
    // Headers and a row: a note alone is no list, and the list may be behind it.
    if (rows.length > 1) return grid;
    if (rows.length > 0) first ??= grid;
  }
  if (first === null) throw refused(sentence("sheets.empty"));
  return first;
}

async function* readRows(worksheet: Worksheet): AsyncGenerator<LinesRead, SheetRow[]> {
  const rows: SheetRow[] = [];
  const found = worksheet.rows()[Symbol.asyncIterator]();
  for (;;) {
    const next = await sound(() => found.next());
    if (next.done) return rows;
    const row = rowOf(next.value);
    if (row === null) continue;
    // The header is one more row.
    if (rows.length > sheetLimits.rows) throw tooManyRows();
    rows.push(row);
    if (rows.length % bunch === 0) yield { done: rows.length, total: sheetLimits.rows };
  }
}

/** null: a blank row. */
function rowOf({ index, values }: WorkbookRow): SheetRow | null {
  const filled = values.findLastIndex((value) => value !== null && value !== "");
  const row = { line: index + 1, cells: values.slice(0, filled + 1).map(cellText) };
  refuseManyColumns(row);
  return row.cells.every((cell) => cell.trim() === "") ? null : row;
}

/** The parts of a workbook that have cells in them, unpacked within the limit: pictures and macros are not touched. */
function unpack(bytes: Uint8Array): Unzipped {
  refuseSwelling(bytes);
  return unzipSync(bytes, { filter: ({ name }) => hasCells(name) });
}

function hasCells(name: string): boolean {
  return /\.xml$|\.rels$|^mimetype$|^Index\//.test(name);
}

/** By what the directory says, before anything is unpacked: no part can become more than it says there. */
function refuseSwelling(bytes: Uint8Array): void {
  let total = 0;
  let entries = 0;
  unzipSync(bytes, {
    filter({ name, originalSize }) {
      entries += 1;
      if (hasCells(name)) total += originalSize;
      if (entries > sheetLimits.entries || total > sheetLimits.unpackedBytes) throw swells();
      return false;
    },
  });
}

async function worksheetsIn(files: Unzipped): Promise<Worksheet[]> {
  if (Object.keys(files).some((name) => name.startsWith("Index/"))) throw refused(sentence("sheets.numbers"));
  if (files["content.xml"] !== undefined) return openDocumentWorksheets(files);
  if (files["[Content_Types].xml"] !== undefined) return xlsxWorksheets(files);
  throw refused(sentence("sheets.otherZip"));
}

/** Those that can be seen, or all where none can. */
async function xlsxWorksheets(files: Unzipped): Promise<Worksheet[]> {
  const zip = zipSync(files, { level: 0 });
  const all: { readonly name: string; readonly seen: boolean; readonly index: number }[] = [];
  await readXlsx(zip, {
    sheets({ name, hidden, veryHidden }, index) {
      all.push({ name, seen: hidden !== true && veryHidden !== true, index });
      return false;
    },
  });
  const seen = all.filter((each) => each.seen);
  return (seen.length > 0 ? seen : all).map(({ name, index }) => ({
    name,
    rows: () => streamXlsxRows(zip, { sheet: index }),
  }));
}

/** Turns every failure of the libraries into a refusal of the file: they get bytes and nothing else. */
async function sound<Result>(work: () => Promise<Result>): Promise<Result> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof Refusal) throw error;
    throw refused(sentence("sheets.workbookDamaged"));
  }
}

function swells(): Refusal {
  return refused(sentence("sheets.swells", { megabytes: sheetLimits.unpackedBytes / 1024 / 1024 }));
}

function refused(why: Sentence): Refusal {
  return new Refusal("bad-input", why);
}

const repeats = /(number-(rows|columns)-repeated=)"(\d+)"/g;

/** The worksheets of an OpenDocument spreadsheet (ISO/IEC 26300). */
function openDocumentWorksheets(files: Unzipped): Worksheet[] {
  const content = strFromU8(files["content.xml"] ?? new Uint8Array());
  const zip = zipSync(
    {
      mimetype: strToU8("application/vnd.oasis.opendocument.spreadsheet"),
      "content.xml": strToU8(bounded(content)),
    },
    { level: 0 },
  );
  return [...content.matchAll(/<table:table\s[^>]*?table:name="([^"]*)"/g)].map(([, name = ""], index) => ({
    name: plainText(name),
    rows: () => rowsOf(zip, index),
  }));
}

async function* rowsOf(zip: Uint8Array, sheet: number): AsyncGenerator<WorkbookRow> {
  yield* streamOdsRows(zip, { sheets: [sheet] });
}

/**
 * One row or cell may say that it stands there a million times. Blank ones at the end of a sheet do so, and cost nothing
 * once they are one; of others more than a sheet may hold is refused before it is unfolded.
 * @throws Refusal `bad-input`
 */
function bounded(content: string): string {
  let rows = 0;
  return content.replace(repeats, (_all, attribute: string, what: string, text: string) => {
    const times = Number(text);
    if (what === "columns") return `${attribute}"${Math.min(times, sheetLimits.columns + 1)}"`;
    const kept = times > sheetLimits.rows ? 1 : times;
    rows += kept;
    if (rows > sheetLimits.lines) throw tooManyRows();
    return `${attribute}"${kept}"`;
  });
}

const entities: Readonly<Record<string, string>> = { lt: "<", gt: ">", quot: '"', apos: "'", amp: "&" };

function plainText(xml: string): string {
  return xml.replace(/&(lt|gt|quot|apos|amp);/g, (_all, name: string) => entities[name] ?? "");
}
