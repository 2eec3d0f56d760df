type Kind = "roster" | "past" | "results";

/** A sheet that is meant to cost much. */
interface Giant {
  readonly what: string;
  readonly kind: Kind;
  readonly make: () => Uint8Array;
}

const megabyte = 1024 * 1024;
const headers = "league,name,number\n";

function roster(what: string, text: () => string): Giant {
  return { what, kind: "roster", make: () => new TextEncoder().encode(text()) };
}

function filled(what: string, megabytes: number, byte: number): Giant {
  return { what, kind: "roster", make: () => new Uint8Array(megabytes * megabyte).fill(byte) };
}

/** Past results of people who are nearly known, so that the nearest is looked for in each row. */
function nearlyKnown(): Uint8Array {
  const rows = Array.from(
    { length: 5000 },
    (_none, index) => `Foundry Tow,Ada Ril ${index},${index},2026-01-01,push-up,20`,
  );
  return new TextEncoder().encode(`league,name,number,date,test,mark\n${rows.join("\n")}`);
}

export const giants: readonly Giant[] = [
  roster("a header of 200,000 columns", () => `league,name,number${",x".repeat(200_000)}\nA,B,1\n`),
  roster("a row of 200,000 columns", () => `${headers}A,B,1${",x".repeat(200_000)}\n`),
  roster("a row of five million blank columns and one", () => `${headers}${",".repeat(5_000_000)}x\n`),
  roster("ten million blank columns at the end", () => `${headers}${",".repeat(10_000_000)}\n`),
  roster("ten million line ends after the rows", () => `${headers}${"\n".repeat(10_000_000)}`),
  roster("ten million line ends before a row", () => `${headers}${"\n".repeat(10_000_000)}A,B,1\n`),
  roster("ten million CRs before a row", () => `league,name,number\r${"\r".repeat(10_000_000)}A,B,1`),
  roster("mixed line ends without end", () => `league,name,number\r\n${"\r\n\n".repeat(5_000_000)}A,B,1`),
  roster("five million quotation marks", () => `${headers}${'"'.repeat(5_000_001)}`),
  roster("a quotation mark in each of many rows", () => `${headers}${'A,"B,1\n'.repeat(2_000_000)}`),
  roster("a quotation mark in each of some rows", () => `${headers}${'A,"B,1\n'.repeat(50_000)}`),
  roster("an open quotation mark before much", () => `${headers}"${"A,B,1\n".repeat(3_000_000)}`),
  roster("a field of 19 MB", () => `${headers}A,${"x".repeat(19 * megabyte)},1\n`),
  roster("a header of 18 MB", () => `${"league".repeat(3_000_000)},name,number\nA,B,1\n`),
  roster("a million blank rows of a spreadsheet", () => `${headers}A,B,1\n${" , , \n".repeat(1_000_000)}`),
  roster("a million rows", () => `${headers}${"A,B,1\n".repeat(1_000_000)}`),
  roster("5,000 rows that are all wrong", () => `${headers}${"Aaaa,,99999\n".repeat(5000)}`),
  roster("blanks before everything", () => `${" \n".repeat(5_000_000)}${headers}A,B,1\n`),
  roster("a mark of byte order on each of many lines", () => `${headers}${"\ufeff\n".repeat(2_000_000)}`),
  { what: "5,000 people who are nearly known", kind: "past", make: nearlyKnown },
  filled("20 MB of one sign", 20, 0x41),
  filled("20 MB of no sign", 20, 0x81),
  filled("more than is read", 40, 0x41),
];
