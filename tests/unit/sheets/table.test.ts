import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Refusal } from "../../../electron/domain/refusal.ts";
import { tableOf } from "./tables.ts";

const rowsOf = (text: string) => tableOf(text).rows.map(({ line, cells }) => [line, ...cells]);

function refusal(text: string): unknown {
  try {
    tableOf(text);
  } catch (error) {
    if (error instanceof Refusal) return error.sentence;
    throw error;
  }
  throw new Error("This was taken, and should have been refused.");
}

describe("separators and line ends", () => {
  test.each([
    ["comma", ","],
    ["semicolon", ";"],
    ["tab", "\t"],
  ])("%s", (_name, separator) => {
    const text = [`a${separator}b`, `1,5${separator}2`, ""].join("\n");
    const expected = separator === "," ? [[2, "1", "5", "2"]] : [[2, "1,5", "2"]];
    expect(rowsOf(text)).toEqual(expected);
  });

  test.each([
    ["CRLF", "\r\n"],
    ["LF", "\n"],
    ["CR", "\r"],
  ])("%s, with and without the last one", (_name, end) => {
    const text = ["a,b", "1,2", "3,4"].join(end);
    expect(rowsOf(text)).toEqual([
      [2, "1", "2"],
      [3, "3", "4"],
    ]);
    expect(rowsOf(text + end)).toEqual(rowsOf(text));
  });

  test("CRLF and LF in one file, as after an edit by a script", () => {
    expect(rowsOf("a,b\r\n1,2\n3,4\r\n")).toEqual([
      [2, "1", "2"],
      [3, "3", "4"],
    ]);
  });
});

describe("lines are those of the file", () => {
  test("a quoted line break moves the rows below it on", () => {
    expect(rowsOf('a,b\r\n"x\r\ny",1\r\n"p\nq\nr",2\r\nlast,3\r\n')).toEqual([
      [2, "x\r\ny", "1"],
      [4, "p\nq\nr", "2"],
      [7, "last", "3"],
    ]);
  });

  test("blank rows are passed over and counted", () => {
    expect(rowsOf("\n\na,b\n\n1,2\n , \n,\n3,4\n\n")).toEqual([
      [5, "1", "2"],
      [8, "3", "4"],
    ]);
  });

  test("spaces are part of a field (RFC 4180, section 2, rule 4), a quote inside text is text", () => {
    expect(rowsOf('a,b\n x ,5" tall\n')).toEqual([[2, " x ", '5" tall']]);
  });
});

describe("a lone quote", () => {
  test("costs its own row alone", () => {
    const { rows, broken } = tableOf('a,b\n1,2\n"lone,3\n4,5\n6,7\n');
    expect(rows.map(({ line, cells }) => [line, ...cells])).toEqual([
      [2, "1", "2"],
      [4, "4", "5"],
      [5, "6", "7"],
    ]);
    expect(broken).toEqual([{ line: 3, cells: ['"lone', "3"], reason: { key: "sheets.row.quotes" } }]);
  });

  test("with a sound quoted field further down", () => {
    const { rows, broken } = tableOf('a,b\n"lone,3\n4,"five,\nsix"\n');
    expect(broken.map(({ line }) => line)).toEqual([2]);
    expect(rows).toEqual([{ line: 3, cells: ["4", "five,\nsix"] }]);
  });

  test("in the header, or on many rows, it is the sheet's", () => {
    expect(refusal('"a,b\n1,2\n')).toEqual({ key: "sheets.quotes", values: { line: 1 } });
    expect(refusal(`a,b\n${'"lone,1\n'.repeat(25)}`)).toEqual({ key: "sheets.quotes", values: { line: 2 } });
  });
});

describe("limits", () => {
  test("300 columns", () => {
    const values = { line: 1, columns: 300, most: 200 };
    expect(refusal(`${"c,".repeat(299)}c\n`)).toEqual({ key: "sheets.tooManyColumns", values });
    expect(refusal(`a,b\n${"c,".repeat(299)}c\n`)).toEqual({
      key: "sheets.tooManyColumns",
      values: { ...values, line: 2 },
    });
  });

  test("more than 20,000 rows; exactly that many are read", () => {
    expect(tableOf(`a,b\n${"1,2\n".repeat(20_000)}`).rows.length).toBe(20_000);
    expect(refusal(`a,b\n${"1,2\n".repeat(20_001)}`)).toEqual({
      key: "sheets.tooManyRows",
      values: { most: 20_000 },
    });
  });

  test("a million blank rows after the last are passed over; blank cells of the last row stay", () => {
    for (const blank of [",\n", " , \r\n", "\n", ";\t\r"]) {
      expect(rowsOf(`a,b,c\n1,,\n${blank.repeat(1_000_000)}`)).toEqual([[2, "1", "", ""]]);
    }
    expect(rowsOf('a,b\n1,"\n, "\n,\n')).toEqual([[2, "1", "\n, "]]);
    expect(refusal(",,\n".repeat(1_000_000))).toEqual({ key: "sheets.empty" });
  });

  test("more than 100,000 lines, whatever is on them", () => {
    const many = "\n".repeat(100_000);
    const tooMany = { key: "sheets.tooManyRows", values: { most: 20_000 } };
    expect(rowsOf(`a,b\n${"\n".repeat(99_000)}1,2`)).toEqual([[99_002, "1", "2"]]);
    expect(refusal(`a,b\n${many}1,2`)).toEqual(tooMany);
    expect(refusal(`a,b\n"${many}",2`)).toEqual(tooMany);
  });
});

test("property: no text makes it throw anything but a refusal, and no line is told twice", () => {
  const sign = fc.constantFrom('"', '""', ",", ";", "\t", "\r", "\n", "\r\n", "a", "1", "é", "\uFEFF", " ");
  fc.assert(
    fc.property(fc.string({ unit: sign, maxLength: 400 }), (text) => {
      try {
        const { rows, broken } = tableOf(text);
        const lines = [...rows, ...broken].map(({ line }) => line);
        expect(new Set(lines).size).toBe(lines.length);
      } catch (error) {
        if (!(error instanceof Refusal)) throw error;
      }
    }),
    { numRuns: 2000 },
  );
});
