import { type ReadableDb, statement } from "./database.ts";

/** A number that goes up with every row that is changed; the store is its file's only writer. */
function changesOf(db: ReadableDb): number {
  return statement<[], { changes: number }>(db, "SELECT total_changes() AS changes").get()?.changes ?? 0;
}

/**
 * The same reading, made again only after something in the store has changed. What is read inside a transaction that
 * has already changed something is not kept, since it may come to nothing.
 */
export function remembered<Value>(
  read: (db: ReadableDb, exceptDayId: number) => Value,
): (db: ReadableDb, exceptDayId: number) => Value {
  const kept = new WeakMap<ReadableDb, { stamp: number; values: Map<number, Value> }>();
  return (db, exceptDayId) => {
    const stamp = changesOf(db);
    let there = kept.get(db);
    if (there?.stamp === stamp) {
      const value = there.values.get(exceptDayId);
      if (value !== undefined) return value;
    }
    const value = read(db, exceptDayId);
    if (db.inTransaction) return value;
    if (there?.stamp !== stamp) {
      there = { stamp, values: new Map() };
      kept.set(db, there);
    }
    there.values.set(exceptDayId, value);
    return value;
  };
}
