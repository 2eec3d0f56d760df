/** One part of a long list. */
export interface ListPage<Row> {
  /** Index of the part, from 1. */
  readonly part: number;
  readonly parts: number;
  readonly rows: Row[];
}

/** Returns the part of a list for the `round`th visit (from 0), so that everybody has their turn. */
export function listPageOf<Row>(rows: readonly Row[], size: number, round: number): ListPage<Row> {
  const parts = Math.max(1, Math.ceil(rows.length / size));
  const page = round % parts;
  return { part: page + 1, parts, rows: rows.slice(page * size, (page + 1) * size) };
}
