import { strFromU8, strToU8, type Unzipped, zipSync } from "fflate";
import { streamOdsRows } from "hucre/ods";
import { sheetLimits } from "../domain/sheets/limits.ts";
import { tooManyRows } from "./grid.ts";
import type { WorkbookRow, Worksheet } from "./workbook-cells.ts";

const repeats = /(number-(rows|columns)-repeated=)"(\d+)"/g;

/** The worksheets of an OpenDocument spreadsheet (ISO/IEC 26300). */
export function openDocumentWorksheets(files: Unzipped): Worksheet[] {
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
