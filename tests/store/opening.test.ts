import { createHash } from "node:crypto";
import {
  copyFileSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import SqliteDatabase from "better-sqlite3";
import { afterEach, beforeEach, expect, test } from "vitest";
import { pragmas } from "../../electron/store/connection/connect.ts";
import { applicationId } from "../../electron/store/connection/examine.ts";
import { openStore } from "../../electron/store/connection/open.ts";
import { StoreRefused } from "../../electron/store/connection/refused.ts";
import { migrations } from "../../electron/store/migrations/list.ts";
import { connectionOf } from "./connection.ts";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "tapeline-store-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const file = () => join(folder, "tapeline.sqlite");

/** Every file beside the store with what is in it. */
function everything(): [string, string][] {
  return readdirSync(folder)
    .sort()
    .map((name) => [
      name,
      createHash("sha256")
        .update(readFileSync(join(folder, name)))
        .digest("hex"),
    ]);
}

function refusal(): StoreRefused["reason"] | null {
  try {
    openStore({ file: file() }).close();
    return null;
  } catch (error) {
    if (error instanceof StoreRefused) return error.reason;
    throw error;
  }
}

test("every setting that durability and honesty rest on is read back", () => {
  const store = openStore({ file: file() });
  const read = Object.fromEntries(
    pragmas.map(([name]) => [name, connectionOf(store.db).pragma(name, { simple: true })]),
  );
  // The numbers are SQLite's own: synchronous 2 is FULL (sqlite.org/pragma.html).
  expect(read).toEqual({
    journal_mode: "wal",
    synchronous: 2,
    fullfsync: 1,
    foreign_keys: 1,
    recursive_triggers: 1,
    trusted_schema: 0,
    cell_size_check: 1,
    secure_delete: 1,
    busy_timeout: 5000,
    wal_autocheckpoint: 0,
    cache_spill: 0,
  });
  store.close();
});

test("a new store is ours, up to date, whole, and made of strict tables", () => {
  const store = openStore({ file: file() });
  expect(connectionOf(store.db).pragma("application_id", { simple: true })).toBe(applicationId);
  expect(connectionOf(store.db).pragma("user_version", { simple: true })).toBe(migrations.length);
  expect(connectionOf(store.db).pragma("integrity_check", { simple: true })).toBe("ok");
  const loose = connectionOf(store.db)
    .prepare<[], { name: string }>(
      "SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'table' AND strict = 0 AND name NOT LIKE 'sqlite_%'",
    )
    .all();
  expect(loose).toEqual([]);
  store.close();
});

test("the steps from nothing make exactly these tables, and a second opening none", () => {
  openStore({ file: file() }).close();
  const tables = () => {
    const db = new SqliteDatabase(file(), { readonly: true });
    const rows = db.prepare("SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name").all();
    db.close();
    return rows.map((row) => (row as { name: string }).name).filter((name) => !name.startsWith("sqlite_"));
  };
  const made = tables();
  const first = ["athlete", "attempt", "call", "day", "day_protocol", "entrant", "export_log", "league"];
  const heats = ["absence", "heat", "heat_event", "heat_lane"];
  const erasure = ["athlete_highest", "erasing", "erasure", "nameless_mark", "never"];
  const later = ["export_unsaved", "reference", "reference_mark", "reference_test", "sheet_form"];
  const dayHistory = ["day_event", "discarded_day", "past_void"];
  const latest = [
    "step",
    "step_row",
    "stepping",
    "device",
    "study",
    "study_reading",
    "study_series",
    "day_plan",
  ];
  const elsewhere = ["publisher", "reference_in_table", "reference_rules", "reference_table"];
  expect(made).toEqual(
    [
      ...first,
      "left_out",
      "mark",
      "past_mark",
      "void",
      ...heats,
      ...erasure,
      ...later,
      ...dayHistory,
      ...latest,
      ...elsewhere,
    ].sort(),
  );
  openStore({ file: file() }).close();
  expect(tables()).toEqual(made);
});

test("an empty file is a store to be, as a first start that was cut off leaves it", () => {
  writeFileSync(file(), "");
  expect(refusal()).toBeNull();
});

test("a step that fails is not half done and keeps the version", () => {
  openStore({ file: file() }).close();
  const db = new SqliteDatabase(file());
  // A store of version 0 in which the first step must fail, since its tables are there already.
  db.pragma("user_version = 0");
  db.close();
  expect(() => openStore({ file: file(), accepted: true })).toThrow(/already exists/);
  const after = new SqliteDatabase(file(), { readonly: true });
  expect(after.pragma("user_version", { simple: true })).toBe(0);
  after.close();
});

test("a store of a newer program is refused, and not a byte is touched", () => {
  openStore({ file: file() }).close();
  const db = new SqliteDatabase(file());
  db.pragma(`user_version = ${migrations.length + 1}`);
  db.pragma("journal_mode = DELETE");
  db.close();
  const before = everything();
  expect(refusal()).toBe("newer");
  expect(everything()).toEqual(before);
});

test("a newer store that a crash left with its log is refused, and neither is touched", () => {
  openStore({ file: file() }).close();
  const db = new SqliteDatabase(file());
  db.pragma("journal_mode = WAL");
  db.pragma(`user_version = ${migrations.length + 1}`);
  // A crash leaves the log behind; so does a copy of both files while the other connection is open.
  for (const part of ["", "-wal"]) copyFileSync(file() + part, `${file()}.crashed${part}`);
  db.close();
  for (const part of ["", "-wal"]) renameSync(`${file()}.crashed${part}`, file() + part);
  const before = everything();
  expect(before.map(([name]) => name.replace("tapeline.sqlite", ""))).toEqual([
    "",
    "-seal",
    "-tally",
    "-wal",
  ]);
  expect(refusal()).toBe("newer");
  expect(everything().filter(([name]) => !name.endsWith("-shm"))).toEqual(before);
});

test("the sentence about a newer store names both versions", () => {
  openStore({ file: file() }).close();
  const db = new SqliteDatabase(file());
  db.pragma("user_version = 42");
  db.close();
  try {
    openStore({ file: file() });
    expect.unreachable();
  } catch (error) {
    expect(error).toMatchObject({
      sentence: { key: "store.newer", values: { version: 42, known: migrations.length } },
    });
  }
});

test("another program's database is refused, and not a byte is touched", () => {
  const db = new SqliteDatabase(file());
  db.exec("CREATE TABLE recipes (name TEXT); INSERT INTO recipes VALUES ('pancakes')");
  db.close();
  const before = everything();
  expect(refusal()).toBe("foreign");
  expect(everything()).toEqual(before);
});

test.each([
  ["a text", Buffer.from("league,name,number\nFoundry Town,Ada Rill,07\n".repeat(100))],
  ["one byte", Buffer.from("x")],
  ["noise", Buffer.alloc(20_000, 0xa7)],
])("a file that is no database is refused, and not a byte is touched: %s", (_name, bytes) => {
  writeFileSync(file(), bytes);
  const before = everything();
  expect(refusal()).toBe("foreign");
  expect(everything()).toEqual(before);
});

test("a damaged store is refused, and not a byte is touched", () => {
  openStore({ file: file() }).close();
  const db = new SqliteDatabase(file());
  db.pragma("journal_mode = DELETE");
  db.close();
  const bytes = readFileSync(file());
  // The first page stays, so that it still says whose it is; every other page is noise.
  bytes.fill(0xa7, 4096);
  writeFileSync(file(), bytes);
  const before = everything();
  expect(refusal()).toBe("damaged");
  expect(everything()).toEqual(before);
});

test("a store cut short is refused, and not a byte is touched", () => {
  openStore({ file: file() }).close();
  const db = new SqliteDatabase(file());
  db.pragma("journal_mode = DELETE");
  db.close();
  writeFileSync(file(), readFileSync(file()).subarray(0, 3 * 4096));
  const before = everything();
  expect(refusal()).toBe("damaged");
  expect(everything()).toEqual(before);
});
