import { mean } from "simple-statistics";

/** One value of a row, and the column that it stands in. */
export interface Cell {
  readonly column: number;
  readonly value: number;
}

/** The mean square within rows, and its degrees of freedom. */
export interface Within {
  readonly square: number;
  readonly degrees: number;
}

const steps = 500;

/**
 * Returns the error mean square of a table with holes, a row for each athlete: what is left of the values without what
 * whole rows and whole columns differ by, least squares. All marks of a row count once, so that neighbouring pairs,
 * which share a mark, are not taken for independent. Of a full table it is the error mean square of `twoWay`. Null
 * where nothing is left over to tell the error by.
 */
export function withinRows(rows: readonly (readonly Cell[])[]): Within | null {
  const useful = rows.filter((row) => row.length > 1);
  const degrees = degreesOf(useful);
  if (degrees < 1) return null;
  const columns = columnsOf(useful);
  const left = useful.flatMap((row) => deviations(row, columns));
  return { square: left.reduce((sum, { value }) => sum + value ** 2, 0) / degrees, degrees };
}

/** Returns a row's values without its columns' effects and its own mean. */
function deviations(row: readonly Cell[], columns: ReadonlyMap<number, number>): Cell[] {
  const without = row.map(({ column, value }) => ({ column, value: value - (columns.get(column) ?? 0) }));
  const own = mean(without.map(({ value }) => value));
  return without.map(({ column, value }) => ({ column, value: value - own }));
}

/** Returns the columns' effects by going to and fro between rows and columns until nothing moves any more. */
function columnsOf(rows: readonly (readonly Cell[])[]): ReadonlyMap<number, number> {
  const effects = new Map<number, number>();
  const cells = rows.flat();
  // Of any number of values: as arguments of one call, more than some hundred thousand have no room.
  const size = cells.reduce((most, { value }) => Math.max(most, Math.abs(value)), 1e-300);
  for (let step = 0; step < steps; step += 1) {
    const left = Map.groupBy(
      rows.flatMap((row) => deviations(row, effects)),
      ({ column }) => column,
    );
    let moved = 0;
    for (const [column, some] of left) {
      const more = mean(some.map(({ value }) => value));
      effects.set(column, (effects.get(column) ?? 0) + more);
      moved = Math.max(moved, Math.abs(more));
    }
    if (moved < 1e-12 * size) break;
  }
  return effects;
}

/** Counts the values less what rows and columns take up: one each, and one less for each part that hangs together. */
function degreesOf(rows: readonly (readonly Cell[])[]): number {
  const cells = rows.reduce((sum, row) => sum + row.length, 0);
  const columns = new Set(rows.flat().map(({ column }) => column));
  return cells - rows.length - columns.size + partsOf(rows);
}

/** Counts the parts of a table that share no column with each other. */
function partsOf(rows: readonly (readonly Cell[])[]): number {
  let parts: Set<number>[] = [];
  for (const row of rows) {
    const own = row.map(({ column }) => column);
    const touched = parts.filter((part) => own.some((column) => part.has(column)));
    const joined = new Set([...own, ...touched.flatMap((part) => [...part])]);
    parts = [...parts.filter((part) => !touched.includes(part)), joined];
  }
  return parts.length;
}
