import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { harmless, isNumberText, numberText, restored } from "../../../electron/sheets/formula.ts";
import { writeSheet } from "../../../electron/sheets/write.ts";

describe("text that a spreadsheet would run", () => {
  // Source: OWASP community pages, "CSV Injection": the dangerous first characters.
  test.each(["=", "+", "-", "@", "\t", "\r", "\n"])("a cell that starts with %j is made harmless", (sign) => {
    const text = `${sign}SUM(A1:A9)`;
    expect(harmless(text)).toBe(`'${text}`);
    expect(restored(harmless(text))).toBe(text);
  });

  // Source: the two examples of the same page, with its own way of making them harmless. After a separator inside the
  // cell we put an apostrophe too, which the page leaves to the quotation marks.
  test.each([
    ['=1+2";=1+2', `"'=1+2"";'=1+2"`],
    [`=1+2'" ;,=1+2`, `"'=1+2'"" ;,'=1+2"`],
  ])("%j leaves as %s", (text, written) => {
    expect(writeSheet(["text"], [[text]])).toBe(`text\r\n${written}\r\n`);
  });

  test.each(["Ann", "it's", "'quoted'", " spaced", "1-2", "a=b", ""])("%j stays as it is", (text) => {
    expect(harmless(text)).toBe(text);
    expect(restored(text)).toBe(text);
  });

  test("property: every text comes back, and none leaves with a sign that would run", () => {
    const signs = fc.string({ unit: fc.constantFrom("'", "=", "+", "-", "@", "\t", "\r", "\n", "a", " ") });
    fc.assert(
      fc.property(fc.oneof(signs, fc.string({ unit: "binary" })), (text) => {
        expect(restored(harmless(text))).toBe(text);
        expect(harmless(text)).not.toMatch(/^[=+\-@\t\r\n]/);
      }),
    );
  });
});

describe("numbers stay numbers", () => {
  test.each([
    [-0.5, "-0.5"],
    [-2.75, "-2.75"],
    [29.5, "29.5"],
    [0, "0"],
    [-0, "0"],
    [372400, "372400"],
  ])("%d is written %s", (value, text) => {
    expect(numberText(value)).toBe(text);
    expect(writeSheet(["change"], [[value]])).toBe(`change\r\n${text}\r\n`);
    expect(isNumberText(text)).toBe(true);
  });

  test.each([Number.NaN, Number.POSITIVE_INFINITY, 1e21, 1e-7])("%d has no plain form", (value) => {
    expect(() => numberText(value)).toThrow(RangeError);
  });
});
