import { strToU8, zipSync } from "fflate";
import type { Grid } from "../../../electron/sheets/grid.ts";
import { readGrid } from "../../../electron/sheets/read-grid.ts";

/** A cell: text, a number, yes or no, a formula with the value that was worked out last, a day, or nothing. */
type MadeCell =
  | string
  | number
  | boolean
  | null
  | { readonly formula: string; readonly value: number }
  | { readonly day: string };

export interface MadeWorksheet {
  readonly name: string;
  readonly rows: readonly (readonly MadeCell[])[];
}

function escaped(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll('"', "&quot;");
}

/** Days since the last of 1899, as workbooks count them from March 1900 on (ECMA-376 part 1, section 18.17.4.1). */
function serial(day: string): number {
  return (Date.parse(`${day}T00:00:00Z`) - Date.UTC(1899, 11, 30)) / 86_400_000;
}

function reference(row: number, column: number): string {
  const letters = column < 26 ? "" : String.fromCharCode(64 + Math.floor(column / 26));
  return `${letters}${String.fromCharCode(65 + (column % 26))}${row + 1}`;
}

function xlsxCell(cell: MadeCell, at: string): string {
  if (cell === null) return "";
  if (typeof cell === "string") return `<c r="${at}" t="inlineStr"><is><t>${escaped(cell)}</t></is></c>`;
  if (typeof cell === "number") return `<c r="${at}"><v>${cell}</v></c>`;
  if (typeof cell === "boolean") return `<c r="${at}" t="b"><v>${cell ? 1 : 0}</v></c>`;
  if ("day" in cell) return `<c r="${at}" s="1"><v>${serial(cell.day)}</v></c>`;
  return `<c r="${at}"><f>${escaped(cell.formula)}</f><v>${cell.value}</v></c>`;
}

function xlsxSheet(rows: MadeWorksheet["rows"]): string {
  const all = rows.map(
    (cells, row) =>
      `<row r="${row + 1}">${cells.map((cell, column) => xlsxCell(cell, reference(row, column))).join("")}</row>`,
  );
  return `${spreadsheet("worksheet")}<sheetData>${all.join("")}</sheetData></worksheet>`;
}

const header = '<?xml version="1.0" encoding="UTF-8"?>';
const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const spreadsheet = (tag: string) => `${header}<${tag} xmlns="${main}" xmlns:r="${relations}">`;

/** Written by hand from ECMA-376 (5th edition, part 1, sections 12.3 and 18), so that no library reads its own writing. */
export function xlsxOf(
  worksheets: readonly MadeWorksheet[],
  more: Record<string, Uint8Array> = {},
): Uint8Array {
  const numbers = worksheets.map((_sheet, index) => index + 1);
  const type = "application/vnd.openxmlformats-officedocument.spreadsheetml";
  const files: Record<string, string> = {
    "[Content_Types].xml": `${header}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="${type}.sheet.main+xml"/><Override PartName="/xl/styles.xml" ContentType="${type}.styles+xml"/>${numbers.map((n) => `<Override PartName="/xl/worksheets/sheet${n}.xml" ContentType="${type}.worksheet+xml"/>`).join("")}</Types>`,
    "_rels/.rels": `${header}<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="${relations}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    "xl/workbook.xml": `${spreadsheet("workbook")}<sheets>${worksheets.map(({ name }, index) => `<sheet name="${escaped(name)}" sheetId="${index + 1}" r:id="rId${index + 1}"/>`).join("")}</sheets></workbook>`,
    "xl/_rels/workbook.xml.rels": `${header}<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${numbers.map((n) => `<Relationship Id="rId${n}" Type="${relations}/worksheet" Target="worksheets/sheet${n}.xml"/>`).join("")}<Relationship Id="rId99" Type="${relations}/styles" Target="styles.xml"/></Relationships>`,
    "xl/styles.xml": `${spreadsheet("styleSheet")}<fonts count="1"><font/></fonts><fills count="1"><fill/></fills><borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="2"><xf numFmtId="0"/><xf numFmtId="14" applyNumberFormat="1"/></cellXfs></styleSheet>`,
  };
  for (const [index, { rows }] of worksheets.entries())
    files[`xl/worksheets/sheet${index + 1}.xml`] = xlsxSheet(rows);
  return zipped(files, more);
}

function odsCell(cell: MadeCell): string {
  const value = (type: string, attributes: string, text: string) =>
    `<table:table-cell office:value-type="${type}" ${attributes}><text:p>${escaped(text)}</text:p></table:table-cell>`;
  if (cell === null) return "<table:table-cell/>";
  if (typeof cell === "string") return value("string", "", cell);
  if (typeof cell === "number") return value("float", `office:value="${cell}"`, String(cell));
  if (typeof cell === "boolean")
    return value("boolean", `office:boolean-value="${cell}"`, cell ? "TRUE" : "FALSE");
  if ("day" in cell) return value("date", `office:date-value="${cell.day}"`, cell.day);
  return value(
    "float",
    `table:formula="of:=${escaped(cell.formula)}" office:value="${cell.value}"`,
    String(cell.value),
  );
}

/** Written by hand from OpenDocument 1.3 part 3 (section 9), with the million blank rows that spreadsheets end it with. */
export function odsOf(worksheets: readonly MadeWorksheet[], { rowsRepeated = 1_048_570 } = {}): Uint8Array {
  const spaces = ["office", "table", "text"].map(
    (name) => `xmlns:${name}="urn:oasis:names:tc:opendocument:xmlns:${name}:1.0"`,
  );
  const tables = worksheets.map(({ name, rows }) => {
    const all = rows.map(
      (cells) =>
        `<table:table-row>${cells.map(odsCell).join("")}<table:table-cell table:style-name="ce1" table:number-columns-repeated="16000"/></table:table-row>`,
    );
    const tail = `<table:table-row table:number-rows-repeated="${rowsRepeated}"><table:table-cell table:style-name="ce1" table:number-columns-repeated="16384"/></table:table-row>`;
    return `<table:table table:name="${escaped(name)}">${all.join("")}${tail}</table:table>`;
  });
  return zipped({
    mimetype: "application/vnd.oasis.opendocument.spreadsheet",
    "content.xml": `${header}<office:document-content ${spaces.join(" ")}><office:body><office:spreadsheet>${tables.join("")}</office:spreadsheet></office:body></office:document-content>`,
  });
}

export function zipped(files: Record<string, string>, more: Record<string, Uint8Array> = {}): Uint8Array {
  const bytes = Object.entries(files).map(([name, text]) => [name, strToU8(text)] as const);
  return zipSync({ ...Object.fromEntries(bytes), ...more });
}

/** Reads all rows of a file at once. */
export async function rowsIn(bytes: Uint8Array, worksheet: number | null = null): Promise<Grid> {
  const steps = readGrid(bytes, worksheet);
  for (;;) {
    const step = await steps.next();
    if (step.done) return step.value;
  }
}
