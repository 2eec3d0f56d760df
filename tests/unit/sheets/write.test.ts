import fc from "fast-check";
import { expect, test } from "vitest";
import { restored } from "../../../electron/sheets/formula.ts";
import { readTextRows } from "../../../electron/sheets/text-rows.ts";
import { writeSheet } from "../../../electron/sheets/write.ts";
import { tableOf } from "./tables.ts";

// Source: RFC 4180 (Shafranovich 2005), section 2, rules 5 to 7, and the fields that it is made of.
test.each([
  ['b"c', '"b""c"'],
  ["d,e", '"d,e"'],
  ["f\r\ng", '"f\r\ng"'],
  ["f\ng", '"f\ng"'],
  ["", ""],
  ["plain", "plain"],
])("the field %j is written %j", (field, written) => {
  expect(writeSheet(["a", "b"], [["x", field]])).toBe(`a,b\r\nx,${written}\r\n`);
});

test("every record ends with CRLF, and a byte order mark stands only where it is asked for", () => {
  expect(writeSheet(["a"], [])).toBe("a\r\n");
  expect(writeSheet(["a"], [[1], [null]], { forSpreadsheets: true })).toBe("\uFEFFa\r\n1\r\n\r\n");
});

test("property: what is written is read back, whatever the cells hold", () => {
  const sign = fc.constantFrom(
    '"',
    ",",
    ";",
    "\t",
    "\r",
    "\n",
    "\r\n",
    "'",
    "=",
    "-",
    "é",
    "\uFEFF",
    " ",
    "a",
  );
  const cell = fc.oneof(fc.string({ unit: sign }), fc.string({ unit: "grapheme" }));
  const row = fc.tuple(fc.constantFrom("x", "yy"), cell, cell);
  fc.assert(
    fc.property(fc.array(row, { maxLength: 30 }), fc.boolean(), (rows, forSpreadsheets) => {
      const text = writeSheet(["first", "second", "third"], rows, { forSpreadsheets });
      const table = tableOf(text);
      expect(table.headers).toEqual(["first", "second", "third"]);
      expect(table.rows.map(({ cells }) => cells.map(restored))).toEqual(rows);
      expect(table.broken).toEqual([]);
    }),
  );
});

test("reading gives way between bunches and tells how far it is", () => {
  const rows = Array.from({ length: 1000 }, (_, index) => [`skater ${index}`, index]);
  const steps = [...readTextRows(writeSheet(["name", "number"], rows))];
  expect(steps.length).toBeGreaterThanOrEqual(4);
  expect(steps.at(-1)).toEqual({ done: 1002, total: 1002 });
});
