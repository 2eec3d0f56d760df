import { readFile } from "node:fs/promises";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";

/** One page of a PDF, as an independent reader of PDFs sees it. */
export interface PdfPage {
  /** Whole points. */
  readonly width: number;
  readonly height: number;
  /** The text that a person can select and copy, its pieces joined and its spaces made one. */
  readonly text: string;
}

/** What a PDF tells those who listen to it: whether it is tagged, and the roles of what is on its first page, in order. */
export async function readTags(file: string): Promise<{ marked: boolean; roles: readonly string[] }> {
  const loading = getDocument({ data: new Uint8Array(await readFile(file)), verbosity: 0 });
  const pdf = await loading.promise;
  // The reader gives a map, whatever its types say.
  const marks = (await pdf.getMarkInfo()) as unknown as ReadonlyMap<string, unknown> | null;
  const marked = marks?.get("Marked") === true;
  const tree = await (await pdf.getPage(1)).getStructTree();
  await loading.destroy();
  return { marked, roles: rolesIn(tree) };
}

function rolesIn(node: object): string[] {
  const role = "role" in node ? [String(node.role)] : [];
  const children = "children" in node ? (node.children as readonly object[]) : [];
  return [...role, ...children.flatMap(rolesIn)];
}

/** Reads a PDF with pdf.js. Rejects what is none. */
export async function readPdf(file: string): Promise<readonly PdfPage[]> {
  const loading = getDocument({ data: new Uint8Array(await readFile(file)), verbosity: 0 });
  const pdf = await loading.promise;
  const pages: PdfPage[] = [];
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const page = await pdf.getPage(number);
    const [left = 0, bottom = 0, right = 0, top = 0] = page.view;
    const { items } = await page.getTextContent();
    const text = items.map((item) => ("str" in item ? `${item.str}${item.hasEOL ? " " : ""}` : "")).join("");
    pages.push({
      width: Math.round(right - left),
      height: Math.round(top - bottom),
      text: text.replaceAll(/\s+/g, " "),
    });
  }
  await loading.destroy();
  return pages;
}
