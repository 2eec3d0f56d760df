import { describe, expect, test } from "vitest";
import { type Cells, RowRefused } from "../../../electron/domain/tests/cells.ts";
import type { ColumnName } from "../../../electron/sheets/headers.ts";
import { readPastRow } from "../../../electron/sheets/past.ts";
import { readResultRow } from "../../../electron/sheets/results.ts";
import { mIsWomen, readRosterRow } from "../../../electron/sheets/roster.ts";
import { cm, inches } from "../../lengths.ts";

type Given = Partial<Record<ColumnName, string>>;

const cellsOf =
  (given: Given): Cells =>
  (field) =>
    given[field] ?? "";

/** The field and the sentence that a row was kept back with. */
function whyNot(read: () => unknown): string {
  try {
    read();
  } catch (error) {
    if (error instanceof RowRefused) return `${error.field} ${error.sentence.key}`;
    throw error;
  }
  throw new Error("This row was taken, and should have been kept back.");
}

describe("a roster row", () => {
  const read = (given: Given) =>
    readRosterRow(cellsOf({ league: "Lantern Bay", name: "Ann", ...given }), {
      today: "2026-11-14",
      mIsWomen: false,
    });

  test("keeps apart what the sheet says and what it does not", () => {
    expect(read({ number: "07", birth_year: "2001", category: "Women", screen: "Name", share: "y" })).toEqual(
      {
        league: "Lantern Bay",
        name: "Ann",
        number: "07",
        birthYear: 2001,
        category: "women",
        guardianConsent: null,
        board: "name",
        share: true,
      },
    );
    expect(read({})).toMatchObject({ number: "", birthYear: null, category: null, board: null, share: null });
  });

  test.each(["2001-05-03", "3.5.2001", "5/3/2001", "2001/05/03"])(
    "keeps the year alone of the whole date %s",
    (text) => expect(read({ birth_year: text }).birthYear).toBe(2001),
  );

  test.each([
    ["F", "women"],
    ["mujer", "women"],
    ["M", "men"],
    ["Hombre", "men"],
    ["NB", "open"],
    ["Non-binary", "open"],
    ["no binaria", "open"],
  ])("takes the category %s for %s", (text, category) => {
    expect(read({ category: text }).category).toBe(category);
  });

  test("takes M for women where the column has H for men", () => {
    const spanish = { today: "2026-11-14", mIsWomen: mIsWomen(["M", "H", "", "nb"]) };
    const cells = cellsOf({ league: "Lantern Bay", name: "Ann", category: "M" });
    expect(readRosterRow(cells, spanish).category).toBe("women");
    expect(mIsWomen(["M", "F", "H"])).toBe(false);
    expect(mIsWomen(["M", "open"])).toBe(false);
  });

  test.each([
    ["x", true],
    ["✓", true],
    ["Sí", true],
    ["TRUE", true],
    ["falso", false],
  ])("takes %s for %s", (text, share) => {
    expect(read({ share: text }).share).toBe(share);
  });

  test.each([
    [{ league: "" }, "league sheets.row.empty"],
    [{ name: "" }, "name sheets.row.empty"],
    [{ name: "x".repeat(81) }, "name sheets.row.tooLong"],
    [{ number: "12345" }, "number sheets.row.number"],
    [{ number: "7.0" }, "number sheets.row.number"],
    [{ birth_year: "95" }, "birth_year sheets.row.birthYear"],
    [{ birth_year: "12/05/95" }, "birth_year sheets.row.birthYear"],
    [{ birth_year: "1899" }, "birth_year sheets.row.birthYearRange"],
    [{ birth_year: "2027" }, "birth_year sheets.row.birthYearRange"],
    [{ category: "constructor" }, "category sheets.row.category"],
    [{ screen: "everywhere" }, "screen sheets.row.board"],
    [{ share: "perhaps" }, "share sheets.row.yesNo"],
  ])("with %j is kept back: %s", (given, why) => {
    expect(whyNot(() => read(given))).toBe(why);
  });
});

describe("a row of results", () => {
  const read = (given: Given) => readResultRow(cellsOf({ bib: "12", ...given }));

  test.each([
    [
      { test: "push-up", variant: "full", reps: "23", missed_at_end: "3" },
      { variant: "full", seen: { how: "tally", reps: 23, offAtEnd: 3 } },
    ],
    [
      { test: "Push up", reps: "9", missed_at_end: "0", variant: "Knee" },
      { variant: "knee", seen: { how: "tally", reps: 9, offAtEnd: 0 } },
    ],
    [
      { test: "agility", direction: "CW", laps: "7", extra_quadrants: "3" },
      { variant: "", seen: { direction: "cw", laps: 7, extra: 3, touches: 0 } },
    ],
    [
      { test: "agility", direction: "counter-clockwise", laps: "7", line_touches: "2" },
      { variant: "", seen: { direction: "ccw", laps: 7, extra: 0, touches: 2 } },
    ],
    [
      { test: "vertical", standing_reach: "219.5", touch_reach: "262" },
      { variant: "", seen: { standingReach: cm(219.5), touchReach: cm(262) } },
    ],
    [
      { test: "vertical", standing_reach: "80", touch_reach: "100", unit: "in" },
      { variant: "", seen: { standingReach: inches(80), touchReach: inches(100) } },
    ],
    [
      { test: "core", time: "2:31" },
      { variant: "", seen: { held: 151_000 } },
    ],
    [
      { test: "endurance", time: "6:12.4" },
      { variant: "", seen: { finished: true, time: 372_400 } },
    ],
    [
      { test: "endurance", finished: "no", rounds_done: "2" },
      { variant: "", seen: { finished: false, roundsDone: 2, repsDone: 0 } },
    ],
  ])("%j is %j", (given, row) => {
    expect(read(given as Given)).toMatchObject(row);
  });

  test.each([
    [{}, "test sheets.row.test"],
    [{ bib: "", test: "core", time: "60" }, "null sheets.row.nobody"],
    [{ bib: "", league: "Lantern Bay", test: "core", time: "60" }, "null sheets.row.nobody"],
    [{ test: "push-up", reps: "20", missed_at_end: "3" }, "variant sheets.row.blankVariant"],
    [{ test: "push-up", reps: "20", variant: "full" }, "missed_at_end test.push-up.row.missedBlank"],
    [{ test: "push-up", variant: "full" }, "reps units.count.empty"],
    [{ test: "push-up", variant: "full", reps: "-1" }, "reps units.count.whole"],
    [{ test: "push-up", variant: "full", reps: "1e9" }, "reps units.count.whole"],
    [{ test: "push-up", variant: "full", reps: "1000000000" }, "reps units.count.tooLong"],
    [{ test: "push-up", variant: "full", reps: "NaN" }, "reps units.count.whole"],
    [{ test: "push-up", variant: "full", reps: "1,5" }, "reps units.count.whole"],
    [
      { test: "push-up", variant: "full", reps: "3", missed_at_end: "4" },
      "null test.push-up.plausibility.offMoreThanReps",
    ],
    [{ test: "push-up", reps: "3", variant: "wall" }, "variant sheets.row.variant"],
    [{ test: "core", time: "60", variant: "knee" }, "variant sheets.row.noVariant"],
    [{ test: "core", time: "3.00" }, "time units.time.ambiguous"],
    [{ test: "core", time: "3,00" }, "time units.time.ambiguous"],
    [{ test: "core", time: "-1" }, "time units.time.form"],
    [{ test: "core", time: "1e9" }, "time units.time.form"],
    [{ test: "core", time: "NaN" }, "time units.time.form"],
    [{ test: "core", time: "1.001,5" }, "time units.comma"],
    [{ test: "core" }, "time units.time.empty"],
    [{ test: "agility", laps: "7" }, "direction test.agility.row.direction"],
    [
      { test: "agility", direction: "cw", laps: "7", extra_quadrants: "4" },
      "extra_quadrants test.agility.row.extra",
    ],
    [
      { test: "vertical", standing_reach: "219.3", touch_reach: "262" },
      "standing_reach units.length.centimetres",
    ],
    [{ test: "vertical", standing_reach: "219", touch_reach: "1e9" }, "touch_reach units.length.centimetres"],
    [
      { test: "vertical", standing_reach: "219", touch_reach: "262", unit: "m" },
      "unit sheets.row.lengthUnit",
    ],
    [{ test: "endurance" }, "time test.endurance.row.timeOrRounds"],
    [{ test: "endurance", finished: "yes" }, "time units.time.empty"],
    [{ test: "endurance", finished: "no" }, "rounds_done units.count.empty"],
    [{ test: "core", time: "60", note: "x".repeat(501) }, "note sheets.row.tooLong"],
  ])("%j is kept back: %s", (given, why) => {
    expect(whyNot(() => read(given as Given))).toBe(why);
  });
});

describe("a past result", () => {
  const read = (given: Given) =>
    readPastRow(cellsOf({ league: "Lantern Bay", number: "7", date: "2026-03-14", ...given }), {
      today: "2026-11-14",
      order: "day",
    });

  test.each([
    [{ test: "push-up", variant: "full", mark: "22" }, 22],
    [{ test: "agility", mark: "29.5", unit: "landings" }, 118],
    [{ test: "agility", mark: "29,5", unit: "landings" }, 118],
    [{ test: "vertical", mark: "43.5" }, 8700],
    [{ test: "vertical", mark: "43,5" }, 8700],
    // 1 in = 25.4 mm exactly (international yard and pound agreement, 1959): 431.8 mm.
    [{ test: "vertical", mark: "17", unit: "in" }, 8636],
    [{ test: "core", mark: "2:31" }, 151],
    [{ test: "core", mark: "3.00", unit: "s" }, 3],
    [{ test: "core", mark: "151.9", unit: "s" }, 151],
    [{ test: "core", mark: "151,9", unit: "s" }, 151],
    [{ test: "core", mark: "3,00", unit: "s" }, 3],
    // World Athletics, hand timing: 10.11 becomes 10.2.
    [{ test: "endurance", mark: "6:10.11" }, 370_200],
    [{ test: "endurance", mark: "6:10,11" }, 370_200],
    [{ test: "endurance", mark: "372.4", unit: "s" }, 372_400],
  ])("%j is %d grains", (given, value) => {
    expect(read(given as Given).value).toBe(value);
  });

  test("compares with marks of today by the handbook's parameters", () => {
    expect(read({ test: "push-up", mark: "22", variant: "knee" }).fingerprint).toBe(
      "push-up/knee beatsPerRep=2 bpm=40 missesToStop=3",
    );
  });

  test("an unusual mark is taken with its question", () => {
    expect(read({ test: "push-up", variant: "full", mark: "120" }).unusual?.key).toBe(
      "test.push-up.plausibility.high",
    );
    expect(read({ test: "core", mark: "3.00", unit: "s" }).unusual?.key).toBe("test.core.plausibility.low");
  });

  test.each([
    [{ date: "14.13.2026" }, "date sheets.row.date"],
    [{ date: "14/3-2026" }, "date sheets.row.date"],
    [{ date: "14/3/026" }, "date sheets.row.date"],
    [{ date: "2026-02-30" }, "date sheets.row.date"],
    // ISO 8601 week and ordinal dates name a day too, but nobody writes them on a list.
    [{ date: "2026-W11-6" }, "date sheets.row.date"],
    [{ date: "2026-11-15" }, "date sheets.row.dateAhead"],
    [{ date: "0026-03-14" }, "date sheets.row.dateLongAgo"],
    [{ mark: "" }, "mark units.count.empty"],
    [{ mark: "-1" }, "mark units.count.whole"],
    [{ mark: "301" }, "mark test.push-up.plausibility.tooHigh"],
    [{ unit: "kg" }, "unit sheets.row.unit"],
    [{ test: "agility", mark: "29.6" }, "mark units.grain"],
    [{ test: "agility", mark: "1.029,5" }, "mark units.comma"],
    [{ test: "agility", mark: "81" }, "mark test.agility.plausibility.tooHigh"],
    [{ test: "vertical", mark: "150" }, "mark test.vertical.plausibility.tooHigh"],
    [{ test: "core", mark: "3.00" }, "mark units.time.ambiguous"],
    [{ test: "core", mark: "3", unit: "min" }, "unit sheets.row.timeUnit"],
    [{ test: "endurance", mark: "44" }, "mark test.endurance.plausibility.tooLow"],
  ])("%j is kept back: %s", (given, why) => {
    expect(whyNot(() => read({ test: "push-up", variant: "full", mark: "22", ...given } as Given))).toBe(why);
  });
});
