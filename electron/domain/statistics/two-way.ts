import { mean, sum } from "simple-statistics";

/** The mean squares of a table with one row per subject and one column per repeat, and the table's size. */
export interface TwoWay {
  /** Number of rows: athletes, or other measured subjects. */
  readonly subjects: number;
  /** Number of columns: tests, trials or judges. */
  readonly repeats: number;
  /** Between subjects, n − 1 degrees of freedom. */
  readonly between: number;
  /** Between repeats, k − 1 degrees of freedom: the changes shared by all subjects. */
  readonly columns: number;
  /** Residual, (n − 1)(k − 1) degrees of freedom. */
  readonly error: number;
  /** Within subjects, n(k − 1) degrees of freedom: columns and error together. */
  readonly within: number;
}

/**
 * Computes a two-way analysis of variance without replication of a full table. Mean squares are in the square of the
 * values' unit.
 * @throws RangeError unless there are at least two rows and two columns, all rows equally long, and only finite
 * numbers.
 */
export function twoWay(rows: readonly (readonly number[])[]): TwoWay {
  const [subjects, repeats] = [rows.length, rows[0]?.length ?? 0];
  if (subjects < 2 || repeats < 2) throw new RangeError("Agreement needs at least two rows of two values.");
  if (rows.some((row) => row.length !== repeats || !row.every(Number.isFinite))) {
    throw new RangeError("Agreement needs a full table of finite numbers.");
  }
  const grand = mean(rows.map((row) => mean([...row])));
  const rowMeans = rows.map((row) => mean([...row]));
  const columnMeans = Array.from({ length: repeats }, (_, at) => mean(rows.map((row) => row[at] ?? 0)));
  const about = (means: readonly number[]) => sum(means.map((each) => (each - grand) ** 2));
  const left = rows.flatMap((row, r) =>
    row.map((value, c) => (value - (rowMeans[r] ?? 0) - (columnMeans[c] ?? 0) + grand) ** 2),
  );
  const [ofColumns, ofError] = [subjects * about(columnMeans), sum(left)];
  return {
    subjects,
    repeats,
    between: (repeats * about(rowMeans)) / (subjects - 1),
    columns: ofColumns / (repeats - 1),
    error: ofError / ((subjects - 1) * (repeats - 1)),
    within: (ofColumns + ofError) / (subjects * (repeats - 1)),
  };
}
