import { describe, expect, test } from "vitest";
import { Refusal } from "../../../electron/domain/refusal.ts";
import { sheetLimits } from "../../../electron/domain/sheets/limits.ts";
import { cellText } from "../../../electron/sheets/workbook-cells.ts";
import { type MadeWorksheet, odsOf, rowsIn, xlsxOf, zipped } from "./workbooks.ts";

const worksheets: readonly MadeWorksheet[] = [
  { name: "Notes", rows: [] },
  {
    name: "Roster & more",
    rows: [
      ["Spring roster"],
      [],
      ["Name", "#", "Born", "Tested", "Share", "Sum"],
      ["Zoë Brake", "007", 1996, { day: "2026-03-14" }, true, { formula: "1+2", value: 12.5 }],
      ["Moss", 7, null, { day: "2025-12-01" }, false, 0.1 + 0.2],
    ],
  },
];

const read = [
  { line: 1, cells: ["Spring roster"] },
  { line: 3, cells: ["Name", "#", "Born", "Tested", "Share", "Sum"] },
  { line: 4, cells: ["Zoë Brake", "007", "1996", "2026-03-14", "true", "12.5"] },
  { line: 5, cells: ["Moss", "7", "", "2025-12-01", "false", "0.3"] },
];

async function refusalOf(bytes: Uint8Array): Promise<string> {
  try {
    await rowsIn(bytes);
  } catch (error) {
    if (error instanceof Refusal) return error.sentence.key;
    throw error;
  }
  throw new Error("This was taken, and should have been refused.");
}

describe.each([
  [".xlsx", xlsxOf],
  [".ods", odsOf],
] as const)("%s", (_kind, make) => {
  test("gives the values of its first worksheet with something in it; 007 as text stays 007", async () => {
    const grid = await rowsIn(make(worksheets));
    expect(grid.rows).toEqual(read);
    expect({ names: grid.worksheets, at: grid.worksheet }).toEqual({
      names: ["Notes", "Roster & more"],
      at: 1,
    });
  });

  test("gives the worksheet that is chosen", async () => {
    const both = [...worksheets, { name: "Second", rows: [["name"], ["Ann"]] }];
    const grid = await rowsIn(make(both), 2);
    expect(grid.rows.map(({ cells }) => cells)).toEqual([["name"], ["Ann"]]);
  });

  test("with nothing in it is an empty file", async () => {
    expect(await refusalOf(make([{ name: "Notes", rows: [] }]))).toBe("sheets.empty");
  });

  test("has the same bounds as a text", async () => {
    const wide = [{ name: "S", rows: [Array.from({ length: 201 }, (_none, index) => `c${index}`)] }];
    expect(await refusalOf(make(wide))).toBe("sheets.tooManyColumns");
    const long = [{ name: "S", rows: Array.from({ length: sheetLimits.rows + 2 }, () => ["x"]) }];
    expect(await refusalOf(make(long))).toBe("sheets.tooManyRows");
  });
});

describe("what is no readable workbook is refused by what it is", () => {
  test.each([
    [
      "an .xls, or a workbook with a password",
      Uint8Array.of(0xd0, 0xcf, 0x11, 0xe0, 0xa1),
      "sheets.oldWorkbook",
    ],
    ["a .numbers file", zipped({ "Index/Document.iwa": "x" }), "sheets.numbers"],
    ["another zip", zipped({ "roster.csv": "name\nAnn" }), "sheets.otherZip"],
    ["a zip of nothing readable", zipped({ "photo.jpg": "x" }), "sheets.otherZip"],
    ["half a workbook", xlsxOf(worksheets).subarray(0, 900), "sheets.workbookDamaged"],
    ["a workbook without its parts", zipped({ "[Content_Types].xml": "<a/>" }), "sheets.workbookDamaged"],
  ])("%s", async (_what, bytes, key) => {
    expect(await refusalOf(bytes)).toBe(key);
  });
});

describe("a few bytes that would become many are refused before they are", () => {
  /** A workbook with eight parts more, whose directory says of each that it is so long. */
  function saying(size: number, bytes = 100_000): Uint8Array {
    const parts = Array.from({ length: 8 }, (_none, n) => [`xl/x${n}.xml`, new Uint8Array(bytes)]);
    const zip = xlsxOf(worksheets, Object.fromEntries(parts));
    const view = new DataView(zip.buffer, zip.byteOffset);
    // APPNOTE 6.3.10, section 4.3.12: the size stands 24 bytes behind the signature of a directory entry.
    for (let at = 0; at < zip.length - 46; at += 1) {
      if (view.getUint32(at, true) !== 0x02014b50 || view.getUint32(at + 24, true) !== bytes) continue;
      view.setUint32(at + 24, size, true);
    }
    return zip;
  }

  test("a zip bomb, by what its directory says, before anything is unpacked", async () => {
    const rss = process.memoryUsage().rss;
    expect(await refusalOf(saying(sheetLimits.unpackedBytes / 8))).toBe("sheets.swells");
    expect(process.memoryUsage().rss - rss).toBeLessThan(30 * 1024 * 1024);
  });

  test("a part that says it is small and is not becomes no more than it says", async () => {
    const told = await rowsIn(saying(10, 8_000_000)).then(
      ({ rows }) => rows.length,
      (error: unknown) => (error instanceof Refusal ? error.sentence.key : "another error"),
    );
    expect([4, "sheets.workbookDamaged"]).toContain(told);
  });

  test("thousands of parts", async () => {
    const many = Array.from({ length: sheetLimits.entries + 1 }, (_none, n) => [
      `p${n}.jpg`,
      new Uint8Array(1),
    ]);
    expect(await refusalOf(xlsxOf(worksheets, Object.fromEntries(many)))).toBe("sheets.swells");
  });

  test("rows that say they stand there thousands of times", async () => {
    const row =
      '<table:table-row table:number-rows-repeated="19999"><table:table-cell><text:p>x</text:p></table:table-cell></table:table-row>';
    const content = `<office:document-content xmlns:office="o" xmlns:table="t" xmlns:text="x"><office:body><office:spreadsheet><table:table table:name="S">${row.repeat(50)}</table:table></office:spreadsheet></office:body></office:document-content>`;
    const bytes = zipped({
      mimetype: "application/vnd.oasis.opendocument.spreadsheet",
      "content.xml": content,
    });
    expect(await refusalOf(bytes)).toBe("sheets.tooManyRows");
  });
});

// Source: ECMA-376 part 1, section 18.17.4: a time of day is a part of a day after the last day of 1899.
test.each([
  ["1899-12-31T02:31:00Z", "2:31"],
  ["1899-12-30T00:02:31Z", "2:31"],
  ["1899-12-31T00:06:12.400Z", "6:12.4"],
  ["1899-12-31T01:02:03Z", "1:02:03"],
  ["2026-03-14T00:00:00Z", "2026-03-14"],
])("a moment %s is written %s", (moment, text) => {
  expect(cellText(new Date(moment))).toBe(text);
});
