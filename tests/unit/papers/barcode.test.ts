import { BinaryBitmap, Code128Reader, HybridBinarizer, RGBLuminanceSource } from "@zxing/library";
import { expect, test } from "vitest";
import { badgeCode } from "../../../electron/domain/people/badge-code.ts";
import { barsOf } from "../../../renderer/screens/papers/barcode.ts";

/** Pixels for one unit, quiet zones on both sides in units, and the height of the picture. */
const [scale, quiet, height] = [3, 20, 40];

/** The text that an independent reader of barcodes finds in the drawn bars. */
function read(text: string): string {
  const { width, bars } = barsOf(text);
  const across = (width + 2 * quiet) * scale;
  const row = new Uint8ClampedArray(across).fill(255);
  for (const bar of bars) row.fill(0, (bar.x + quiet) * scale, (bar.x + bar.width + quiet) * scale);
  const pixels = new Uint8ClampedArray(across * height);
  for (let line = 0; line < height; line += 1) pixels.set(row, line * across);
  const bitmap = new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(pixels, across, height)));
  return new Code128Reader().decode(bitmap).getText();
}

test("an independent reader of Code 128 reads every bib and badge", () => {
  for (const bib of [...Array.from({ length: 130 }, (_none, index) => index + 1), 999, 1000, 5678, 9999])
    expect(read(String(bib))).toBe(String(bib));
  for (const id of [1, 42, 12_345, 999_999_999]) expect(read(badgeCode(id))).toBe(`TL${id}`);
});

test("the code is Code 128: it begins and ends as the standard has it", () => {
  // Source: ISO/IEC 15417. Start C is 2 1 1 2 3 2 (bar, space, …); stop is 2 3 3 1 1 1 2. One unit is half a module.
  const { width, bars } = barsOf("1234");
  expect(bars.slice(0, 3)).toEqual([
    { x: 0, width: 4 },
    { x: 6, width: 2 },
    { x: 12, width: 6 },
  ]);
  expect(bars.slice(-4).map((bar) => bar.width / 2)).toEqual([2, 3, 1, 2]);
  // Start, two pairs of digits, a check character: four symbols of 11 modules, and 13 to stop.
  expect(width / 2).toBe(4 * 11 + 13);
});
