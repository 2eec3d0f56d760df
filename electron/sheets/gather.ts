import { RowRefused } from "../domain/tests/cells.ts";

/** Reads the parts of one row on their own, so that a row with three faults tells all three. */
export interface Gathering {
  /** Returns the result of `read`, or `instead` if it refuses. */
  of<Value>(read: () => Value, instead: Value): Value;
  /** Goes on with what was read. @throws RowRefused when anything was refused. */
  done<Row>(row: Row): Row;
}

export function gathering(): Gathering {
  const refused: RowRefused[] = [];
  return {
    of(read, instead) {
      try {
        return read();
      } catch (error) {
        if (!(error instanceof RowRefused)) throw error;
        refused.push(error, ...error.also);
        return instead;
      }
    },
    done(row) {
      const [first, ...also] = refused;
      if (first === undefined) return row;
      throw new RowRefused(first.field, first.sentence, also);
    },
  };
}
