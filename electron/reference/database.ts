/** A value in a row. */
export type Cell = string | number | null;

/** What the merge asks of an engine: SQL that every one knows. */
export interface Database {
  /** Runs statements that give nothing back. */
  run(sql: string): Promise<void>;
  /** Adds rows to a table, their cells in the order of its columns. */
  add(table: string, rows: Iterable<readonly Cell[]>): Promise<void>;
  /** Runs a query; gives its rows some at a time, which have its columns. Rows may be added and others asked for meanwhile. */
  rows<Found>(sql: string): AsyncGenerator<Found[]>;
}

/** Waits for all rows. */
export async function allOf<Found>(rows: AsyncIterable<Found[]>): Promise<Found[]> {
  const all: Found[] = [];
  for await (const some of rows) all.push(...some);
  return all;
}
