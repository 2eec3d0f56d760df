type Chance = () => number;

const utf8 = new TextEncoder();

function at(chance: Chance, below: number): number {
  return Math.floor(chance() * below);
}

function latin1(text: string): Uint8Array {
  return new Uint8Array(Buffer.from(text, "latin1"));
}

function utf16(text: string): Uint8Array {
  return new Uint8Array(Buffer.from(`\ufeff${text}`, "utf16le"));
}

function joined(...parts: readonly Uint8Array[]): Uint8Array {
  return new Uint8Array(Buffer.concat(parts));
}

function flipped(sheet: Uint8Array, chance: Chance): Uint8Array {
  const copy = new Uint8Array(sheet);
  for (let count = at(chance, 12); count >= 0; count -= 1) copy[at(chance, copy.length)] = at(chance, 256);
  return copy;
}

/** The sheet with a text put in somewhere. */
function withText(sheet: Uint8Array, chance: Chance, text: string | Uint8Array): Uint8Array {
  const place = at(chance, sheet.length);
  const bytes = typeof text === "string" ? utf8.encode(text) : text;
  return joined(sheet.subarray(0, place), bytes, sheet.subarray(place));
}

function asText(sheet: Uint8Array): string {
  return new TextDecoder().decode(sheet);
}

/** One cell of one row written as something else. */
function withCell(sheet: Uint8Array, chance: Chance, cell: string): Uint8Array {
  const rows = asText(sheet).split("\n");
  const index = at(chance, rows.length);
  const cells = (rows[index] ?? "").split(",");
  cells[at(chance, cells.length)] = cell;
  rows[index] = cells.join(",");
  return utf8.encode(rows.join("\n"));
}

const formulas = [
  "=1+1",
  "+49",
  "-2+3",
  "@SUM(A1:A9)",
  "\t=HYPERLINK(0)",
  "\r=1",
  "'=1",
  "\"=cmd|' /c calc'!A0\"",
];
const odd = [
  "\u0000",
  "\ufeff",
  "\u202e",
  "\u2028",
  "__proto__",
  "1e999",
  "NaN",
  "-0",
  "١٢",
  "9".repeat(400),
  "\u001b[2J",
];

/** What happens to a sheet on its way to the desk, or what somebody does to it. */
export const spoilers: Readonly<Record<string, (sheet: Uint8Array, chance: Chance) => Uint8Array>> = {
  "bytes flipped": flipped,
  truncated: (sheet, chance) => sheet.subarray(0, at(chance, sheet.length)),
  "its beginning lost": (sheet, chance) => sheet.subarray(at(chance, sheet.length)),
  "a part twice": (sheet, chance) => joined(sheet, sheet.subarray(at(chance, sheet.length))),
  "a sign of another encoding": (sheet, chance) => withText(sheet, chance, latin1("Ö\u0085ß")),
  "half a sign": (sheet, chance) => withText(sheet, chance, new Uint8Array([0xe2, 0x82])),
  "another encoding": (sheet) => latin1(asText(sheet)),
  "UTF-16": (sheet) => utf16(asText(sheet)),
  "UTF-16 without its mark": (sheet) => utf16(asText(sheet)).subarray(2),
  "a byte order mark inside": (sheet, chance) => withText(sheet, chance, "\ufeff"),
  "a NUL": (sheet, chance) => withText(sheet, chance, "\u0000"),
  "a quotation mark": (sheet, chance) => withText(sheet, chance, '"'),
  "many quotation marks": (sheet) => utf8.encode(asText(sheet).replaceAll(",", ',"')),
  semicolons: (sheet) => utf8.encode(asText(sheet).replaceAll(",", ";")),
  tabs: (sheet) => utf8.encode(asText(sheet).replaceAll(",", "\t")),
  "mixed separators": (sheet, chance) =>
    utf8.encode(asText(sheet).replaceAll(",", () => (chance() < 0.5 ? ";" : ","))),
  "CR alone": (sheet) => utf8.encode(asText(sheet).replaceAll("\r", "").replaceAll("\n", "\r")),
  "mixed line ends": (sheet, chance) =>
    utf8.encode(asText(sheet).replaceAll("\n", () => (chance() < 0.5 ? "\r" : "\n"))),
  "a line end inside": (sheet, chance) => withText(sheet, chance, "\r\n"),
  "a long field": (sheet, chance) => withCell(sheet, chance, "x".repeat(500_000)),
  "formula text": (sheet, chance) => withCell(sheet, chance, formulas[at(chance, formulas.length)] ?? ""),
  "an odd cell": (sheet, chance) => withCell(sheet, chance, odd[at(chance, odd.length)] ?? ""),
  "headers twice": (sheet) => utf8.encode(asText(sheet).replace(/^([^,\n]*)/, "$1,$1")),
  "no header": (sheet) => utf8.encode(asText(sheet).replace(/^.*\n/, "")),
  "rows shuffled": (sheet, chance) =>
    utf8.encode(
      asText(sheet)
        .split("\n")
        .map((row) => ({ row, by: chance() }))
        .sort((a, b) => a.by - b.by)
        .map(({ row }) => row)
        .join("\n"),
    ),
};
