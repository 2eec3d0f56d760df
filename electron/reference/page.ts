import { mkdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { shortKey } from "../api/reference/signature.ts";
import { pageDataOf } from "../domain/reference-table/page-data.ts";
import type { ReferenceTable } from "../domain/reference-table/table.ts";
import { writeWholeFiles } from "../files/whole.ts";

/** The largest that the page may be with all that is in it, in bytes: it is passed on by telephone. */
export const mostOfPage = 300_000;

/** Where the build lays the page without a table. */
const template = fileURLToPath(new URL("../../out/page/index.html", import.meta.url));

const place = /(<script type="application\/json" id="table">)null(<\/script>)/;

/**
 * Writes the page for everybody into a folder, as index.html with the table in it: one file, whole or not at all. Where
 * not all groups of the table fit into `mostOfPage`, those of the fewest results are left out. `npm run build` has to
 * have made its template.
 * @throws Error when there is no template, or when it can't be written.
 */
export async function writePage(table: ReferenceTable, folder: string): Promise<string> {
  const page = fitting(await readFile(template, "utf8"), table);
  await mkdir(folder, { recursive: true });
  const path = join(folder, "index.html");
  await writeWholeFiles([{ path, content: page }]);
  return path;
}

/** Returns the page with as many groups as fit, the largest first. */
function fitting(html: string, table: ReferenceTable): string {
  const groups = table.groups.toSorted((a, b) => b.marks - a.marks);
  while (true) {
    const page = withTable(html, { ...table, groups });
    if (Buffer.byteLength(page) <= mostOfPage) return page;
    if (groups.length === 0) throw new Error(`The page without a table is larger than ${mostOfPage} bytes.`);
    groups.length = Math.floor(groups.length * 0.95);
  }
}

function withTable(html: string, table: ReferenceTable): string {
  if (!place.test(html)) throw new Error("The page has no place for a table. Run npm run build.");
  return html.replace(place, (_all, before: string, after: string) => before + dataOf(table) + after);
}

/** The data as text that can't end its element, whatever the publisher's name is. */
function dataOf(table: ReferenceTable): string {
  const data = pageDataOf(table, shortKey(table.publicKey));
  return JSON.stringify(data).replaceAll("<", "\\u003c");
}
