import type { SummaryAttempt, SummaryDay, SummaryPerson } from "../../../domain/summary/day.ts";
import type { SeenCells } from "../../../domain/tests/definition.ts";
import { definitionOf } from "../../../domain/tests/registry.ts";
import { sheetColumns } from "../../../domain/tests/sheet-columns.ts";
import { type Column, type SummarySheet, sheetOf } from "./sheet.ts";
import { whoColumns } from "./who.ts";

interface Line {
  readonly order: number;
  readonly who: SummaryPerson;
  readonly attempt: SummaryAttempt;
  /** The order of the attempt that it corrects. */
  readonly corrects: number | null;
}

/** What was seen, in the columns of a sheet of results: lengths in cm, times in s. */
function seenOf({ test, seen }: SummaryAttempt): SeenCells {
  const { protocol, sheet } = definitionOf(test);
  return sheet.write(protocol.attempt.parse(seen));
}

const seenColumns = sheetColumns().map(
  ({ name, unit, means }): Column<Line> => ({
    ...{ name, unit, means },
    cell: ({ attempt }) => seenOf(attempt)[name] ?? null,
  }),
);

const columns: Column<Line>[] = [
  { name: "order", unit: "", means: "The order of entry, from 1", cell: ({ order }) => order },
  ...whoColumns<Line>(({ who }) => who),
  { name: "test", unit: "code", means: "The test", cell: ({ attempt }) => attempt.test },
  {
    name: "variant",
    unit: "full, knee or empty",
    means: "How push-ups were done",
    cell: ({ attempt }) => attempt.variant,
  },
  ...seenColumns,
  {
    name: "entered_by",
    unit: "",
    means: "Initials of who judged or keyed it; `sheet`: a sheet that said nobody",
    cell: ({ attempt }) => attempt.enteredBy,
  },
  {
    name: "entered_at",
    unit: "ISO 8601, UTC",
    means: "When it was entered, by the computer's clock",
    cell: ({ attempt }) => attempt.at,
  },
  {
    name: "source",
    unit: "code",
    means: "`heat` timed live; `station` keyed at a station; `sheet` from a sheet of results",
    cell: ({ attempt }) => attempt.source,
  },
  { name: "note", unit: "", means: "What was written beside it", cell: ({ attempt }) => attempt.note },
  {
    name: "stands",
    unit: "yes or no",
    means: "no: it was corrected or taken back, and counts for nothing",
    cell: ({ attempt }) => (attempt.void === null ? "yes" : "no"),
  },
  {
    name: "void_at",
    unit: "ISO 8601, UTC",
    means: "When it was",
    cell: ({ attempt }) => attempt.void?.at ?? null,
  },
  { name: "void_by", unit: "", means: "By whom", cell: ({ attempt }) => attempt.void?.by ?? null },
  { name: "void_reason", unit: "", means: "Why", cell: ({ attempt }) => attempt.void?.reason ?? null },
  {
    name: "corrects",
    unit: "",
    means: "The order of the attempt that this one took the place of",
    cell: ({ corrects }) => corrects,
  },
];

/** `attempts.csv`: everything that was entered, in the order of entry, also what no longer stands. */
export function attemptsSheet({ people, attempts }: SummaryDay): SummarySheet {
  const byId = new Map(people.map((who) => [who.athleteId, who]));
  const orders = new Map(attempts.map(({ id }, index) => [id, index + 1]));
  const lines = attempts.flatMap((attempt, index) => {
    const who = byId.get(attempt.athleteId);
    const corrects = orders.get(attempt.replaces ?? "") ?? null;
    return who === undefined ? [] : [{ order: index + 1, who, attempt, corrects }];
  });
  return sheetOf(
    "attempts.csv",
    "One attempt as it was entered; those that no longer stand among them.",
    columns,
    lines,
  );
}
