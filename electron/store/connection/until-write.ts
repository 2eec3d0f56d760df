import { firstRow, type ReadableDb } from "./database.ts";

/** Returns a number that grows with every changed row; the store is its file's only writer. */
export function changesOf(db: ReadableDb): number {
  return firstRow<{ changes: number }>(db, "SELECT total_changes() AS changes")?.changes ?? 0;
}

/**
 * Caches a read until something in the store changes. A read inside a transaction that has already written is not
 * cached, since the transaction may be rolled back.
 */
export function cachedUntilWrite<Key extends string | number, Value>(
  read: (db: ReadableDb, key: Key) => Value,
): (db: ReadableDb, key: Key) => Value {
  const kept = new WeakMap<ReadableDb, { stamp: number; values: Map<Key, Value> }>();
  return (db, key) => {
    const stamp = changesOf(db);
    let there = kept.get(db);
    if (there?.stamp === stamp) {
      const value = there.values.get(key);
      if (value !== undefined) return value;
    }
    const value = read(db, key);
    if (db.inTransaction) return value;
    if (there?.stamp !== stamp) {
      there = { stamp, values: new Map() };
      kept.set(db, there);
    }
    there.values.set(key, value);
    return value;
  };
}
