import Papa from "papaparse";

/** Counts line breaks in a text of any kind: CRLF, LF or CR. */
export function breaksIn(text: string): number {
  let count = 0;
  let at = 0;
  for (;;) {
    at = text.indexOf("\n", at);
    if (at < 0) break;
    count += 1;
    at += 1;
  }
  return text.includes("\r") ? count + loneReturns(text) : count;
}

function loneReturns(text: string): number {
  return text.match(/\r(?!\n)/g)?.length ?? 0;
}

/** Returns the end of the last row with content: spreadsheets write up to a million empty ones after it. */
export function endOfRows(text: string): number {
  let end = text.length;
  while (end > 0 && " \t\r\n,;".includes(text.charAt(end - 1))) end -= 1;
  // Empty cells of that row itself stay.
  while (end < text.length && !"\r\n".includes(text.charAt(end))) end += 1;
  return text.startsWith("\r\n", end) ? end + 2 : Math.min(end + 1, text.length);
}

/** Returns the row ending of a sheet. A line break inside quotation marks ends no row, so it does not count. */
export function newlineOf(text: string): "\n" | "\r" | "\r\n" {
  if (!text.includes("\n")) return text.includes("\r") ? "\r" : "\n";
  if (!text.includes("\r\n")) return "\n";
  return /(?:^|[^\r])\n/.test(text) && hasLoneFeedOutsideQuotes(text) ? "\n" : "\r\n";
}

function hasLoneFeedOutsideQuotes(text: string): boolean {
  let quoted = false;
  for (const { 0: sign } of text.matchAll(/"|\r?\n/g)) {
    if (sign === '"') quoted = !quoted;
    else if (!quoted && sign === "\n") return true;
  }
  return false;
}

/** Rows that are looked at for the separator: the first may be a title. */
const looked = 20;

/** The separator (comma, semicolon or tab) that splits the first rows into the most columns, and evenly; of equals the first. */
export function separatorOf(text: string, newline: "\n" | "\r" | "\r\n"): string {
  const start = text.slice(0, 65_536).replace(/^[\uFEFF\s]+/, "");
  const all = [",", ";", "\t"].map((delimiter) => {
    const { data } = Papa.parse<string[]>(start, { delimiter, newline, preview: looked, fastMode: false });
    return { delimiter, cells: evenCells(data.map(({ length }) => length)) };
  });
  return all.reduce((most, each) => (each.cells > most.cells ? each : most)).delimiter;
}

/** Separators in the rows that have equally many: commas in a title or in a few names are not even. */
function evenCells(widths: readonly number[]): number {
  const same = [...Map.groupBy(widths, (width) => width).entries()];
  return Math.max(0, ...same.map(([width, rows]) => (width - 1) * rows.length));
}
