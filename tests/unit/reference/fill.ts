import type { Cell, Database } from "../../../electron/reference/database.ts";
import { steps } from "../../../electron/reference/steps.ts";

/** Marks of one hall that are told alike, as a merge's queries take them, with the name of their kind. */
export interface FilledMarks {
  readonly hall: number;
  readonly kind: readonly [
    test: string,
    variant: string,
    fingerprint: string,
    category: string,
    ageBand: string,
  ];
  readonly quarter: string;
  readonly low: number | null;
  readonly high: number | null;
  readonly marks: number;
}

/** Makes the input of a merge's queries, and the tables that come in between its steps. */
export async function fill(database: Database, rows: readonly FilledMarks[]): Promise<void> {
  const kinds = new Map<string, readonly Cell[]>();
  const marks = rows.map(({ hall, kind, quarter, low, high, marks: count }) => {
    const key = JSON.stringify(kind);
    const [number] = kinds.get(key) ?? [kinds.size + 1];
    kinds.set(key, [number ?? 0, ...kind]);
    return [hall, number ?? 0, quarter, low, high, count];
  });
  await database.run(steps.mark);
  await database.run(steps.tables);
  await database.add("kind", [...kinds.values()]);
  await database.add("mark", marks);
}
