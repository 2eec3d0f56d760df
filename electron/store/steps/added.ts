import { allRows, execute, firstRow, type ReadableDb, type WritableDb } from "../connection/database.ts";
import type { StepKind } from "./kinds.ts";
import { keysOf, type Place } from "./rows.ts";

/** The newest of those rows that are given numbers: a later one has a greater one. */
export interface Newest {
  readonly attempt: number;
  readonly athlete: number;
}

export function newestOf(db: ReadableDb): Newest {
  const sql = `SELECT ifnull((SELECT max(seq) FROM attempt), 0) AS attempt,
    ifnull((SELECT max(id) FROM athlete), 0) AS athlete`;
  return firstRow<Newest>(db, sql) ?? { attempt: 0, athlete: 0 };
}

/** Rows that came with an import, told by their numbers alone; of attempts whose they are is kept. */
interface Added {
  readonly place: Place;
  readonly since: string;
  readonly owner: string;
  /** Left out: all. */
  readonly columns?: readonly string[];
}

const addedBy: Partial<Readonly<Record<StepKind, readonly Added[]>>> = {
  roster: [
    { place: "athlete", since: "id > @athlete", owner: "id" },
    { place: "entrant", since: "athlete_id > @athlete", owner: "athlete_id" },
  ],
  results: [
    { place: "attempt", since: "seq > @attempt", owner: "athlete_id", columns: ["seq", "id", "athlete_id"] },
  ],
};

/** How many rows an import of that kind has added since. */
export function countAdded(db: ReadableDb, kind: StepKind, newest: Newest): number {
  const counts = (addedBy[kind] ?? []).map(({ place, since }) => {
    const sql = `SELECT count(*) AS count FROM "${place}" WHERE ${since}`;
    return firstRow<{ count: number }>(db, sql, { ...newest })?.count ?? 0;
  });
  return counts.reduce((sum, count) => sum + count, 0);
}

/** Keeps all rows that an import has added, from `position` on: the store writes them by itself, without reading them here. */
export function keepAdded(
  db: WritableDb,
  stepSeq: number,
  kind: StepKind,
  { newest, position }: { readonly newest: Newest; readonly position: number },
): void {
  let next = position;
  for (const { place, since, owner, columns } of addedBy[kind] ?? []) {
    const key = objectOf(keysOf[place]);
    const sql = `INSERT INTO step_row (step_seq, position, place, athlete_id, row_key, before, after)
      SELECT @stepSeq, @next - 1 + row_number() OVER (ORDER BY ${keysOf[place].join(", ")}), '${place}', ${owner}, ${key},
        NULL, ${objectOf(columns ?? columnsOf(db, place))}
      FROM "${place}" WHERE ${since}`;
    next += execute(db, sql, { stepSeq, next, ...newest }).changes;
  }
}

function columnsOf(db: ReadableDb, place: Place): string[] {
  const sql = "SELECT name FROM pragma_table_info(@place)";
  return allRows<{ name: string }>(db, sql, { place }).map(({ name }) => name);
}

function objectOf(columns: readonly string[]): string {
  return `json_object(${columns.map((column) => `'${column}', ${column}`).join(", ")})`;
}
