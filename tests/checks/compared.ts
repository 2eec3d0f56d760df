import type { HallInTest } from "../../electron/domain/reference-table/differing-halls.ts";
import { groupsOf } from "../../electron/reference/groups.ts";
import { fill } from "../unit/reference/fill.ts";
import { inSqlite } from "../unit/reference/in-sqlite.ts";

/** One result as a hall reported it. */
export interface Reported {
  readonly hall: string;
  /** The age band. */
  readonly cell: string;
  /** Null where open. */
  readonly low: number | null;
  readonly high: number | null;
}

/** Every hall of these reports against all others, by the merge's own queries. */
export async function compared(reports: readonly Reported[]): Promise<(HallInTest & { name: string })[]> {
  const names = [...new Set(reports.map(({ hall }) => hall))];
  const database = inSqlite();
  await fill(
    database,
    reports.map(({ hall, cell, low, high }) => ({
      hall: names.indexOf(hall),
      kind: ["push-up", "full", "push-up/full bpm=40", "women", cell],
      ...{ quarter: "2026-Q1", low, high, marks: 1 },
    })),
  );
  const { halls, testOf } = await groupsOf(database);
  database.close();
  return halls.map((hall) => ({ ...hall, test: testOf(hall.test) ?? "", name: names[hall.hall] ?? "" }));
}
