import type { RollCell, RollRow } from "../../../domain/summary/roll.ts";
import { protocolOf, type TestCode, testCodes } from "../../../domain/tests/registry.ts";
import { completeValue } from "./marks-sheet.ts";
import { column, type SheetColumn, type SummarySheet, sheetOf } from "./sheet.ts";
import { inTestUnit, lessLevel, unitOf } from "./values.ts";
import { whoColumns } from "./who.ts";

function cellOf({ tests }: RollRow, test: TestCode): RollCell | undefined {
  return tests.find((cell) => cell.test === test);
}

/** Returns the mark of a test: the full push-ups where both were done; athletes_marks.csv has the other. */
function markOf(row: RollRow, test: TestCode) {
  return cellOf(row, test)?.marks.find(({ mark }) => mark.state === "complete") ?? null;
}

function testColumns(test: TestCode): SheetColumn<RollRow>[] {
  // In the form of column names.
  const name = test.replaceAll("-", "_");
  const { variants, better } = protocolOf(test);
  const unit = unitOf(test);
  const value = (row: RollRow) => completeValue({ mark: markOf(row, test) });
  const news = (row: RollRow) => markOf(row, test)?.news;
  const variant: SheetColumn<RollRow> = column(
    `${name}_variant`,
    "full, knee or empty",
    "How they were done; where both ways were, the full ones stand here",
    (row) => markOf(row, test)?.variant ?? null,
  );
  return [
    column(name, unit, "The mark of the day", (row) => inTestUnit(test, value(row))),
    ...(variants.length > 1 ? [variant] : []),
    column(`${name}_previous`, unit, "The last test's mark", (row) => inTestUnit(test, news(row)?.previous)),
    column(`${name}_level`, unit, "as level_before in athletes_marks.csv", (row) =>
      inTestUnit(test, news(row)?.level),
    ),
    column(
      `${name}_change`,
      unit,
      better === "lower" ? "mark less level; below zero is faster" : "mark less level",
      (row) => inTestUnit(test, lessLevel(value(row), news(row)?.level)),
    ),
    column(
      `${name}_verdict`,
      "code",
      "as verdict in athletes_marks.csv",
      (row) => news(row)?.verdict ?? null,
    ),
    column(
      `${name}_standing`,
      "code",
      "as standing in athletes_marks.csv",
      (row) => news(row)?.standing ?? null,
    ),
    column(
      `${name}_missing`,
      "code",
      "as missing in athletes_marks.csv",
      (row) => cellOf(row, test)?.gap?.kind ?? null,
    ),
  ];
}

/** Makes `athletes.csv` for a coach: one row per athlete, five marks against the tests before. */
export function athletesSheet(roll: readonly RollRow[]): SummarySheet {
  const columns = [...whoColumns<RollRow>(({ who }) => who), ...testCodes.flatMap(testColumns)];
  return sheetOf(
    "athletes.csv",
    "One athlete: the five marks, each against the tests before.",
    columns,
    roll,
  );
}
