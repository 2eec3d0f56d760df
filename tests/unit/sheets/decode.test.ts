import { describe, expect, test } from "vitest";
import { Refusal } from "../../../electron/domain/refusal.ts";
import { sheetLimits } from "../../../electron/domain/sheets/limits.ts";
import { decodeSheet, refuseTooBig } from "../../../electron/sheets/decode.ts";
import { largestSheet } from "../../../electron/shell/bridge/bridge-types.ts";

const utf8 = (text: string) => new TextEncoder().encode(text);

function refusalOf(work: () => unknown): string {
  try {
    work();
  } catch (error) {
    if (error instanceof Refusal) return error.sentence.key;
    throw error;
  }
  throw new Error("This was taken, and should have been refused.");
}

describe("text", () => {
  test("UTF-8 is read with and without byte order mark", () => {
    expect(decodeSheet(utf8("name\nZoë"))).toBe("name\nZoë");
    expect(decodeSheet(utf8("\uFEFFname\nZoë"))).toBe("name\nZoë");
  });

  // Source: RFC 2781, sections 3.2 and 4.4: the mark FF FE is little-endian, FE FF big-endian; ë is U+00EB.
  test("UTF-16 is read in either order of bytes where its mark says which", () => {
    const units = [..."name\tn\nZoë\t7"].map((sign) => sign.charCodeAt(0));
    const little = [0xff, 0xfe, ...units.flatMap((unit) => [unit & 0xff, unit >> 8])];
    const big = [0xfe, 0xff, ...units.flatMap((unit) => [unit >> 8, unit & 0xff])];
    expect(decodeSheet(Uint8Array.from(little))).toBe("name\tn\nZoë\t7");
    expect(decodeSheet(Uint8Array.from(big))).toBe("name\tn\nZoë\t7");
  });

  // Source: WHATWG Encoding Standard, index windows-1252: 0xEB is ë, 0x80 the euro sign, 0x92 ’.
  test("bytes that are no UTF-8 are read as Windows-1252", () => {
    expect(decodeSheet(Uint8Array.of(0x5a, 0x6f, 0xeb, 0x2c, 0x80, 0x2c, 0x92))).toBe("Zoë,€,’");
  });
});

describe("what is no sheet is refused by what it is", () => {
  // Source: the signatures are those of each format's own specification (PNG: RFC 2083, section 3.1).
  test.each([
    ["an empty file", [], "sheets.empty"],
    ["blanks alone", [0x20, 0x0d, 0x0a], "sheets.empty"],
    ["a byte order mark alone", [0xef, 0xbb, 0xbf], "sheets.empty"],
    ["a PNG named .csv", [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 0x0d], "sheets.picture"],
    ["a JPEG", [0xff, 0xd8, 0xff, 0xe0, 0, 0x10], "sheets.picture"],
    ["an old workbook", [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1], "sheets.oldWorkbook"],
    ["a PDF", [...utf8("%PDF-1.7")], "sheets.document"],
    ["UTF-16 without its mark", [0x6e, 0, 0x61, 0], "sheets.nul"],
    ["NUL in UTF-16", [0xff, 0xfe, 0x61, 0, 0, 0], "sheets.nul"],
    ["a UTF-16 mark alone", [0xff, 0xfe], "sheets.empty"],
    ["NUL bytes", [...utf8("league,name\nA,\0\0")], "sheets.nul"],
    ["noise without NUL", Array.from({ length: 400 }, (_, index) => (index % 31) + 1), "sheets.binary"],
  ])("%s", (_what, bytes, key) => {
    expect(refusalOf(() => decodeSheet(Uint8Array.from(bytes)))).toBe(key);
  });

  test("over 20 MB", () => {
    expect(refusalOf(() => decodeSheet(new Uint8Array(sheetLimits.bytes + 1).fill(0x61)))).toBe(
      "sheets.tooBig",
    );
    expect(() => refuseTooBig(sheetLimits.bytes)).not.toThrow();
    expect(sheetLimits.bytes).toBe(largestSheet);
  });
});
