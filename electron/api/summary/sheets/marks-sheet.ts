import type { SummaryMark, SummaryPerson } from "../../../domain/summary/day.ts";
import type { Gap } from "../../../domain/summary/gaps.ts";
import type { RollRow } from "../../../domain/summary/roll.ts";
import type { TestCode } from "../../../domain/tests/registry.ts";
import { protocolOf } from "../../../domain/tests/registry.ts";
import { gapCodes, standingCodes, verdictCodes } from "./codes.ts";
import { type Column, type SummarySheet, sheetOf } from "./sheet.ts";
import { inTestUnit, lessPrevious, unitOf } from "./values.ts";
import { whoColumns } from "./who.ts";

/** One athlete, test and variant; no mark where there is none. */
export interface MarkLine {
  readonly who: SummaryPerson;
  readonly test: TestCode;
  readonly mark: SummaryMark | null;
  readonly gap: Gap | null;
}

export function completeValue({ mark }: Pick<MarkLine, "mark">): number | null {
  return mark?.mark.state === "complete" ? mark.mark.value : null;
}

const columns: Column<MarkLine>[] = [
  ...whoColumns<MarkLine>(({ who }) => who),
  { name: "test", unit: "code", means: "The test", cell: ({ test }) => test },
  {
    name: "variant",
    unit: "full, knee or empty",
    means: "How push-ups were done; the two never compare. Empty for the other tests",
    cell: ({ mark }) => mark?.variant ?? null,
  },
  {
    name: "missing",
    unit: "code",
    means: `Why there is no mark: ${gapCodes}`,
    cell: ({ gap }) => gap?.kind ?? null,
  },
  {
    name: "mark",
    unit: "see unit",
    means: "The mark of the day; empty where there is no complete one",
    cell: (line) => inTestUnit(line.test, completeValue(line)),
  },
  {
    name: "unit",
    unit: "",
    means: "The unit of mark, previous, change and best_before",
    cell: ({ test }) => unitOf(test),
  },
  {
    name: "better",
    unit: "higher or lower",
    means: "Which way is better: lower for the circuit, higher for all others",
    cell: ({ test }) => protocolOf(test).better,
  },
  {
    name: "standing",
    unit: "code",
    means: `Against all the athlete's own earlier marks held the same way: ${standingCodes}`,
    cell: ({ mark }) => mark?.news?.standing ?? null,
  },
  {
    name: "best_before",
    unit: "see unit",
    means: "The athlete's best before this day",
    cell: ({ test, mark }) => inTestUnit(test, mark?.news?.bestBefore),
  },
  {
    name: "previous",
    unit: "see unit",
    means: "The mark of the last test held the same way",
    cell: ({ test, mark }) => inTestUnit(test, mark?.news?.previous),
  },
  {
    name: "previous_date",
    unit: "ISO 8601 date",
    means: "When that was",
    cell: ({ mark }) => mark?.news?.previousDate ?? null,
  },
  {
    name: "change",
    unit: "see unit",
    means: "mark less previous. Of the circuit a change below zero is a gain",
    cell: (line) => inTestUnit(line.test, lessPrevious(completeValue(line), line.mark?.news?.previous)),
  },
  {
    name: "verdict",
    unit: "code",
    means: `What the change is worth beside the typical error of the test: ${verdictCodes}`,
    cell: ({ mark }) => mark?.news?.verdict ?? null,
  },
];

/** `athletes_marks.csv`: one row an athlete and test (two where push-ups were done both ways), also where nothing was done. */
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
    "One athlete and test: the mark against the last test, or why there is none.",
    columns,
    lines,
  );
}
