import { afterEach, beforeEach, expect, test } from "vitest";
import { packTable } from "../../electron/domain/reference-table/packed.ts";
import type { GroupOfMarks, ReferenceTable } from "../../electron/domain/reference-table/table.ts";
import { openStore } from "../../electron/store/connection/open.ts";
import type { Store } from "../../electron/store/connection/store.ts";
import {
  addReference,
  allReferences,
  marksFromElsewhere,
  removeReference,
} from "../../electron/store/tables/reference-bundles.ts";
import {
  addTable,
  allPublishers,
  allTables,
  forgetPublisher,
  groupsFromTables,
  removeTable,
  tableOfKey,
  testsOfTable,
} from "../../electron/store/tables/reference-tables.ts";
import { group, plainTable } from "../unit/reference/making-table.ts";
import { connectionOf } from "./connection.ts";

const [key, otherKey] = ["k".repeat(43), "o".repeat(43)];
const table: ReferenceTable = { ...plainTable, publicKey: key };
const addedAt = "2026-11-14T09:00:00.000Z";
let store: Store;
let files = 0;
beforeEach(() => {
  store = openStore({ file: ":memory:" });
});
afterEach(() => store.close());

function add(more: Partial<ReferenceTable> = {}): number {
  files += 1;
  const sha256 = files.toString(16).padStart(64, "0");
  return store.write(["references"], (db) =>
    addTable(db, packTable({ ...table, ...more }), { sha256, addedAt }),
  );
}

function addBundle(contentSha256: string): number {
  const test = { test: "push-up", variant: "full", fingerprint: group.fingerprint } as const;
  const mark = {
    ...test,
    category: "women",
    ageBand: "25 to 29",
    quarter: "2026-Q1",
    low: 1,
    high: 2,
    count: 9,
  } as const;
  const kept = { origin: "North", kind: "marks", sha256: contentSha256, addedAt } as const;
  const bundle = { contentSha256, tests: [test], marks: [mark] };
  return store.write(["references"], (db) => addReference(db, kept, bundle));
}

function count(name: string): unknown {
  return connectionOf(store.db).prepare<[], { n: number }>(`SELECT count(*) AS n FROM ${name}`).get()?.n;
}

const today = "2026-11-14";
const fromBundles = (date = today) => marksFromElsewhere(store.db, group.fingerprint, date).length;

test("a table is read back as it was kept, open bounds too", () => {
  const open: GroupOfMarks = {
    ...group,
    ageBand: "all",
    percentiles: [
      { percentile: 5, low: null, high: 3 },
      { percentile: 95, low: 40, high: null },
    ],
  };
  const id = add({ groups: [group, open] });
  const told = ({ category, ageBand, marks, halls, countsAs, percentiles }: GroupOfMarks) => {
    return { publisher: table.publisher, category, ageBand, marks, halls, countsAs, percentiles };
  };
  expect(groupsFromTables(store.db, group.fingerprint, today)).toEqual([told(group), told(open)]);
  expect(groupsFromTables(store.db, "push-up/full other=1", today)).toEqual([]);
  expect(testsOfTable(store.db, id)).toEqual([
    {
      ...{ test: "push-up", variant: "full", fingerprint: group.fingerprint },
      ...{ marks: 400, halls: 12, groups: 2, from: "2026-Q1", to: "2026-Q3" },
    },
  ]);
  expect(allTables(store.db)).toMatchObject([{ id, publicKey: key, made: table.made, bundles: 2, addedAt }]);
});

test("a newer one of the same key takes its place, with all rows, and another key's stands beside it", () => {
  const first = add();
  const second = add({ made: "2026-12-01", publisher: "The Harbour tables" });
  expect(second).toBeGreaterThan(first);
  expect(allTables(store.db).map(({ id }) => id)).toEqual([second]);
  expect(count("reference_rules")).toBe(1);
  expect(allPublishers(store.db)).toEqual([
    { id: 1, publisher: "The Harbour tables", publicKey: key, since: addedAt },
  ]);
  add({ publisher: "The hillside table", publicKey: otherKey });
  expect(allTables(store.db)).toHaveLength(2);
  expect(tableOfKey(store.db, otherKey)?.publisher).toBe("The hillside table");
});

test("one that can't be kept whole leaves the one before as it was", () => {
  const id = add();
  expect(() =>
    add({ made: "2026-12-01", groups: [group, { ...group, fingerprint: "other", marks: 0 }] }),
  ).toThrow(/CHECK/);
  expect(allTables(store.db)).toMatchObject([{ id, made: table.made }]);
  expect(count("reference_rules")).toBe(1);
});

test("a key stays remembered without its table, until it is forgotten, and its table goes with it", () => {
  const id = add();
  const remove = () => store.write(["references"], (db) => removeTable(db, id));
  expect([remove(), remove()]).toEqual([true, false]);
  expect(allPublishers(store.db)).toHaveLength(1);
  add();
  expect(allPublishers(store.db)).toHaveLength(1);
  const forget = () => store.write(["references"], (db) => forgetPublisher(db, 1));
  expect([forget(), forget()]).toEqual([true, false]);
  for (const name of ["publisher", "reference_table", "reference_rules"])
    expect([name, count(name)]).toEqual([name, 0]);
});

test.each(["before", "after"])("a bundle brought %s a table that it is in counts there alone", (when) => {
  const bundle = () => addBundle(table.bundles[1] ?? "");
  if (when === "before") bundle();
  expect(fromBundles()).toBe(when === "before" ? 1 : 0);
  const id = add();
  if (when === "after") bundle();
  expect(fromBundles()).toBe(0);
  expect(allReferences(store.db).map(({ inTableOf }) => inTableOf)).toEqual([table.publisher]);
  // On a day for which the table may not be used any more, it is a group of its own.
  expect(fromBundles("2028-11-02")).toBe(1);
  expect(groupsFromTables(store.db, group.fingerprint, "2028-11-02")).toEqual([]);
  store.write(["references"], (db) => removeTable(db, id));
  expect(fromBundles()).toBe(1);
  expect(allReferences(store.db).map(({ inTableOf }) => inTableOf)).toEqual([null]);
  add();
  expect(fromBundles()).toBe(0);
  store.write(["references"], (db) => removeReference(db, 1));
  expect(count("reference_in_table")).toBe(0);
});

test("of many hashes each is found, and no other", () => {
  const bundles = Array.from({ length: 101 }, (_none, index) =>
    (index * 2 + 1).toString(16).padStart(64, "0"),
  );
  add({ bundles: bundles.toReversed() });
  for (let at = 0; at <= 202; at += 1) addBundle(at.toString(16).padStart(64, "0"));
  const known = allReferences(store.db).filter(({ inTableOf }) => inTableOf !== null);
  expect(known.map(({ sha256 }) => sha256).sort()).toEqual(bundles);
});
