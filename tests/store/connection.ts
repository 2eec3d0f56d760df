import type { Database, ReadableDb } from "../../electron/store/connection/database.ts";

/** The connection behind a store's handle, for tests that go round the program: nothing of the program does this. */
export function connectionOf(db: ReadableDb): Database {
  return db as Database;
}
