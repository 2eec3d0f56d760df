import type { RollCell, RollRow } from "../../../domain/summary/roll.ts";
import { protocolOf, type TestCode, testCodes } from "../../../domain/tests/registry.ts";
import { completeValue } from "./marks-sheet.ts";
import { type Column, type SummarySheet, sheetOf } from "./sheet.ts";
import { inTestUnit, lessPrevious, unitOf } from "./values.ts";
import { whoColumns } from "./who.ts";

function cellOf({ tests }: RollRow, test: TestCode): RollCell | undefined {
  return tests.find((cell) => cell.test === test);
}

/** The mark that stands for a test: the full push-ups where both were done; the other is in athletes_marks.csv. */
function markOf(row: RollRow, test: TestCode) {
  return cellOf(row, test)?.marks.find(({ mark }) => mark.state === "complete") ?? null;
}

function testColumns(test: TestCode): Column<RollRow>[] {
  // As column names are written.
  const name = test.replaceAll("-", "_");
  const { variants, better } = protocolOf(test);
  const unit = unitOf(test);
  const value = (row: RollRow) => completeValue({ mark: markOf(row, test) });
  const news = (row: RollRow) => markOf(row, test)?.news;
  const variant: Column<RollRow> = {
    name: `${name}_variant`,
    unit: "full, knee or empty",
    means: "How they were done; where both ways were, the full ones stand here",
    cell: (row) => markOf(row, test)?.variant ?? null,
  };
  return [
    { name, unit, means: "The mark of the day", cell: (row) => inTestUnit(test, value(row)) },
    ...(variants.length > 1 ? [variant] : []),
    {
      name: `${name}_previous`,
      unit,
      means: "The last test's mark",
      cell: (row) => inTestUnit(test, news(row)?.previous),
    },
    {
      name: `${name}_change`,
      unit,
      means: better === "lower" ? "mark less previous; below zero is faster" : "mark less previous",
      cell: (row) => inTestUnit(test, lessPrevious(value(row), news(row)?.previous)),
    },
    {
      name: `${name}_verdict`,
      unit: "code",
      means: "as verdict in athletes_marks.csv",
      cell: (row) => news(row)?.verdict ?? null,
    },
    {
      name: `${name}_standing`,
      unit: "code",
      means: "as standing in athletes_marks.csv",
      cell: (row) => news(row)?.standing ?? null,
    },
    {
      name: `${name}_missing`,
      unit: "code",
      means: "as missing in athletes_marks.csv",
      cell: (row) => cellOf(row, test)?.gap?.kind ?? null,
    },
  ];
}

/** `athletes.csv`: one row an athlete, for a coach: five marks against the last test. */
export function athletesSheet(roll: readonly RollRow[]): SummarySheet {
  const columns = [...whoColumns<RollRow>(({ who }) => who), ...testCodes.flatMap(testColumns)];
  return sheetOf("athletes.csv", "One athlete: the five marks, each against the last test.", columns, roll);
}
