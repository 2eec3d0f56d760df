import SqliteDatabase from "better-sqlite3";
import { afterAll, expect, test } from "vitest";
import { heldTables } from "../../electron/store/erasure/held-tables.ts";
import { migrations } from "../../electron/store/migrations/list.ts";

const db = new SqliteDatabase(":memory:");
for (const sql of migrations) db.exec(sql);
afterAll(() => db.close());

interface Column {
  readonly name: string;
}

const tables = (
  db
    .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%'")
    .all() as Column[]
).map(({ name }) => name);
const columnsOf = (table: string) =>
  (db.pragma(`table_info("${table}")`) as Column[]).map(({ name }) => name);
const parentsOf = (table: string) =>
  (db.pragma(`foreign_key_list("${table}")`) as { table: string }[]).map((key) => key.table);

/** Every table that refers to an athlete, however many tables lie between. */
function reaching(): Set<string> {
  const found = new Set(["athlete"]);
  for (let before = 0; before < found.size; ) {
    before = found.size;
    for (const table of tables) if (parentsOf(table).some((parent) => found.has(parent))) found.add(table);
  }
  return found;
}

test("every table that refers to an athlete, by a key or by a column's name, is listed", () => {
  const named = tables.filter((table) => columnsOf(table).some((column) => /athlete/.test(column)));
  const wanted = new Set([...reaching(), ...named]);
  // The permit of an erasure: no transaction can end with a row in it.
  wanted.delete("erasing");
  expect(heldTables.map(({ name }) => String(name)).sort()).toEqual([...wanted].sort());
  expect(wanted.size).toBeGreaterThan(10);
});

test.each(heldTables)("every column of $name is read", ({ name, read }) => {
  const given = db
    .prepare(read)
    .columns()
    .map((column) => column.name);
  expect(given.sort()).toEqual(columnsOf(name).sort());
});

test("a table stands before every table that it refers to, so that its rows go first", () => {
  const order = heldTables.map(({ name }) => String(name));
  for (const [index, table] of order.entries()) {
    for (const parent of parentsOf(table).filter((each) => each !== table && order.includes(each))) {
      expect([table, parent, order.indexOf(parent) > index]).toEqual([table, parent, true]);
    }
  }
});

test("no place for free words is forgotten, where a name could stand in a row about somebody else", () => {
  const places = tables.flatMap((table) =>
    columnsOf(table)
      .filter((column) => /^(?:note|notes|reason|detail|text|comment|remark|file)$/.test(column))
      .map((column) => `${table}.${column}`),
  );
  // `mark.detail` is worked out from the attempts; all others are looked through (`erase-mentions.ts`).
  expect(places.sort()).toEqual(
    [
      "attempt.note",
      "day_event.reason",
      "heat.reason",
      "heat_event.detail",
      "left_out.reason",
      "mark.detail",
      "past_void.reason",
      "step.file",
      "study_reading.reason",
      "void.reason",
    ].sort(),
  );
});
