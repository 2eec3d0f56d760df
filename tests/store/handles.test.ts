import { afterEach, beforeEach, expect, expectTypeOf, test } from "vitest";
import { put } from "../../electron/api/heat/make.ts";
import {
  allRows,
  execute,
  firstRow,
  type ReadableDb,
  setting,
  type WritableDb,
} from "../../electron/store/connection/database.ts";
import { openStore } from "../../electron/store/connection/open.ts";
import type { Store } from "../../electron/store/connection/store.ts";
import { addVoid } from "../../electron/store/tables/attempts.ts";
import { addDay, allDays, setDayState } from "../../electron/store/tables/days.ts";
import type { Heat } from "../../electron/store/tables/heats.ts";

const plan = { date: "2026-11-14", title: "A day", restMinutes: 5 };
let store: Store;
beforeEach(() => {
  store = openStore({ file: ":memory:" });
  store.write(["day"], (db) => addDay(db, plan, []));
});
afterEach(() => store.close());

test("a reader is no writer, and a writer is a reader", () => {
  expectTypeOf<ReadableDb>().not.toExtend<WritableDb>();
  expectTypeOf<WritableDb>().toExtend<ReadableDb>();
  expectTypeOf(store.db).toEqualTypeOf<ReadableDb>();
  // A promise would go on after its transaction.
  expectTypeOf(store.write<Promise<void>>)
    .parameter(1)
    .returns.toBeNever();
});

const heat: Heat = {
  ...{
    id: "h",
    dayId: 1,
    test: "core",
    holder: null,
    lanes: 2,
    state: "gathering",
    gatheredAt: "",
    gatheredBy: "QA",
    startDoubtMs: null,
    zero: null,
    ended: null,
  },
};

// The compiler refuses each line that expects it (and refuses the expectation where it does not); so does the store.
test.each<[string, (db: ReadableDb) => unknown]>([
  // @ts-expect-error A reader is given to a function of the store that writes.
  ["by the store's functions", (db) => addVoid(db, "a", "Slip", "QA", "")],
  // @ts-expect-error A reader is given to a function of the door that writes.
  ["by the door's", (db) => put(db, heat, 1, 1)],
  // @ts-expect-error What an open store shows is a reader.
  ["by the open store's own handle", () => setDayState(store.db, 1, "closed")],
  // @ts-expect-error A statement that changes something needs a writer.
  ["by a statement", (db) => execute(db, "DELETE FROM day")],
  ["by what looks like a query", (db) => allRows(db, "DELETE FROM day RETURNING id")],
  ["by what looks like a question", (db) => firstRow(db, "UPDATE day SET title = '' RETURNING id")],
  ["by a setting", (db) => setting(db, "user_version = 0")],
])("a reader changes nothing %s", (_, change) => {
  expect(() => change(store.db)).toThrow(/store\.write|a query|setting/);
  expect(allDays(store.db)).toMatchObject([plan]);
  expect(setting(store.db, "user_version")).toBeGreaterThan(0);
});

test("a writer is handed out for one transaction, and reads what it has just written", () => {
  const kept = store.write(["day"], (db) => {
    setDayState(db, 1, "closed");
    expect(allDays(db)).toMatchObject([{ state: "closed" }]);
    return { db };
  });
  expect(() => setDayState(kept.db, 1, "open")).toThrow(/store\.write/);
});
