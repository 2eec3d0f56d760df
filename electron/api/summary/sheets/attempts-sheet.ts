import type { SummaryAttempt, SummaryDay, SummaryPerson } from "../../../domain/summary/day.ts";
import type { SeenCells } from "../../../domain/tests/definition.ts";
import { definitionOf } from "../../../domain/tests/registry.ts";
import { sheetColumns } from "../../../domain/tests/sheet-columns.ts";
import { column, type SheetColumn, type SummarySheet, sheetOf } from "./sheet.ts";
import { whoColumns } from "./who.ts";

interface Line {
  readonly order: number;
  readonly who: SummaryPerson;
  readonly attempt: SummaryAttempt;
  /** The order of the attempt it corrects. */
  readonly corrects: number | null;
}

/** Returns an attempt's cells in the columns of a results sheet: lengths in cm, times in s. */
function seenOf({ test, seen }: SummaryAttempt): SeenCells {
  const { protocol, sheet } = definitionOf(test);
  return sheet.write(protocol.attempt.parse(seen));
}

const seenColumns = sheetColumns().map(({ name, unit, means }) =>
  column<Line>(name, unit, means, ({ attempt }) => seenOf(attempt)[name] ?? null),
);

const columns: SheetColumn<Line>[] = [
  column("order", "", "The order of entry, from 1", ({ order }) => order),
  ...whoColumns<Line>(({ who }) => who),
  column("test", "code", "The test", ({ attempt }) => attempt.test),
  column("variant", "full, knee or empty", "How push-ups were done", ({ attempt }) => attempt.variant),
  ...seenColumns,
  column(
    "entered_by",
    "",
    "Initials of who judged or keyed it; `sheet`: a sheet that said nobody",
    ({ attempt }) => attempt.enteredBy,
  ),
  column(
    "entered_at",
    "ISO 8601, UTC",
    "When it was entered, by the computer's clock",
    ({ attempt }) => attempt.at,
  ),
  column(
    "performed_at",
    "ISO 8601, UTC",
    "When it was done: as entered_at, or the time on the paper; empty: paper without a time",
    ({ attempt }) => attempt.performed,
  ),
  column(
    "source",
    "code",
    "`heat` timed live; `station` keyed at a station; `sheet` from a sheet of results",
    ({ attempt }) => attempt.source,
  ),
  column("note", "", "What was written beside it", ({ attempt }) => attempt.note),
  column(
    "stands",
    "yes or no",
    "no: it was corrected or taken back, and counts for nothing",
    ({ attempt }) => (attempt.void === null ? "yes" : "no"),
  ),
  column("void_at", "ISO 8601, UTC", "When it was", ({ attempt }) => attempt.void?.at ?? null),
  column("void_by", "", "By whom", ({ attempt }) => attempt.void?.by ?? null),
  column("void_reason", "", "Why", ({ attempt }) => attempt.void?.reason ?? null),
  column(
    "corrects",
    "",
    "The order of the attempt that this one took the place of",
    ({ corrects }) => corrects,
  ),
];

/** Makes `attempts.csv`: every attempt in the order of entry, void ones included. */
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
