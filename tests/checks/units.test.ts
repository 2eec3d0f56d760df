import { expect, test } from "vitest";
import { grainsOf } from "../../electron/domain/length.ts";
import type { LengthUnit } from "../../electron/domain/tests/protocol.ts";
import {
  formatLength,
  formatTime,
  fromUnit,
  parseCount,
  parseLength,
  parseTime,
} from "../../electron/domain/units.ts";

// International yard and pound agreement, 1959: 1 in = 25.4 mm exactly, 1 ft = 304.8 mm. In hundredths of a millimetre.
test.each<[string, LengthUnit, number]>([
  ["219", "cm", 219_000],
  ["219.5", "cm", 219_500],
  ["219.0 cm", "cm", 219_000],
  ["0", "cm", 0],
  ["10", "in", 25_400],
  ["65", "in", 165_100],
  ["36", "in", 91_440],
  ["1'", "in", 30_480],
  ["5' 7", "in", 170_180],
  ["86.5", "in", 219_710],
  ['86.5"', "in", 219_710],
  ["86 1/2", "in", 219_710],
  ["86½", "in", 219_710],
  ["86-1/2 in", "in", 219_710],
  ["7' 2 1/2\"", "in", 219_710],
  ["7′2½″", "in", 219_710],
  ["86.25", "in", 219_075],
  // A comma is the decimal mark in most of Europe and Latin America (ISO 80000-1 allows both, SI Brochure 5.4.4).
  ["219,5", "cm", 219_500],
  ["43,5 cm", "cm", 43_500],
  ["86,5", "in", 219_710],
  ["7' 2,5\"", "in", 219_710],
  ["86.75", "in", 220_345],
  ["3/4", "in", 1905],
  ["2.5", "in", 6350],
])("%s (%s) is %i hundredths of a millimetre, exactly", (text, unit, hundredths) => {
  const read = parseLength(text, unit);
  if (!("length" in read)) throw new Error(`not read: ${text}`);
  expect(grainsOf(read.length) * 5).toBe(hundredths);
});

test.each<[string, LengthUnit, string]>([
  ["", "cm", "units.length.empty"],
  ["1,219,5", "cm", "units.comma"],
  ["1.219,5", "cm", "units.comma"],
  ["219,", "cm", "units.comma"],
  [",5", "cm", "units.comma"],
  ["86, 5", "in", "units.comma"],
  ["1,500", "cm", "units.length.centimetres"],
  ["43,2", "cm", "units.length.centimetres"],
  ["43.2", "cm", "units.length.centimetres"],
  ["219.", "cm", "units.length.centimetres"],
  ["-3", "cm", "units.length.centimetres"],
  ["1e3", "cm", "units.length.centimetres"],
  ["7' 2", "cm", "units.length.notInches"],
  ['86"', "cm", "units.length.notInches"],
  ["219 cm", "in", "units.length.notCentimetres"],
  ["501", "cm", "units.length.tooLong"],
  ["219", "in", "units.length.tooLong"],
  ["86.3", "in", "units.length.inches"],
  ["86 1/3", "in", "units.length.inches"],
  ["7' 12", "in", "units.length.inches"],
  ['"', "in", "units.length.inches"],
])("%s (%s) is refused: %s", (text, unit, key) => {
  expect(parseLength(text, unit)).toEqual({ sentence: { key } });
});

test("lengths as people read them", () => {
  expect([8700, 8600, 8760, 9017].map((grains) => formatLength(grains, "cm"))).toEqual([
    "43.5",
    "43",
    "43.8",
    "45.1",
  ]);
  expect([43_942, 9017, 5080, 8700].map((grains) => formatLength(grains, "in"))).toEqual([
    "86.5",
    "17.75",
    "10",
    "17.13",
  ]);
});

// Common practice, no source: how times are written. 10.11 s is the hand timing example of World Athletics.
test.each([
  ["6:12", 372_000],
  ["6:12.4", 372_400],
  ["0:59.99", 59_990],
  ["10.11 s", 10_110],
  ["0:10.11", 10_110],
  ["1:02:03", 3_723_000],
  ["75", 75_000],
  ["75.25", 75_250],
  ["3.0", 3000],
  ["3.5", 3500],
  ["3.000", 3000],
  ["3.75", 3750],
  ["61.20", 61_200],
  ["6:12,4", 372_400],
  ["0:59,99", 59_990],
  ["6:12,400", 372_400],
  ["10,11 s", 10_110],
  ["3,0", 3000],
  ["75,25", 75_250],
  ["0,500", 500],
  [" 0 ", 0],
])("%s is %i ms", (text, ms) => {
  expect(parseTime(text)).toEqual({ ms });
});

test.each([
  ["", "units.time.empty"],
  ["6,12,4", "units.comma"],
  ["1.020,5", "units.comma"],
  ["6:12,", "units.comma"],
  ["3,00", "units.time.ambiguous"],
  // A thousand and twenty seconds in English, one and a bit in Spanish.
  ["1,020", "units.time.thousands"],
  ["1,020 s", "units.time.thousands"],
  ["3.00", "units.time.ambiguous"],
  ["59.59", "units.time.ambiguous"],
  ["1:60", "units.time.sixty"],
  ["1:60:00", "units.time.sixty"],
  ["1:5", "units.time.form"],
  ["1:2:03", "units.time.form"],
  ["-5", "units.time.form"],
  ["1e3", "units.time.form"],
  ["five", "units.time.form"],
  ["1.2345", "units.time.tooFine"],
  ["99:00:00", "units.time.tooLong"],
])("%s is no time: %s", (text, key) => {
  const read = parseTime(text);
  expect("sentence" in read && read.sentence.key).toBe(key);
});

test("an ambiguous time says how to write both readings", () => {
  expect(parseTime("3.00")).toEqual({
    sentence: { key: "units.time.ambiguous", values: { minutes: "3:00", seconds: "3.00 s" } },
  });
  expect([parseTime("3:00"), parseTime("3.00 s")]).toEqual([{ ms: 180_000 }, { ms: 3000 }]);
});

test("a comma before three digits says how to write both readings", () => {
  expect(parseTime("1,020")).toEqual({
    sentence: { key: "units.time.thousands", values: { whole: "1020", part: "0:01.020" } },
  });
  expect([parseTime("1020"), parseTime("0:01.020")]).toEqual([{ ms: 1_020_000 }, { ms: 1020 }]);
});

test("a mark in its unit is read with either decimal mark, and never with thousands", () => {
  const quarters = { unit: "landings", perUnit: 4 } as const;
  expect([fromUnit(quarters, "29.5"), fromUnit(quarters, "29,5")]).toEqual([{ value: 118 }, { value: 118 }]);
  for (const text of ["1,029.5", "1.029,5", "29,5,", "29,"]) {
    expect(fromUnit(quarters, text), text).toEqual({ sentence: { key: "units.comma" } });
  }
});

test.each<[number, boolean, string]>([
  [0, false, "0:00"],
  [59_000, false, "0:59"],
  [372_400, true, "6:12.4"],
  [60_000, true, "1:00.0"],
  [3_600_000, false, "1:00:00"],
  [3_723_500, true, "1:02:03.5"],
  [-1500, true, "-0:01.5"],
])("%i ms, tenths %s: %s", (ms, tenths, text) => {
  expect(formatTime(ms, tenths)).toBe(text);
});

test.each([
  ["12", { count: 12 }],
  [" 07 ", { count: 7 }],
  ["0", { count: 0 }],
  ["", { sentence: { key: "units.count.empty" } }],
  ["1,5", { sentence: { key: "units.count.whole" } }],
  ["1.0", { sentence: { key: "units.count.whole" } }],
  ["NaN", { sentence: { key: "units.count.whole" } }],
  ["1e9", { sentence: { key: "units.count.whole" } }],
  ["-1", { sentence: { key: "units.count.whole" } }],
  ["+1", { sentence: { key: "units.count.whole" } }],
  ["0x10", { sentence: { key: "units.count.whole" } }],
  ["1234567", { sentence: { key: "units.count.tooLong" } }],
])("the count %s", (text, read) => {
  expect(parseCount(text)).toEqual(read);
});
