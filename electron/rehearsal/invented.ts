import type { TestCode } from "../domain/tests/registry.ts";
import { columnsOf } from "../sheets/headers.ts";
import { type SheetCell, writeSheet } from "../sheets/write.ts";
import type { ReadableDb } from "../store/connection/database.ts";
import { entrants, leftOut } from "../store/tables/entrants.ts";
import type { RehearsedSheet } from "./sheets.ts";

type Row = Readonly<Record<string, SheetCell>>;

/** Invented attempts of everyday size, each a row; `n` from 0 to 9 makes people differ. */
const attempts: Readonly<Record<TestCode, (n: number) => readonly Row[]>> = {
  "push-up": (n) => [{ variant: "full", reps: 14 + n, missed_at_end: 0 }],
  agility: (n) =>
    (["cw", "ccw"] as const).map((direction) => ({
      ...{ direction, laps: 6, extra_quadrants: n % 4, line_touches: n % 2 },
    })),
  vertical: (n) => [{ standing_reach: 215, touch_reach: 248 + n, unit: "cm" }],
  core: (n) => [{ time: `1:${30 + n}` }],
  endurance: (n) => [{ time: `5:${10 + n}.0`, finished: "yes" }],
};

/**
 * Makes a results sheet for everybody who tests, where nobody has filled one in: invented, and never kept, since a
 * rehearsal's store is thrown away. It goes in like any other, so that the day is held to its end.
 */
export function inventedResults(db: ReadableDb, dayId: number): RehearsedSheet {
  const fields = columnsOf.results;
  const rows = rowsOf(db, dayId).map((row) => fields.map((field) => row[field] ?? null));
  return { name: "", open: () => new Blob([writeSheet(fields, rows)]).stream() };
}

function rowsOf(db: ReadableDb, dayId: number): Row[] {
  const skipped = new Set(leftOut(db, dayId).map(({ athleteId, test }) => `${athleteId} ${test}`));
  return entrants(db, dayId).flatMap(({ athleteId, state, bib }) =>
    state !== "testing" || bib === null
      ? []
      : Object.entries(attempts).flatMap(([test, attemptsOf]) =>
          skipped.has(`${athleteId} ${test}`)
            ? []
            : attemptsOf((bib * 7) % 10).map((row) => ({ ...row, bib, test, entered_by: "TL" })),
        ),
  );
}
