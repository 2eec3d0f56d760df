import { join } from "node:path";
import { type DuckDBConnection, DuckDBInstance, type DuckDBValue } from "@duckdb/node-api";
import type { Cell, Database } from "./database.ts";

/** A database that also reads and writes Parquet files, in one folder alone. */
export interface Engine extends Database {
  /** Writes what a query finds into a new file. @throws the engine's error */
  writeParquet(path: string, query: string): Promise<void>;
  close(): void;
}

/** Most memory of the engine; the rest goes on the disk. */
const memoryLimit = "96MB";

/** Opens the engine, which spills into `home` what has no room in memory; it opens no others than those in `readable`, and fetches nothing. */
export async function openEngine(home: string, readable: string): Promise<Engine> {
  const instance = await DuckDBInstance.create(":memory:", {
    ...{ memory_limit: memoryLimit, threads: "2", temp_directory: join(home, "spilled") },
    ...{ autoinstall_known_extensions: "false", preserve_insertion_order: "false" },
  });
  const connection = await instance.connect();
  await connection.run(`SET allowed_directories = [${quoted(join(readable, "/"))}]`);
  // No other file is opened, whatever a name in a bundle says.
  await connection.run("SET enable_external_access = false");
  return {
    ...databaseOf(instance, connection),
    async writeParquet(path, query) {
      await connection.run(`COPY (${query}) TO ${quoted(path)} (FORMAT parquet, COMPRESSION zstd)`);
    },
    close() {
      connection.closeSync();
      instance.closeSync();
    },
  };
}

/** A text as SQL writes it. */
export function quoted(text: string): string {
  return `'${text.replaceAll("'", "''")}'`;
}

function databaseOf(instance: DuckDBInstance, connection: DuckDBConnection): Database {
  return {
    async run(sql) {
      await connection.run(sql);
    },
    async add(table, rows) {
      const appender = await connection.createAppender(table);
      for (const row of rows) {
        for (const cell of row) append(appender, cell);
        appender.endRow();
      }
      appender.closeSync();
    },
    async *rows<Found>(sql: string) {
      // One of its own: what a connection has not yet given, it forgets when it is asked for something else.
      const asking = await instance.connect();
      try {
        const result = await asking.stream(sql);
        const names = result.columnNames();
        for await (const chunk of result) {
          const columns = chunk.getColumns();
          yield Array.from({ length: chunk.rowCount }, (_none, row) => {
            const found: Record<string, unknown> = {};
            for (let at = 0; at < names.length; at += 1) found[names[at] ?? ""] = plain(columns[at]?.[row]);
            return found as Found;
          });
        }
      } finally {
        asking.closeSync();
      }
    },
  };
}

type Appender = Awaited<ReturnType<DuckDBConnection["createAppender"]>>;

function append(appender: Appender, cell: Cell): void {
  if (cell === null) appender.appendNull();
  else if (typeof cell === "string") appender.appendVarchar(cell);
  else if (Number.isInteger(cell) && Math.abs(cell) < 2 ** 31) appender.appendInteger(cell);
  else appender.appendDouble(cell);
}

/** Whole numbers beyond 32 bits come as big ones; sums here stay far below 2^53, or are shares of them. */
function plain(cell: DuckDBValue | undefined): unknown {
  return typeof cell === "bigint" ? Number(cell) : cell;
}
