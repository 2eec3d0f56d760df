import fc from "fast-check";
import Papa from "papaparse";
import { expect, test } from "vitest";
import { harmless, restored } from "../../../electron/sheets/formula.ts";
import { writeSheet } from "../../../electron/sheets/write.ts";
import { tableOf } from "./tables.ts";

/** Every cell of a text, as a reader of CSV splits it at this sign. */
function cellsOf(text: string, delimiter: string): string[] {
  return Papa.parse<string[]>(text, { delimiter }).data.flat();
}

// Source: OWASP community pages, "CSV Injection": the dangerous first characters, and its warning that a separator or a
// quotation mark inside a field begins a new cell. Which sign separates depends on the reader's country.
const wouldRun = /^[=+\-@\t\r]/;
const separators = [",", ";", "\t"];

test.each([
  ["x;=1+1;y", "x;'=1+1;y"],
  ['x";=HYPERLINK("http://a.example")', `x";'=HYPERLINK("http://a.example")`],
  ["x\t@SUM(A1)", "x\t'@SUM(A1)"],
  ["x\r\n-1+1", "x\r\n'-1+1"],
  ["x,+1", "x,'+1"],
  ["x;''=1", "x;'''=1"],
])("%j leaves as %j and comes back", (name, left) => {
  expect(harmless(name)).toBe(left);
  expect(restored(left)).toBe(name);
});

test.each(["Smith, Ann", "a;b", "half-past", "x ;y", "a;'b", "one\r\ntwo\n\nthree"])(
  "%j stays as it is",
  (name) => {
    expect(harmless(name)).toBe(name);
    expect(restored(name)).toBe(name);
  },
);

test("property: read with comma, semicolon or tab, no cell of a written sheet starts with a sign that would run", () => {
  const sign = fc.constantFrom(
    ...separators,
    '"',
    "'",
    "\r",
    "\n",
    "\r\n",
    "=",
    "+",
    "-",
    "@",
    "a",
    " ",
    "é",
  );
  const name = fc.string({ unit: sign, maxLength: 12 });
  const row = fc.tuple(name, name, fc.integer({ min: 0 }), name, fc.integer());
  fc.assert(
    fc.property(fc.array(row, { minLength: 1, maxLength: 6 }), fc.boolean(), (rows, forSpreadsheets) => {
      const text = writeSheet(["league", "name", "bib", "note", "change"], rows, { forSpreadsheets });
      const numbers = new Set(rows.map((cells) => String(cells[4])));
      for (const separator of separators) {
        const risky = cellsOf(text, separator).filter((cell) => wouldRun.test(cell) && !numbers.has(cell));
        expect(risky).toEqual([]);
      }
      expect(tableOf(text).rows.map(({ cells }) => cells.map(restored))).toEqual(
        rows.map((cells) => cells.map(String)),
      );
    }),
    { numRuns: 2000 },
  );
});
