import type { SummaryMark, SummaryPerson } from "../../../domain/summary/day.ts";
import type { Gap } from "../../../domain/summary/gaps.ts";
import type { RollRow } from "../../../domain/summary/roll.ts";
import { protocolOf, type TestCode } from "../../../domain/tests/registry.ts";
import { gapCodes, standingCodes, verdictCodes } from "./codes.ts";
import { column, type SheetColumn, type SummarySheet, sheetOf } from "./sheet.ts";
import { inTestUnit, lessLevel, unitOf } from "./values.ts";
import { whoColumns } from "./who.ts";

/** One athlete, test and variant; null if there is no mark. */
export interface MarkLine {
  readonly who: SummaryPerson;
  readonly test: TestCode;
  readonly mark: SummaryMark | null;
  readonly gap: Gap | null;
}

export function completeValue({ mark }: Pick<MarkLine, "mark">): number | null {
  return mark?.mark.state === "complete" ? mark.mark.value : null;
}

const columns: SheetColumn<MarkLine>[] = [
  ...whoColumns<MarkLine>(({ who }) => who),
  column("test", "code", "The test", ({ test }) => test),
  column(
    "variant",
    "full, knee or empty",
    "How push-ups were done; the two never compare. Empty for the other tests",
    ({ mark }) => mark?.variant ?? null,
  ),
  column("missing", "code", `Why there is no mark: ${gapCodes}`, ({ gap }) => gap?.kind ?? null),
  column("mark", "see unit", "The mark of the day; empty where there is no complete one", (line) =>
    inTestUnit(line.test, completeValue(line)),
  ),
  column("unit", "", "The unit of mark, previous, level_before, change and best_before", ({ test }) =>
    unitOf(test),
  ),
  column(
    "better",
    "higher or lower",
    "Which way is better: lower for the circuit, higher for all others",
    ({ test }) => protocolOf(test).better,
  ),
  column(
    "standing",
    "code",
    `Against all the athlete's own earlier marks held the same way: ${standingCodes}`,
    ({ mark }) => mark?.news?.standing ?? null,
  ),
  column("best_before", "see unit", "The athlete's best before this day", ({ test, mark }) =>
    inTestUnit(test, mark?.news?.bestBefore),
  ),
  column("previous", "see unit", "The mark of the last test held the same way", ({ test, mark }) =>
    inTestUnit(test, mark?.news?.previous),
  ),
  column("previous_date", "ISO 8601 date", "When that was", ({ mark }) => mark?.news?.previousDate ?? null),
  column(
    "level_before",
    "see unit",
    "What the athlete was good for by all tests before, held the same way: the newest count most; of one test, its mark",
    ({ test, mark }) => inTestUnit(test, mark?.news?.level),
  ),
  column(
    "change",
    "see unit",
    "mark less level_before. Of the circuit a change below zero is a gain",
    (line) => inTestUnit(line.test, lessLevel(completeValue(line), line.mark?.news?.level)),
  ),
  column(
    "verdict",
    "code",
    `What the change is worth beside the typical error of the test: ${verdictCodes}`,
    ({ mark }) => mark?.news?.verdict ?? null,
  ),
];

/** Makes `athletes_marks.csv`: one row per athlete and test (two for both kinds of push-up), even if not done. */
export function marksSheet(roll: readonly RollRow[]): SummarySheet {
  const lines = roll.flatMap(({ who, tests }) =>
    tests.flatMap(({ test, marks, gap }): MarkLine[] =>
      marks.length === 0
        ? [{ who, test, mark: null, gap }]
        : marks.map((mark) => ({ who, test, mark, gap: mark.mark.state === "complete" ? null : gap })),
    ),
  );
  return sheetOf(
    "athletes_marks.csv",
    "One athlete and test: the mark against the tests before, or why there is none.",
    columns,
    lines,
  );
}
