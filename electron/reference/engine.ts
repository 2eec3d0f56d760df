import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type DuckDBConnection, DuckDBInstance } from "@duckdb/node-api";
import type { AlikeMarks } from "../domain/reference/bundle.ts";
import { markTableSql, type PercentileRow, percentilesSql } from "./percentiles.ts";

/** A collection of marks of many bundles, on the disk and with bounded memory. */
export interface Engine {
  /** Adds the marks of one bundle, which has a number as its name. */
  add(bundle: number, marks: readonly AlikeMarks[]): void;
  percentiles(): Promise<readonly PercentileRow[]>;
  /** Deletes everything. */
  close(): Promise<void>;
}

/** Most memory of the engine; the rest goes on the disk. */
const memoryLimit = "256MB";

/** @param folder parent of its temporary folder; the system's own by default. */
export async function openEngine(folder = tmpdir()): Promise<Engine> {
  const home = await mkdtemp(join(folder, "tapeline-reference-"));
  try {
    const instance = await DuckDBInstance.create(join(home, "marks.duckdb"), {
      ...{ memory_limit: memoryLimit, threads: "2", temp_directory: join(home, "spilled") },
      // Nothing is fetched and no other file is opened, whatever a name in a bundle says.
      ...{ enable_external_access: "false", autoinstall_known_extensions: "false" },
    });
    const connection = await instance.connect();
    await connection.run(markTableSql);
    return await gathering(connection, async () => {
      connection.closeSync();
      instance.closeSync();
      await rm(home, { recursive: true, force: true });
    });
  } catch (error) {
    await rm(home, { recursive: true, force: true });
    throw error;
  }
}

async function gathering(connection: DuckDBConnection, close: () => Promise<void>): Promise<Engine> {
  const appender = await connection.createAppender("mark");
  return {
    add(bundle, marks) {
      for (const { test, variant, fingerprint, category, ageBand, low, high, count } of marks) {
        appender.appendInteger(bundle);
        for (const text of [test, variant, fingerprint, category, ageBand]) appender.appendVarchar(text);
        for (const bound of [low, high]) {
          if (bound === null) appender.appendNull();
          else appender.appendInteger(bound);
        }
        appender.appendInteger(count);
        appender.endRow();
      }
    },
    async percentiles() {
      appender.closeSync();
      const reader = await connection.runAndReadAll(percentilesSql);
      return reader.getRowObjectsJS() as unknown as readonly PercentileRow[];
    },
    close,
  };
}
