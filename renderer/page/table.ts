import type { PageData } from "../../electron/domain/reference-table/page-data.ts";

/** Reads the table that the command put into the page, as text that nothing runs; null where it has put none. */
export function tableInPage(): PageData | null {
  return JSON.parse(document.getElementById("table")?.textContent ?? "null") as PageData | null;
}
