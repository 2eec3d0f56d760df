import { readFileSync } from "node:fs";

/**
 * An independent counter: reads a written bundle and nothing else, with a reader of zips and of sheets of its own, and
 * counts how alike its rows are. It shares no line with the program. By hand: `node tests/checks/count-bundle.ts FILE.zip`.
 */
export interface Counted {
  readonly rows: number;
  /** Rows of the smallest group whose every column but the id is equal. */
  readonly k: number;
  readonly groups: number;
  /** The fewest different intervals of a test among rows that are equal but for their intervals. */
  readonly l: number;
  /** What privacy.json says of itself. */
  readonly told: { readonly k: number; readonly kReached: number | null; readonly lReached: number | null };
}

export function countBundle(zip: Uint8Array): Counted {
  const files = entriesOf(Buffer.from(zip));
  const sheet = files.get("marks.csv") ?? files.get("profiles.csv");
  const privacy = files.get("privacy.json");
  if (sheet === undefined || privacy === undefined) throw new Error("This is no bundle.");
  const [head = [], ...rows] = recordsOf(sheet);
  const isBound = head.map((name) => name.endsWith("_low") || name.endsWith("_high"));
  const whole = new Map<string, number>();
  const diverse = new Map<string, Set<string>>();
  for (const row of rows) {
    const said = row.slice(1).join("\u0001");
    whole.set(said, (whole.get(said) ?? 0) + 1);
    for (const [test, interval] of testsOf(head, row)) {
      const alike = row.map((value, at) => (at === 0 ? test : isBound[at] === true ? "" : value));
      const done = testsOf(head, row).map(([name]) => name);
      const name = [...alike, ...done].join("\u0001");
      diverse.set(name, (diverse.get(name) ?? new Set()).add(interval));
    }
  }
  const told = JSON.parse(privacy) as Counted["told"];
  return {
    rows: rows.length,
    k: Math.min(...whole.values()),
    groups: whole.size,
    l: Math.min(...[...diverse.values()].map(({ size }) => size)),
    told: { k: told.k, kReached: told.kReached, lReached: told.lReached },
  };
}

/** The tests that a row has an interval of: pairs of columns that end in `_low` and `_high`. */
function testsOf(head: readonly string[], row: readonly string[]): [test: string, interval: string][] {
  return head.flatMap((name, at): [string, string][] => {
    if (!name.endsWith("_low")) return [];
    const interval = `${row[at]} to ${row[at + 1]}`;
    return interval === " to " ? [] : [[name, interval]];
  });
}

/** Entries that are stored as they are, from local header to local header (PKWARE APPNOTE 4.3.7). */
function entriesOf(zip: Buffer): Map<string, string> {
  const entries = new Map<string, string>();
  let at = 0;
  while (zip.readUInt32LE(at) === 0x04034b50) {
    if (zip.readUInt16LE(at + 8) !== 0) throw new Error("An entry is packed.");
    const size = zip.readUInt32LE(at + 18);
    const nameEnd = at + 30 + zip.readUInt16LE(at + 26);
    const start = nameEnd + zip.readUInt16LE(at + 28);
    entries.set(zip.toString("utf8", at + 30, nameEnd), zip.toString("utf8", start, start + size));
    at = start + size;
  }
  return entries;
}

/** A sheet whose fields hold neither quotes nor commas: anything else would be wrong in a bundle. */
function recordsOf(text: string): string[][] {
  if (text.includes('"')) throw new Error("A field is quoted.");
  return text
    .split("\r\n")
    .filter((line) => line !== "")
    .map((line) => line.split(","));
}

if (import.meta.main) {
  console.log(countBundle(readFileSync(process.argv[2] ?? "")));
}
