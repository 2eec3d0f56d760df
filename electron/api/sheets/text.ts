import Papa from "papaparse";

/** Line breaks in a text, however they are written: CRLF, LF or CR. */
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

/** What ends a row in this sheet. A line break inside quotation marks ends none, so it does not decide. */
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

/** The separator that splits the first row into the most columns: comma, semicolon or tab; of equals the first. */
export function separatorOf(text: string, newline: "\n" | "\r" | "\r\n"): string {
  const start = text.slice(0, 65_536).replace(/^[\uFEFF\s]+/, "");
  const columns = [",", ";", "\t"].map((delimiter) => {
    const { data } = Papa.parse<string[]>(start, { delimiter, newline, preview: 1 });
    return { delimiter, count: data[0]?.length ?? 0 };
  });
  return columns.reduce((most, each) => (each.count > most.count ? each : most)).delimiter;
}
