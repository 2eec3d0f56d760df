import SqliteDatabase from "better-sqlite3";
import type { Cell, Database } from "../../../electron/reference/database.ts";

/** The merge's queries in SQLite: the same text, another engine. */
export function inSqlite(): Database & { close(): void } {
  const db = new SqliteDatabase(":memory:");
  return {
    async run(sql) {
      db.exec(sql);
    },
    async add(table, rows) {
      const columns = db
        .prepare<[], { name: string }>(`SELECT name FROM pragma_table_info('${table}')`)
        .all();
      const add = db.prepare<Cell[]>(`INSERT INTO ${table} VALUES (${columns.map(() => "?").join()})`);
      for (const row of rows) add.run(...row);
    },
    async *rows<Found>(sql: string) {
      yield db.prepare<[], Found>(sql).all();
    },
    close: () => db.close(),
  };
}
