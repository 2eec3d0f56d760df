import { afterEach, beforeEach, expect, expectTypeOf, test } from "vitest";
import { skip } from "../../electron/api/station/turns.ts";
import { addVoid } from "../../electron/store/attempts.ts";
import { type ReadableDb, statement, type WritableDb } from "../../electron/store/database.ts";
import { allDays, type Day, setDayState } from "../../electron/store/days.ts";
import { openStore } from "../../electron/store/open.ts";
import type { Store } from "../../electron/store/store.ts";

let store: Store;
beforeEach(() => {
  store = openStore({ file: ":memory:" });
});
afterEach(() => store.close());

/** Never called: the compiler refuses each line that expects it, and refuses the expectation where it does not. */
function whatTheCompilerRefuses(reader: ReadableDb, writer: WritableDb, day: Day): void {
  const decision = { reason: "Late", decidedBy: "QA", at: "" };
  // @ts-expect-error A reader changes nothing by the store's functions,
  addVoid(reader, "a", "Slip", "QA", "");
  // @ts-expect-error nor by those of the door,
  skip(reader, day, { athleteId: 1, test: "core" }, decision);
  // @ts-expect-error nor is it a writer,
  const other: WritableDb = reader;
  // @ts-expect-error nor can it run what it likes.
  reader.exec("DELETE FROM mark");
  // @ts-expect-error What an open store shows is a reader,
  setDayState(store.db, 1, "closed");
  // @ts-expect-error and what a reader prepares only asks.
  statement<[], never>(reader, "DELETE FROM mark").run();
  // A writer reads as well.
  allDays(writer);
  const one: ReadableDb = writer;
  // @ts-expect-error A promise would be worked on after its transaction.
  store.write([], async (db) => setDayState(db, 1, "closed"));
  expect([one, other]).toBeDefined();
}

test("a reader is no writer, and a writer is a reader: the compiler says so", () => {
  expectTypeOf<ReadableDb>().not.toExtend<WritableDb>();
  expectTypeOf<WritableDb>().toExtend<ReadableDb>();
  expectTypeOf(store.db).toEqualTypeOf<ReadableDb>();
  expectTypeOf(whatTheCompilerRefuses).returns.toBeVoid();
});

test("a writer is handed out inside a transaction, and reads what it has just written", () => {
  const sql =
    "INSERT INTO day (date, title, state, rest_minutes) VALUES ('2026-11-14', 'A day', 'planned', 5)";
  const titles = store.write(["day"], (db) => {
    expect(db.inTransaction).toBe(true);
    db.exec(sql);
    return allDays(db).map(({ title }) => title);
  });
  expect(titles).toEqual(["A day"]);
  expect(store.db.inTransaction).toBe(false);
});
